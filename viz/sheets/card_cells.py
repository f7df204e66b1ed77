"""Figures of a card that are read at arm's length: cells, things counted, lists of levels."""

from collections.abc import Sequence
from dataclasses import dataclass

from viz.drawing.fonts import text_width, unbroken, wrap
from viz.drawing.marks import Line, Mark, Text
from viz.sheets.card_blocks import LEAD, PAD, Laid, paragraph, stacked
from viz.style.lines import CUT, SEEN

BIG = 8.05
# Room for what is drawn in a cell, at its left, mm.
DRAWN = 16.0
# Under a large figure, which may reach below its line.
_NOTE_GAP = 2.8
_CELL_GAP = 1.5
_COLUMN_GAP = 4.0
# Words of a cell wider than this are broken into lines, mm.
_WORDS = 40.0
_MOST_LINES = 2


@dataclass(frozen=True)
class Cell:
    """A figure to be read at arm's length: what it is, the figure, notes under it.

    drawn: marks beside the figure, from (0, 0) down, no wider than DRAWN.
    """

    head: str
    figure: str
    notes: tuple[str, ...] = ()
    drawn: tuple[Mark, ...] = ()


@dataclass(frozen=True)
class Entry:
    """A level in a list: its name, what the rod reads, and the level in words or shorter."""

    name: str
    figure: str
    level: str
    short: str = ""


def cells(found: Sequence[Cell], width: float, text: float) -> Laid:
    """Return cells side by side in as few rows as they need, each row as wide as the card."""
    rows: list[list[Cell]] = []
    for cell in found:
        room = sum(_cell_width(c, text) + _CELL_GAP for c in rows[-1]) if rows else width
        if not rows or room + _cell_width(cell, text) > width:
            rows.append([])
        rows[-1].append(cell)
    return stacked((_row(row, width, text) for row in rows), _CELL_GAP)


def _cell_width(cell: Cell, text: float) -> float:
    """Return the width of a cell: of its figure, or of its words in short lines."""
    words = [text_width(line, text) for line in (cell.head, *cell.notes)]
    figure = text_width(cell.figure, BIG, bold=True)
    side = DRAWN if cell.drawn else 0.0
    return max(figure, min(max(words), _WORDS)) + 2 * PAD + side


def _cell(cell: Cell, wide: float, text: float) -> Laid:
    """Return what a cell says, without its frame."""
    x = PAD + (DRAWN if cell.drawn else 0.0)
    inner = wide - x - PAD
    head = paragraph(cell.head, inner, text)
    y = -PAD - head.height - 0.8
    marks: list[Mark] = [*cell.drawn, *head.at(x, -PAD)]
    marks.append(Text((x, y - BIG), cell.figure, BIG, bold=True, layer="cells"))
    y -= BIG + _NOTE_GAP
    notes = stacked((paragraph(note, inner, text) for note in cell.notes), 0.0)
    marks += notes.at(x, y)
    low = notes.height - y - (text * (LEAD - 1) if cell.notes else 0.4)
    return Laid(tuple(marks), low + (PAD if cell.notes else 0.0))


def _row(row: Sequence[Cell], width: float, text: float) -> Laid:
    spare = width - sum(_cell_width(c, text) for c in row) - _CELL_GAP * (len(row) - 1)
    wides = [_cell_width(c, text) + spare / len(row) for c in row]
    laid = [_cell(c, wide, text) for c, wide in zip(row, wides, strict=True)]
    high = max(one.height for one in laid)
    marks: list[Mark] = []
    left = 0.0
    for one, wide in zip(laid, wides, strict=True):
        right = left + wide
        corners = ((left, 0.0), (right, 0.0), (right, -high), (left, -high), (left, 0.0))
        marks += [*one.at(left, 0.0), Line(corners, CUT, layer="cells")]
        left = right + _CELL_GAP
    return Laid(tuple(marks), high)


