"""The figures of a design's order: its own, else the usual ones; loose weights as printed."""

from geometry.materials.kinds import Aggregate
from geometry.parts.usual import Factor, ordering_factor
from geometry.project import Design
from geometry.sources import Source
from geometry.units import to_unit

_YARDS = Source("stone yards' printed and quoted figures; ask yours", clause="loose")

# Short tons for a cubic yard as yards print and quote them; the catalogue's range for others.
_TONS: dict[str, tuple[float, float]] = {
    **dict.fromkeys(("stone-57", "stone-67", "stone-8", "stone-89"), (1.35, 1.75)),
    "sand-c33": (1.25, 1.50),
}


def factor(design: Design, key: str) -> Factor:
    """Return the figure of a key such as `stone.waste`: the design's own, or the usual one."""
    return ordering_factor(design.order, design.project.units == "metric", key)


def densities(material: Aggregate) -> tuple[float, float, str]:
    """Return the printed range of a loose density, kg/m3, and its source."""
    if material.key in _TONS:
        low, high = (to_unit(t, "short_ton/yd**3", "kg/m**3") for t in _TONS[material.key])
        return low, high, str(_YARDS)
    return material.loose_density_low, material.loose_density_high, str(material.source)
