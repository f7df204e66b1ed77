"""Bars against ASTM A615 Table 1, in the table's units."""

from math import pi

import pytest

from geometry.materials.catalogue import BARS

STEEL_PCF = 490

# Size: diameter in, area in2, lb/ft.
A615 = {
    3: (0.375, 0.11, 0.376),
    4: (0.500, 0.20, 0.668),
    5: (0.625, 0.31, 1.043),
    6: (0.750, 0.44, 1.502),
    7: (0.875, 0.60, 2.044),
    8: (1.000, 0.79, 2.670),
}


@pytest.mark.parametrize(("size", "row"), A615.items())
def test_bar_is_the_table_s(size: int, row: tuple[float, float, float]) -> None:
    bar = BARS[f"#{size}"]
    assert bar.diameter_m / 0.0254 == pytest.approx(row[0])
    assert bar.area_m2 / 0.0254**2 == pytest.approx(row[1])
    assert bar.mass_kg_m == pytest.approx(row[2] * 1.488164, rel=1e-6)  # NIST SP 811


@pytest.mark.parametrize("size", A615)
def test_area_is_that_of_the_round_to_a_hundredth(size: int) -> None:
    bar = BARS[f"#{size}"]
    assert bar.area_m2 / 0.0254**2 == pytest.approx(pi / 4 * (size / 8) ** 2, abs=0.006)


@pytest.mark.parametrize("size", A615)
def test_weight_is_that_of_steel(size: int) -> None:
    # Area x 490/144 lb/ft, from the nominal diameter: within 0.2 % of the table.
    bar = BARS[f"#{size}"]
    pounds = pi / 4 * (bar.diameter_m / 0.0254) ** 2 * STEEL_PCF / 144
    assert bar.mass_kg_m / 1.488164 == pytest.approx(pounds, rel=2e-3)


def test_twenty_foot_bars() -> None:
    # Published handling weights: 20 ft of #4 is 13.4 lb, of #5 is 20.9 lb.
    assert BARS["#4"].mass_kg_m * 6.096 / 0.45359237 == pytest.approx(13.4, abs=0.05)
    assert BARS["#5"].mass_kg_m * 6.096 / 0.45359237 == pytest.approx(20.9, abs=0.05)
