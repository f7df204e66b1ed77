"""Compound marks taken apart into simple ones, so that every writer draws the same."""

from collections.abc import Iterable, Iterator

from shapely import Polygon

from viz.drawing.hatches import hatch_strokes
from viz.drawing.marks import Area, Circle, Fill, Hatch, Leader, LevelSymbol, Line, Mark, Simple
from viz.style.lines import INK, PAPER, SEEN

_DOT_RADIUS = 0.6
_HALO = 0.35


def simple(marks: Iterable[Mark]) -> Iterator[Simple]:
    """Yield the marks with hatches, leaders and level symbols drawn out."""
    for mark in marks:
        match mark:
            case Hatch():
                yield from hatch_strokes(mark)
            case Leader():
                yield from _leader(mark)
            case LevelSymbol():
                yield from _level_symbol(mark)
            case _:
                yield mark


def _leader(mark: Leader) -> Iterator[Simple]:
    start = mark.points[0]
    yield Line(mark.points, mark.weight + 2 * _HALO, PAPER, layer=mark.layer)
    yield Circle(start, _DOT_RADIUS + _HALO, 0.0, fill=PAPER, layer=mark.layer)
    yield Line(mark.points, mark.weight, layer=mark.layer)
    yield Circle(start, _DOT_RADIUS, 0.0, fill=INK, layer=mark.layer)


def _level_symbol(mark: LevelSymbol) -> Iterator[Simple]:
    (x, y), half = mark.at, mark.size / 2
    corners = ((x, y), (x - half, y + mark.size * 0.9), (x + half, y + mark.size * 0.9))
    if mark.filled:
        yield Fill(Polygon(corners), INK, mark.layer)
    yield Line((*corners, corners[0]), SEEN, layer=mark.layer)


def outline(shape: Area, weight: float, colour: str = INK, layer: str = "") -> tuple[Line, ...]:
    """Return the edges of an area as closed lines."""
    polygons = [shape] if isinstance(shape, Polygon) else list(shape.geoms)
    rings = [ring for p in polygons for ring in (p.exterior, *p.interiors)]
    return tuple(
        Line(tuple((x, y) for x, y, *_ in ring.coords), weight, colour, layer=layer)
        for ring in rings
    )
