"""A section on one sheet: the cut to scale, labels, levels, notes and title."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import shapely

from geometry.errors import BedcourseError
from geometry.sections.face import CutFace
from geometry.units import System
from viz.drawing.marks import Mark, Text
from viz.drawing.page import PAPERS, Box, Drawing, Paper, PaperName
from viz.drawing.scale import Scale, fits, greatest_scale
from viz.sheets import words
from viz.sheets.anchors import SIDES, Side, by_wording
from viz.sheets.anchors import sides as choose_sides
from viz.sheets.cut import area_marks, edge_marks, thin_parts
from viz.sheets.frame import Title, frame_marks
from viz.sheets.labels import GAP, block, label_marks, lane_is_free
from viz.sheets.layout import Layout, layout
from viz.sheets.level_mark import LevelMark
from viz.sheets.levels import datum_line, level_marks, levels_width
from viz.sheets.view import GROUND_BAND, PaperFace, View, Window, extent_of, placed, polygons
from viz.style.text import body_height


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
    paper: PaperName = "ARCH C",
    scale: Scale | None = None,
    window: Window | None = None,
) -> Drawing:
    """Draw a cut on one sheet.

    labels: wording by part id, its first line bold; parts of one wording get one label.
    scale: the greatest that fits unless given. window: (s0, z0, s1, z1) metres, to crop.
    Raises BedcourseError where the paper cannot hold it.
    """
    sheet = PAPERS[paper]
    job = _Job(tuple(faces), tuple(levels), labels, tuple(notes), system, sheet, scale, window)
    plan, view, sides = _arranged(job)
    shown = _shown(faces, view)
    labelled = label_marks(shown, labels, sides, view, plan)
    marks = (
        *area_marks(shown, view),
        *_datum(labelled, levels, view, plan),
        *edge_marks(shown, view),
        *labelled,
        *level_marks(levels, view, plan, system),
        *frame_marks(plan, sheet, Title(project, title, subtitle), view.scale, system),
    )
    return Drawing(sheet.width, sheet.height, f"{project}: {title}", view.scale.ratio, marks)


@dataclass(frozen=True)
class _Job:
    """What was asked for."""

    faces: tuple[CutFace, ...]
    levels: tuple[LevelMark, ...]
    labels: Mapping[str, str]
    notes: tuple[str, ...]
    system: System
    sheet: Paper
    scale: Scale | None
    window: Window | None


def _arranged(job: _Job) -> tuple[Layout, View, dict[str, Side]]:
    """Settle layout, scale and the sides of the labels.

    Which parts are thin depends on the scale, the note on thin parts takes room, and the room
    decides the scale. Each round can only add names, so it ends.
    """
    heavy: tuple[str, ...] = ()
    while True:
        plan, sides = _plan(job, heavy)
        view = _view(job.faces, plan.picture, job.system, job.scale, job.window)
        thin = (f.label.name for f in _shown(job.faces, view) if thin_parts(f))
        names = tuple(dict.fromkeys((*heavy, *thin)))
        if names == heavy:
            return plan, view, sides
        heavy = names


def _plan(job: _Job, heavy: tuple[str, ...]) -> tuple[Layout, dict[str, Side]]:
    """Return the layout with label columns as wide as their labels, and the sides of these."""
    text = body_height(job.sheet.width)
    note = (words.shown_heavy(heavy),) if heavy else ()
    fixed = (words.true_scale(job.sheet.name, job.sheet.size), words.LOCAL_CODE)
    notes = (*job.notes, *note, *fixed)
    extent = extent_of(job.faces, job.window)
    crop = shapely.box(*extent)
    shapes = [(f.label.part, polygons(f.shape.intersection(crop))) for f in job.faces]
    wordings = by_wording(shapes, job.labels)
    blocks = {wording: block(wording, text) for wording in wordings}
    room = layout(job.sheet, notes, (0, 0), 0).left.height
    heights = {wording: b.height(text) + GAP for wording, b in blocks.items()}
    sides = choose_sides(wordings, (extent[0], extent[2]), heights, room)
    left, right = (
        max((b.width(text) for w, b in blocks.items() if sides[w] == side), default=0.0)
        for side in SIDES
    )
    levels = levels_width(job.levels, job.system, text)
    return layout(job.sheet, notes, (left, right), levels), sides


def _view(
    faces: Sequence[CutFace],
    room: Box,
    system: System,
    scale: Scale | None,
    window: Window | None,
) -> View:
    """Return the view at the wanted scale, or the greatest that fits its room."""
    extent = extent_of(faces, window)
    dug = window is None and any(face.label.role == "excavation" for face in faces)
    spare = GROUND_BAND if dug else 0.0
    size = (extent[2] - extent[0], extent[3] - extent[1])
    space = (room.width, room.height)
    chosen = scale or greatest_scale(size, space, system, spare)
    if not fits(chosen, size, space, spare):
        best = greatest_scale(size, space, system, spare)
        raise BedcourseError(
            f"the section does not fit this paper at {chosen.name}; "
            f"the greatest that fits is {best.name}"
        )
    band = spare / chosen.per_metre
    grown = (extent[0] - band, extent[1] - band, extent[2] + band, extent[3])
    return placed(grown, window is not None, chosen, room)


def _shown(faces: Sequence[CutFace], view: View) -> tuple[PaperFace, ...]:
    return tuple(face for face in map(view.on_paper, faces) if not face.shape.is_empty)


def _datum(
    labelled: Sequence[Mark], levels: Sequence[LevelMark], view: View, plan: Layout
) -> Iterator[Mark]:
    """Yield the datum line, which crosses the labels to the pole only where no text stands."""
    texts = [mark for mark in labelled if isinstance(mark, Text)]
    free = lane_is_free(texts, plan.right, view.at(0, 0)[1])
    return datum_line(view, plan, free and bool(levels))
