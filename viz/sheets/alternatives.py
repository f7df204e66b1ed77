"""What is to be decided, side by side: the floor's edge, the drain's heights; not in the set."""

from collections.abc import Iterator

from geometry.layout.lay import lay_out
from geometry.options import PADS, EdgeOption, edge_options, moved
from geometry.report import Report
from geometry.units import System, show_area, show_length
from viz.drawing.page import PAPERS, PaperName
from viz.figures.section.windows import pier_window
from viz.job import Job
from viz.pictures import Shot, floor_shot
from viz.sheets.compose import Group
from viz.sheets.drains import heights_wanted
from viz.sheets.permit import Desk
from viz.sheets.sheet import Sheet, bound

EDGE = "Ways to make the floor's edge, for decision"
HEIGHTS = "Heights of the drain, for decision"
# User-defined sheets of the set's numbering begin with this digit.
_FIRST = 7
_STILL_M = 1e-4


def alternatives(work: Job, paper: PaperName) -> tuple[Sheet, ...]:
    """Return what is to be decided, drawn: the ways to make the edge, the rules on the drain.

    The edge details of this house stand beside its alternatives with what each moves; the drain's
    heights beside the rules of several places, which differ. Empty without foam and drain. Raises
    BedcourseError where the paper cannot hold them.
    """
    desk = Desk(work, PAPERS[paper])
    shots = list(_shots(work))
    leaves = desk.leaves(desk.each(_FIRST, EDGE, shots)) if shots else ()
    heights = Group(_FIRST, HEIGHTS, heights_wanted(work.layout, desk.room, desk.text))
    leaves = (*leaves, *desk.leaves(heights, before=len(leaves)))
    return bound(leaves, desk.paper, work.layout.design)


def _shots(work: Job) -> Iterator[tuple[Job, Shot]]:
    for option in edge_options(work.layout.design):
        if option.design is None:
            continue
        other = work if option.same else Job(work.text, lay_out(option.design))
        shot = _shot(other, option, _note(work, other, option))
        if shot.window:
            yield other, shot


def _shot(other: Job, option: EdgeOption, note: str) -> Shot:
    """Return the detail that shows a way: at the wall, or at a pier if the pads alone differ."""
    title = f"{option.title} (as in the set)" if option.same else option.title
    line = other.cuts.get("pier") if option.key in PADS else None
    if line is None:
        return floor_shot(other, title, note)
    return Shot("detail-pier", title, line, pier_window(other.layout, line), True, note)


def _note(work: Job, other: Job, option: EdgeOption) -> str:
    changes = [] if option.same else list(_moves(work.report, other.report, work.system))
    return " ".join((option.note, *changes))


def _moves(before: Report, after: Report, system: System) -> Iterator[str]:
    """Yield what an alternative moves against the set, in sentences."""
    what = moved(before, after)
    rows = (
        ("Finished floor", what.finished_floor.by, "higher", "lower"),
        ("Subgrade", what.subgrade.by, "higher", "lower"),
        ("Headroom to the top of the wall", what.headroom.by, "more", "less"),
        ("Tops of pads", what.pad_top.by, "higher", "lower"),
    )
    for name, by, more, less in rows:
        if abs(by) > _STILL_M:
            yield f"{name} {show_length(abs(by), system)} {more if by > 0 else less}."
    colds = (("the footing's cold ledge", what.cold_ledge), ("pads, cold", what.cold_piers))
    for name, cold in colds:
        if abs(cold.by) > _STILL_M:
            yield (
                f"Slab on {name}: {show_area(cold.after, system)} "
                f"against {show_area(cold.before, system)}."
            )
