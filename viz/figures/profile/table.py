"""A table under the profile for places too many for columns: lettered, a line for each."""

from collections.abc import Iterator, Sequence
from math import ceil

from viz.drawing.figure import Figure
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Mark, Text
from viz.figures.pipe.words import letter
from viz.figures.profile.places import Place
from viz.figures.profile.rows import Row, tied
from viz.figures.profile.view import rank
from viz.figures.tables.figure import table_figures
from viz.style.text import PITCH
from viz.tables import Table

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
    """Return the table in as many blocks as stand beside each other."""
    most = min(_MOST_BLOCKS, max(1, ceil(len(letters) / _LEAST_ROWS)))
    for count in range(most, 0, -1):
        rows = ceil(len(letters) / count)
        starts = range(0, len(letters), rows)
        made = tuple(_block(table, letters, slice(s, s + rows), room, text) for s in starts)
        if sum(block.box.width for block in made) + _APART * (len(made) - 1) <= room:
            break
    return made


def _block(
    table: Sequence[Row], letters: Sequence[str], part: slice, room: float, text: float
) -> Figure:
    cells = (tuple(", ".join(cell) for cell in row.cells[part]) for row in table)
    rows = tuple(zip(letters[part], *cells, strict=True))
    made = table_figures("", "", Table(("", *(row.heading for row in table)), rows), text, room)
    return made[0]


def place_notes(
    places: Sequence[Place], low: float, left: float, room: float, text: float
) -> Iterator[Text]:
    """Yield in words, under the height `low`, what else stands at the places, each said once."""
    notes = (f"{', '.join(p.names)}: {' '.join(note)}." for p in places for note in p.notes)
    for words in dict.fromkeys(notes):
        for line in wrap(words, room, text):
            low -= PITCH * text
            yield Text((left, low), line, text, layer="notes")
