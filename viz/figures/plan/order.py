"""The order in which a plan's marks are drawn, and what they cover."""

from collections.abc import Iterator, Sequence

import shapely
from shapely import LineString
from shapely.geometry.base import BaseGeometry

from viz.drawing.marks import Circle, Fill, Leader, Line, Mark, Text
from viz.figures.plan.breaks import box_of, broken, led
from viz.style.lines import CUT


def covered(mark: Mark) -> BaseGeometry | None:
    """Return what a mark covers, roughly."""
    match mark:
        case Text():
            return box_of(mark)
        case Line() | Leader():
            return LineString(mark.points)
        case Circle():
            return shapely.Point(mark.centre).buffer(mark.radius)
        case Fill():
            return mark.shape
        case _:
            return None


# Lines that stop short of words, if they are thin.
_THIN = ("outline", "dimensions", "grid", "section line", "dig", "band")
_UNDER = ("band", "cut", "hatch")


def in_order(drawn: Sequence[Mark], signs: Sequence[BaseGeometry] = ()) -> Iterator[Mark]:
    """Yield the marks, thin lines cut at words and signs, words on top of everything."""
    texts = [m for m in drawn if isinstance(m, Text)]
    thin = [m for m in drawn if isinstance(m, Line) and m.layer in _THIN and m.weight < CUT]
    leaders = [m for m in drawn if isinstance(m, Leader)]
    done = {id(m) for m in (*texts, *thin, *leaders)}
    rest = [m for m in drawn if id(m) not in done]
    yield from (m for m in rest if m.layer in _UNDER)
    yield from broken(thin, texts, more=signs)
    yield from (m for m in rest if m.layer not in _UNDER)
    yield from led(leaders, texts)
    yield from texts
