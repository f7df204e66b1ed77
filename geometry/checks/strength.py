"""Does the drain's pipe keep its shape under the fill, and under a wheel."""

from collections.abc import Iterator

from geometry.checks.finding import Finding, Severity
from geometry.formulas.buried_pipe import USUAL_LIMIT
from geometry.layout.lay import Layout
from geometry.materials.catalogue import MATERIALS
from geometry.materials.reaction import ACCURACY
from geometry.sources import Source
from geometry.units import System, show_length
from geometry.water.loadwords import (
    show_force,
    show_modulus,
    show_pressure,
    show_unit_weight,
)
from geometry.water.strength import (
    CONTACT_SOURCE,
    Buried,
    DrainStrength,
    PipeStrength,
    pipe_strength,
)

_LIMIT = Source("Moser, Buried Pipe Design", clause="p. 115 (5 %); modified Iowa deflection")
_OWN_LIMIT = Source("the design file", clause="loads.deflection_limit")


def strength_findings(layout: Layout) -> Iterator[Finding]:
    """Yield whether the pipe flattens too much."""
    shown = pipe_strength(layout)
    if shown is not None:
        yield flattening_finding(shown, layout.design.project.units)


def flattening_finding(shown: DrainStrength, system: System) -> Finding:
    """Return how far the chosen pipe flattens at its worst place, and what others would do."""
    mine, *others = shown.pipes
    at = max(mine.places, key=lambda place: place.with_wheel)
    return Finding(
        "pipe-keeps-shape",
        _severity(mine, shown),
        f"drain pipe, {at.place} place",
        f"{MATERIALS[mine.pipe].name} under {show_length(round(at.cover_m, 3), system)}: flattens "
        f"{at.flattened:.1%}{_with_wheel(at, shown, system)}. {_counted(shown, system)} "
        f"{_side_by_side(others)}",
        f"at most {shown.limit * 100:.3g} % of its diameter",
        _LIMIT if shown.limit == USUAL_LIMIT else _OWN_LIMIT,
        _advice(at, mine, shown, system),
    )


def _with_wheel(at: Buried, shown: DrainStrength, system: System) -> str:
    if not shown.wheel_n:
        return ""
    wheel = show_force(shown.wheel_n, system)
    return f", with a wheel of {wheel} above {at.with_wheel:.1%}"


def _severity(mine: PipeStrength, shown: DrainStrength) -> Severity:
    if mine.worst > shown.limit:
        return "stop"
    return "look" if mine.worst_with_wheel > shown.limit else "fine"


def _counted(shown: DrainStrength, system: System) -> str:
    """What was counted: stone, how it lies, and the fill."""
    assumed = ", assumed" if shown.fill_assumed else ""
    wheel = " No wheel: none is given (loads.wheel)."
    if shown.wheel_n:
        wheel = f" The wheel presses as that of {CONTACT_SOURCE}."
    even = f"; {show_pressure(shown.surcharge_pa, system)} on it" if shown.surcharge_pa else ""
    return (
        f"Counted: {shown.compaction} {MATERIALS[shown.stone].name} ({shown.embedment} of ASTM "
        f"D2321, from memory), E' {show_modulus(shown.soil_modulus_pa, system)}; fill "
        f"{show_unit_weight(shown.fill_weight_n_m3, system)}{assumed}{even}. Such figures stray "
        f"{ACCURACY[shown.compaction]:.1%} of the diameter either way.{wheel}"
    )


def _side_by_side(others: list[PipeStrength]) -> str:
    rows = [f"{MATERIALS[p.pipe].name} {p.worst_with_wheel:.1%}" for p in others]
    return f"Others of its size: {'; '.join(rows)}." if rows else ""


def _advice(at: Buried, mine: PipeStrength, shown: DrainStrength, system: System) -> str:
    if mine.worst_with_wheel <= shown.limit:
        return "Lay it so, with stone worked in under its sides."
    needed = show_modulus(at.modulus_needed_pa, system)
    wheels = "; or keep wheels off" if shown.wheel_n else ""
    return (
        f"The stone beside it must hold with E' {needed} at least: clean crushed stone, or tamp "
        f"it beside the pipe; or a stiffer pipe{wheels}."
    )
