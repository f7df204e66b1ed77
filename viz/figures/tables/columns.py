"""Columns of words: how wide each one is, so that a table of a given width has few lines."""

from collections.abc import Sequence
from itertools import permutations

from viz.drawing.fonts import text_width, unbroken, wrap

# Width is moved between columns in steps of the table's width by these.
_STEPS = (12, 25, 60)
# Widths that were summed in another order may differ by less than this, mm.
_HAIR = 1e-6

Rows = Sequence[Sequence[str]]


def column_widths(head: Sequence[str], rows: Rows, text: float, room: float) -> tuple[float, ...]:
    """Return the width of each column's words, mm; together at most `room`.

    head: bold words; text: height in mm. Columns that fit on one line keep it; else the room is
    shared as evenly as the words allow, and then moved about while that saves lines. Words are
    broken only where the room is narrower than the longest words together.
    """
    cells = [_words(head, rows, column) for column in range(len(head))]
    full = [max(_wide(w, text, bold) for w, bold in column) for column in cells]
    if sum(full) <= room:
        return tuple(full)
    least = [max(_longest(w, text, bold) for w, bold in column) for column in cells]
    if sum(least) > room:
        return tuple(level([text] * len(least), least, room))
    return tuple(_fewest_lines(cells, level(least, full, room), least, text, room))


Cells = Sequence[tuple[str, bool]]


def _words(head: Sequence[str], rows: Rows, column: int) -> Cells:
    return [(head[column], True), *((row[column], False) for row in rows)]


def _wide(words: str, text: float, bold: bool) -> float:
    return max((text_width(line, text, bold) for line in words.splitlines()), default=0.0)


def _longest(words: str, text: float, bold: bool) -> float:
    return max((text_width(word, text, bold) for word in unbroken(words)), default=0.0)


def level(least: Sequence[float], most: Sequence[float], room: float) -> list[float]:
    """Return sizes between `least` and `most` that fill `room`, as even as they can be.

    The sum of `least` is at most `room`, that of `most` at least.
    """
    low, high = 0.0, max(room, *most)
    for _ in range(60):
        middle = (low + high) / 2
        if sum(_held(a, b, middle) for a, b in zip(least, most, strict=True)) > room:
            high = middle
        else:
            low = middle
    return [_held(a, b, low) for a, b in zip(least, most, strict=True)]


def _held(least: float, most: float, value: float) -> float:
    return max(least, min(most, value))


def _fewest_lines(
    cells: Sequence[Cells], widths: list[float], least: Sequence[float], text: float, room: float
) -> list[float]:
    """Move width from column to column while that lessens the number of lines."""
    counts = [_counts(column, width, text) for column, width in zip(cells, widths, strict=True)]
    moves = [(g, t, room / n) for g, t in permutations(range(len(cells)), 2) for n in _STEPS]
    best, moved = _total(counts), True
    while moved:
        moved = False
        for giver, taker, step in moves:
            if widths[giver] - step < least[giver]:
                continue
            tried = list(counts)
            tried[giver] = _counts(cells[giver], widths[giver] - step, text)
            tried[taker] = _counts(cells[taker], widths[taker] + step, text)
            if _total(tried) < best:
                best, moved, counts = _total(tried), True, tried
                widths[giver] -= step
                widths[taker] += step
    return widths


def _counts(column: Cells, width: float, text: float) -> list[int]:
    """Return the number of lines of each of a column's cells."""
    return [max(1, len(lines(words, width, text, bold))) for words, bold in column]


def lines(words: str, width: float, text: float, bold: bool = False) -> tuple[str, ...]:
    """Return the lines of a cell in a column of this width, mm."""
    return wrap(words, width + _HAIR, text, bold)


def _total(counts: Sequence[Sequence[int]]) -> int:
    return sum(max(row) for row in zip(*counts, strict=True))
