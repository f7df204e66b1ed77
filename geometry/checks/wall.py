"""Fill against each outer wall: when to ask, and what water would do. Never that a wall holds."""

from collections.abc import Iterator

from geometry.checks.finding import Finding
from geometry.layout.lay import Layout
from geometry.sources import Source
from geometry.units import System, show_length
from geometry.water.wall import ASK_M, ASK_SOURCE, OUTSIDE, WallRun, wall_runs

_PRESSURE = Source("Rankine, Jaky; water at 62.4 lb/ft3", clause="soil figures presumptive")
_ASK = "Ask an engineer, or hold wall and fill against the code's table for this soil."


def wall_findings(layout: Layout) -> Iterator[Finding]:
    """Yield, for each outer wall with fill, how much leans on it and what flooding would add."""
    system = layout.design.project.units
    for run in wall_runs(layout):
        if run.fill_to_floor_m > 0:
            yield fill_finding(run, system)
            yield flooded_finding(run, system)


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
    return Finding(
        "wall-flooded",
        "look" if run.asks else "fine",
        subject,
        f"Soil {run.soil} at rest over {_length(run.fill_to_foot_m, system)}: water "
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
