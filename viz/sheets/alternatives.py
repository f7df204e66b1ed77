"""The ways to make the floor's edge, side by side for decision; no part of the permit set."""

from collections.abc import Iterator

from geometry.layout.lay import lay_out
from geometry.options import EdgeOption, edge_options, moved
from geometry.report import Report
from geometry.units import System, show_area, show_length
from viz.drawing.page import PAPERS, PaperName
from viz.job import Job
from viz.pictures import Shot, floor_shot
from viz.sheets.permit import Desk
from viz.sheets.sheet import Sheet, bound

TITLE = "Ways to make the floor's edge, for decision"
# User-defined sheets of the set's numbering begin with this digit.
_FIRST = 7
_STILL_M = 1e-4


def alternatives(work: Job, paper: PaperName) -> tuple[Sheet, ...]:
    """Return the edge details of this house and of its alternatives, and what each moves.

    Empty for a floor without foam. Raises BedcourseError where the paper cannot hold them.
    """
    shots = list(_shots(work))
    if not shots:
        return ()
    desk = Desk(work, PAPERS[paper])
    return bound(desk.leaves(desk.each(_FIRST, TITLE, shots)), desk.paper, work.layout.design)


def _shots(work: Job) -> Iterator[tuple[Job, Shot]]:
    for option in edge_options(work.layout.design):
        if option.design is None:
            continue
        other = work if option.same else Job(work.text, lay_out(option.design))
        title = f"{option.title} (as in the set)" if option.same else option.title
        shot = floor_shot(other, title, _note(work, other, option))
        if shot.window:
            yield other, shot


def _note(work: Job, other: Job, option: EdgeOption) -> str:
    changes = (
        [] if option.same else list(_moves(work.quick_report, other.quick_report, work.system))
    )
    return " ".join((option.note, *changes))


def _moves(before: Report, after: Report, system: System) -> Iterator[str]:
    """Yield what an alternative moves against the set, in sentences."""
    what = moved(before, after)
    rows = (
        ("Finished floor", what.finished_floor.by, "higher", "lower"),
        ("Subgrade", what.subgrade.by, "higher", "lower"),
        ("Headroom to the top of the wall", what.headroom.by, "more", "less"),
    )
    for name, by, more, less in rows:
        if abs(by) > _STILL_M:
            yield f"{name} {show_length(abs(by), system)} {more if by > 0 else less}."
    cold = what.cold_ledge
    if abs(cold.by) > _STILL_M:
        yield (
            f"Slab on the footing's cold ledge: {show_area(cold.after, system)} "
            f"against {show_area(cold.before, system)}."
        )
