"""The stage's name in a free place of the picture, an arrow to what is laid, its thickness."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, MultiPolygon, Polygon
from shapely import Point as Spot

from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Fill, Line, Mark, Point, Text
from viz.drawing.page import Box
from viz.style.lines import INK, PAPER
from viz.style.text import DESCENT

_PAD = 1.6
_LEAD = 1.35
_STEP = 2.0
_SHAFT = 1.3
_HEAD = (5.0, 2.2)
_SMALL_HEAD = (3.0, 1.3)
_HALO = 1.0
# A part thicker than this on paper holds the arrows of its thickness, mm.
_HOLDS = 12.0
_TAIL = 7.0
# Heights of a name to try, of the one that is asked for.
_SHARES = (1.0, 0.85, 0.72)
# The arrows of the thickness stand so far beside the pointing arrow.
_BESIDE = 12.0


@dataclass(frozen=True)
class Naming:
    """The words of what is laid now, and the height of their capitals, mm.

    short: what is said where there is no room for all of it.
    """

    words: str
    text: float
    short: str = ""

    def tries(self) -> Iterator["Naming"]:
        """Yield the naming, then shorter ones, broken into two lines, and smaller."""
        short = self.short or self.words
        for share in _SHARES:
            text = self.text * share
            for words in dict.fromkeys((self.words, short, _halved(short, text))):
                yield Naming(words, text)

    @property
    def lines(self) -> list[str]:
        """The lines of the words."""
        return self.words.splitlines()


def pointing_marks(
    naming: Naming, shape: MultiPolygon, taken: shapely.Geometry, box: Box, measured: bool
) -> Iterator[Mark]:
    """Yield the name with its arrow, and the arrows of the thickness where it is measured.

    shape: of what is laid now. taken: where no text may stand.
    """
    if shape.is_empty:
        return
    target = _target(shape, box)
    arrows = tuple(_thickness(shape, target, box)) if measured else ()
    beside = [
        LineString(mark.points).buffer(_SMALL_HEAD[1] + _HALO)
        for mark in arrows
        if isinstance(mark, Line)
    ]
    naming, place = _placed(naming, target, shapely.union_all([taken, *beside]), box)
    yield from _arrow(_start(place, target), target, _SHAFT, _HEAD)
    yield Fill(_room(place), PAPER, "labels")
    for number, line in enumerate(reversed(naming.lines)):
        y = place.low + _PAD + naming.text * (DESCENT + number * _LEAD)
        yield Text((place.left + _PAD, y), line, naming.text, bold=True, layer="labels")
    yield from arrows


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


def _placed(naming: Naming, target: Point, taken: shapely.Geometry, box: Box) -> tuple[Naming, Box]:
    """Return the longest and largest name that finds a free place, and that place."""
    shapely.prepare(taken)
    for one in naming.tries():
        place = _free(one, target, taken, box)
        if place:
            return one, place
    wide, high = _size(one)
    return one, Box(box.left + 1, box.high - high, box.left + 1 + wide, box.high)


def _size(naming: Naming) -> tuple[float, float]:
    lines = naming.lines
    wide = max(text_width(line, naming.text, bold=True) for line in lines) + 2 * _PAD
    return wide, naming.text * (1 + DESCENT + (len(lines) - 1) * _LEAD) + 2 * _PAD


def _halved(words: str, text: float) -> str:
    """Return words in two lines of like width; as they are where they are one word."""
    whole = text_width(words, text, bold=True)
    lines = wrap(words, 0.62 * whole, text, bold=True)
    return "\n".join(lines) if len(lines) == 2 else words


def _free(naming: Naming, target: Point, taken: shapely.Geometry, box: Box) -> Box | None:
    """Return the free place for a name that is nearest to what it names, from above."""
    wide, high = _size(naming)
    x, y = np.meshgrid(
        np.arange(box.left + 1, box.right - wide, _STEP),
        np.arange(box.low + 1, box.high - high, _STEP),
    )
    free = ~shapely.intersects(taken, shapely.box(x, y, x + wide, y + high))
    corners = zip(x[free].tolist(), y[free].tolist(), strict=True)
    places = [Box(left, low, left + wide, low + high) for left, low in corners]
    if not places:
        return None
    return places[int(np.argmin(_costs(places, target, taken)))]


def _costs(places: Sequence[Box], target: Point, taken: shapely.Geometry) -> NDArray[np.float64]:
    """Return how far each name stands from its thing; over others, or under it, is farther."""
    starts = np.array([_start(place, target) for place in places])
    lines = shapely.linestrings(np.stack((starts, np.broadcast_to(target, starts.shape)), axis=1))
    away = shapely.length(lines)
    crossed = shapely.length(shapely.intersection(lines, taken))
    below = starts[:, 1] < target[1]
    return np.asarray(away + 0.5 * crossed + 25.0 * (away < _TAIL) + 15.0 * below)


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
