"""Sentences as a figure: numbered, wrapped to a column, several columns where one is too high."""

from collections.abc import Iterator, Sequence

from viz.drawing.figure import Figure, figure
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Mark, Text
from viz.drawing.place import NoRoomError
from viz.style.text import PITCH, SMALLEST

LAYER = "notes"
# Air between notes and between columns, in text heights.
_BETWEEN = 0.7
_GUTTER = 2.5


def notes_figure(
    name: str,
    title: str,
    notes: Sequence[str],
    text: float,
    width: float,
    numbered: bool = True,
    columns: int = 1,
) -> Figure:
    """Return notes in columns of one width that together fill `width` mm, as even as they can be.

    Raises ValueError for text too small to read, NoRoomError for columns too narrow for words.
    """
    if text < SMALLEST:
        raise ValueError(f"text of {text} mm is smaller than {SMALLEST} mm")
    column = (width - (columns - 1) * _GUTTER * text) / columns
    indent = text_width(f"{len(notes)}.", text) + 0.8 * text if numbered else 0.0
    if column - indent < 8 * text:
        raise NoRoomError("this paper is too narrow for the notes; choose a larger paper")
    blocks = [wrap(words, column - indent, text) for words in notes]
    marks: list[Mark] = []
    for place, numbers in enumerate(_shared(blocks, columns)):
        left = place * (column + _GUTTER * text)
        marks += _column(blocks, numbers, left, indent, text)
    return figure(name, title, marks)


def _shared(blocks: Sequence[Sequence[str]], columns: int) -> list[range]:
    """Return which notes stand in which column, the highest column as low as can be."""
    sizes = [PITCH * len(block) + _BETWEEN for block in blocks]
    low, high = max(sizes, default=0.0), sum(sizes)
    for _ in range(40):
        middle = (low + high) / 2
        if len(_filled(sizes, middle)) > columns:
            low = middle
        else:
            high = middle
    return _filled(sizes, high)


def _filled(sizes: Sequence[float], height: float) -> list[range]:
    """Return runs of blocks that stand within a height, in order."""
    runs, start, used = [], 0, 0.0
    for number, size in enumerate(sizes):
        if used + size > height + 1e-9 and number > start:
            runs.append(range(start, number))
            start, used = number, 0.0
        used += size
    return [*runs, range(start, len(sizes))]


def _column(
    blocks: Sequence[Sequence[str]], numbers: range, left: float, indent: float, text: float
) -> Iterator[Mark]:
    y = -text
    for number in numbers:
        if indent:
            yield Text((left, y), f"{number + 1}.", text, layer=LAYER)
        for line in blocks[number]:
            yield Text((left + indent, y), line, text, layer=LAYER)
            y -= PITCH * text
        y -= _BETWEEN * text
