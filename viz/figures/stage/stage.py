"""A stage as a figure: a cut through a telling place, levels large beside it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import shapely
from shapely import MultiPolygon

from geometry.layout.lay import Layout
from geometry.sections.face import CutFace, CutLine
from geometry.site.records import Stage
from geometry.units import System
from viz.drawing.figure import Figure
from viz.drawing.marks import Mark
from viz.drawing.page import Box
from viz.figures.section.cut import area_marks, edge_marks, native_ground
from viz.figures.section.view import View, polygons
from viz.figures.stage.emphasis import HEAVY, dug_floor, ghosts, now_edges
from viz.figures.stage.flags import Flag, flag_marks, flags_width
from viz.figures.stage.pointing import Naming, pointing_marks, taken_by
from viz.figures.stage.sorting import Sorted, sorted_faces
from viz.figures.stage.window import stage_view

# Room for the break lines where a part goes on beyond the picture, mm.
_BREAK = 2.0
_LAYERS = ("base", "blinding", "retarder", "insulation", "slab", "fill")


@dataclass(frozen=True, eq=False)
class Staged:
    """One stage among all, with the cut that shows it and the faces the cut leaves."""

    layout: Layout
    stages: Sequence[Stage]
    number: int
    line: CutLine
    faces: Sequence[CutFace]

    @property
    def stage(self) -> Stage:
        """The stage itself."""
        return self.stages[self.number]


def stage_figure(staged: Staged, flags: Sequence[Flag], naming: Naming, room: Box) -> Figure:
    """Draw a stage into a room on paper, levels at its right. naming: of what is laid now.

    Raises NoRoomError where the room is too low for the
    levels.
    """
    stage, layout = staged.stage, staged.layout
    split = room.right - flags_width(flags)
    picture = Box(room.left + _BREAK, room.low, split - _BREAK, room.high)
    view = stage_view(layout, stage, staged.line, picture)
    faces = view.seen(staged.faces)
    found = sorted_faces(faces, staged.stages, staged.number)
    built = (*found.there, *found.now)
    native = native_ground((*found.dug, *built), view)
    target = _pointed(found, native, view)
    shapes = [*(f.shape for f in built), native]
    levels = [view.at(0, f.level)[1] for f in flags if f.datum]
    marks = (
        *area_marks(built, native),
        *edge_marks(built, native, view),
        *ghosts(found.later, view),
        *_now(found, stage, view),
        *flag_marks(flags, view, Box(split, room.low, room.right, room.high), _system(layout)),
        *pointing_marks(
            naming, target, taken_by(shapes, levels, picture), picture,
            stage.key in _LAYERS,
        ),
    )  # fmt: skip
    return Figure(f"stage-{staged.number + 1}", naming.words, marks, room, None)


def _system(layout: Layout) -> System:
    return layout.design.project.units


def _now(found: Sorted, stage: Stage, view: View) -> Iterator[Mark]:
    if stage.key == "subgrade":
        yield from dug_floor(found.dug, found.there, view)
    yield from now_edges(found.now, view)


def _pointed(found: Sorted, native: MultiPolygon, view: View) -> MultiPolygon:
    """Return what the arrow points at: the thing laid, or the bare bottom of the hole."""
    if found.now:
        main = max(found.now, key=lambda f: f.shape.area)
        return main.shape
    lines = [m for m in dug_floor(found.dug, found.there, view) if len(m.points) > 1]
    strips = [shapely.LineString(m.points).buffer(HEAVY / 2, cap_style="flat") for m in lines]
    inside = [s for s in strips if s.bounds[2] > view.box.left + view.box.width / 2]
    return polygons(shapely.union_all(inside or strips)) if strips else native
