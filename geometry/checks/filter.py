"""Fabric against soil, stone against the pipe's holes, sand against washed stone."""

from collections.abc import Iterator

from geometry.checks.finding import Finding, Severity
from geometry.formulas.fabric_filter import CLOGGING_NOTE, FHWA, M288
from geometry.formulas.granular_filter import FAA, FEMA
from geometry.layout.lay import Layout
from geometry.materials.catalogue import MATERIALS
from geometry.sources import Source
from geometry.units import INCH
from geometry.water.filter import SoilFabric, Verdict, soil_fabrics
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
_RETENTION = Source(FAA.title, FAA.edition, "p. 379 (D15 over d85, at most 5)", FAA.sure)


def filter_findings(layout: Layout) -> Iterator[Finding]:
    """Yield the findings on what holds soil back and lets water through."""
    for row in soil_fabrics(layout):
        yield fabric_finding(row)
    fits = drain_hole_fits(layout)
    if fits:
        yield holes_finding(fits)
    for rows in fine_on_coarse(layout):
        yield sand_finding(rows)


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
    curve = f", at most {_mm(row.curve.most_opening_m)} by its grading" if row.curve else ""
    return f"{has}. {soil}, {passing} passing No. 200: {limits}{curve}"


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
    do = "Lay it so." if known else "Ask the supplier for the grading."
    if bad:
        do = (
            "Stone of the finer edge can pass or plug the holes: smaller holes, or ask the "
            "supplier for a grading nearer the coarse edge."
        )
    return Finding(
        "holes-hold-stone",
        "look" if bad or not known else "fine",
        "drain, holes",
        f"Stone over hole of {hole / INCH:.3g} in ({_mm(hole)}): {said}. The rules do not agree; "
        "D15 is asked of critical drains alone.",
        "D85 and D50 of the stone not smaller than the hole, over its whole grading",
        FEMA if any(fit.share == 0.5 for fit in bad) else FAA,
        do,
    )


def _hole_words(fit: HoleFit) -> str:
    fine, coarse = (
        "not known" if ratio is None else f"{ratio:.2f}"
        for ratio in (fit.fine_edge, fit.coarse_edge)
    )
    fails = " (too small)" if fit.fails else ""
    return f"D{fit.share * 100:.0f} {fine} fine edge, {coarse} coarse edge{fails}"


def sand_finding(row: FineOnCoarse) -> Finding:
    """Return whether sand straight on stone stays where it is."""
    upper, lower = MATERIALS[row.upper].name, MATERIALS[row.lower].name
    ratios = [r for r in (row.worst, row.best) if r is not None]
    holds = len(ratios) == 2 and max(ratios) <= row.limit
    if len(ratios) == 2:
        said = f"{row.best:.1f} at best, {row.worst:.1f} at worst"
    else:
        said = f"{ratios[0]:.1f} as far as the gradings are known" if ratios else "not known"
    return Finding(
        "sand-on-stone",
        "fine" if holds else "look",
        f"{row.area}, {lower} under {upper}",
        f"D15 of the lower over D85 of the upper: {said}.",
        f"at most {row.limit:.0f}, or the upper sinks into the lower's voids",
        _RETENTION,
        "Lay it so."
        if holds
        else "Lay fabric or a choker of finer stone (No. 8, No. 89) between, or order more sand "
        "and roll it in: the sand that sinks must be bought, and running water moves more.",
    )
