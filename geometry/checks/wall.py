"""Fill against each outer wall: when to ask, and what water would do. Never that a wall holds."""

from collections.abc import Iterator

from geometry.checks.finding import Finding
from geometry.layout.lay import Layout
from geometry.parts.ground import BackfillState
from geometry.sources import Source
from geometry.units import System, show_length
from geometry.water.loadwords import show_pressure
from geometry.water.wall import ASK_M, ASK_SOURCE, OUTSIDE, WallRun, state_words, wall_runs

_PRESSURE = Source("Rankine, Jaky; water at 62.4 lb/ft3", clause="soil figures presumptive")
_BRACED = Source("IRC", clause="R404.1.7 (brace before backfill, 4 ft)", sure="memory")
_ASK = "Ask an engineer, or hold wall and fill against the code's table for this soil."


def wall_findings(layout: Layout) -> Iterator[Finding]:
    """Yield, for each outer wall with fill, how much leans on it and what flooding would add."""
    system, state = layout.design.project.units, layout.design.backfill.state
    filled = [run for run in wall_runs(layout) if run.fill_to_floor_m > 0]
    for run in filled:
        yield fill_finding(run, system)
        yield flooded_finding(run, system)
    if filled:
        yield state_finding(max(filled, key=lambda run: run.fill_to_floor_m), state)


def fill_finding(run: WallRun, system: System) -> Finding:
    """Return the unbalanced fill against the height from which somebody must be asked."""
    before = _length(run.unbraced_without_slab_m, system)
    return Finding(
        "wall-fill",
        "look" if run.asks else "fine",
        _named(run),
        f"Unbalanced fill {_length(run.fill_to_floor_m, system)} from {_top(run)} to finished "
        f"floor, {_length(run.fill_to_slab_m, system)} to the slab's underside. Wall "
        f"{_length(run.wall_m, system)} thick, longest straight "
        f"{_length(run.longest_m, system)}, unbraced height {before} before the slab is in, "
        f"{_length(run.unbraced_with_slab_m, system)} after."
        + ("" if run.behind == OUTSIDE else " What stands on the higher floor is not counted."),
        f"above {_length(ASK_M, system)} of fill: held at top and foot, and by the code's "
        "table or an engineer",
        ASK_SOURCE,
        f"{_ASK} Do not backfill before the deck is on or the wall is braced, and the slab is in."
        if run.asks
        else "Still backfill only when the wall has its strength; the code's table speaks, not "
        "this.",
    )


def state_finding(run: WallRun, state: BackfillState) -> Finding:
    """Return what holds the walls on the day of backfill, told by the one with the most fill."""
    bare = state.deck is False and state.braced is False
    held = bool(state.deck and state.slab)
    said = "" if state.said else "Not said what holds the walls when the fill goes in. "
    return Finding(
        "backfill-state",
        "stop" if bare and run.asks else "fine" if held and not run.asks else "look",
        f"{_named(run)}, day of backfill",
        said + " ".join(state_words(run, state)),
        "fill only against a wall that has its strength and is held or braced",
        _BRACED,
        "No fill before the deck is on or the wall is braced."
        if bare
        else "Say it in [backfill.state] (deck, slab, braced: true or false) once it is known; no "
        "fill before."
        if not state.said
        else "Look again on the day itself, before the first load is tipped.",
    )


def flooded_finding(run: WallRun, system: System) -> Finding:
    """Return how much more pushes when the drain fails and water stands up to the grade."""
    rest = next((push for push in run.pushes if push.case == "at rest"), None)
    subject = f"{_named(run)}, drain failed"
    asked = "water kept from standing against the wall"
    if rest is None:
        return Finding(
            "wall-flooded", "look", subject,
            "The soil is not known, so neither is its push; water up to its top alone would add a "
            f"pressure of {_length(run.fill_to_foot_m, system)} of head at the foot.",
            asked, _PRESSURE, "Find out the soil's group. Keep the drain working.",
        )  # fmt: skip
    if run.water_depth_m >= run.fill_to_foot_m:
        return Finding(
            "wall-flooded", "look" if run.asks else "fine", subject,
            f"Water {_at(run, system)} stays under the foot of the wall and adds nothing. It is "
            "the depth the design names: see that no rain or flood brings it higher.",
            asked, _PRESSURE, "Keep the drain working and cleanable, and water off the fill.",
        )  # fmt: skip
    load = f", {show_pressure(run.surcharge_pa, system)} on it" if run.surcharge_pa else ""
    return Finding(
        "wall-flooded",
        "look" if run.asks else "fine",
        subject,
        f"Soil {run.soil} at rest over {_length(run.fill_to_foot_m, system)}{load}: water "
        f"{_at(run, system)} pushes {rest.force_ratio:.1f} times as hard as the drained fill, and "
        f"turns the wall about its foot {rest.moment_ratio:.1f} times as much.",
        asked,
        _PRESSURE,
        "Keep the drain working and cleanable, and water off the fill; where water can stand, an "
        "engineer designs the wall.",
    )


def _at(run: WallRun, system: System) -> str:
    if run.water_depth_m <= 0:
        return f"up to {_top(run)}"
    return f"up to {_length(run.water_depth_m, system)} under {_top(run)}"


def _named(run: WallRun) -> str:
    return (
        f"{run.area}, outer wall" if run.behind == OUTSIDE else f"{run.area}, wall to {run.behind}"
    )


def _top(run: WallRun) -> str:
    return "grade" if run.behind == OUTSIDE else f"the floor of {run.behind}"


def _length(metres: float, system: System) -> str:
    """A length to the millimetre: levels carry a sheet's few tenths along."""
    return show_length(round(metres, 3), system)
