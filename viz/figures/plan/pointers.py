"""Marks that point to other drawings: cutting lines with their bubbles, circles of details."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from viz.drawing.fonts import text_width
from viz.drawing.marks import Circle, Fill, Line, Mark, Point, Text
from viz.drawing.page import Box
from viz.figures.plan.dashes import HIDDEN, THICK_END, THIN, THIN_CHAIN
from viz.figures.plan.free import Places, Wish
from viz.figures.plan.onpaper import OnPaper, ring_line, unit
from viz.figures.plan.refs import DetailRef, SectionRef
from viz.style.lines import INK, PAPER, SEEN

LAYER = "marks"
# Heavy end of a cutting line, heavy arm at a jog, least radius of a detail's circle; mm.
_END = 6.0
_JOG = 3.0
_LEAST = 3.0
# A bubble with its arrow reaches so many radii from its middle.
_REACH = 1.5
_STEP = 1.5
_FAR = 1e4

Floats = NDArray[np.float64]
Ref = SectionRef | DetailRef


def bubble_radius(refs: Sequence[Ref], text: float) -> float:
    """Return the radius of all bubbles that lead to other sheets, mm."""
    wide = [text_width(words, text, True) for r in refs for words in (r.number, r.sheet)]
    return float(np.hypot(max(wide, default=0.0) / 2, 1.5 * text)) + 0.5


def bubble(centre: Point, radius: float, ref: Ref, text: float) -> Iterator[Mark]:
    """Yield a round bubble: the drawing's number over its sheet."""
    x, y = centre
    yield Circle(centre, radius, SEEN, fill=PAPER, layer=LAYER)
    yield Line(((x - radius, y), (x + radius, y)), SEEN, layer=LAYER)
    yield Text((x, y + 0.4 * text), ref.number, text, True, "middle", layer=LAYER)
    yield Text((x, y - 1.45 * text), ref.sheet, text, False, "middle", layer=LAYER)


def view_way(a: Point, b: Point) -> Point:
    """Return the way one looks at a cut from a to b: to the left of the way along it."""
    dx, dy = unit(np.subtract(b, a))
    return (float(-dy), float(dx))


@dataclass(frozen=True)
class End:
    """One end of a cutting line. at: mm. out: unit vector off the line's end. local: in the house."""

    at: Point
    out: Point
    view: Point
    local: bool


def ends(points: Sequence[Point], house: BaseGeometry) -> tuple[End, End]:
    """Return both ends of a cutting line on paper."""
    first, last = view_way(points[0], points[1]), view_way(points[-2], points[-1])
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


def section_marks(
    refs: Sequence[SectionRef],
    house: BaseGeometry,
    paper: OnPaper,
    around: Box,
    taken: list[BaseGeometry],
    radius: float,
    text: float,
) -> Iterator[Mark]:
    """Yield the cutting lines with their bubbles outside a box, clear of all that is taken.

    taken: discs and boxes on paper; the bubbles are added to it.
    """
    for ref in refs:
        points = [paper.point(p) for p in ref.points]
        both = ends(points, house)
        tips = [e.at if e.local else _outside(points, e, around, taken, radius) for e in both]
        if both[0].local and both[1].local:
            tips[0] = _slid(points[0], both[0].out, radius * _REACH, taken, radius)
        run = [tips[0], *points[1:-1], tips[1]]
        yield Line(tuple(run), THIN, dash=THIN_CHAIN, layer="section line")
        yield from _jogs(run)
        for end, tip in zip(both, tips, strict=True):
            bare = end.local and (end is both[1] or not both[1].local)
            yield from _end_marks(end, tip, radius, bare)
            if not bare:
                yield from bubble(tip, radius, ref, text)


def _outside(
    points: Sequence[Point], end: End, around: Box, taken: list[BaseGeometry], radius: float
) -> Point:
    """Return the nearest place for a bubble on a leg's line, outside the box and free."""
    start = np.asarray(points[1] if end.at == points[0] else points[-2])
    box = shapely.box(around.left, around.low, around.right, around.high)
    far = LineString((start, np.asarray(start) + np.asarray(end.out) * _FAR))
    clear = radius + _END
    inside = far.intersection(box.buffer(clear, join_style="mitre"))
    reach = inside.bounds if not inside.is_empty else None
    if reach is None:
        return _slid(end.at, end.out, radius * _REACH, taken, radius)
    corners = shapely.get_coordinates(inside)
    along = (corners - start) @ np.asarray(end.out)
    tip = start + np.asarray(end.out) * float(along.max())
    return _slid((float(tip[0]), float(tip[1])), end.out, 0.0, taken, radius)


def _slid(at: Point, out: Point, first: float, taken: list[BaseGeometry], radius: float) -> Point:
    """Return a place slid outward along a line until the bubble there is free."""
    place = np.asarray(at) + np.asarray(out) * first
    while any(t.distance(shapely.Point(place)) < radius * _REACH for t in taken):
        place = place + np.asarray(out) * _STEP
    taken.append(shapely.Point(place).buffer(radius * _REACH))
    return (float(place[0]), float(place[1]))


def _jogs(run: Sequence[Point]) -> Iterator[Line]:
    for before, corner, after in zip(run, run[1:], run[2:], strict=False):
        arms = [_toward(corner, other, _JOG) for other in (before, after)]
        yield Line((arms[0], corner, arms[1]), THICK_END, layer=LAYER)


def _toward(start: Point, end: Point, length: float) -> Point:
    way = unit(np.subtract(end, start)) * length
    return (start[0] + float(way[0]), start[1] + float(way[1]))


def _end_marks(end: End, tip: Point, radius: float, bare: bool) -> Iterator[Mark]:
    """Yield the heavy end and the arrow that looks at the cut. bare: without a bubble."""
    back = (-end.out[0], -end.out[1])
    near = 0.0 if bare else radius
    ends = tuple((tip[0] + back[0] * far, tip[1] + back[1] * far) for far in (near, near + _END))
    yield Line(ends, THICK_END, layer=LAYER)
    yield Fill(_arrow(tip, end.view, 2.2 if bare else radius), INK, LAYER)


def _arrow(tip: Point, view: Point, radius: float) -> Polygon:
    """Return the arrow under a bubble: a half square whose sides touch the circle."""
    at, way = np.asarray(tip), np.asarray(view)
    aside = np.array((-way[1], way[0]))
    wide = radius * np.sqrt(2)
    return Polygon((at + way * wide, at + aside * wide, at - aside * wide))


def detail_rings(refs: Sequence[DetailRef], paper: OnPaper) -> list[LineString]:
    """Return the circles of details on paper."""
    return [ring_line(paper.point(r.at), paper.size(r.radius_m, _LEAST)) for r in refs]


def detail_marks(
    refs: Sequence[DetailRef], paper: OnPaper, places: Places, radius: float, text: float
) -> Iterator[Mark]:
    """Yield dashed circles, each with a bubble in a free place."""
    for ref, ring in zip(refs, detail_rings(refs, paper), strict=True):
        at, size = paper.point(ref.at), paper.size(ref.radius_m, _LEAST)
        around = 2 * radius
        place = places.put(Wish(at, around, around, away=size + 2.5, start=size))
        box = place.box
        middle = ((box.left + box.right) / 2, (box.low + box.high) / 2)
        points = tuple((float(x), float(y)) for x, y in ring.coords)
        yield Line(points, SEEN, dash=HIDDEN, layer=LAYER)
        yield Line((_toward(at, middle, size), middle), SEEN, layer=LAYER)
        yield from bubble(middle, radius, ref, text)
