"""Border, title strip, notes and the scale bar."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from shapely import box

from geometry.units import FOOT, INCH, System, show_length
from viz.drawing.fonts import shortened
from viz.drawing.marks import Fill, Line, Mark, Text
from viz.drawing.page import Box, Paper
from viz.drawing.scale import Scale
from viz.sheets import words
from viz.sheets.layout import Layout
from viz.style.lines import BORDER, INK, PAPER, QUIET, SEEN
from viz.style.text import HEAD, SMALLEST, TITLE

_PAD = 4.0
_SEGMENTS = 4
_UNITS: dict[System, tuple[float, ...]] = {
    "ft-in": (3 * INCH, 6 * INCH, FOOT, 2 * FOOT, 5 * FOOT, 10 * FOOT, 20 * FOOT),
    "metric": (0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0),
}


@dataclass(frozen=True)
class Title:
    """What the title strip says."""

    project: str
    title: str
    subtitle: str = ""


def frame_marks(
    plan: Layout, paper: Paper, title: Title, scale: Scale, system: System
) -> Iterator[Mark]:
    """Yield the border, the title strip with the scale bar, and the notes."""
    yield Line(_corners(plan.frame), BORDER, layer="frame")
    yield Line(_corners(plan.strip), BORDER, layer="frame")
    cells = _cells(plan.strip)
    for cell in cells[1:]:
        yield Line(((cell.left, cell.low), (cell.left, cell.high)), SEEN, layer="frame")
    yield from _words(cells[0], title.project, title.subtitle, TITLE)
    yield from _words(cells[1], title.title, f"{words.SCALE} {scale.name}, {paper.name}", HEAD)
    yield from scale_bar(cells[2], scale, system)
    yield from _stamp(cells[3])
    yield from _notes(plan)


def _cells(strip: Box) -> tuple[Box, ...]:
    shares = (0.0, 0.29, 0.58, 0.8, 1.0)
    edges = [strip.left + share * strip.width for share in shares]
    return tuple(Box(left, strip.low, right, strip.high) for left, right in pairwise(edges))


def _words(cell: Box, head: str, under: str, height: float) -> Iterator[Text]:
    """Yield a head, made smaller before it is cut short, and a line under it."""
    room, x = cell.width - 2 * _PAD, cell.left + _PAD
    size = height
    while size > SMALLEST and shortened(head, room, size, bold=True) != " ".join(head.split()):
        size = max(SMALLEST, size - 0.25)
    middle = (cell.low + cell.high) / 2
    text = shortened(head, room, size, bold=True)
    yield Text((x, middle + 1.2), text, size, bold=True, layer="title")
    if under.strip():
        yield Text((x, middle - 5.2), shortened(under, room, SMALLEST), SMALLEST, layer="title")


def _stamp(cell: Box) -> Iterator[Text]:
    x, middle = (cell.left + cell.right) / 2, (cell.low + cell.high) / 2
    for line, y in zip(words.STAMP, (middle + 1.2, middle - 3.8), strict=True):
        yield Text((x, y), line, SMALLEST, bold=True, anchor="middle", layer="title")


def scale_bar(cell: Box, scale: Scale, system: System) -> Iterator[Mark]:
    """Yield a bar of black and white blocks, each a whole unit of the job long."""
    unit = bar_unit(scale, system)
    length = unit * scale.per_metre
    count = min(_SEGMENTS, int((cell.width - 2 * _PAD - 6) / length))
    left = (cell.left + cell.right - count * length) / 2
    low = (cell.low + cell.high) / 2 - 3.0
    for number in range(count):
        block = box(left + number * length, low, left + (number + 1) * length, low + 2.0)
        yield Fill(block, PAPER if number % 2 else INK, "scale bar")
    frame = Box(left, low, left + count * length, low + 2.0)
    yield Line(_corners(frame), SEEN, layer="scale bar")
    for number in dict.fromkeys((0, 1, count)):
        text = show_length(number * unit, system) if number else "0"
        at = (left + number * length, low + 4.0)
        yield Text(at, text, SMALLEST, anchor="middle", layer="scale text")


def bar_unit(scale: Scale, system: System) -> float:
    """Return the smallest unit, metres, whose block is long enough to letter."""
    long = [unit for unit in _UNITS[system] if unit * scale.per_metre >= 12.0]
    return long[0] if long else _UNITS[system][-1]


def _notes(plan: Layout) -> Iterator[Text]:
    x, y = plan.notes.left, plan.notes.high - plan.text
    yield Text((x, y), words.NOTES_HEAD, plan.text, bold=True, colour=QUIET, layer="notes")
    for number, lines in enumerate(plan.note_lines, start=1):
        for index, line in enumerate(lines):
            y -= plan.pitch
            if index == 0:
                yield Text((x, y), f"{number}.", plan.text, layer="notes")
            yield Text((x + 3 * plan.text, y), line, plan.text, layer="notes")


def _corners(frame: Box) -> tuple[tuple[float, float], ...]:
    left, low, right, high = frame.left, frame.low, frame.right, frame.high
    return ((left, low), (right, low), (right, high), (left, high), (left, low))
