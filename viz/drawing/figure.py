"""A figure: marks to scale in a frame of their own, which takes its place on a sheet later."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

import numpy as np
import shapely

from viz.drawing.lettering import text_box
from viz.drawing.marks import (
    Area,
    Circle,
    Fill,
    Hatch,
    Leader,
    LevelSymbol,
    Line,
    Mark,
    Point,
    Strokes,
    Text,
)
from viz.drawing.page import Box
from viz.drawing.scale import Scale


@dataclass(frozen=True)
class Figure:
    """Marks in millimetres of paper, the box they fill, and what stands under them.

    name: part of a file name. scale: None for tables and words. remark: a line under the title.
    """

    name: str
    title: str
    marks: tuple[Mark, ...]
    box: Box
    scale: Scale | None = None
    remark: str = ""

    def at(self, left: float, low: float) -> "Figure":
        """Return the figure moved so that its box has its lower left corner here."""
        dx, dy = left - self.box.left, low - self.box.low
        box = Box(left, low, left + self.box.width, low + self.box.height)
        return replace(self, marks=tuple(moved(self.marks, dx, dy)), box=box)


def figure(
    name: str, title: str, marks: Iterable[Mark], scale: Scale | None = None, remark: str = ""
) -> Figure:
    """Return marks as a figure in the box they fill."""
    kept = tuple(marks)
    return Figure(name, title, kept, extent(kept), scale, remark)


def extent(marks: Iterable[Mark]) -> Box:
    """Return the box around all marks. Raises ValueError without any."""
    boxes = [_box(mark) for mark in marks]
    lefts, lows, rights, highs = zip(
        *((b.left, b.low, b.right, b.high) for b in boxes), strict=True
    )
    return Box(min(lefts), min(lows), max(rights), max(highs))


def _box(mark: Mark) -> Box:
    match mark:
        case Text():
            return text_box(mark)
        case Fill() | Hatch():
            return Box(*mark.shape.bounds)
        case Circle():
            (x, y), r = mark.centre, mark.radius
            return Box(x - r, y - r, x + r, y + r)
        case LevelSymbol():
            (x, y), half = mark.at, mark.size / 2
            return Box(x - half, y, x + half, y + mark.size)
        case Strokes():
            return _around(p for line in mark.lines for p in line)
        case Line() | Leader():
            return _around(mark.points)


def _around(points: Iterable[Point]) -> Box:
    xs, ys = zip(*points, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


def moved(marks: Iterable[Mark], dx: float, dy: float) -> Iterator[Mark]:
    """Yield the marks moved by millimetres."""
    for mark in marks:
        match mark:
            case Line() | Leader():
                yield replace(mark, points=_points(mark.points, dx, dy))
            case Strokes():
                yield replace(mark, lines=tuple(_points(line, dx, dy) for line in mark.lines))
            case Fill() | Hatch():
                yield replace(mark, shape=_shape(mark.shape, dx, dy))
            case Circle():
                yield replace(mark, centre=_point(mark.centre, dx, dy))
            case Text() | LevelSymbol():
                yield replace(mark, at=_point(mark.at, dx, dy))


def _shape(shape: Area, dx: float, dy: float) -> Area:
    step = np.array((dx, dy))
    out: Area = shapely.transform(shape, lambda xy: xy + step)
    return out


def _points(points: Iterable[Point], dx: float, dy: float) -> tuple[Point, ...]:
    return tuple((x + dx, y + dy) for x, y in points)


def _point(at: Point, dx: float, dy: float) -> Point:
    return (at[0] + dx, at[1] + dy)
