"""Holes in a pipe: a second integration, limits, and holes down against holes up."""

from math import cos, pi, radians, sin, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from geometry.formulas.orifices import (
    HoleRow,
    free_orifice,
    hole_inflow,
    inflow_per_metre,
    inlet_area,
    level_for_inflow,
    level_of_first_water,
    submerged_orifice,
)
from tests.rolls import rolls

G = 9.80665
HOLE, INSIDE = 0.0127, 0.1
DOWN = (HoleRow(-60.0, HOLE, 0.127), HoleRow(60.0, HOLE, 0.127))
UP = (HoleRow(-120.0, HOLE, 0.127), HoleRow(120.0, HOLE, 0.127))


def summed(rise: float, outside: float, inside: float) -> float:
    """Strip by strip over the tilted hole, by another integrator; C 0.60."""

    def strip(t: float) -> float:
        head = outside - max(rise * t, min(inside, outside))
        return 2 * HOLE**2 * sqrt(max(t * (1 - t), 0)) * sqrt(max(2 * G * head, 0))

    breaks = [b / rise for b in (outside, inside) if 0 < b < rise]
    return 0.60 * quad(strip, 0, 1, points=breaks or None, limit=400)[0]


@given(st.floats(0.05, 1.0), st.floats(0.0, 4.0), st.floats(0.0, 1.0))
def test_hole_is_the_sum_of_its_strips(tilt: float, outside: float, part: float) -> None:
    rise, water = tilt * HOLE, outside * HOLE
    found = hole_inflow(HOLE, rise, water, part * water)
    assert found == pytest.approx(summed(rise, water, part * water), rel=2e-4, abs=1e-9)


def test_a_deep_hole_is_an_orifice() -> None:
    area = pi * HOLE**2 / 4
    deep = hole_inflow(HOLE, HOLE, 1.0)
    assert deep == pytest.approx(free_orifice(area, 1.0 - HOLE / 2), rel=1e-5)
    drowned = hole_inflow(HOLE, HOLE, 1.0, 0.7)
    assert drowned == pytest.approx(submerged_orifice(area, 1.0, 0.7), rel=1e-9)
    assert submerged_orifice(area, 0.7, 1.0) == -submerged_orifice(area, 1.0, 0.7)


def test_a_flat_hole_has_one_head() -> None:
    assert hole_inflow(HOLE, 0.0, 0.05) == pytest.approx(free_orifice(pi * HOLE**2 / 4, 0.05))
    assert hole_inflow(HOLE, 0.0, -0.01) == 0


@given(st.floats(0.0, 0.5), st.floats(0.0, 0.5))
def test_more_water_outside_brings_more_in(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert inflow_per_metre(DOWN, INSIDE, low) <= inflow_per_metre(DOWN, INSIDE, high) + 1e-15


@given(st.floats(1e-7, 1e-3), st.sampled_from([DOWN, UP]))
@settings(max_examples=rolls(20))
def test_level_for_an_inflow_gives_that_inflow(inflow: float, rows: tuple[HoleRow, ...]) -> None:
    level = level_for_inflow(rows, INSIDE, inflow)
    assert inflow_per_metre(rows, INSIDE, level) == pytest.approx(inflow, rel=1e-6)


def test_holes_down_take_water_lower_by_the_difference_of_their_heights() -> None:
    down, up = level_of_first_water(DOWN, INSIDE), level_of_first_water(UP, INSIDE)
    assert up - down == pytest.approx(INSIDE * cos(radians(60)))
    half_a_hole = HOLE / 2 * sin(radians(60))
    assert down == pytest.approx(INSIDE / 4 - half_a_hole), "4 and 8 o'clock: a quarter up"
    assert inflow_per_metre(UP, INSIDE, up) == 0
    assert inflow_per_metre(DOWN, INSIDE, up) > 0
    assert inflow_per_metre(DOWN, INSIDE, down * 0.999) == 0
    bottom = (HoleRow(0.0, HOLE, 0.127),)
    assert level_of_first_water(bottom, INSIDE) == 0


def test_inflow_follows_the_number_of_holes() -> None:
    half = tuple(HoleRow(r.angle_deg, r.hole_m, 2 * r.spacing_m) for r in DOWN)
    assert inlet_area(half) == pytest.approx(inlet_area(DOWN) / 2)
    full = inflow_per_metre(DOWN, INSIDE, 0.2, 0.05)
    assert inflow_per_metre(half, INSIDE, 0.2, 0.05) == pytest.approx(full / 2)
    assert inlet_area(()) == 0
    assert inflow_per_metre((), INSIDE, 0.2) == 0


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="higher inside"):
        hole_inflow(HOLE, HOLE, 0.01, 0.02)
    with pytest.raises(ValueError, match="without holes"):
        level_of_first_water((), INSIDE)
    with pytest.raises(ValueError, match="above zero"):
        HoleRow(60.0, 0.0, 0.1)
    with pytest.raises(ValueError, match="between"):
        free_orifice(0.1, 1.0, 1.2)
