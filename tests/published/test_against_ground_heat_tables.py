"""Heat to the ground against tables that were made by ISO 13370, and worked houses.

Approved Document L (England and Wales, 2002), Appendix C: clay of 1.5 W/mK, walls 0.3 m, to two
decimals. Tables C1 (solid floors) and C5 (basement floors), as an open calculator carries them.
"""

import pytest

from geometry.formulas.ground_heat import (
    characteristic_dimension,
    floor_thickness,
    floor_transmittance,
    wall_thickness,
    wall_transmittance,
)

CLAY, WALL = 1.5, 0.3
# Perimeter over area: U by resistance of insulation all over of 0, 0.5, 1, 1.5 and 2 m2K/W.
C1 = {
    0.05: (0.13, 0.11, 0.10, 0.09, 0.08),
    0.10: (0.22, 0.18, 0.16, 0.14, 0.13),
    0.20: (0.37, 0.29, 0.25, 0.22, 0.19),
    0.30: (0.49, 0.38, 0.31, 0.27, 0.23),
    0.40: (0.60, 0.44, 0.36, 0.30, 0.26),
    0.50: (0.70, 0.50, 0.40, 0.33, 0.28),
    0.60: (0.78, 0.55, 0.43, 0.35, 0.29),
    0.80: (0.93, 0.62, 0.47, 0.37, 0.32),
    1.00: (1.05, 0.68, 0.50, 0.40, 0.33),
}
# Perimeter over area: U of bare basement floors by depth of 0.5, 1, 1.5, 2 and 2.5 m.
C5 = {
    0.1: (0.20, 0.19, 0.18, 0.17, 0.16),
    0.2: (0.34, 0.31, 0.29, 0.27, 0.26),
    0.3: (0.44, 0.41, 0.38, 0.35, 0.33),
    0.4: (0.53, 0.48, 0.44, 0.41, 0.38),
    0.5: (0.61, 0.55, 0.50, 0.46, 0.43),
    0.7: (0.74, 0.65, 0.59, 0.53, 0.49),
    1.0: (0.89, 0.77, 0.68, 0.60, 0.54),
}
# The tables are rounded to 0.01.
ROUNDED = 0.0075


@pytest.mark.parametrize(("ratio", "row"), C1.items())
def test_solid_floors(ratio: float, row: tuple[float, ...]) -> None:
    for resistance, u in zip((0, 0.5, 1, 1.5, 2), row, strict=True):
        thick = floor_thickness(WALL, CLAY, resistance)
        assert floor_transmittance(2 / ratio, thick, CLAY) == pytest.approx(u, abs=ROUNDED)


@pytest.mark.parametrize(("ratio", "row"), C5.items())
def test_basement_floors(ratio: float, row: tuple[float, ...]) -> None:
    thick = floor_thickness(WALL, CLAY, 0)
    for depth, u in zip((0.5, 1, 1.5, 2, 2.5), row, strict=True):
        assert floor_transmittance(2 / ratio, thick, CLAY, depth) == pytest.approx(u, abs=ROUNDED)


def test_the_scottish_bare_floor() -> None:
    # Annex 6.C: without insulation 0.25 W/m2K is kept where P/A is less than 0.12.
    thick = floor_thickness(WALL, CLAY, 0)
    assert floor_transmittance(2 / 0.11, thick, CLAY) < 0.25
    assert floor_transmittance(2 / 0.13, thick, CLAY) > 0.25


def test_a_house_worked_in_a_lecture() -> None:
    # 10.2 x 6.7 m less 3.5 x 2.7 m: area 58.89 m2, edge 33.8 m; 0.74 by the table's row of 0.55.
    wide = characteristic_dimension(10.2 * 6.7 - 3.5 * 2.7, 33.8)
    assert 2 / wide == pytest.approx(0.574, abs=5e-4)
    assert floor_transmittance(2 / 0.55, floor_thickness(WALL, CLAY, 0), CLAY) == pytest.approx(
        0.74, abs=ROUNDED
    )


# 28 x 40 ft, 7 ft deep, sand of 2.0 W/mK, 8 in of wall whose own resistance is left out; the
# figures worked by hand with the same equations.
def test_a_basement_bare_and_insulated() -> None:
    area, edge, depth = 28 * 40 * 0.3048**2, 2 * (28 + 40) * 0.3048, 7 * 0.3048
    wide = characteristic_dimension(area, edge)
    assert (area, wide) == (pytest.approx(104.05, abs=0.01), pytest.approx(5.020, abs=1e-3))
    bare, foamed = (floor_thickness(0.2032, 2.0, r) for r in (0.0, 1.7611))
    assert (bare, foamed) == (pytest.approx(0.6232), pytest.approx(4.145, abs=1e-3))
    assert floor_transmittance(wide, bare, 2.0, depth) == pytest.approx(0.535, abs=1e-3)
    # Deep and insulated, the floor is thicker than B': the other branch of the standard.
    assert foamed + depth / 2 > wide
    assert floor_transmittance(wide, foamed, 2.0, depth) == pytest.approx(0.266, abs=1e-3)
    plain, warm = (wall_thickness(2.0, r) for r in (0.0, 2.6417))
    assert wall_transmittance(depth, plain, bare, 2.0) == pytest.approx(1.266, abs=2e-3)
    assert wall_transmittance(depth, warm, foamed, 2.0) == pytest.approx(0.255, abs=1e-3)


def test_nothing_is_reckoned_without_an_edge_or_ground() -> None:
    with pytest.raises(ValueError, match="perimeter_m"):
        characteristic_dimension(100, 0)
    with pytest.raises(ValueError, match="conductivity"):
        floor_thickness(0.3, 0, 1)
    with pytest.raises(ValueError, match="depth_m"):
        wall_transmittance(0, 0.3, 0.3, 2)
