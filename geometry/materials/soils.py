"""Soil groups of the Unified Soil Classification, with presumptive figures."""

from math import asin, degrees

from geometry.materials.kinds import DrainageGroup, ReactionClass, Soil
from geometry.sources import Source
from geometry.units import to_unit

_HUD = Source("HUD Residential Structural Design Guide", "2000", "soil load table (density, Ka)")
_NO_HUD = Source("ASTM D2487", clause="group name; no density or Ka in the sources", sure="memory")
_RANKINE = Source("Rankine", clause="friction angle from Ka", sure="computed")
_BEARING = Source("IBC", "2012", "Table 1806.2 (bearing)")
_LATERAL = Source("IBC", clause="Table 1610.1 (lateral load)", sure="memory")
_DRAINAGE = Source("IRC", clause="Table R405.1 (drainage group)", sure="memory")
_SEEPAGE = Source("NRCS NEH 631 ch. 3", clause="Figure 3-10 (permeability)")
_FINES = Source("ASTM D2487", clause="share passing No. 200", sure="memory")
_SWELL = Source("army earthmoving manuals", clause="bank to loose (swell)", sure="memory")
_LOOSE_TO_DENSE = Source(
    "USACE EM 1110-2-2504", clause="Table 3-1 (after Teng; friction, loose to dense)"
)
_COMPACTED = Source(
    "NAVFAC DM-7.2", "1982", "Table 1 (friction and dry weight, compacted)", sure="memory"
)
_SATURATED = Source("dry weight and grains of specific gravity 2.65 (saturated)", sure="computed")
_WALL_TABLE = Source("IRC", clause="Tables R404.1.2 (design lateral soil load)", sure="memory")
_HEAT = Source("ISO 13370", clause="clay or silt 1.5 W/mK, sand or gravel 2.0", sure="memory")
_REACTION = Source("ASTM D2487", clause="group into the classes of Howard's table", sure="memory")
_OPEN = Source("no soil named: every figure is left open until the ground is seen", sure="practice")

_GROUP_SOURCES = (
    _RANKINE,
    _BEARING,
    _LATERAL,
    _DRAINAGE,
    _SEEPAGE,
    _FINES,
    _SWELL,
    _LOOSE_TO_DENSE,
    _COMPACTED,
    _SATURATED,
    _WALL_TABLE,
    _HEAT,
    _REACTION,
)
_CLEAN, _DIRTY, _FINE = (0.0, 0.05), (0.12, 0.50), (0.50, 1.0)

# Permeability of compacted soil, cm/s.
_OPEN_GRAVEL, _OPEN_SAND = (1e-2, None), (1e-3, None)
_SILTY, _CLAYEY, _FAT_SILT = (1e-6, 1e-3), (1e-8, 1e-6), (1e-6, 1e-4)

# Compacted soil: friction in degrees, dry weight in pcf, low and high.
_DENSE: dict[str, tuple[float, float, float]] = {
    "GW": (38, 125, 135),
    "GP": (37, 115, 125),
    "GM": (34, 120, 135),
    "GC": (31, 115, 130),
    "SW": (38, 110, 130),
    "SP": (37, 100, 120),
    "SM": (34, 110, 125),
    "SC": (31, 105, 125),
    "ML": (32, 95, 120),
    "CL": (28, 95, 120),
    "MH": (25, 70, 95),
    "CH": (19, 75, 105),
}
_WALL_PCF = {
    **dict.fromkeys(("GW", "GP", "SW", "SP"), 30.0),
    **dict.fromkeys(("GM", "GC", "SM", "ML"), 45.0),
    **dict.fromkeys(("SC", "CL"), 60.0),
}
_BESIDE_PIPE: dict[str, ReactionClass] = {
    **dict.fromkeys(("GW", "GP", "SW", "SP"), "clean coarse"),
    **dict.fromkeys(("GM", "GC", "SM", "SC"), "coarse with fines"),
    **dict.fromkeys(("ML", "CL"), "lean fine"),
    **dict.fromkeys(("MH", "CH", "OL"), "none"),
}
# For heat, W/mK: what is half sand or coarser, and what is finer.
_COARSE_HEAT, _FINE_HEAT = 2.0, 1.5
_CLEAN_GROUPS = ("GW", "GP", "SW", "SP")
_GRAIN_GRAVITY, _WATER_KG_M3 = 2.65, 1000.0


def rankine_angle(active_coefficient: float) -> float:
    """Return the friction angle in degrees whose Rankine Ka is `active_coefficient`."""
    return degrees(asin((1 - active_coefficient) / (1 + active_coefficient)))


