"""Labels beside the cut pipe: every row of holes, the pipe, stone, bedding and wrap."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from shapely import LineString

from geometry.layout.drain import DrainLayout
from geometry.units import System, show_length
from viz.drawing.fonts import text_width
from viz.drawing.marks import Anchor, Leader, LevelSymbol, Line, Mark, Point, Text
from viz.drawing.place import Item, spread
from viz.figures.pipe.section import Cross, bedding_mark, haloed
from viz.figures.pipe.words import clock, fine, letter, sizes, tilt
from viz.style.lines import DIMENSION, SEEN
from viz.style.text import DESCENT, PITCH
from viz.words import material_name

_TURN, _AWAY = 8.0, 9.0
_SYMBOL = 2.2


@dataclass(frozen=True)
class Label:
    """Lines of words, the first bold, and where their leader starts; side: -1 left, 1 right."""

    lines: tuple[str, ...]
    start: Point
    side: int
    dot: bool = True


def label_marks(drain: DrainLayout, shape: Cross, system: System, text: float) -> Iterator[Mark]:
    """Yield leaders and labels in a column at each side."""
    middle, _ = bedding_mark(shape)
    labels = [*_holes(shape), *_others(drain, shape, system, middle)]
    for side in (-1, 1):
        column = sorted((x for x in labels if x.side == side), key=lambda x: x.start[1])
        yield from _column(column, side * shape.stone.right, side, text)


def _holes(shape: Cross) -> Iterator[Label]:
    for number, row in enumerate(shape.rows):
        end = shape.spoke(row, shape.beyond)
        # Straight down or up goes left: the bedding's dimension stands at the right.
        side = 1 if end[0] > 1e-6 else -1
        yield Label((f"{letter(number)}: {clock(row)}", tilt(row)), end, side, dot=False)


def _others(drain: DrainLayout, shape: Cross, system: System, bedding: Point) -> Iterator[Label]:
    stone, wall = drain.drain.stone, (shape.outer + shape.inner) / 2
    free = _free_row(shape.rows)
    yield Label(sizes(drain, system), shape.spoke(free, wall), -1)
    beside = (shape.stone.right - 3.0, shape.outer + (shape.stone.high - shape.outer) / 2)
    yield Label((material_name(stone.material), "all round, inside the wrap"), beside, 1)
    words = f"Bedding {show_length(stone.bedding, system)}"
    least = "at the low point, the least" if drain.rise else "whole length"
    yield Label((words, least), bedding, 1)
    wrap = (-shape.stone.right + 3.0, shape.stone.low - shape.wrap / 2)
    yield Label(("Wrap", material_name(drain.drain.wrap.material)), wrap, -1)


def _free_row(rows: Sequence[float]) -> float:
    """Return the angle on the upper left that keeps farthest from all rows of holes."""

    def clear(row: int) -> tuple[float, int]:
        return min((abs(row - other) for other in rows), default=0.0), -abs(row - 130)

    return max(range(100, 165, 5), key=clear)


def _column(labels: Sequence[Label], edge: float, side: int, text: float) -> Iterator[Mark]:
    heights = [text * (1 + DESCENT + (len(x.lines) - 1) * PITCH) for x in labels]
    items = [Item(x.start[1], height) for x, height in zip(labels, heights, strict=True)]
    middles = spread(items, -1e4, 1e4, 0.9 * text)
    anchor: Anchor = "start" if side > 0 else "end"
    for label, height, middle in zip(labels, heights, middles, strict=True):
        first = middle + height / 2 - text
        for number, words in enumerate(label.lines):
            at = (edge + side * _AWAY, first - number * PITCH * text)
            yield Text(at, words, text, number == 0, anchor, layer="labels")
        turn = (edge, label.start[1])
        points = (label.start, turn, (edge + side * _TURN, first + text / 2))
        yield from (Leader(points, layer="leaders"),) if label.dot else haloed(points, DIMENSION)


def bore_marks(drain: DrainLayout, shape: Cross, system: System, text: float) -> Iterator[Mark]:
    """Yield the inside diameter across the bore, and the invert, where there is room for words."""
    reach = shape.inner
    yield Line(((-reach, 0.0), (reach, 0.0)), DIMENSION, layer="dimensions")
    for x in (-reach, reach):
        yield Line(((x - 1.1, -1.1), (x + 1.1, 1.1)), SEEN, layer="dimensions")
    words = fine(drain.pipe.inside_diameter_m, system)
    if text_width(words, text) < 1.3 * reach and reach > 3 * text:
        yield Text((0.0, DESCENT * text + 0.4), words, text, anchor="middle", layer="dimensions")
    half, base = text_width("invert", text) / 2, -reach + _SYMBOL + 1.4
    spare = LineString(((-half, base), (half, base))).buffer(text)
    spokes = [LineString(shape.centre_line(row)) for row in shape.rows]
    if base + 2 * text < 0 and not any(spare.intersects(line) for line in spokes):
        yield LevelSymbol((0.0, -reach), _SYMBOL, filled=True, layer="levels")
        yield Text((0.0, base), "invert", text, anchor="middle", layer="levels")
