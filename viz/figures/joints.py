"""The slab's joints on the plan: cuts with their distances, and where it is kept apart."""

from collections.abc import Iterator
from functools import partial
from itertools import pairwise

import shapely

from geometry.layout.joints import Joints, lay_joints
from geometry.layout.lay import Layout
from geometry.plan.outline import multi
from geometry.rules.slabs import saw_depth
from geometry.units import System, show_length
from viz.drawing.expand import outline
from viz.drawing.figure import Figure, extent, figure
from viz.drawing.marks import Fill, Mark
from viz.drawing.page import Box
from viz.drawing.scale import Scale
from viz.figures.dimensions import Chain, across, upright
from viz.figures.fitting import fitting
from viz.figures.plan.onpaper import OnPaper, stroked
from viz.style.lines import CUT, SEEN
from viz.style.materials import look

# A cut, and a joint that keeps the slab apart, on paper.
_SAWN, _SAWN_DASH = SEEN, (6.0, 1.2)
_APART, _APART_DASH = 0.7, (1.6, 0.9)
_SQUARE_M = 1e-3
# Widths, heights and text heights for a wide and for a narrow screen, mm.
_WIDE, _NARROW = (290.0, 190.0, 3.0), (106.0, 150.0, 2.6)


def joints_figure(layout: Layout, joints: Joints, scale: Scale, text: float) -> Figure:
    """Return an area's joints on the plan at a scale. text: height of capitals, mm."""
    paper = OnPaper(scale.per_metre)
    system = layout.design.project.units
    marks: list[Mark] = [*_house(joints, paper)]
    for cut in joints.cuts:
        marks += stroked(paper.drawn(cut), _SAWN, _SAWN_DASH)
    for line in joints.apart:
        marks += stroked(paper.drawn(line), _APART, _APART_DASH)
    marks += _distances(joints, paper, extent(marks), text, system)
    name = f"joints-{joints.area.name}"
    title = f"Joints in the slab: {joints.area.name}"
    return figure(name, title, marks, scale, _remark(joints, system))


def joints_pictures(layout: Layout) -> Iterator[tuple[Figure, Figure]]:
    """Yield each slab's joints for a wide and for a narrow screen."""
    for joints in lay_joints(layout):
        wide, narrow = (
            fitting(partial(joints_figure, layout, joints, text=text), *room)
            for *room, text in (_WIDE, _NARROW)
        )
        yield wide, narrow


def _house(joints: Joints, paper: OnPaper) -> Iterator[Mark]:
    """Yield the walls round the slab, and what stands in it."""
    area, wall = joints.area, look("wall")
    round_it = joints.slab.buffer(area.wall.thickness, join_style="mitre")
    holes = [shapely.Polygon(p.exterior) for p in shapely.get_parts(joints.slab)]
    walls = multi(paper.drawn(round_it.difference(shapely.union_all(holes))))
    yield Fill(walls, wall.fill, "cut")
    yield from outline(walls, CUT, layer="outline")
    for part in shapely.get_parts(joints.slab):
        for hole in part.interiors:
            yield Fill(multi(paper.drawn(shapely.Polygon(hole))), wall.fill, "cut")


def _distances(
    joints: Joints, paper: OnPaper, around: Box, text: float, system: System
) -> Iterator[Mark]:
    """Yield a string below the plan and one to its left, where cuts run square to the sheet."""
    west, south, east, north = joints.slab.bounds
    xs = {round(float(c.coords[0][0]), 4) for c in joints.cuts if _runs(c, 0)}
    ys = {round(float(c.coords[0][1]), 4) for c in joints.cuts if _runs(c, 1)}
    if xs:
        chain = _chain([float(west), *sorted(xs), float(east)], paper, system)
        yield from across([chain], around.low, -1, text)
    if ys:
        chain = _chain([float(south), *sorted(ys), float(north)], paper, system)
        yield from upright([chain], around.left, -1, text)


def _runs(cut: shapely.LineString, axis: int) -> bool:
    """Whether a cut keeps its place along an axis of the sheet."""
    first, last = cut.coords[0], cut.coords[-1]
    return bool(abs(first[axis] - last[axis]) < _SQUARE_M)


def _chain(stops: list[float], paper: OnPaper, system: System) -> Chain:
    words = tuple(show_length(round(b - a, 3), system) for a, b in pairwise(stops))
    return Chain(tuple(map(paper.size, stops)), words)


def _remark(joints: Joints, system: System) -> str:
    slab = next(x for x in reversed(joints.area.floor.layers) if x.role == "slab")
    long, short = (show_length(round(side, 3), system) for side in joints.largest)
    deep = show_length(saw_depth(slab.thickness), system)
    apart = (
        " Heavy dashes: slab kept apart by a strip or board, full depth." if joints.apart else ""
    )
    return (
        f"Long dashes: cuts, {deep} deep in {show_length(slab.thickness, system)} of slab, within "
        f"the day of the pour. Largest panel {long} × {short}.{apart}"
    )
