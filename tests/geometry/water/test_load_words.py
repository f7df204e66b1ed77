"""Loads in words, by NIST SP 811: lbf 4.448222 N, ft 0.3048 m, psi 6894.757 Pa."""

from collections.abc import Callable

import pytest

from geometry.units import System
from geometry.water import loadwords

FOOT, POUND = 0.3048, 4.448222
SAID: list[tuple[Callable[[float, System], str], float, str, str]] = [
    (loadwords.show_force, 3000 * POUND, "3,000 lb", "13.3 kN"),
    (loadwords.show_pressure, 575 * POUND / FOOT**2, "575 lb/ft²", "27.5 kPa"),
    (loadwords.show_modulus, 1000 * 6894.757, "1,000 psi", "6.9 MPa"),
    (loadwords.show_unit_weight, 100 * POUND / FOOT**3, "100 lb/ft³", "15.7 kN/m³"),
    (loadwords.show_thrust, 2205 * POUND / FOOT, "2,205 lb per ft", "32.2 kN/m"),
    (loadwords.show_moment, 5633 * POUND, "5,633 lb·ft per ft", "25.1 kN·m per m"),
]


@pytest.mark.parametrize(("show", "value", "feet", "metric"), SAID)
def test_loads_are_said_in_the_design_s_own_system(
    show: Callable[[float, System], str], value: float, feet: str, metric: str
) -> None:
    assert (show(value, "ft-in"), show(value, "metric")) == (feet, metric)
