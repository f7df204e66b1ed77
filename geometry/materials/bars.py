"""Reinforcing bars, ASTM A615 Table 1."""

from geometry.materials.kinds import Bar
from geometry.sources import Source
from geometry.units import INCH, to_unit

A615 = Source("ASTM A615/A615M", clause="Table 1")


def _bar(size: int, diameter_in: float, area_in2: float, pounds_per_foot: float) -> Bar:
    return Bar(
        key=f"#{size}",
        name=f"Reinforcing bar, No. {size}",
        source=A615,
        diameter_m=diameter_in * INCH,
        area_m2=to_unit(area_in2, "inch**2", "m**2"),
        mass_kg_m=to_unit(pounds_per_foot, "lb/ft", "kg/m"),
    )


ROWS = (
    _bar(3, 0.375, 0.11, 0.376),
    _bar(4, 0.500, 0.20, 0.668),
    _bar(5, 0.625, 0.31, 1.043),
    _bar(6, 0.750, 0.44, 1.502),
    _bar(7, 0.875, 0.60, 2.044),
    _bar(8, 1.000, 0.79, 2.670),
)
