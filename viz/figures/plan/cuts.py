"""Cutting lines: heavy ends, arrows the way one looks, bubbles that lead to the sections."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from geometry.plan.outline import multi
from viz.drawing.marks import Area, Fill, Line, Mark, Point
from viz.drawing.page import Box
from viz.figures.plan.bubbles import LAYER, bubble, toward
from viz.figures.plan.dashes import THICK_END, THIN, THIN_CHAIN
from viz.figures.plan.onpaper import OnPaper, unit
from viz.figures.plan.refs import SectionRef
from viz.style.lines import INK

# Heavy end of a cutting line, heavy arm at a jog, mm.
_END = 6.0
_JOG = 3.0
# A bubble with its arrow reaches so many radii from its middle.
_REACH = 1.5
_STEP = 1.5
_GAP = 1.5
_SQUARE = 0.02
# Size of the arrow at an end without a bubble; room beside a heavy stroke; mm.
_BARE = 2.2
_SPARE = 0.8
_FAR = 1e4

Floats = NDArray[np.float64]


def view_way(a: Point, b: Point) -> Point:
    """Return the way one looks at a cut from a to b: to the left of the way along it."""
    dx, dy = unit(np.subtract(b, a))
    return (float(-dy), float(dx))


@dataclass(frozen=True)
class End:
    """One end of a cutting line, mm. out: unit vector off the line. local: it lies in the house."""

    at: Point
    out: Point
    view: Point
    local: bool


def ends(points: Sequence[Point], house: BaseGeometry) -> tuple[End, End]:
    """Return both ends of a cutting line on paper."""
    legs = list(pairwise(points))
    ahead = unit(np.subtract(points[1], points[0]))
    # Legs square to the first are steps of the plane: one does not look at them.
    looked = [leg for leg in legs if abs(unit(np.subtract(leg[1], leg[0])) @ ahead) > _SQUARE]
    first, last = view_way(*looked[0]), view_way(*looked[-1])
    rows = ((points[0], points[1], first), (points[-1], points[-2], last))
    found = []
    for at, before, view in rows:
        out = unit(np.subtract(at, before))
        inside = house.covers(shapely.Point(at))
        found.append(End(at, (float(out[0]), float(out[1])), view, inside))
    return found[0], found[1]


def lines_of(refs: Sequence[SectionRef], house: BaseGeometry, paper: OnPaper) -> list[LineString]:
    """Return the cutting lines on paper, ends outside the house drawn out far."""
    found = []
    for ref in refs:
        points = [paper.point(p) for p in ref.points]
        start, end = ends(points, house)
        run = [_on(e, 0.0 if e.local else 200.0) for e in (start, end)]
        found.append(LineString([run[0], *points[1:-1], run[1]]))
    return found


def _on(end: End, far: float) -> Point:
    return (end.at[0] + end.out[0] * far, end.at[1] + end.out[1] * far)


def reserved(
    refs: Sequence[SectionRef], house: BaseGeometry, paper: OnPaper, solid: BaseGeometry,
    radius: float,
) -> list[BaseGeometry]:  # fmt: skip
    """Return what the heavy parts of cutting lines within the house take, before words do.

    solid: what a bubble within the house keeps off.
    """
    found: list[BaseGeometry] = []
    for ref in refs:
        points = [paper.point(p) for p in ref.points]
        both = ends(points, house)
        found += [LineString(jog.points).buffer(_SPARE) for jog in _jogs(points)]
        for end in (e for e in both if e.local):
            bare = _bare(end, both)
            tip = end.at if bare else _inside(end, solid, radius)
            found.append(_taken(end, tip, radius, bare))
    return found


def section_marks(
    refs: Sequence[SectionRef], house: BaseGeometry, paper: OnPaper, around: Box,
    solid: BaseGeometry, radius: float, text: float,
) -> Iterator[Mark]:  # fmt: skip
    """Yield the cutting lines, their bubbles outside a box and clear of one another.

    solid: as for `reserved`.
    """
    taken: list[BaseGeometry] = []
    for ref in refs:
        points = [paper.point(p) for p in ref.points]
        both = ends(points, house)
        tips = []
        for end in both:
            if _bare(end, both):
                tips.append(end.at)
            elif end.local:
                tips.append(_inside(end, solid, radius))
            else:
                tips.append(_outside(points, end, around, taken, radius))
        run = [tips[0], *points[1:-1], tips[1]]
        yield Line(tuple(run), THIN, dash=THIN_CHAIN, layer="section line")
        yield from _jogs(run)
        for end, tip in zip(both, tips, strict=True):
            yield from _end_marks(end, tip, radius, _bare(end, both))
            if not _bare(end, both):
                yield from bubble(tip, radius, ref, text)


def _bare(end: End, both: tuple[End, End]) -> bool:
    """Tell whether an end has no bubble: one in the house, where the other end has one."""
    return end.local and (end is both[1] or not both[1].local)


def _inside(end: End, solid: BaseGeometry, radius: float) -> Point:
    """Return the nearest place for a bubble on a line that starts within the house."""
    return _slid(end, _on(end, radius), [solid], radius)


def _outside(
    points: Sequence[Point], end: End, around: Box, taken: list[BaseGeometry], radius: float
) -> Point:
    """Return the nearest place for a bubble on a leg's line, outside the box and free."""
    start = np.asarray(points[1] if end.at == points[0] else points[-2])
    far = LineString((start, start + np.asarray(end.out) * _FAR))
    clear = radius + _END + _GAP
    box = shapely.box(around.left - clear, around.low - clear,
                      around.right + clear, around.high + clear)  # fmt: skip
    corners = shapely.get_coordinates(far.intersection(box))
    tip = end.at
    if len(corners):
        along = float(((corners - start) @ np.asarray(end.out)).max())
        x, y = start + np.asarray(end.out) * along
        tip = (float(x), float(y))
    return _slid(end, tip, taken, radius)


