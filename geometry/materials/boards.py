"""Rigid foam boards: ASTM C578 types, and two European grades."""

from typing import Literal

from geometry.materials.kinds import Board
from geometry.sources import Source
from geometry.units import FOOT, INCH, to_unit

_C578 = Source("ASTM C578-10", clause="Table 1 minimums, read in a maker's bulletin")
_D6817 = Source("ASTM D6817", clause="stress at 1 % strain", sure="second-hand")
_MODULUS = Source("an extruded foam maker's design guide", clause="foundation modulus")
_SIZES = Source("board sizes of the trade; 3 and 4 in", sure="memory")
_EN13164 = Source("EN 13164", clause="CS(10)300, declared conductivity 0.035", sure="memory")
_EN13163 = Source("EN 13163", clause="CS(10)100, declared conductivity 0.036", sure="memory")

_R_IP = "hour*delta_degF*foot**2/Btu/inch"
_THICKNESSES = tuple(inches * INCH for inches in (1.0, 1.5, 2.0, 3.0, 4.0))
_METRIC = tuple(mm / 1000 for mm in (30, 40, 50, 60, 80, 100, 120))
_MODULUS_INCHES = (1.0, 1.5, 2.0, 2.5, 3.0, 4.0)
_FOAMS = {"eps": "EPS", "xps": "XPS"}


def _c578(
    foam: Literal["eps", "xps"],
    numeral: str,
    *,
    psi: float,
    pcf: float,
    r: float,
    perm: float,
    water: float,
    psi_1: float | None = None,
    pci: tuple[float, ...] = (),
) -> Board:
    """Build a C578 row from the table's units; `water` in percent by volume, `pci` by thickness."""
    extra = ((_D6817,) if psi_1 else ()) + ((_MODULUS,) if pci else ())
    return Board(
        key=f"{foam}-{numeral.lower()}",
        name=f"Rigid foam, {_FOAMS[foam]} type {numeral} ({psi:.0f} psi)",
        source=_C578,
        also=(*extra, _SIZES),
        strength_kpa=to_unit(psi, "psi", "kPa"),
        r_per_m=to_unit(r, _R_IP, "K*m/W"),
        density_kg_m3=to_unit(pcf, "lb/ft**3", "kg/m**3"),
        water_absorption=water / 100,
        permeability_perm_in=perm,
        width_m=4 * FOOT,
        length_m=8 * FOOT,
        thicknesses_m=_THICKNESSES,
        strain1_kpa=to_unit(psi_1, "psi", "kPa") if psi_1 else None,
        foundation_modulus=_modulus(pci),
    )


def _modulus(pci: tuple[float, ...]) -> tuple[tuple[float, float], ...]:
    if not pci:
        return ()
    metric = (to_unit(value, "lbf/inch**3", "N/m**3") for value in pci)
    return tuple(zip((t * INCH for t in _MODULUS_INCHES), metric, strict=True))


def _metric(
    key: str, name: str, source: Source, kpa: float, conductivity: float, size: tuple[float, float]
) -> Board:
    return Board(
        key=key,
        name=name,
        source=source,
        strength_kpa=kpa,
        r_per_m=1 / conductivity,
        density_kg_m3=None,
        water_absorption=None,
        permeability_perm_in=None,
        width_m=size[0],
        length_m=size[1],
        thicknesses_m=_METRIC,
    )


ROWS = (
    _c578("eps", "I", psi=10, pcf=0.90, r=3.6, perm=5.0, water=4.0, psi_1=3.6),
    _c578("eps", "VIII", psi=13, pcf=1.15, r=3.8, perm=3.5, water=3.0, psi_1=5.8),
    _c578("eps", "II", psi=15, pcf=1.35, r=4.0, perm=3.5, water=3.0, psi_1=7.3),
    _c578("eps", "IX", psi=25, pcf=1.80, r=4.2, perm=2.5, water=2.0, psi_1=10.9),
    _c578("eps", "XIV", psi=40, pcf=2.40, r=4.2, perm=2.5, water=2.0),
    _c578("eps", "XV", psi=60, pcf=2.85, r=4.3, perm=2.5, water=2.0),
    _c578(
        "xps", "X", psi=15, pcf=1.30, r=5.0, perm=1.5, water=0.3, pci=(590, 550, 500, 450, 400, 300)
    ),
    _c578(
        "xps",
        "IV",
        psi=25,
        pcf=1.55,
        r=5.0,
        perm=1.5,
        water=0.3,
        pci=(750, 710, 675, 595, 565, 510),
    ),
    _c578(
        "xps",
        "VI",
        psi=40,
        pcf=1.80,
        r=5.0,
        perm=1.1,
        water=0.3,
        pci=(1100, 1000, 900, 780, 680, 650),
    ),
    _c578(
        "xps",
        "VII",
        psi=60,
        pcf=2.20,
        r=5.0,
        perm=1.1,
        water=0.3,
        pci=(1520, 1400, 1275, 1150, 1040, 790),
    ),
    _c578("xps", "V", psi=100, pcf=3.00, r=5.0, perm=1.1, water=0.3),
    _metric("xps-300", "Rigid foam, XPS 300 kPa", _EN13164, 300.0, 0.035, (0.6, 1.25)),
    _metric("eps-100", "Rigid foam, EPS 100 kPa", _EN13163, 100.0, 0.036, (0.5, 1.0)),
)
