"""Cuts drawn by hand: corners on whole sizes, nearly square legs square."""

import math

import pytest

from geometry.sections.drawn import squared, whole
from geometry.units import INCH


@pytest.mark.parametrize(("system", "step"), [("ft-in", INCH), ("metric", 0.01)])
def test_a_drawn_corner_lies_on_whole_sizes(system, step):
    at = (3.33333, -1.77777)
    x, y = whole(at, system)
    for drawn, kept in zip(at, (x, y), strict=True):
        assert kept / step == pytest.approx(round(kept / step), abs=1e-6)
        assert abs(kept - drawn) <= step / 2


@pytest.mark.parametrize("turn", [0, 90, 180, 270])
@pytest.mark.parametrize("off", [-3.9, -1.0, 0.0, 2.5, 3.9])
def test_a_nearly_square_leg_runs_along_the_axis_from_its_fixed_end(turn, off):
    fixed, angle = (1.234, 5.678), math.radians(turn + off)
    end = (fixed[0] + 10 * math.cos(angle), fixed[1] + 10 * math.sin(angle))
    found = squared(end, fixed, "metric")
    axis = 1 if turn % 180 == 0 else 0
    assert found[axis] == fixed[axis]
    assert found[1 - axis] == pytest.approx(end[1 - axis], abs=0.005)


@pytest.mark.parametrize("off", [4.2, 30, 45, 85.5])
def test_an_oblique_leg_keeps_its_direction(off):
    end = (10 * math.cos(math.radians(off)), 10 * math.sin(math.radians(off)))
    assert math.dist(squared(end, (0.0, 0.0), "metric"), end) <= 0.0072
