"""Which shots are told to lie far off their neighbours: limits worked by hand on made patterns."""

import numpy as np
import pytest

from geometry.survey.asdug import as_dug
from geometry.survey.shots import Floats, ShotFault, ground_shots
from tests.geometry.survey.surveyed import hexagons, random_shots
from tests.houses import house

INCH = 0.0254
STEP_M = 0.05
MIDDLE = 312


def rough(off_steps: float) -> tuple[ShotFault, ...]:
    """Ground in a grid of triangles whose three colours lie a step up, on, and a step under.

    Of two colours in three each shot lies a step up or down, its neighbours on and a step down or
    up: 1 1/2 steps off the middle of those. That is the usual, so the limit is 8 x 1 1/2 steps.
    The middle shot is raised off its own level, its highest neighbours lie one step up.
    """
    x, y = hexagons((4.5, 3.0), 0.5)
    up, across = divmod(np.arange(len(x)), 25)
    colour = (across - up) % 3
    level: Floats = -0.1524 + STEP_M * np.array([0.0, 1.0, -1.0])[colour]
    level[MIDDLE] += off_steps * STEP_M
    return as_dug(house(), ground_shots(x, y, level)).faults


@pytest.mark.parametrize("way", [1, -1])
def test_on_rough_ground_a_shot_must_lie_eight_times_the_usual_off(way: int) -> None:
    assert rough(way * 12.9) == ()
    (fault,) = rough(way * 13.1)
    assert fault.row == MIDDLE + 1


@pytest.mark.parametrize("way", [1, -1])
def test_on_even_ground_six_inches_are_much(way: int) -> None:
    shots = random_shots(house(), lambda x, y: -0.1524 + 0 * x * y, count=60)
    inner = int(np.argmin(np.hypot(shots.x - 4.5, shots.y - 3.0)))
    shots.level[inner] += way * 5.5 * INCH
    assert as_dug(house(), shots).faults == ()
    shots.level[inner] += way * INCH
    (fault,) = as_dug(house(), shots).faults
    assert fault.row == inner + 1
    assert 'it lies 6 1/2" ' in str(fault)


def test_four_neighbours_make_a_plane() -> None:
    """On a ramp of 1 in 10, four shots around one: the mean of those would lie 5 cm up the ramp."""
    turn = np.arange(14) * 2 * np.pi / 14
    x = 4.5 + np.concatenate(([0.0, -1.0, 3.0, 0.0, 0.0], 4 * np.cos(turn)))
    y = 3.0 + np.concatenate(([0.0, 0.0, 0.0, 1.5, -1.5], 4 * np.sin(turn)))
    level = -0.1524 + 0.1 * (x - 4.5)
    level[0] += 48 * INCH
    (fault,) = as_dug(house(), ground_shots(x, y, level)).faults
    assert (fault.row, "it lies 4'-0\" above" in str(fault)) == (1, True)
