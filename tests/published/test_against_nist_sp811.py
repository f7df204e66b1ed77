"""Conversion factors against NIST SP 811.

Guide for the Use of the International System of Units, NIST Special Publication 811,
2008 edition, Appendix B.8, "Factors for Units Listed Alphabetically". Factors the guide prints
in bold are exact; the others are rounded to seven digits. Typed from memory of that table;
each exact one also follows from 1 in = 25.4 mm and 1 lb = 0.45359237 kg.
"""

import math
from fractions import Fraction

import pytest

from geometry.units import FOOT, INCH, MIL, factor, read_length, to_unit

# Unit, SI unit, the factor printed in bold: exact.
EXACT = [
    ("inch", "m", "2.54e-2"),
    ("foot", "m", "3.048e-1"),
    ("yard", "m", "9.144e-1"),
    ("mile", "m", "1.609344e3"),
    ("thou", "m", "2.54e-5"),
    ("inch**2", "m**2", "6.4516e-4"),
    ("foot**2", "m**2", "9.290304e-2"),
    ("pound", "kg", "4.5359237e-1"),
]
# Unit, SI unit, the factor as printed, seven digits.
ROUNDED = [
    ("yard**2", "m**2", "8.361274e-1"),
    ("inch**3", "m**3", "1.638706e-5"),
    ("foot**3", "m**3", "2.831685e-2"),
    ("yard**3", "m**3", "7.645549e-1"),
    ("acre_foot", "m**3", "1.233489e3"),
    ("US_liquid_gallon", "m**3", "3.785412e-3"),
    ("US_liquid_gallon / minute", "m**3 / s", "6.309020e-5"),
    ("foot**3 / minute", "m**3 / s", "4.719474e-4"),
    ("short_ton", "kg", "9.071847e2"),
    ("short_ton / yard**3", "kg / m**3", "1.186553e3"),
    ("pound / foot**3", "kg / m**3", "1.601846e1"),
    ("pound / yard**3", "kg / m**3", "5.932764e-1"),
    ("ounce / yard**2", "kg / m**2", "3.390575e-2"),
    ("pound / foot", "kg / m", "1.488164"),
    ("force_pound", "N", "4.448222"),
    ("psi", "Pa", "6.894757e3"),
    ("force_pound / foot**2", "Pa", "4.788026e1"),
    ("force_pound / foot", "N / m", "1.459390e1"),
]


@pytest.mark.parametrize(("unit", "to", "printed"), EXACT)
def test_exact_factors(unit: str, to: str, printed: str) -> None:
    assert factor(unit, to) == pytest.approx(float(printed), rel=1e-15)
    assert to_unit(3.0, unit, to) == pytest.approx(3 * float(printed), rel=1e-15)
    assert to_unit(float(printed), to, unit) == pytest.approx(1.0, rel=1e-14)


@pytest.mark.parametrize(("unit", "to", "printed"), ROUNDED)
def test_rounded_factors_to_their_last_digit(unit: str, to: str, printed: str) -> None:
    assert f"{factor(unit, to):.6e}" == f"{float(printed):.6e}"


def test_the_engine_s_own_lengths_are_exact() -> None:
    assert (INCH, FOOT) == (0.0254, 0.3048)
    assert pytest.approx(2.54e-5, rel=1e-15) == MIL


@pytest.mark.parametrize(
    ("text", "metres"),
    [
        ("1 in", "0.0254"),
        ("1 ft", "0.3048"),
        ("1 mil", "0.0000254"),
        ("1/16 in", "0.0015875"),
        ("3 ft", "0.9144"),
        ("1 mm", "0.001"),
        ("1 cm", "0.01"),
    ],
)
def test_lengths_read_from_text_use_the_exact_factors(text: str, metres: str) -> None:
    assert read_length(text) == float(Fraction(metres))


def test_a_gallon_is_231_cubic_inches() -> None:
    # SP 811, B.7 names the US gallon of 231 in3.
    assert math.isclose(factor("US_liquid_gallon", "inch**3"), 231, rel_tol=1e-14)
