"""Thin lines stop short of words: they are cut where a text stands on them."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

import shapely
from shapely import LineString, STRtree
from shapely.geometry.base import BaseGeometry

from viz.drawing.lettering import text_box
from viz.drawing.marks import Circle, Leader, Line, Mark, Text
from viz.figures.dimensions import LAYER
from viz.figures.plan.onpaper import runs
from viz.style.lines import INK

_AIR = 0.5
# Pieces shorter than this are left out, mm.
_CRUMB = 0.6
_DOT = 0.6


def box_of(text: Text, air: float = 0.0) -> BaseGeometry:
    """Return the room of a text as a shape, with air all round.

    Figures of dimensions have nothing below their baseline, and stand close to their string.
    """
    box = text_box(text)
    low = text.at[1] if text.layer == LAYER else box.low
    return shapely.box(box.left - air, low - air, box.right + air, box.high + air)


def broken(
    lines: Iterable[Line],
    texts: Sequence[Text],
    air: float = _AIR,
    more: Sequence[BaseGeometry] = (),
) -> Iterator[Mark]:
    """Yield the lines, cut where texts stand, with so much air, and at more shapes."""
    rooms = [*(box_of(text, air) for text in texts), *more]
    tree = STRtree(rooms)
    for line in lines:
        shape = LineString(line.points)
        met = tree.query(shape, "intersects")
        if not len(met):
            yield line
            continue
        rest = shape.difference(shapely.union_all([rooms[n] for n in met]))
        for run in runs(rest):
            if run.length >= _CRUMB:
                yield replace(line, points=tuple((float(x), float(y)) for x, y in run.coords))


def led(leaders: Iterable[Leader], texts: Sequence[Text]) -> Iterator[Mark]:
    """Yield leaders; one that found no way clear of words passes under them as a broken line."""
    rooms = [box_of(text) for text in texts]
    tree = STRtree(rooms)
    for leader in leaders:
        if not len(tree.query(LineString(leader.points), "intersects")):
            yield leader
            continue
        yield Circle(leader.points[0], _DOT, 0.0, fill=INK, layer=leader.layer)
        yield from broken([Line(leader.points, leader.weight, layer=leader.layer)], texts, 0.3)
