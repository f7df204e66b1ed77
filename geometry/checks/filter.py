"""Fabric against soil, stone against the pipe's holes, sand against washed stone."""

from collections.abc import Iterator

from geometry.checks.finding import Finding, Severity
from geometry.formulas.fabric_filter import CLOGGING_NOTE, FHWA, M288
from geometry.formulas.granular_filter import FAA, FEMA
from geometry.layout.lay import Layout
from geometry.materials.catalogue import MATERIALS, SOILS
from geometry.sources import Source
from geometry.units import INCH
from geometry.water.filter import CurveSizes, SoilFabric, Verdict, soil_fabrics
from geometry.water.graded import SoilGrading, soil_grading
from geometry.water.grains import FineOnCoarse, HoleFit, drain_hole_fits, fine_on_coarse

_SEVERITY: dict[Verdict, Severity] = {
    "suits": "fine", "depends": "look", "too open": "stop", "too tight": "stop", "unknown": "look",
}  # fmt: skip
_MEANS: dict[Verdict, str] = {
    "suits": "it suits by these rules",
    "depends": "it suits only a part of this group's soils",
    "too open": "it is too open: the soil can wash through it into the stone",
    "too tight": "it is too tight: water stands against it, or silt closes it",
    "unknown": "whether it suits cannot be said",
}
_DO: dict[Verdict, str] = {
    "suits": "Use it.",
    "depends": "Have the soil's grading tested, or choose a fabric that suits the whole group.",
    "too open": "Choose a fabric of smaller openings.",
    "too tight": "Choose a fabric that passes more water, or of larger openings.",
    "unknown": "Find out first.",
}
_WOVEN = "It is woven: few openings, soon closed by silt; nonwoven is the usual choice."
_GROUPS = Source("ASTM D2487", clause="share passing No. 200", sure="memory")
_RETENTION = Source(FAA.title, FAA.edition, "p. 379 (D15 over d85, at most 5)", FAA.sure)


def drain_filter_findings(layout: Layout) -> Iterator[Finding]:
    """Yield the findings on fabric and stone of the drain in view."""
    for row in soil_fabrics(layout):
        yield fabric_finding(row)
    fits = drain_hole_fits(layout)
    if fits:
        yield holes_finding(fits)


def filter_findings(layout: Layout) -> Iterator[Finding]:
    """Yield the findings on the soil's grading, and on finer layers over coarser ones."""
    grading = soil_grading(layout.design)
    if grading is not None and grading.group_fines is not None:
        yield grading_finding(grading, grading.group_fines)
    for rows in fine_on_coarse(layout):
        yield sand_finding(rows)


def grading_finding(grading: SoilGrading, means: tuple[float, float]) -> Finding:
    """Return whether the soil's group, which means so many fines, and its grading go together."""
    group, fits = SOILS[grading.group].name, grading.fits_group
    fines, named = (_span([s * 100 for s in pair], "%") for pair in (grading.fines, means))
    return Finding(
        "grading-fits-group",
        "fine" if fits else "look",
        "soil, grading",
        f"{fines} of the sample passes No. 200; the group named, {group}, means {named}.",
        "grading and group of one soil",
        _GROUPS,
        "Keep it."
        if fits
        else "One of the two is of another soil: the wrap goes by the grading, the wall's push "
        "and the ground's water by the group. Name the group anew, or see where the sample is "
        "from.",
    )


def fabric_finding(row: SoilFabric) -> Finding:
    """Return whether the drain's fabric suits a soil; a woven one is never passed silently."""
    severity = _SEVERITY[row.verdict]
    if row.woven and severity == "fine":
        severity = "look"
    said = [_fabric_words(row), _MEANS[row.verdict]]
    ask = f" Ask for: {'; '.join(row.ask)}." if row.ask else ""
    woven = f" {_WOVEN}" if row.woven else ""
    return Finding(
        "fabric-suits-soil",
        severity,
        f"drain wrap, {row.place}",
        f"{'; '.join(said)}.{woven}",
        "openings that hold the soil, flow no less than the soil's class asks",
        FHWA if row.curve else M288,
        f"{_DO[row.verdict]}{ask} {CLOGGING_NOTE}",
    )


def _fabric_words(row: SoilFabric) -> str:
    name, soil = MATERIALS[row.fabric].name, MATERIALS[row.soil].name
    has = f"{name}: opening {_mm(row.opening_m)}, permittivity {row.permittivity_per_s:.3g} per s"
    if row.fines is None or row.most_opening_m is None or row.least_permittivity is None:
        return f"{has}. {soil}"
    passing = _span([share * 100 for share in row.fines], "%")
    most = _span([size * 1000 for size in row.most_opening_m], "mm")
    least = _span(row.least_permittivity, "per s")
    limits = f"at most {most} and at least {least} asked"
    return f"{has}. {soil}, {passing} passing No. 200: {limits}{_curve_words(row.curve)}"


