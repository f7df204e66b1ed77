"""Soil groups of the Unified Soil Classification, with presumptive figures."""

from math import asin, degrees

from geometry.materials.kinds import DrainageGroup, Soil
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
_OPEN = Source("no soil named: every figure is left open until the ground is seen", sure="practice")

_GROUP_SOURCES = (_RANKINE, _BEARING, _LATERAL, _DRAINAGE, _SEEPAGE, _FINES, _SWELL)
_CLEAN, _DIRTY, _FINE = (0.0, 0.05), (0.12, 0.50), (0.50, 1.0)

# Permeability of compacted soil, cm/s.
_OPEN_GRAVEL, _OPEN_SAND = (1e-2, None), (1e-3, None)
_SILTY, _CLAYEY, _FAT_SILT = (1e-6, 1e-3), (1e-8, 1e-6), (1e-6, 1e-4)


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