def counted(found: Sequence[tuple[str, str]], width: float, text: float) -> Laid:
    """Return things that are counted, each its number large with its name, in lines."""
    high, marks = BIG + _NOTE_GAP, list[Mark]()
    left, top = 0.0, 0.0
    for number, name in found:
        first = text_width(number, BIG, bold=True) + 2.0
        wide = first + text_width(name, text)
        if left > 0 and left + wide > width:
            left, top = 0.0, top - high
        marks.append(Text((left, top - BIG - 0.6), number, BIG, bold=True, layer="cells"))
        marks.append(Text((left + first, top - BIG - 0.6), name, text, layer="cells"))
        left += wide + 5.0
    return Laid(tuple(marks), high - top)


def listed(entries: Sequence[Entry], width: float, text: float) -> Laid:
    """Return levels in two columns, each from the top down; in one where names are too long."""
    half = (width - _COLUMN_GAP) / 2
    if len(entries) < 2 or not all(_fits(entry, half, text) for entry in entries):
        return stacked((_ruled(_line(entry, width, text), width) for entry in entries), 0.0)
    rows = -(-len(entries) // 2)
    laid = [_entry(entry, half, text) for entry in entries]
    columns = [laid[:rows], laid[rows:]]
    highs = [max(c[row].height for c in columns if row < len(c)) for row in range(rows)]
    marks: list[Mark] = []
    for number, column in enumerate(columns):
        left, top = number * (half + _COLUMN_GAP), 0.0
        for one, high in zip(column, highs, strict=False):
            marks += _ruled(Laid(one.marks, high), half).at(left, top)
            top -= high
    return Laid(tuple(marks), sum(highs))


def _beside(entry: Entry, across: float) -> float:
    """Return the room for words beside a reading, mm."""
    return across - text_width(entry.figure, BIG, bold=True) - 2.5


def _fits(entry: Entry, across: float, text: float) -> bool:
    """Whether the words beside a reading need be broken within no word, nor too often."""
    wide = _beside(entry, across)
    words = [text_width(word, text, bold=True) for word in unbroken(entry.name)]
    level = text_width(entry.short or entry.level, text)
    lines = wrap(entry.name, wide, text, bold=True)
    return max((*words, level)) <= wide and len(lines) <= _MOST_LINES


def _ruled(one: Laid, across: float) -> Laid:
    line = Line(((0.0, -one.height), (across, -one.height)), SEEN, layer="list")
    return Laid((*one.marks, line), one.height)


def _reading(entry: Entry, across: float, high: float) -> Text:
    return Text((across, -high / 2 - BIG / 2), entry.figure, BIG, True, "end", layer="list")


def _entry(entry: Entry, across: float, text: float) -> Laid:
    """Return a level: its name in as many lines as it takes beside the reading."""
    wide = _beside(entry, across)
    fits = text_width(entry.level, text) <= wide
    said = entry.level if fits else entry.short or entry.level
    name, level = paragraph(entry.name, wide, text, bold=True), paragraph(said, wide, text)
    high = max(BIG + _NOTE_GAP, name.height + level.height + 1.8)
    top = -(high - name.height - level.height + text * (LEAD - 1)) / 2
    marks = (*name.at(0, top), *level.at(0, top - name.height), _reading(entry, across, high))
    return Laid(marks, high)


def _line(entry: Entry, across: float, text: float) -> Laid:
    """Return a level in one line: name, level, reading; its name in more where it must."""
    wide = _beside(entry, across)
    gap = text_width(entry.name, text, bold=True) + 4.0
    if gap + text_width(entry.level, text) > wide:
        return _entry(entry, across, text)
    high = BIG + _NOTE_GAP
    base = -high / 2 - text / 2
    return Laid((
        Text((0, base), entry.name, text, bold=True, layer="list"),
        Text((gap, base), entry.level, text, layer="list"),
        _reading(entry, across, high),
    ), high)  # fmt: skip