def _curve_words(sizes: CurveSizes | None) -> str:
    if sizes is None:
        return ""
    words = f"; by its grading (D85 {_mm(sizes.d85_m)}) at most {_mm(sizes.most_opening_m)}"
    if sizes.least_opening_m is None:
        return words
    return f"{words}, at least {_mm(sizes.least_opening_m)} lest it clog"


def _span(values: tuple[float, ...] | list[float], unit: str) -> str:
    low, high = (f"{value:.3g}" for value in (min(values), max(values)))
    return f"{low} {unit}" if low == high else f"{low} to {high} {unit}"


def _mm(metres: float) -> str:
    return f"{metres * 1000:.3g} mm"


def holes_finding(fits: tuple[HoleFit, ...]) -> Finding:
    """Return whether the stone stays out of the pipe's holes, at both edges of its grading."""
    judged = [fit for fit in fits if fit.judged]
    bad, known = [fit for fit in judged if fit.fails], all(fit.known for fit in judged)
    said = "; ".join(_hole_words(fit) for fit in judged)
    hole = fits[0].hole_m
    do = (
        "Lay it so."
        if known
        else "Ask the supplier for the grading, and write it down ([[grading]])."
    )
    if bad:
        do = (
            "Small stone can pass or plug them: drill smaller holes, or ask the supplier for a "
            "coarser grading and write it down ([[grading]])."
        )
    return Finding(
        "holes-hold-stone",
        "look" if bad or not known else "fine",
        "drain, holes",
        f"{_trouble(bad)}Stone over hole of {hole / INCH:.3g} in ({_mm(hole)}): {said}. The rules "
        "do not agree; D15 is asked of critical drains alone.",
        "D85 and D50 of the stone not smaller than the hole, over its whole grading",
        FEMA if any(fit.share == 0.5 for fit in bad) else FAA,
        do,
    )


def _trouble(bad: list[HoleFit]) -> str:
    """Say in a sentence how much of the stone is smaller than the hole, where a rule is broken."""
    if not bad:
        return ""
    least = min(fit.share for fit in bad)
    if all(fit.fine_edge == fit.coarse_edge for fit in bad):
        return f"{least:.0%} or more of the stone, as delivered, is smaller than the hole. "
    edge = "the fine edge" if all(_holds(fit.coarse_edge, fit) for fit in bad) else "either edge"
    return f"At {edge} of its grading {least:.0%} or more of the stone is smaller than the hole. "


def _holds(ratio: float | None, fit: HoleFit) -> bool:
    return ratio is None or ratio >= fit.least


def _hole_words(fit: HoleFit) -> str:
    fine, coarse = (
        "not known" if ratio is None else f"{ratio:.2f}"
        for ratio in (fit.fine_edge, fit.coarse_edge)
    )
    fails = " (too small)" if fit.fails else ""
    if fit.known and fit.fine_edge == fit.coarse_edge:
        return f"D{fit.share * 100:.0f} {fine} as delivered{fails}"
    return f"D{fit.share * 100:.0f} {fine} fine edge, {coarse} coarse edge{fails}"


def sand_finding(row: FineOnCoarse) -> Finding:
    """Return whether sand straight on stone stays where it is."""
    upper, lower = MATERIALS[row.upper].name, MATERIALS[row.lower].name
    ratios = [r for r in (row.worst, row.best) if r is not None]
    holds = len(ratios) == 2 and max(ratios) <= row.limit
    if len(ratios) == 2 and row.best == row.worst:
        said = f"{row.best:.1f} as delivered"
    elif len(ratios) == 2:
        said = f"{row.best:.1f} at best, {row.worst:.1f} at worst"
    else:
        said = f"{ratios[0]:.1f} as far as the gradings are known" if ratios else "not known"
    return Finding(
        "sand-on-stone",
        "fine" if holds else "look",
        f"{row.area}, {lower} under {upper}",
        f"{_sinks(row, holds)}D15 of the lower over D85 of the upper: {said}.",
        f"at most {row.limit:.0f}, or the upper sinks into the lower's voids",
        _RETENTION,
        "Lay it so."
        if holds
        else "Lay fabric or a choker of finer stone (No. 8, No. 89) between, or order more sand "
        "and roll it in: the sand that sinks must be bought, and running water moves more.",
    )


def _sinks(row: FineOnCoarse, holds: bool) -> str:
    """Say in a sentence what happens, where the rule is broken or cannot be held against both."""
    if holds or row.worst is None:
        return ""
    upper, lower = MATERIALS[row.upper].name, MATERIALS[row.lower].name
    if row.worst <= row.limit:
        return ""
    return f"{lower} is no filter for {upper}{_where(row)}: the upper sinks into its voids. "


def _where(row: FineOnCoarse) -> str:
    return "" if row.best is None or row.best > row.limit else " at its coarse edge"