def _slid(end: End, first: Point, taken: list[BaseGeometry], radius: float) -> Point:
    """Return a place slid outward along a line until bubble and heavy end are free there."""
    tip = first
    while any(_taken(end, tip, radius, False).intersects(t) for t in taken):
        tip = (tip[0] + end.out[0] * _STEP, tip[1] + end.out[1] * _STEP)
    taken.append(_taken(end, tip, radius, False))
    return tip


def _taken(end: End, tip: Point, radius: float, bare: bool) -> BaseGeometry:
    """Return the room of an end: its arrow and bubble, and its heavy stroke."""
    disc = shapely.Point(tip).buffer((_BARE if bare else radius) * _REACH)
    return shapely.union_all([disc, LineString(_heavy(end, tip, radius, bare)).buffer(_SPARE)])


def _jogs(run: Sequence[Point]) -> Iterator[Line]:
    for before, corner, after in zip(run, run[1:], run[2:], strict=False):
        arms = [toward(corner, other, _JOG) for other in (before, after)]
        yield Line((arms[0], corner, arms[1]), THICK_END, layer=LAYER)


def _heavy(end: End, tip: Point, radius: float, bare: bool) -> tuple[Point, Point]:
    """Return where the heavy stroke of an end runs."""
    near = 0.0 if bare else radius
    (ax, ay), (bx, by) = (
        (tip[0] - end.out[0] * far, tip[1] - end.out[1] * far) for far in (near, near + _END)
    )
    return (ax, ay), (bx, by)


def _end_marks(end: End, tip: Point, radius: float, bare: bool) -> Iterator[Mark]:
    """Yield the heavy end and the arrow that looks at the cut. bare: without a bubble."""
    yield Line(_heavy(end, tip, radius, bare), THICK_END, layer=LAYER)
    yield Fill(_arrow(tip, end.view, _BARE if bare else radius, bare), INK, LAYER)


def _arrow(tip: Point, view: Point, radius: float, bare: bool) -> Area:
    """Return the arrow under a bubble: a half square whose sides touch the circle."""
    at, way = np.asarray(tip), np.asarray(view)
    aside = np.array((-way[1], way[0]))
    wide = radius * np.sqrt(2)
    whole = Polygon((at + way * wide, at + aside * wide, at - aside * wide))
    return whole if bare else multi(whole.difference(shapely.Point(tip).buffer(radius, 32)))
