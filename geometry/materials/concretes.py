"""Concretes: density, and specified strength where the key states one."""

from geometry.materials.kinds import Concrete
from geometry.sources import Source
from geometry.units import to_unit

_NORMAL_WEIGHT = Source("normal-weight concrete, 150 pcf", clause="a city's standard notes")
_IRC_R402 = Source("IRC", clause="Table R402.2 (strength)", sure="second-hand")
_EN206 = Source("EN 206", clause="strength class C25/30, normal weight", sure="memory")
_DENSITY = to_unit(150.0, "lb/ft**3", "kg/m**3")
_HEAT = Source("ASHRAE handbook, concrete of 150 pcf", clause="R 0.08 per inch", sure="memory")
_R_PER_M = to_unit(0.08, "hour*delta_degF*foot**2/Btu/inch", "K*m/W")


def _psi(strength: int) -> Concrete:
    return Concrete(
        key=f"concrete-{strength}",
        name=f"Concrete, {strength:,} psi",
        source=_NORMAL_WEIGHT,
        also=(_IRC_R402, _HEAT),
        density_kg_m3=_DENSITY,
        strength_kpa=to_unit(strength, "psi", "kPa"),
        r_per_m=_R_PER_M,
    )


ROWS = (
    Concrete(
        key="concrete",
        name="Concrete",
        source=_NORMAL_WEIGHT,
        also=(_HEAT,),
        density_kg_m3=_DENSITY,
        strength_kpa=None,
        r_per_m=_R_PER_M,
    ),
    _psi(2500),
    _psi(3000),
    _psi(3500),
    Concrete(
        key="concrete-c25",
        name="Concrete, C25/30",
        source=_EN206,
        also=(_HEAT,),
        density_kg_m3=2400.0,
        strength_kpa=25_000.0,
        r_per_m=_R_PER_M,
    ),
)
