"""Invented shots for the survey's tests."""

from collections.abc import Callable

import numpy as np

from geometry.layout.lay import Layout
from geometry.survey.asdug import AreaDug, AsDug, as_dug
from geometry.survey.shots import Floats, Shots, ground_shots
from tests.houses import house, without

Level = Callable[[Floats, Floats], Floats]


def random_shots(layout: Layout, level: Level, count: int = 400, seed: int = 1) -> Shots:
    """Shots at random places over the first area's outline and a bit beyond."""
    left, low, right, high = layout.areas[0].outline.bounds
    dice = np.random.default_rng(seed)
    x, y = dice.uniform(left - 0.5, right + 0.5, count), dice.uniform(low - 0.5, high + 0.5, count)
    return ground_shots(x, y, level(x, y))


def dug(layout: Layout, shots: Shots, least_m: float | None = None) -> AreaDug:
    """The only area with shots."""
    (area,) = as_dug(layout, shots, least_m).areas
    return area


def survey(layout: Layout, shots: Shots) -> AsDug:
    return as_dug(layout, shots)


def dry_house() -> Layout:
    """The house without a pit."""
    return house(without("sump"))


def hexagons(middle: tuple[float, float], step: float) -> tuple[Floats, Floats]:
    """Places of a grid of equal triangles, 25 by 25, row by row."""
    rows = np.arange(-12, 13)
    across, up = (v.ravel() for v in np.meshgrid(rows, rows))
    return (middle[0] + step * (across + up / 2), middle[1] + step * up * 3**0.5 / 2)
