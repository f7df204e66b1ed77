"""Sentences as figures: numbered, wrapped to a column, continued where one is too high."""

from collections.abc import Iterator, Sequence

from viz.drawing.figure import Figure, figure
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Mark, Text
from viz.drawing.place import NoRoomError
from viz.style.text import PITCH, SMALLEST

LAYER = "notes"
# Air between notes, in text heights.
_BETWEEN = 0.7


def notes_figures(
    name: str,
    title: str,
    notes: Sequence[str],
    text: float,
    width: float,
    height: float = float("inf"),
    numbered: bool = True,
) -> tuple[Figure, ...]:
    """Return notes in pieces no wider than `width` and no higher than `height`, mm.

    Pieces after the first say in their title that they continue, and count on. Raises ValueError
    for text too small to read, NoRoomError for a paper too small for the words.
    """
    if text < SMALLEST:
        raise ValueError(f"text of {text} mm is smaller than {SMALLEST} mm")
    indent = text_width(f"{len(notes)}.", text) + 0.8 * text if numbered else 0.0
    blocks = [wrap(words, width - indent, text) for words in notes]
    sizes = [(PITCH * len(block) + _BETWEEN) * text for block in blocks]
    if width - indent < 8 * text or max(sizes, default=0.0) > height:
        raise NoRoomError("this paper is too small for the notes; choose a larger paper")
    return tuple(
        figure(name, title if not place else f"{title}, continued",
               _column(blocks, numbers, indent, text))
        for place, numbers in enumerate(_filled(sizes, height))
    )  # fmt: skip


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
    blocks: Sequence[Sequence[str]], numbers: range, indent: float, text: float
) -> Iterator[Mark]:
    y = -text
    for number in numbers:
        if indent:
            yield Text((0.0, y), f"{number + 1}.", text, layer=LAYER)
        for line in blocks[number]:
            yield Text((indent, y), line, text, layer=LAYER)
            y -= PITCH * text
        y -= _BETWEEN * text