def _load(psf_per_foot: float | None) -> float | None:
    return None if psf_per_foot is None else to_unit(psf_per_foot, "lbf/ft**3", "N/m**3")


def _seepage(cm_s: tuple[float, float | None] | None) -> tuple[float, float | None] | None:
    if cm_s is None:
        return None
    low, high = cm_s
    return to_unit(low, "cm/s", "m/s"), None if high is None else to_unit(high, "cm/s", "m/s")


def _dry(group: str) -> tuple[float, float] | None:
    if group not in _DENSE:
        return None
    _, low, high = _DENSE[group]
    return to_unit(low, "lb/ft**3", "kg/m**3"), to_unit(high, "lb/ft**3", "kg/m**3")


def _saturated(group: str) -> tuple[float, float] | None:
    """Density of compacted soil whose voids are full of water."""
    dry = _dry(group)
    if dry is None:
        return None
    share = 1 - 1 / _GRAIN_GRAVITY
    return dry[0] * share + _WATER_KG_M3, dry[1] * share + _WATER_KG_M3


def _soil(
    group: str,
    name: str,
    drainage: DrainageGroup,
    hud: tuple[float, float] | None,
    lateral: tuple[float, float] | None,
    bearing_psf: float | None,
    seepage: tuple[float, float | None] | None,
    fines: tuple[float, float],
    swell: float,
) -> Soil:
    """Build a row from the tables' units; `hud` is (pcf, Ka), `lateral` psf/ft active, at rest."""
    pcf, ka = hud or (None, None)
    active, at_rest = lateral or (None, None)
    return Soil(
        key=group,
        name=f"{name} ({group})",
        group=group,
        source=_HUD if hud else _NO_HUD,
        also=_GROUP_SOURCES,
        drainage_group=drainage,
        density_kg_m3=None if pcf is None else to_unit(pcf, "lb/ft**3", "kg/m**3"),
        active_coefficient=ka,
        friction_angle_deg=None if ka is None else rankine_angle(ka),
        active_load_n_m3=_load(active),
        at_rest_load_n_m3=_load(at_rest),
        bearing_pa=None if bearing_psf is None else to_unit(bearing_psf, "lbf/ft**2", "Pa"),
        permeability_m_s=_seepage(seepage),
        fines=fines,
        swell=swell,
        friction_range_deg=(28.0, 41.0) if group in _CLEAN_GROUPS else None,
        compacted_friction_deg=_DENSE[group][0] if group in _DENSE else None,
        dry_density_kg_m3=_dry(group),
        saturated_density_kg_m3=_saturated(group),
        wall_table_load_n_m3=_load(_WALL_PCF.get(group)),
        conductivity_w_mk=_COARSE_HEAT if group[0] in "GS" else _FINE_HEAT,
        reaction_class=_BESIDE_PIPE[group],
    )


_A, _B, _C, _D = (115.0, 0.26), (100.0, 0.35), (100.0, 0.45), (100.0, 0.60)

ROWS = (
    _soil("GW", "Well-graded gravel", "I", _A, (30, 60), 3000, _OPEN_GRAVEL, _CLEAN, 0.15),
    _soil("GP", "Poorly graded gravel", "I", _A, (30, 60), 3000, _OPEN_GRAVEL, _CLEAN, 0.15),
    _soil("GM", "Silty gravel", "I", _A, (40, 60), 2000, _SILTY, _DIRTY, 0.25),
    _soil("GC", "Clayey gravel", "II", _B, (45, 60), 2000, _CLAYEY, _DIRTY, 0.25),
    _soil("SW", "Well-graded sand", "I", _A, (30, 60), 2000, _OPEN_SAND, _CLEAN, 0.11),
    _soil("SP", "Poorly graded sand", "I", _A, (30, 60), 2000, _OPEN_SAND, _CLEAN, 0.11),
    _soil("SM", "Silty sand", "I", _B, (45, 60), 2000, _SILTY, _DIRTY, 0.25),
    _soil("SC", "Clayey sand", "II", _C, (60, 100), 2000, _CLAYEY, _DIRTY, 0.25),
    _soil("ML", "Silt", "II", _C, (45, 100), 1500, _SILTY, _FINE, 0.35),
    _soil("CL", "Lean clay", "II", _D, (60, 100), 1500, _CLAYEY, _FINE, 0.43),
    _soil("MH", "Elastic silt", "III", _D, None, 1500, _FAT_SILT, _FINE, 0.35),
    _soil("CH", "Fat clay", "III", _D, None, 1500, None, _FINE, 0.43),
    _soil("OL", "Organic silt or clay", "IV", None, None, None, None, _FINE, 0.25),
    Soil(key="unknown", name="Soil not yet known", group=None, source=_OPEN),
)
