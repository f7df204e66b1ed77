"""The marks of a form's entries: bands, rows with boxes and blanks, notes, lines to sign on."""

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

from shapely import box

from viz.drawing.fonts import text_width
from viz.drawing.marks import Anchor, Fill, Line, Mark, Text
from viz.figures.forms.entries import Column, Entry, EntryKind
from viz.figures.forms.grid import AIR, PITCH, Grid
from viz.style.lines import SEEN
from viz.style.text import SMALLEST

LAYER = "notes"
# Side of a box to tick, mm.
_BOX = 3.6
_BAND = "#e3e3e3"
_THIN = 0.13
_TO_THE_RIGHT = ("figure", "strong")


def heads(grid: Grid) -> Iterator[Mark]:
    """Yield the columns' names, their top at y = 0."""
    for column, lines, span in zip(grid.columns, grid.heads, pairwise(grid.edges), strict=True):
        at, anchor = _stand(grid, column, span)
        yield from _words(lines, (at, -AIR * SMALLEST), SMALLEST, True, anchor)


def entry_marks(grid: Grid, entry: Entry, top: float, low: float) -> Iterator[Mark]:
    """Yield one entry between two heights, mm, with the rule under it."""
    yield from _KINDS[entry.kind](grid, entry, top, low)
    if entry.kind != "heading":
        yield Line(((0.0, low), (grid.width, low)), _THIN, layer=LAYER)


def _row(grid: Grid, entry: Entry, top: float, low: float) -> Iterator[Mark]:
    cells = zip(grid.columns, grid.lines(entry), pairwise(grid.edges), strict=True)
    for column, lines, span in cells:
        if column.kind == "box":
            yield Line(_square(span[0] + grid.beside, (top + low) / 2), SEEN, layer=LAYER)
        elif column.kind == "blank":
            yield Line(((span[0], low), (span[0], top)), _THIN, layer=LAYER)
        tall = ((len(lines) - 1) * PITCH + 1) * grid.text
        at, anchor = _stand(grid, column, span)
        start = (at, (top + low + tall) / 2)
        yield from _words(lines, start, grid.text, column.kind == "strong", anchor)


def _heading(grid: Grid, entry: Entry, top: float, low: float) -> Iterator[Mark]:
    yield Fill(box(0.0, low, grid.width, top), _BAND, LAYER)
    y = top - AIR * grid.text
    for number, lines in enumerate(grid.lines(entry)):
        yield from _words(lines, (grid.beside, y), grid.text, not number)
        y -= len(lines) * PITCH * grid.text


def _note(grid: Grid, entry: Entry, top: float, _: float) -> Iterator[Mark]:
    start = (grid.beside, top - AIR * grid.text)
    yield from _words(grid.lines(entry)[0], start, grid.text, False)


def _sign(grid: Grid, entry: Entry, _: float, low: float) -> Iterator[Mark]:
    wide = grid.width / len(entry.cells)
    yield from sign_lines(entry.cells, grid.beside, low + 2.5, wide)


def sign_lines(captions: Sequence[str], left: float, base: float, wide: float) -> Iterator[Mark]:
    """Yield captions beside each other, each so many mm wide with a line to write on after it."""
    for number, caption in enumerate(captions):
        x = left + number * wide
        yield Text((x, base), caption, SMALLEST, layer=LAYER)
        start, end = x + text_width(caption, SMALLEST) + 1.5, x + wide - 3.5
        yield Line(((start, base - 0.4), (end, base - 0.4)), SEEN, layer=LAYER)


def _stand(grid: Grid, column: Column, span: tuple[float, float]) -> tuple[float, Anchor]:
    if column.kind in _TO_THE_RIGHT:
        return span[1] - grid.beside, "end"
    return span[0] + grid.beside, "start"


def _words(
    lines: Sequence[str], start: tuple[float, float], size: float, bold: bool,
    anchor: Anchor = "start",
) -> Iterator[Text]:  # fmt: skip
    """Yield lines under a height, the first right under it."""
    x, y = start
    for line in lines:
        if line:
            yield Text((x, y - size), line, size, bold, anchor, layer=LAYER)
        y -= PITCH * size


def _square(left: float, middle: float) -> tuple[tuple[float, float], ...]:
    low, right, high = middle - _BOX / 2, left + _BOX, middle + _BOX / 2
    return ((left, low), (right, low), (right, high), (left, high), (left, low))


_KINDS: dict[EntryKind, Callable[[Grid, Entry, float, float], Iterator[Mark]]] = {
    "row": _row, "heading": _heading, "note": _note, "sign": _sign
}  # fmt: skip
