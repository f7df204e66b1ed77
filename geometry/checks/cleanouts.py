"""Can the drain be cleaned: is every run within reach, and are its bends few enough."""

from collections.abc import Iterator

from geometry.checks.finding import Finding
from geometry.layout.lay import Layout
from geometry.units import System, show_length
from geometry.water.cleanouts import BENDS_SOURCE, REACH_SOURCE, Cleaning, Run, cleaning


def cleanout_findings(layout: Layout) -> Iterator[Finding]:
    """Yield what lies between each place to enter the drain and the next."""
    found = cleaning(layout)
    if found is not None:
        for run in found.runs:
            yield run_finding(found, run, layout.design.project.units)


def run_finding(found: Cleaning, run: Run, system: System) -> Finding:
    """Return one run's verdict."""
    far, bent = found.too_far(run), found.too_bent(run)
    return Finding(
        "drain-within-reach",
        "look" if far or bent else "fine",
        f"drain, {_ends(run)}",
        f"{show_length(round(run.length_m, 3), system)} along the pipe, {_bends(run)}; "
        f"{_farthest(run, system)}.",
        f"at most {show_length(found.reach_m, system)} and {found.bends_limit_deg:.0f}° of bends "
        "between places to enter",
        BENDS_SOURCE if bent and not far else REACH_SOURCE,
        _advice(run, far, bent),
    )


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
    return f"{show_length(round(run.farthest_m, 3), system)} from the nearer place to enter at most"


def _advice(run: Run, far: bool, bent: bool) -> str:
    if run.farthest_m is None:
        return "Add a cleanout with a riser to grade, at least at the high end."
    if far or bent:
        return "Add a cleanout at a corner between, or keep a snake or hose that reaches so far."
    return "Build it so, with sweeps rather than short elbows where they fit."
