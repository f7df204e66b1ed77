"""The table of usual units is pint's, and units it lacks are asked of pint."""

from fractions import Fraction

import pint
import pytest

from geometry.measures import read_measure
from geometry.unit_factors import FACTORS
from geometry.units import factor, read_length

EXACT = pint.UnitRegistry(cache_folder=None, non_int_type=Fraction)


@pytest.mark.parametrize("unit", FACTORS)
def test_every_factor_is_the_registry_s_rounded_once(unit: str) -> None:
    asked = {to: float(EXACT.convert(Fraction(1), unit, to)) for to in FACTORS[unit]}
    assert FACTORS[unit] == asked


def test_a_unit_beyond_the_table_is_asked_of_pint() -> None:
    assert "mile" not in FACTORS
    assert factor("mile", "ft") == 5280
    with pytest.raises(pint.DimensionalityError):
        factor("mile", "kg")


def test_what_builders_write_is_read_exactly() -> None:
    assert read_length("3.5", "ft") == 3.5 * 0.3048
    assert read_measure("2 L/s", "flow") == 0.002
