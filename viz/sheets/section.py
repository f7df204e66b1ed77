"""A section on one sheet: the cut to scale, labels, levels, notes and title."""

from collections.abc import Iterator, Mapping, Sequence

from geometry.sections.bars import BarMark
from geometry.sections.face import CutFace
from geometry.units import System
from viz.drawing.marks import Mark, Text
from viz.drawing.page import PAPERS, Drawing, PaperName
from viz.drawing.scale import Scale
from viz.sheets.arrange import Job, settled
from viz.sheets.cut import area_marks, bar_dots, edge_marks
from viz.sheets.frame import Title, frame_marks
from viz.sheets.labels import lane_is_free
from viz.sheets.layout import Layout
from viz.sheets.level_mark import LevelMark
from viz.sheets.levels import datum_line, level_marks
from viz.sheets.view import View, Window


def section_drawing(
    faces: Sequence[CutFace],
    levels: Sequence[LevelMark],
    labels: Mapping[str, str],
    *,
    system: System,
    project: str,
    title: str,
    subtitle: str = "",
    notes: Sequence[str] = (),
    bars: Sequence[BarMark] = (),
    paper: PaperName = "ARCH C",
    scale: Scale | None = None,
    window: Window | None = None,
) -> Drawing:
    """Draw a cut on one sheet.

    labels: wording by part id, its first line bold; parts of one wording get one label.
    bars: continuous bars the cut crosses, drawn solid.
    scale: the greatest that fits unless given. window: (s0, z0, s1, z1) metres, to crop.
    Raises BedcourseError where the paper cannot hold it.
    """
    sheet = PAPERS[paper]
    job = Job(tuple(faces), tuple(levels), labels, tuple(notes), system, sheet, scale, window)
    plan, view, labelled = settled(job)
    seen = view.seen(faces)
    marks = (
        *area_marks(seen, view),
        *_datum(labelled, levels, view, plan),
        *edge_marks(seen, view),
        *bar_dots(bars, view),
        *labelled,
        *level_marks(levels, view, plan, system),
        *frame_marks(plan, sheet, Title(project, title, subtitle), view.scale, system),
    )
    return Drawing(sheet.width, sheet.height, f"{project}: {title}", view.scale.ratio, marks)


def _datum(
    labelled: Sequence[Mark], levels: Sequence[LevelMark], view: View, plan: Layout
) -> Iterator[Mark]:
    """Yield the datum line, which crosses the labels to the pole only where no text stands."""
    texts = [mark for mark in labelled if isinstance(mark, Text)]
    free = lane_is_free(texts, plan.right, view.at(0, 0)[1])
    return datum_line(view, plan, free and bool(levels))
