"""Does the drain's fabric suit the soil: its openings and its flow, as far as the soil is known.

Sizes in metres, permittivity in 1/s. Without a grading curve of the site's soil only the rules by
fines speak, over the whole band of the soil's group; with one, those by grain size do too.
"""

from dataclasses import dataclass
from typing import Literal

from geometry.formulas.fabric_filter import fhwa_opening, least_opening, m288_limits
from geometry.formulas.gradation import Curve, uniformity
from geometry.layout.lay import Layout
from geometry.materials.catalogue import FABRICS, SOILS
from geometry.materials.kinds import Fabric, Soil
from geometry.water.backfill import ground_soil
from geometry.water.graded import fines_of, size_or_none

Verdict = Literal["suits", "depends", "too open", "too tight", "unknown"]

ASK_GROUP = "the soil's group (ASTM D2487) from a soil report or a hand test of the dug soil"
ASK_CURVE = "a grading curve of the soil against the drain (ASTM D6913, D7928)"
ASK_FINES = "the share that passes No. 200 (ASTM D1140): the grading does not reach it"
ASK_COARSER = "larger sieves: the grading does not reach 85 % passing"


@dataclass(frozen=True)
class CurveSizes:
    """What a grading curve says: d85, d15, and the openings that follow; None where it is short.

    most_opening_m: FHWA's largest. least_opening_m: the smallest that does not clog.
    """

    d85_m: float
    d15_m: float | None
    most_opening_m: float
    least_opening_m: float | None


@dataclass(frozen=True)
class SoilFabric:
    """A fabric against a soil.

    place: "ground" or "backfill". fines: band of the share passing No. 200, None unknown.
    most_opening_m: AASHTO M 288 limits (strict, lenient) over that band; least_permittivity
    likewise (lenient, strict). permeability_ratio: the fabric's over the most the soil may have,
    None where the soil's has no ceiling. ask: what to find out for a surer answer.
    """

    place: str
    soil: str
    fabric: str
    woven: bool
    opening_m: float
    permittivity_per_s: float
    fines: tuple[float, float] | None
    most_opening_m: tuple[float, float] | None
    least_permittivity: tuple[float, float] | None
    permeability_ratio: float | None
    curve: CurveSizes | None
    verdict: Verdict
    ask: tuple[str, ...]


def soil_fabrics(layout: Layout) -> tuple[SoilFabric, ...]:
    """Return the drain's fabric against the ground, and against backfill of another soil.

    The ground goes by its own grading where the design gives one. Empty without a drain.
    """
    if layout.drain is None:
        return ()
    fabric, design = FABRICS[layout.drain.drain.wrap.material], layout.design
    ground, curve = ground_soil(design), design.soil.grading or None
    rows = [fabric_on(ground, fabric, curve, "ground")]
    other = SOILS.get(design.backfill.material)
    if other is not None and other is not ground:
        rows.append(fabric_on(other, fabric, None, "backfill"))
    return tuple(rows)


def fabric_on(
    soil: Soil, fabric: Fabric, curve: Curve | None = None, place: str = "ground"
) -> SoilFabric:
    """Return one fabric against one soil. Raises ValueError for a curve that is none."""
    fines = soil.fines if curve is None else fines_of(curve)
    sizes = None if curve is None else _sizes(curve, fabric.woven)
    openings = flows = None
    if fines is not None:
        limits = [m288_limits(share) for share in fines]
        openings = (limits[1].opening_m, limits[0].opening_m)
        flows = (limits[1].permittivity_per_s, limits[0].permittivity_per_s)
    ratio = _permeability(soil, fabric)
    return SoilFabric(
        place, soil.key, fabric.key, fabric.woven, fabric.opening_m, fabric.permittivity_per_s,
        fines, openings, flows, ratio, sizes,
        _verdict(fabric, openings, flows, ratio, sizes), _ask(fines, curve, sizes),
    )  # fmt: skip


def _sizes(curve: Curve, woven: bool) -> CurveSizes | None:
    """Read the curve; one too short for d85 says nothing, one without d10 counts as uniform."""
    d85, d15, spread = size_or_none(curve, 0.85), size_or_none(curve, 0.15), _spread(curve)
    if d85 is None:
        return None
    most = min(fhwa_opening(d85, share, spread, woven=woven) for share in fines_of(curve))
    return CurveSizes(d85, d15, most, None if d15 is None else least_opening(d15, spread))


def _spread(curve: Curve) -> float:
    try:
        return uniformity(curve)
    except ValueError:
        return 1.0


def _permeability(soil: Soil, fabric: Fabric) -> float | None:
    most = soil.permeability_m_s[1] if soil.permeability_m_s else None
    return None if most is None else fabric.permeability_m_s / most


def _ask(
    fines: tuple[float, float] | None, curve: Curve | None, sizes: CurveSizes | None
) -> tuple[str, ...]:
    if curve is None or fines is None:
        return (ASK_CURVE,) if fines is not None else (ASK_GROUP, ASK_CURVE)
    open_ends = {ASK_FINES: fines[0] != fines[1], ASK_COARSER: sizes is None}
    return tuple(words for words, lacking in open_ends.items() if lacking)


def _verdict(
    fabric: Fabric,
    openings: tuple[float, float] | None,
    flows: tuple[float, float] | None,
    ratio: float | None,
    sizes: CurveSizes | None,
) -> Verdict:
    if openings is None or flows is None:
        return "unknown"
    if _too_open(fabric.opening_m, openings[1], sizes):
        return "too open"
    if _too_tight(fabric, flows[0], ratio, sizes):
        return "too tight"
    sure = fabric.opening_m <= openings[0] and fabric.permittivity_per_s >= flows[1]
    return "suits" if sure else "depends"


def _too_open(opening: float, most: float, sizes: CurveSizes | None) -> bool:
    return opening > most or (sizes is not None and opening > sizes.most_opening_m)


def _too_tight(
    fabric: Fabric, least_flow: float, ratio: float | None, sizes: CurveSizes | None
) -> bool:
    clogs = (
        sizes is not None
        and sizes.least_opening_m is not None
        and fabric.opening_m < sizes.least_opening_m
    )
    return clogs or fabric.permittivity_per_s < least_flow or (ratio is not None and ratio < 1)
