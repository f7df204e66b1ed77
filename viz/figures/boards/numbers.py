"""Numbers on pieces: in the middle where they fit, else beside with a leader."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, pi, sin

import shapely
from shapely import Polygon, box
from shapely.geometry.base import BaseGeometry
from shapely.ops import polylabel

from geometry.plan.outline import polygons
from viz.drawing.fonts import text_width
from viz.drawing.marks import Leader, Mark, Text
from viz.style.text import DESCENT

_AIR = 0.8
_TURNS = 24
_REACHES = (4.0, 5.5, 7.0, 9.0, 11.0, 14.0, 18.0, 23.0)


@dataclass(frozen=True, eq=False)
class Numbered:
    """A number in its place: its mark, the leader to its piece if it has one, its room, mm."""

    text: Text
    leader: Leader | None
    room: Polygon

    @property
    def marks(self) -> tuple[Mark, ...]:
        """Leader and number."""
        return (self.leader, self.text) if self.leader else (self.text,)


def numbers(
    shapes: Sequence[tuple[str, BaseGeometry]], whole: BaseGeometry, text: float, bold: bool = True
) -> Iterator[Numbered]:
    """Yield each shape's words in the middle of it, or beside it where they do not fit.

    shapes: words and outlines, mm. whole: all that is drawn; a number beside stands out of it
    where it can.
    """
    placed, late = [], []
    for words, shape in shapes:
        largest = max(polygons(shape), key=lambda p: float(p.area))
        spot = _middle(largest, words, text, bold)
        if spot is None:
            late.append((words, largest))
        else:
            placed.append(spot)
            yield spot
    taken = [p.room for p in placed]
    for words, shape in late:
        beside = _beside(words, shape, whole, taken, text, bold)
        taken.append(beside.room)
        yield beside


def _room(x: float, y: float, words: str, text: float, bold: bool) -> Polygon:
    half, high = text_width(words, text, bold) / 2 + _AIR, text / 2 + _AIR
    return box(x - half, y - high - DESCENT * text * 0.3, x + half, y + high)


def _middle(shape: Polygon, words: str, text: float, bold: bool) -> Numbered | None:
    centre = shape.centroid
    for spot in (centre, polylabel(shape, 0.3)):
        room = _room(spot.x, spot.y, words, text, bold)
        if shape.contains(room):
            return _numbered(spot.x, spot.y, words, text, bold, None)
    return None


def _numbered(
    x: float, y: float, words: str, text: float, bold: bool, leader: Leader | None
) -> Numbered:
    mark = Text((x, y - text / 2), words, text, bold, "middle", layer="labels")
    return Numbered(mark, leader, _room(x, y, words, text, bold))


def _beside(
    words: str, shape: Polygon, whole: BaseGeometry, taken: Sequence[Polygon], text: float,
    bold: bool,
) -> Numbered:  # fmt: skip
    """Return the nearest free place, out of all shapes before one on a neighbour."""
    start = shape.representative_point()
    tree = shapely.STRtree(list(taken)) if taken else None
    best: tuple[float, float, float] | None = None
    for reach in _REACHES:
        for turn in range(_TURNS):
            angle = 2 * pi * turn / _TURNS
            x, y = start.x + reach * cos(angle), start.y + reach * sin(angle)
            room = _room(x, y, words, text, bold)
            line = shapely.LineString(((start.x, start.y), (x, y)))
            if tree is not None and len(tree.query(shapely.union_all([room, line]), "intersects")):
                continue
            cost = reach + (20.0 if room.intersects(whole) else 0.0)
            if best is None or cost < best[0]:
                best = (cost, x, y)
    _, x, y = best or (0.0, start.x, start.y)
    edge = _edge(start.x, start.y, x, y, _room(x, y, words, text, bold))
    return _numbered(x, y, words, text, bold, Leader(((start.x, start.y), edge), layer="leaders"))


def _edge(x0: float, y0: float, x1: float, y1: float, room: Polygon) -> tuple[float, float]:
    """Return where the line to the middle of a number meets its room."""
    line = shapely.LineString(((x0, y0), (x1, y1)))
    rest = line.difference(room)
    if rest.is_empty:
        return x0, y0
    end = rest.coords[-1]
    return float(end[0]), float(end[1])
