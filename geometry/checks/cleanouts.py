"""Can the drain be cleaned: its risers, its high ends, is every run in reach, are bends few."""

from collections.abc import Iterator

from geometry.checks.finding import Finding
from geometry.layout.lay import Layout
from geometry.sources import PRACTICE
from geometry.units import System, show_length, show_level
from geometry.water.cleanouts import (
    BENDS_SOURCE,
    CLOSED,
    HIGH,
    REACH_SOURCE,
    Access,
    Cleaning,
    HighEnd,
    Run,
    cleaning,
)

# Nearer than this one stands at it.
_AT_M = 0.02
_FOOT = (
    "Drawn and ordered is a tee under an upright pipe, in which a hose turns by chance alone: ask "
    "for two 45° elbows or a long sweep that points along the drain, one each way where both are "
    "to be flushed."
)


def cleanout_findings(layout: Layout) -> Iterator[Finding]:
    """Yield how the drain in view is got into, and what lies between one place and the next."""
    found, system = cleaning(layout), layout.design.project.units
    if found is not None and layout.drain is not None:
        yield riser_finding(found, layout.drain.area.tof, system)
        yield from high_end_finding(found, system)
        for run in found.runs:
            yield run_finding(found, run, system)


def riser_finding(found: Cleaning, tof: float, system: System) -> Finding:
    """Return what each cleanout's riser is, against the drained area's TOF; look without any."""
    risers = [place for place in found.access if place.riser_m is not None]
    hoses = [run.hose_m for run in found.runs if run.hose_m is not None]
    hose = f" A hose of {_size(max(hoses), system)} reaches all from their tops." if hoses else ""
    said = [_riser(place, tof, system) for place in risers]
    return Finding(
        "drain-risers",
        "fine" if risers else "look",
        "drain, cleanout risers",
        f"{' '.join(said)}{hose}"
        if risers
        else "No cleanout is given: once it is covered, nobody gets into the pipe from above.",
        "a riser from each cleanout to the finished grade or over it, closed with a plug; at its "
        "foot two 45° elbows or a long sweep",
        PRACTICE,
        f"{_FOOT} Keep the plug over the ground or in a box with a lid, and mark where it is."
        if risers
        else "Name corners in drain.cleanouts, at least the ones next to the high end.",
    )


def _riser(place: Access, tof: float, system: System) -> str:
    name = f"{place.name[0].upper()}{place.name[1:]}"
    top = show_level(round((place.top_m or 0.0) - tof, 3), system)
    return (
        f"{name}: {_size(place.riser_m or 0.0, system)} of solid pipe from the drain's middle up "
        f"to the {place.ends_at} at {top} against TOF, a plug on it."
    )


def high_end_finding(found: Cleaning, system: System) -> Iterator[Finding]:
    """Yield whether water can be let in at the drain's high ends; nothing for a level ring."""
    if not found.high_ends:
        return
    bare = [end for end in found.high_ends if not end.served]
    shown = bare or found.high_ends
    yield Finding(
        "drain-high-end",
        "look" if bare else "fine",
        "drain, high end",
        " ".join(_high_end(end, system) for end in shown),
        "a cleanout at each high or closed end, so that it is flushed down the fall",
        PRACTICE,
        _high_advice(bare),
    )


def _high_advice(bare: list[HighEnd]) -> str:
    if not bare:
        return "Flush from there, toward the outlet."
    ways = []
    if any(end.name.startswith(HIGH) for end in bare):
        ways.append("Set a cleanout at a corner next to the high point, or move one there.")
    if any(end.name.startswith(CLOSED) for end in bare):
        ways.append(
            "Bring the closed end up to grade by two 45° elbows and a riser; a riser at an end is "
            "neither drawn nor counted here."
        )
    return " ".join(ways)


def _high_end(end: HighEnd, system: System) -> str:
    name = f"{end.name[0].upper()}{end.name[1:]}"
    if end.nearest is None or end.away_m is None:
        return f"{name}: no cleanout anywhere."
    if end.away_m < _AT_M:
        return f"{name}: at the {end.nearest}."
    bends = {0: "no bend", 1: "one bend"}.get(end.bends, f"{end.bends} bends")
    return f"{name}: {_size(end.away_m, system)} from the {end.nearest}, {bends} between."


def run_finding(found: Cleaning, run: Run, system: System) -> Finding:
    """Return one run's verdict."""
    far, bent = found.too_far(run), found.too_bent(run)
    return Finding(
        "drain-within-reach",
        "look" if far or bent else "fine",
        f"drain, {_ends(run)}",
        f"{_size(run.length_m, system)} along the pipe, {_bends(run)}; {_farthest(run, system)}.",
        f"at most {show_length(found.reach_m, system)} and {found.bends_limit_deg:.0f}° of bends "
        "between places to enter",
        BENDS_SOURCE if bent and not far else REACH_SOURCE,
        _advice(run, far, bent),
    )


def _size(metres: float, system: System) -> str:
    return show_length(round(metres, 3), system)


def _ends(run: Run) -> str:
    names = [name or "closed end" for name in (run.start, run.end)]
    if run.start is None and run.end is None:
        return "whole length"
    return f"{names[0]} round to itself" if names[0] == names[1] else f"{names[0]} to {names[1]}"


def _bends(run: Run) -> str:
    if not run.bends:
        return "no bends"
    noun = "bend" if run.bends == 1 else "bends"
    return f"{run.bends} {noun} of {run.bends_deg:.0f}° in all"


def _farthest(run: Run, system: System) -> str:
    if run.farthest_m is None:
        return "nothing can be put into it"
    return f"{_size(run.farthest_m, system)} from the nearer place to enter at most"


def _advice(run: Run, far: bool, bent: bool) -> str:
    if run.farthest_m is None:
        return "Add a cleanout with a riser to grade, at least at the high end."
    if far or bent:
        return "Add a cleanout at a corner between, or keep a snake or hose that reaches so far."
    return "Build it so, with sweeps rather than short elbows where they fit."
