"""Granular filters against NRCS NEH 633 chapter 26, in mm.

Categories 1 and 4, the factor 5 and the 0.1 mm were read second-hand; category 2, 3, the
segregation table and the clay example are from memory.
"""

import pytest

from geometry.formulas.granular_filter import (
    PERMEABILITY,
    base_category,
    largest_d15,
    largest_d90,
    least_d15,
)

MM = 1e-3


@pytest.mark.parametrize(
    ("percent", "category"), [(93, 1), (86, 1), (85, 2), (40, 2), (39, 3), (15, 3), (14, 4), (0, 4)]
)
def test_categories(percent: float, category: int) -> None:
    assert base_category(percent / 100) == category


def test_clay_example() -> None:
    # d85 0.06 mm: at most 9 x 0.06 = 0.54 mm; at least 0.1 mm, and the band no wider than 5 times.
    assert largest_d15(0.93, 0.06 * MM) / MM == pytest.approx(0.54)
    assert least_d15(0.002 * MM) / MM == pytest.approx(0.1)
    assert largest_d15(0.93, 0.06 * MM) / 5 / MM == pytest.approx(0.11, abs=0.005)


def test_clay_limits() -> None:
    assert largest_d15(0.95, 0.01 * MM) / MM == pytest.approx(0.2), "not under 0.2 mm"
    assert largest_d15(0.95, 0.1 * MM, dispersive=True) / MM == pytest.approx(0.65)


def test_silty_sand_and_silt() -> None:
    assert largest_d15(0.60, 0.5 * MM) / MM == pytest.approx(0.7)
    # A 30 %, d85 0.9 mm: (40 - 30)/25 x (3.6 - 0.7) + 0.7.
    assert largest_d15(0.30, 0.9 * MM) / MM == pytest.approx(1.86)
    assert largest_d15(0.30, 0.1 * MM) / MM == pytest.approx(0.7), "4 d85 below 0.7 mm"


def test_clean_sand() -> None:
    assert largest_d15(0.05, 1.2 * MM) / MM == pytest.approx(4.8)


def test_permeability() -> None:
    assert PERMEABILITY == 5
    assert least_d15(0.2 * MM) / MM == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("d10", "d90"), [(0.3, 20), (0.5, 25), (1.5, 30), (3, 40), (6, 50), (12, 60)]
)
def test_segregation(d10: float, d90: float) -> None:
    assert largest_d90(d10 * MM) / MM == pytest.approx(d90)
