"""Pressure of surface loads against printed examples and the textbooks' tables."""

import pytest

from geometry.formulas.pipe_loads import corner_pressure, middle_pressure, wheel_pressure

POUND, FOOT, PSF = 4.4482216, 0.3048, 47.88026  # NIST SP 811


def test_point_load_of_400_kn() -> None:
    # An examination answer: 400 kN on the ground, 2 m below it 47.75 kPa.
    assert wheel_pressure(400e3, 2.0) / 1000 == pytest.approx(47.75, abs=0.005)


def test_wheel_of_a_truck_between_two() -> None:
    # A note on the equation: 16,000 lb, 1200 mm deep, 2 ft aside, impact 2: 558.8 psf (rounded
    # on the way), two wheels 1117.5 psf.
    one = wheel_pressure(16_000 * POUND, 1.2, 2 * FOOT, 2.0) / PSF
    assert one == pytest.approx(558.8, rel=0.01)
    assert 2 * one == pytest.approx(1117.5, rel=0.01)


# r/z: influence factor of Boussinesq's table (textbooks; 0.4775 seen, the rest from memory).
TABLE = {0.0: 0.4775, 0.5: 0.2733, 1.0: 0.0844, 1.5: 0.0251, 2.0: 0.0085}


@pytest.mark.parametrize(("offset", "factor"), TABLE.items())
def test_influence_factors(offset: float, factor: float) -> None:
    assert wheel_pressure(1.0, 1.0, offset) == pytest.approx(factor, abs=6e-5)


# m, n: corner factor of Fadum's chart and table (from memory).
FADUM = {(1, 1): 0.1752, (2, 2): 0.2325, (0.5, 0.5): 0.0840, (1, 2): 0.1999}


@pytest.mark.parametrize(("sides", "factor"), FADUM.items())
def test_corner_of_a_rectangle(sides: tuple[float, float], factor: float) -> None:
    assert corner_pressure(1.0, *sides, 1.0) == pytest.approx(factor, abs=6e-5)


def test_wide_stack_passes_its_whole_pressure_on() -> None:
    assert middle_pressure(1000.0, 200.0, 200.0, 1.0) == pytest.approx(1000.0, rel=1e-4)
