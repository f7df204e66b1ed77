"""Floating slabs and water pressure against published figures."""

import pytest

from geometry.formulas.uplift import Lying, floating_head, water_pressure

INCH, FOOT = 0.0254, 0.3048
PCF = 0.45359237 / FOOT**3
PSF = 4.4482216 / FOOT**2


def test_four_inch_slab_floats_at_9_6_inches() -> None:
    # Worked by hand from 150 and 62.4 lb/ft3 (NPCA Buoyancy White Paper, 2018, uses both; from
    # memory).
    head = floating_head([Lying(4 * INCH, 150 * PCF)], water_kgm3=62.4 * PCF)
    assert head / INCH == pytest.approx(9.615, abs=1e-3)


def test_pressure_of_four_feet_of_water() -> None:
    # Illinois DOT 1979: 62.5 lb/ft3 x 4 ft = 250 lb/ft2.
    assert water_pressure(4 * FOOT) / PSF == pytest.approx(250, rel=0.002)
