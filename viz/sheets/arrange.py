"""The arrangement of a section on its paper: layout, scale, and where each label stands."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

import shapely
from shapely import LineString, MultiPolygon

from geometry.errors import BedcourseError
from geometry.label import Role
from geometry.sections.face import CutFace
from geometry.units import System
from viz.drawing.marks import Leader, Mark
from viz.drawing.page import Box, Paper
from viz.drawing.scale import Scale, fits, greatest_scale
from viz.sheets import words
from viz.sheets.anchors import SIDES, Side, by_wording, shut_in
from viz.sheets.anchors import sides as choose_sides
from viz.sheets.blocks import block
from viz.sheets.cut import built, thin_parts
from viz.sheets.flags import Site, flag_marks, place_flags
from viz.sheets.labels import GAP, label_marks
from viz.sheets.layout import Layout, layout
from viz.sheets.level_mark import LevelMark
from viz.sheets.levels import levels_width
from viz.sheets.view import GROUND_BAND, PaperFace, View, Window, extent_of, placed, polygons
from viz.style.text import body_height

# Parts under the open room of a house, which may be labelled from above: together or not at all.
# Piers come first: they have less choice of place than layers.
_Groups: TypeAlias = tuple[tuple[Role, ...], ...]
_ABOVE: _Groups = (
    ("pad", "column"),
    ("base", "blinding", "retarder", "insulation", "slab", "fill"),
)


@dataclass(frozen=True)
class Job:
    """What was asked for."""

    faces: tuple[CutFace, ...]
    levels: tuple[LevelMark, ...]
    labels: Mapping[str, str]
    notes: tuple[str, ...]
    system: System
    sheet: Paper
    scale: Scale | None
    window: Window | None


def settled(job: Job) -> tuple[Layout, View, tuple[Mark, ...]]:
    """Return layout, view and labels: floors labelled from above if there is room, else aside."""
    plan, view, sides = _arranged(job, _ABOVE)
    shown = view.seen(job.faces)
    aside = label_marks(shown, job.labels, sides, view, plan)
    above = _flags(job, shown, aside, sides, view, plan)
    if above is not None:
        return plan, view, (*aside, *above)
    plan, view, sides = _arranged(job, ())
    return plan, view, label_marks(view.seen(job.faces), job.labels, sides, view, plan)


def _flags(
    job: Job,
    shown: tuple[PaperFace, ...],
    aside: Sequence[Mark],
    sides: Mapping[str, Side],
    view: View,
    plan: Layout,
) -> tuple[Mark, ...] | None:
    """Return the labels that stand above the floor, None where they have no room."""
    wordings = by_wording([(face.label.part, face.shape) for face in shown], job.labels)
    above = {wording: shape for wording, shape in wordings.items() if wording not in sides}
    groups = _grouped(job, above, _ABOVE)
    datum = LineString((view.at(view.extent[0], 0), view.at(view.extent[2], 0)))
    things = shapely.union_all([datum, *(face.shape for face in built(shown))])
    leaders = shapely.union_all([LineString(m.points) for m in aside if isinstance(m, Leader)])
    room = replace(view.box, high=plan.picture.high)
    flags = place_flags(groups, Site(room, things, leaders, plan.text))
    if flags is None:
        return None
    return tuple(mark for flag in flags for mark in flag_marks(flag, plan.text))


def _grouped(
    job: Job, shapes: Mapping[str, MultiPolygon], groups: _Groups
) -> list[dict[str, MultiPolygon]]:
    """Return the shapes of each group of roles by their wording."""
    roles = {job.labels.get(f.label.part, "").strip(): f.label.role for f in job.faces}
    return [{w: s for w, s in shapes.items() if roles[w] in group} for group in groups]


def _arranged(job: Job, above: _Groups) -> tuple[Layout, View, dict[str, Side]]:
    """Settle layout, scale and the sides of the labels; `above` may be labelled from above.

    Which parts are thin depends on the scale, the note on thin parts takes room, and the room
    decides the scale. Each round can only add names, so it ends.
    """
    heavy: tuple[str, ...] = ()
    while True:
        plan, sides = _plan(job, heavy, above)
        view = _view(job.faces, plan.picture, job.system, job.scale, job.window)
        thin = (f.label.name for f in view.seen(job.faces) if thin_parts(f))
        names = tuple(dict.fromkeys((*heavy, *thin)))
        if names == heavy:
            return plan, view, sides
        heavy = names


def _plan(job: Job, heavy: tuple[str, ...], above: _Groups) -> tuple[Layout, dict[str, Side]]:
    """Return the layout with label columns as wide as their labels, and the sides of these."""
    text = body_height(job.sheet.width)
    note = (words.shown_heavy(heavy),) if heavy else ()
    fixed = (words.true_scale(job.sheet.name, job.sheet.size), words.LOCAL_CODE)
    notes = (*job.notes, *note, *fixed)
    extent = extent_of(job.faces, job.window)
    crop = shapely.box(*extent)
    shapes = [(f.label.part, polygons(f.shape.intersection(crop))) for f in job.faces]
    every = by_wording(shapes, job.labels)
    edges = (extent[0], extent[2])
    lifted = {
        wording
        for group in _grouped(job, every, above)
        if any(shut_in(every, wording, edges) for wording in group)
        for wording in group
    }
    wordings = {wording: shape for wording, shape in every.items() if wording not in lifted}
    blocks = {wording: block(wording, text) for wording in wordings}
    room = layout(job.sheet, notes, (0, 0), 0).left.height
    heights = {wording: b.height(text) + GAP for wording, b in blocks.items()}
    sides = choose_sides(wordings, edges, heights, room)
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
