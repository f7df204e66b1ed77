"""A table under the profile for places too many for columns: lettered, a line for each."""

from collections.abc import Iterator, Sequence
from math import ceil

from viz.drawing.figure import Figure
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Mark, Text
from viz.figures.pipe.words import letter
from viz.figures.profile.places import AS_AT_THE_LEFT, Place
from viz.figures.profile.rows import Row, tied
from viz.figures.profile.view import rank
from viz.figures.tables.figure import table_figures
from viz.style.text import PITCH
from viz.tables.table import Table

_GAP, _APART = 2.0, 8.0
# Rows a table has at least before it is set in more columns.
_LEAST_ROWS = 3
_MOST_BLOCKS = 4


def place_table(
    table: Sequence[Row], xs: Sequence[float], top: float, left: float, room: float, text: float
) -> Iterator[Mark]:
    """Yield letters tied to the places, and under them the table, in blocks side by side.

    xs: where the places stand on paper. top: where the ties may turn aside. left, room: where the
    table begins and its greatest width, mm.
    """
    letters = [letter(number) for number in range(len(xs))]
    middles = rank([(x, text_width(w, text, True)) for x, w in zip(xs, letters, strict=True)], _GAP)
    ties, head = tied(xs, middles, top)
    yield from ties
    base = head - 0.6 - text
    for middle, words in zip(middles, letters, strict=True):
        yield Text((middle, base), words, text, bold=True, anchor="middle", layer="labels")
    low = base - 1.2 * text
    for block in _blocks(table, letters, room, text):
        yield from block.at(left, low - block.box.height).marks
        left += block.box.width + _APART


def _blocks(
    table: Sequence[Row], letters: Sequence[str], room: float, text: float
) -> tuple[Figure, ...]:
    """Return the table in as many blocks beside each other as make it lowest."""
    lowest: tuple[Figure, ...] = (_block(table, letters, slice(None), room, text),)
    for count in range(2, min(_MOST_BLOCKS, ceil(len(letters) / _LEAST_ROWS)) + 1):
        share = (room - (count - 1) * _APART) / count
        rows = ceil(len(letters) / count)
        parts = [slice(s, s + rows) for s in range(0, len(letters), rows)]
        if max(_body_width(table, letters, part, text) for part in parts) <= share:
            lowest = tuple(_block(table, letters, part, share, text) for part in parts)
    return lowest


def _body_width(table: Sequence[Row], letters: Sequence[str], part: slice, text: float) -> float:
    """Return the width the table's rows take without a broken line, whatever its head, mm."""
    return _block(table, letters, part, 1e4, text, headed=False).box.width


def _block(
    table: Sequence[Row],
    letters: Sequence[str],
    part: slice,
    room: float,
    text: float,
    headed: bool = True,
) -> Figure:
    cells = (tuple(", ".join(cell) for cell in row.cells[part]) for row in table)
    rows = tuple(zip(letters[part], *cells, strict=True))
    head = ("", *(row.heading if headed else "" for row in table))
    return table_figures("places", "Places", Table(head, rows), text, room)[0]


def place_notes(
    places: Sequence[Place], low: float, left: float, room: float, text: float
) -> Iterator[Text]:
    """Yield in words, under the height `low`, what else stands at the places, each said once."""
    for words in _notes(places):
        for line in wrap(words, room, text):
            low -= PITCH * text
            yield Text((left, low), line, text, layer="notes")


def _notes(places: Sequence[Place]) -> Iterator[str]:
    where: dict[tuple[str, ...], list[str]] = {}
    for place in places:
        for note in place.notes:
            if note != AS_AT_THE_LEFT:
                where.setdefault(note, []).append(place.names[0])
    for note, names in where.items():
        listed = ", ".join(names).lower()
        yield f"{listed[0].upper()}{listed[1:]}: {' '.join(note)}."
