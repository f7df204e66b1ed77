"""Cutting lines: heavy ends, arrows the way one looks, names that lead to the sections."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np
import shapely
from shapely import LineString
from shapely.geometry.base import BaseGeometry

from viz.drawing.marks import Line, Mark, Point
from viz.drawing.page import Box
from viz.figures.plan.bubbles import LAYER, toward
from viz.figures.plan.dashes import THICK_END, THIN, THIN_CHAIN
from viz.figures.plan.heads import SPARE, End, Head, bare_marks, bare_taken
from viz.figures.plan.onpaper import OnPaper, unit
from viz.figures.plan.refs import SectionRef

# Heavy arm at a jog; heads slide by so much; mm.
_JOG = 3.0
_STEP = 1.5
_SQUARE = 0.02
_FAR = 1e4


def view_way(a: Point, b: Point) -> Point:
    """Return the way one looks at a cut from a to b: to the left of the way along it."""
    dx, dy = unit(np.subtract(b, a))
    return (float(-dy), float(dx))


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
        run = [e.on(0.0 if e.local else 200.0) for e in (start, end)]
        found.append(LineString([run[0], *points[1:-1], run[1]]))
    return found


def reserved(
    refs: Sequence[SectionRef], house: BaseGeometry, paper: OnPaper, solid: BaseGeometry,
    head: Head,
) -> list[BaseGeometry]:  # fmt: skip
    """Return what the heavy parts of cutting lines within the house take, before words do.

    solid: what a head within the house keeps off.
    """
    found: list[BaseGeometry] = []
    for ref in refs:
        points = [paper.point(p) for p in ref.points]
        both = ends(points, house)
        found += [LineString(jog.points).buffer(SPARE) for jog in _jogs(points)]
        for end in (e for e in both if e.local):
            if _bare(end, both):
                found.append(bare_taken(end))
            else:
                found.append(head.taken(end, _inside(end, solid, head)))
    return found


def section_marks(
    refs: Sequence[SectionRef], house: BaseGeometry, paper: OnPaper, around: Box,
    solid: BaseGeometry, head: Head, things: Sequence[BaseGeometry] = (),
) -> Iterator[Mark]:  # fmt: skip
    """Yield the cutting lines, their heads outside a box and clear of one another.

    solid: as for `reserved`. things: what heads outside keep off besides.
    """
    taken = list(things)
    for ref in refs:
        points = [paper.point(p) for p in ref.points]
        both = ends(points, house)
        heads = _heads(points, both, around, taken, head)
        tips = []
        for end, own in zip(both, heads, strict=True):
            if _bare(end, both):
                tips.append(end.at)
            elif end.local:
                tips.append(_inside(end, solid, own))
            else:
                tips.append(_outside(points, end, around, taken, own))
        run = [tips[0], *points[1:-1], tips[1]]
        yield Line(tuple(run), THIN, dash=THIN_CHAIN, layer="section line")
        yield from _jogs(run)
        for end, tip, own in zip(both, tips, heads, strict=True):
            yield from bare_marks(end) if _bare(end, both) else own.marks(end, tip, ref)


def _heads(
    points: Sequence[Point], both: tuple[End, End], around: Box, taken: Sequence[BaseGeometry],
    head: Head,
) -> tuple[Head, Head]:  # fmt: skip
    """Return the head of each end: both named, or the one whose name widens the plan least."""
    if head.unnamed is None or any(end.local for end in both):
        return head, head
    whole = shapely.union_all([shapely.box(*t.bounds) for t in taken]).envelope
    grown = []
    for end in both:
        room = head.taken(end, _outside(points, end, around, list(taken), head))
        grown.append(_girth(shapely.union(whole, room)) - _girth(whole))
    return (head, head.unnamed) if grown[0] <= grown[1] else (head.unnamed, head)


def _girth(shape: BaseGeometry) -> float:
    """Return the width and the height of a shape together, mm."""
    left, low, right, high = shape.bounds
    return float(right - left + high - low)


def _bare(end: End, both: tuple[End, End]) -> bool:
    """Tell whether an end has no head: one in the house, where the other end has one."""
    return end.local and (end is both[1] or not both[1].local)


def _inside(end: End, solid: BaseGeometry, head: Head) -> Point:
    """Return the nearest place for a head on a line that starts within the house."""
    return _slid(end, end.on(head.before), [solid], head)


def _outside(
    points: Sequence[Point], end: End, around: Box, taken: list[BaseGeometry], head: Head
) -> Point:
    """Return the nearest place for a head on a leg's line, outside the box and free."""
    start = np.asarray(points[1] if end.at == points[0] else points[-2])
    far = LineString((start, start + np.asarray(end.out) * _FAR))
    clear = head.clear
    box = shapely.box(around.left - clear, around.low - clear,
                      around.right + clear, around.high + clear)  # fmt: skip
    corners = shapely.get_coordinates(far.intersection(box))
    tip = end.at
    if len(corners):
        along = float(((corners - start) @ np.asarray(end.out)).max())
        x, y = start + np.asarray(end.out) * along
        tip = (float(x), float(y))
    return _slid(end, tip, taken, head)


def _slid(end: End, first: Point, taken: list[BaseGeometry], head: Head) -> Point:
    """Return a place slid outward along a line until a head is free there."""
    tip, room = first, head.taken(end, first)
    while shapely.intersects(room, taken).any():
        tip = (tip[0] + end.out[0] * _STEP, tip[1] + end.out[1] * _STEP)
        room = head.taken(end, tip)
    taken.append(room)
    return tip


def _jogs(run: Sequence[Point]) -> Iterator[Line]:
    for before, corner, after in zip(run, run[1:], run[2:], strict=False):
        arms = [toward(corner, other, _JOG) for other in (before, after)]
        yield Line((arms[0], corner, arms[1]), THICK_END, layer=LAYER)
