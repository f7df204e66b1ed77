"""Nonwoven needle-punched drainage fabrics by mass; thickness is the real one, in mm."""

from typing import Literal

from geometry.materials.kinds import Fabric
from geometry.sources import Source
from geometry.units import to_unit

_TYPICAL = Source("typical makers' values, needle-punched nonwoven", sure="memory")
_M288 = Source("AASHTO M 288-06", clause="Table 1 (strength class by grab strength)", sure="memory")
_SEEN_8 = Source("a maker's note on AASHTO M 288", clause="8 oz grab, opening, permittivity")
_SEEN_16 = Source("a maker's note on AASHTO M 288", clause="16 oz grab, opening, permittivity")


def _nonwoven(
    ounces: int,
    thickness_mm: float,
    opening_mm: float,
    permittivity: float,
    grab_lb: float,
    m288_class: Literal[1, 2, 3] | None,
    *also: Source,
) -> Fabric:
    return Fabric(
        key=f"nonwoven-{ounces}oz",
        name=f"Nonwoven filter fabric, {ounces} oz",
        source=_TYPICAL,
        also=(_M288, *also),
        thickness_m=thickness_mm / 1000,
        mass_kg_m2=to_unit(ounces, "oz/yd**2", "kg/m**2"),
        opening_m=opening_mm / 1000,
        permittivity_per_s=permittivity,
        grab_n=to_unit(grab_lb, "lbf", "N"),
        m288_class=m288_class,
    )


ROWS = (
    _nonwoven(4, 1.15, 0.212, 2.0, 100.0, None),
    _nonwoven(6, 1.75, 0.212, 1.5, 160.0, 2),
    _nonwoven(8, 2.2, 0.180, 1.35, 205.0, 1, _SEEN_8),
    _nonwoven(16, 4.0, 0.150, 0.70, 380.0, 1, _SEEN_16),
)
