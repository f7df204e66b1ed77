"""When a floor floats: its weight against the water's pressure under it.

Archimedes, per square metre. The body is everything above the lowest face that water cannot pass
or that floats itself: a bare slab from its underside, a build-up on a sheet from the sheet. No
help is counted from walls, piers or the slab's stiffness; loads only when stated.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from geometry.formulas.constants import GRAVITY, WATER_DENSITY
from geometry.formulas.given import not_negative, positive


@dataclass(frozen=True)
class Lying:
    """One layer of the body: thickness in m, density in kg/m3 as it lies (dry, or moist)."""

    thickness_m: float
    density_kgm3: float

    def __post_init__(self) -> None:
        """Raise ValueError for a layer of negative size or weight."""
        not_negative(thickness_m=self.thickness_m, density_kgm3=self.density_kgm3)


def mass_per_area(layers: Sequence[Lying], load_kgm2: float = 0.0) -> float:
    """Mass of the body with a stated load on it, kg/m2."""
    not_negative(load_kgm2=load_kgm2)
    return load_kgm2 + sum(layer.thickness_m * layer.density_kgm3 for layer in layers)


def water_pressure(head_m: float) -> float:
    """Pressure of water under a head, Pa."""
    not_negative(head_m=head_m)
    return WATER_DENSITY * GRAVITY * head_m


def floating_head(
    layers: Sequence[Lying], load_kgm2: float = 0.0, water_kgm3: float = WATER_DENSITY
) -> float:
    """Height of water over the body's underside at which it floats, m: mass over water's."""
    positive(water_kgm3=water_kgm3)
    return mass_per_area(layers, load_kgm2) / water_kgm3


def floating_level(underside_m: float, layers: Sequence[Lying], load_kgm2: float = 0.0) -> float:
    """Water level at which the body floats, m, from the level of its underside."""
    return underside_m + floating_head(layers, load_kgm2)


def safety(
    water_m: float, underside_m: float, layers: Sequence[Lying], load_kgm2: float = 0.0
) -> float | None:
    """Weight over uplift at a water level; None when the water does not reach the underside."""
    if water_m <= underside_m:
        return None
    return floating_head(layers, load_kgm2) / (water_m - underside_m)
