"""Does the foam meet top of footing, and what does it mean for the slab."""

from dataclasses import dataclass
from typing import Literal

from geometry.checks.cold import ColdConcrete
from geometry.checks.finding import Finding, Severity
from geometry.layout.areas import AreaLayout
from geometry.rules.limit import MET_WITHIN_M
from geometry.sources import PRACTICE
from geometry.units import System, show_area, show_length, show_level

Meeting = Literal[
    "over footing", "stopped at footing", "between", "above footing", "below footing", "no foam"
]


@dataclass(frozen=True)
class FoamVerdict:
    """How one area's foam meets its top of footing; levels against the project's TOF, metres.

    gap_m: from TOF up to the foam's bottom (over, between, above) or to its top (stopped, below);
    ledge_m2: slab on the footing's inner ledge.
    """

    area: str
    meeting: Meeting
    foam_bottom_m: float | None
    foam_top_m: float | None
    gap_m: float
    ledge_m2: float
    cold_share: float


def foam_verdict(area: AreaLayout, cold: ColdConcrete) -> FoamVerdict:
    """Return the verdict on one area's foam."""
    levels = area.stack.levels
    places = [n for n, layer in enumerate(area.floor.layers) if layer.role == "insulation"]
    ledge = cold.of("slab on footing")
    if not places:
        return FoamVerdict(area.name, "no foam", None, None, 0.0, ledge, cold.share)
    bottom, top = levels[places[0]], levels[places[-1] + 1]
    meeting, gap = _meeting(bottom - area.tof, top - area.tof)
    return FoamVerdict(area.name, meeting, bottom, top, gap, ledge, cold.share)


def _meeting(bottom: float, top: float) -> tuple[Meeting, float]:
    if abs(bottom) <= MET_WITHIN_M:
        return "over footing", bottom
    if abs(top) <= MET_WITHIN_M:
        return "stopped at footing", top
    if bottom > 0:
        return "above footing", bottom
    return ("below footing", top) if top < 0 else ("between", bottom)


_SEVERITY: dict[Meeting, Severity] = {
    "over footing": "fine", "stopped at footing": "look", "between": "stop",
    "above footing": "look", "below footing": "look", "no foam": "look",
}  # fmt: skip

# What each meeting means, and what to do; {gap} and {ledge} are filled in.
_WORDS: dict[Meeting, tuple[str, str]] = {
    "over footing": (
        "its bottom meets TOF and it runs over the footing to the wall",
        "Lay it so.",
    ),
    "stopped at footing": (
        "its top meets TOF; the slab sits on the footing's inner ledge, {ledge} of cold ledge",
        "Accept the cold ledge, or raise the foam over the footing; "
        "every level above moves up by its thickness.",
    ),
    "between": (
        "TOF cuts it {gap} above its bottom; it cannot be laid flat over the footing",
        "Raise the floor by {gap} so that the foam's bottom meets TOF, "
        "or lower it until its top does.",
    ),
    "above footing": (
        "a gap of {gap} lies between TOF and the foam",
        "Fill the gap over the footing with the layer under the foam, screeded flat.",
    ),
    "below footing": (
        "its top lies {gap} under TOF; {ledge} of slab on the footing's inner ledge",
        "Raise the floor so that the foam meets TOF.",
    ),
    "no foam": (
        "no insulation in this floor",
        "Add a board layer, or leave it where the floor may stay cold.",
    ),
}


def foam_finding(
    area: AreaLayout, verdict: FoamVerdict, cold: ColdConcrete, system: System
) -> Finding:
    """Return the verdict in words and numbers."""
    found, advice = (
        words.format(
            gap=show_length(abs(verdict.gap_m), system), ledge=show_area(verdict.ledge_m2, system)
        )
        for words in _WORDS[verdict.meeting]
    )
    return Finding(
        "foam-meets-tof",
        _SEVERITY[verdict.meeting],
        area.name,
        f"{_levels(area, verdict, system)}{found}. {_cold(cold, system)}",
        "foam that leaves no concrete of the floor on footing or ground; piers remain",
        PRACTICE,
        advice,
    )


def _levels(area: AreaLayout, verdict: FoamVerdict, system: System) -> str:
    if verdict.foam_bottom_m is None or verdict.foam_top_m is None:
        return "Foam: "
    low = show_level(verdict.foam_bottom_m - area.tof, system)
    high = show_level(verdict.foam_top_m - area.tof, system)
    return f"Foam from {low} to {high} against TOF: "


def _cold(cold: ColdConcrete, system: System) -> str:
    rows = [f"{f.contact} {show_area(f.area_m2, system)}" for f in cold.faces if f.in_share]
    listed = f" ({'; '.join(rows)})" if rows else ""
    return (
        f"Cold concrete: {show_area(cold.cold_m2, system)}, {cold.share:.1%} of the floor{listed}."
    )
