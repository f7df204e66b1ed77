"""What stands under a figure: its number, title, scale in words and as a bar, its remark."""

from collections.abc import Iterator
from itertools import pairwise

from shapely import box

from geometry.units import FOOT, INCH, System, show_length
from viz.drawing.figure import Figure, extent
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Circle, Fill, Line, Mark, Text
from viz.drawing.page import Box
from viz.drawing.scale import Scale
from viz.style.lines import CUT, INK, PAPER, SEEN
from viz.style.text import HEAD, PITCH, SMALLEST

# Radius of the circle with a drawing's number; space between figure and caption; mm.
_RADIUS = 4.5
_ABOVE = 5.0
_SEGMENTS = 4
_UNITS: dict[System, tuple[float, ...]] = {
    "ft-in": (3 * INCH, 6 * INCH, FOOT, 2 * FOOT, 5 * FOOT, 10 * FOOT, 20 * FOOT),
    "metric": (0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0),
}


def captioned(figure: Figure, number: int, text: float, system: System) -> Figure:
    """Return a figure with its caption under it, wide enough for both.

    number: of the drawing on its sheet; 0 for words and tables, which bear their own head.
    """
    if not number:
        return figure
    marks = (*figure.marks, *_caption(figure, number, text, system))
    around = extent(marks)
    low = min(around.low, figure.box.low)
    whole = Box(min(around.left, figure.box.left), low, max(around.right, figure.box.right),
                figure.box.high)  # fmt: skip
    return Figure(figure.name, figure.title, marks, whole, figure.scale, figure.remark)


def _caption(figure: Figure, number: int, text: float, system: System) -> Iterator[Mark]:
    left, y = figure.box.left, figure.box.low - _ABOVE - _RADIUS
    middle = (left + _RADIUS, y)
    yield Circle(middle, _RADIUS, CUT, layer="title")
    yield Text((middle[0], y - HEAD / 2), str(number), HEAD, True, "middle", layer="title")
    x = left + 2 * _RADIUS + 3.0
    yield Text((x, y + 1.8), figure.title, HEAD, bold=True, layer="title")
    scale = _scale_words(figure.scale)
    end = x + max(text_width(figure.title, HEAD, bold=True), text_width(scale, text)) + 2.0
    yield Line(((x - 3.0, y), (end, y)), CUT, layer="title")
    yield Text((x, y - 1.8 - text), scale, text, layer="title")
    if figure.scale:
        bar, length = scale_bar((end + 8.0, y - 2.6), figure.scale, system)
        yield from bar
        end += 8.0 + length
    room = max(figure.box.width, end - left) - (x - left)
    for index, line in enumerate(wrap(figure.remark, room, text) if figure.remark else ()):
        at = (x, y - 1.8 - text - (index + 1) * text * PITCH)
        yield Text(at, line, text, layer="title")


def _scale_words(scale: Scale | None) -> str:
    return f"Scale {scale.name}" if scale else "Not to scale"


def scale_bar(
    at: tuple[float, float], scale: Scale, system: System
) -> tuple[tuple[Mark, ...], float]:
    """Return a bar of black and white blocks, each a whole unit of the job, and its length, mm.

    at: its lower left corner; figures stand above it.
    """
    unit = bar_unit(scale, system)
    block = unit * scale.per_metre
    (left, low), high = at, at[1] + 1.6
    ends = [left + number * block for number in range(_SEGMENTS + 1)]
    marks: list[Mark] = [
        Fill(box(a, low, b, high), PAPER if number % 2 else INK, "scale bar")
        for number, (a, b) in enumerate(pairwise(ends))
    ]
    corners = ((left, low), (ends[-1], low), (ends[-1], high), (left, high), (left, low))
    marks.append(Line(corners, SEEN, layer="scale bar"))
    for number in (0, 1, _SEGMENTS):
        words = show_length(number * unit, system) if number else "0"
        spot = (ends[number], high + 1.4)
        marks.append(Text(spot, words, SMALLEST, anchor="middle", layer="scale text"))
    return tuple(marks), _SEGMENTS * block


def bar_unit(scale: Scale, system: System) -> float:
    """Return the smallest unit, metres, whose block is long enough to letter."""
    long = [unit for unit in _UNITS[system] if unit * scale.per_metre >= 10.0]
    return long[0] if long else _UNITS[system][-1]
