"""The stage's name in a free place of the picture, an arrow to what is laid, its thickness."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from math import hypot

import numpy as np
import shapely
from shapely import LineString, MultiPolygon, Polygon
from shapely import Point as Spot

from viz.drawing.fonts import text_width
from viz.drawing.marks import Fill, Line, Mark, Point, Text
from viz.drawing.page import Box
from viz.style.lines import INK, PAPER
from viz.style.text import DESCENT

_PAD = 1.6
_STEP = 2.0
_SHAFT = 1.3
_HEAD = (5.0, 2.2)
_SMALL_HEAD = (3.0, 1.3)
_HALO = 1.0
# A part thicker than this on paper holds the arrows of its thickness, mm.
_HOLDS = 12.0
_TAIL = 7.0
# The arrows of the thickness stand so far beside the pointing arrow.
_BESIDE = 12.0


@dataclass(frozen=True)
class Naming:
    """The words of what is laid now, and the height of their capitals, mm."""

    words: str
    text: float


def pointing_marks(
    naming: Naming, shape: MultiPolygon, taken: shapely.Geometry, box: Box, measured: bool
) -> Iterator[Mark]:
    """Yield the name with its arrow, and the arrows of the thickness where it is measured.

    shape: of what is laid now. taken: where no text may stand.
    """
    if shape.is_empty:
        return
    target = _target(shape, box)
    place = _free(naming, target, taken, box)
    yield from _arrow(_start(place, target), target, _SHAFT, _HEAD)
    yield Fill(_room(place), PAPER, "labels")
    at = (place.left + _PAD, place.low + _PAD + DESCENT * naming.text)
    yield Text(at, naming.words, naming.text, bold=True, layer="labels")
    if measured:
        yield from _thickness(shape, target, box)


def _target(shape: MultiPolygon, box: Box) -> Point:
    """Return a place on the upper part of the largest piece, clear of the picture's sides."""
    piece = max(shape.geoms, key=lambda p: p.area)
    left, _, right, _ = piece.bounds
    inset = min(8.0, (right - left) / 4)
    middle = min(max((left + right) / 2, box.left + 12), box.right - 12)
    for x in (middle, *np.linspace(left + inset, right - inset, 9)):
        met = _spans(piece, float(x))
        if met:
            low, high = max(met, key=lambda span: span[1] - span[0])
            return float(x), high - min(3.0, (high - low) / 2)
    spot = piece.representative_point()
    return spot.x, spot.y


def _spans(shape: Polygon | MultiPolygon, x: float) -> list[tuple[float, float]]:
    _, low, _, high = shape.bounds
    met = shape.intersection(LineString(((x, low - 1), (x, high + 1))))
    lines = [p for p in shapely.get_parts(met) if isinstance(p, LineString)]
    return [(p.bounds[1], p.bounds[3]) for p in lines if p.length > 0]


def _free(naming: Naming, target: Point, taken: shapely.Geometry, box: Box) -> Box:
    """Return the free place for the name that is nearest to what it names, from above."""
    wide = text_width(naming.words, naming.text, bold=True) + 2 * _PAD
    high = naming.text * (1 + DESCENT) + 2 * _PAD
    shapely.prepare(taken)
    lefts = np.arange(box.left + 1, max(box.right - wide, box.left + 1.1), _STEP)
    lows = np.arange(box.low + 1, box.high - high, _STEP)
    places = [Box(x, y, x + wide, y + high) for x, y in product(lefts.tolist(), lows.tolist())]
    free = [p for p in places if not taken.intersects(_room(p))]
    if not free:
        low = box.high - high
        return Box(box.left + 1, low, box.left + 1 + wide, box.high)
    return min(free, key=lambda p: _cost(p, target, taken))


def _cost(place: Box, target: Point, taken: shapely.Geometry) -> float:
    """Return how far a name stands from its thing; over others, or under it, counts as farther."""
    start = _start(place, target)
    away = hypot(start[0] - target[0], start[1] - target[1])
    crossed = LineString((start, target)).intersection(taken).length
    close, below = away < _TAIL, start[1] < target[1]
    return float(away + 0.5 * crossed + 25.0 * close + 15.0 * below)


def _start(place: Box, target: Point) -> Point:
    """Return where the arrow leaves the name: at the side nearest to its end."""
    if place.left + 4 <= target[0] <= place.right - 4:
        return target[0], place.low if target[1] < place.low else place.high
    x = place.left if target[0] < place.left else place.right
    if place.left <= target[0] <= place.right:
        x = (place.left + place.right) / 2
        return x, place.low if target[1] < place.low else place.high
    return x, (place.low + place.high) / 2


def _room(place: Box) -> Polygon:
    return shapely.box(place.left, place.low, place.right, place.high)


def _arrow(start: Point, end: Point, weight: float, head: tuple[float, float]) -> Iterator[Mark]:
    """Yield an arrow with a white edge that keeps it clear of hatches."""
    way = np.subtract(end, start)
    length = float(np.hypot(*way))
    if length < 1e-6:
        return
    along = way / length
    side = np.array((-along[1], along[0]))
    neck = np.array(end) - min(head[0], length) * along
    corners = [np.array(end), neck + head[1] * side, neck - head[1] * side]
    tip = Polygon([tuple(c) for c in corners])
    shaft = (start, (float(neck[0]), float(neck[1])))
    yield Line(shaft, weight + 2 * _HALO, PAPER, layer="labels")
    yield Fill(tip.buffer(_HALO, join_style="mitre"), PAPER, "labels")
    yield Line(shaft, weight, INK, layer="labels")
    yield Fill(tip, INK, "labels")


def _thickness(shape: MultiPolygon, target: Point, box: Box) -> Iterator[Mark]:
    """Yield two arrows that meet the top and the bottom: within a thick part, else from outside."""
    for x in (target[0] + _BESIDE, target[0] - _BESIDE):
        met = _spans(shape, x) if box.left + 6 < x < box.right - 6 else []
        if met:
            low, high = max(met, key=lambda span: span[1] - span[0])
            if high - low >= _HOLDS:
                middle = (x, (low + high) / 2)
                yield from _arrow(middle, (x, high), 0.6, _SMALL_HEAD)
                yield from _arrow(middle, (x, low), 0.6, _SMALL_HEAD)
            else:
                yield from _arrow((x, high + _TAIL), (x, high), 0.6, _SMALL_HEAD)
                yield from _arrow((x, low - _TAIL), (x, low), 0.6, _SMALL_HEAD)
            return


def taken_by(shapes: Sequence[MultiPolygon], levels: Sequence[float], box: Box) -> shapely.Geometry:
    """Return where no text may stand: on what is drawn and on the lines of levels, mm."""
    lines = [
        shapely.box(box.left, y - 1.2, box.right, y + 1.2) for y in levels if box.low < y < box.high
    ]
    return shapely.union_all([*(s.buffer(0.8) for s in shapes), *lines, Spot(-1e4, 0).buffer(1e-3)])
