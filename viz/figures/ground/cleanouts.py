"""The drain's runs between places to enter it, to one scale, against the reach."""

from geometry.units import System, show_length
from geometry.water.cleanouts import Cleaning, Run
from viz.drawing.figure import Figure, figure
from viz.figures.ground.bars import Bar, Group, Limit, bar_marks

TITLE = "Runs between places to enter the drain"
CLOSED = "closed end"


def cleanouts_figure(
    found: Cleaning | None, system: System, width: float, text: float
) -> Figure | None:
    """Return a bar for each run with its bends and whether it can be reached.

    None without a drain. width: mm. text: height of capitals, mm.
    """
    if found is None or not found.runs:
        return None
    reach = show_length(round(found.reach_m, 3), system)
    groups = [_group(run, found, system) for run in found.runs]
    marks = bar_marks(groups, Limit(found.reach_m, f"usual reach {reach}"), width, text)
    remark = (
        f"A run is asked to be no longer than {reach} and to turn no more than "
        f"{found.bends_limit_deg:.0f}° in all."
    )
    return figure("cleanouts", TITLE, marks, None, remark)


def _group(run: Run, found: Cleaning, system: System) -> Group:
    bends = {0: "no bends", 1: "1 bend"}.get(run.bends, f"{run.bends} bends")
    turned = f"{bends}, {run.bends_deg:.0f}° in all" if run.bends else bends
    length = show_length(round(run.length_m, 3), system)
    head = f"{run.start or CLOSED} to {run.end or CLOSED}"
    note = f"{turned}: {run_words(run, found)}"
    return Group(head[0].upper() + head[1:], (Bar("", run.length_m, length),), note)


def run_words(run: Run, found: Cleaning) -> str:
    """Return in words whether a run can be reached and cleaned."""
    if run.farthest_m is None:
        return "no way in"
    far, bent = found.too_far(run), found.too_bent(run)
    if far and bent:
        return "too long, and too many bends"
    if far:
        return "too long"
    return "long enough reach, too many bends" if bent else "within reach"
