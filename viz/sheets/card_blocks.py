"""Blocks of a card: each drawn from its own top left corner down, with the height it takes."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from shapely import Polygon, box

from viz.drawing.figure import moved
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Fill, Line, Mark, Text
from viz.style.lines import CUT, INK, PAPER, SEEN
from viz.style.text import DESCENT

BIG = 8.05
# Room for what is drawn in a cell, at its left, mm.
DRAWN = 16.0
_LEAD = 1.42
# Under a large figure, which may reach below its line.
_NOTE_GAP = 2.8
_PAD = 2.0
_CELL_GAP = 1.5
_COLUMN_GAP = 6.0
_FRAME = 1.1
# The least line to sign on, mm.
_LINE = 40.0
# Heights of a title to try, mm.
_TITLES = (9.0, 8.4, 7.6, 6.8, 6.0, 5.2)
# Words of a cell wider than this are broken into lines, mm.
_WORDS = 40.0


@dataclass(frozen=True)
class Laid:
    """Marks from (0, 0) down and to the right, and the height they take, mm."""

    marks: tuple[Mark, ...]
    height: float

    def at(self, left: float, top: float) -> tuple[Mark, ...]:
        """Return the marks with the top left corner here."""
        return tuple(moved(self.marks, left, top))


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


@dataclass(frozen=True)
class Held:
    """What must be seen, by whom, and where it is written down."""

    words: str
    by: str
    sign: str


def paragraph(words: str, width: float, text: float, bold: bool = False) -> Laid:
    """Return words in lines of a width."""
    lines = wrap(words, width, text, bold)
    marks = tuple(
        Text((0.0, -text - n * text * _LEAD), line, text, bold) for n, line in enumerate(lines)
    )
    return Laid(marks, len(lines) * text * _LEAD)


def stacked(parts: Iterable[Laid], gap: float) -> Laid:
    """Return blocks under each other."""
    marks: list[Mark] = []
    y = 0.0
    for part in parts:
        y -= gap if marks else 0.0
        marks += part.at(0.0, y)
        y -= part.height
    return Laid(tuple(marks), -y)


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
    return max(figure, min(max(words), _WORDS)) + 2 * _PAD + side


def _cell(cell: Cell, wide: float, text: float) -> Laid:
    """Return what a cell says, without its frame."""
    x = _PAD + (DRAWN if cell.drawn else 0.0)
    inner = wide - x - _PAD
    head = paragraph(cell.head, inner, text)
    y = -_PAD - head.height - 0.8
    marks: list[Mark] = [*cell.drawn, *head.at(x, -_PAD)]
    marks.append(Text((x, y - BIG), cell.figure, BIG, bold=True, layer="cells"))
    y -= BIG + _NOTE_GAP
    notes = stacked((paragraph(note, inner, text) for note in cell.notes), 0.0)
    marks += notes.at(x, y)
    low = notes.height - y - (text * (_LEAD - 1) if cell.notes else 0.4)
    return Laid(tuple(marks), low + (_PAD if cell.notes else 0.0))


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
    high, marks = BIG + 2.6, list[Mark]()
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
    """Return levels in two columns, each column from the top down."""
    count = min(2, len(entries))
    across = (width - (count - 1) * _COLUMN_GAP) / count
    rows = -(-len(entries) // count)
    laid = [_entry(entry, across, text) for entry in entries]
    columns = [laid[n * rows : (n + 1) * rows] for n in range(count)]
    highs = [max(c[row].height for c in columns if row < len(c)) for row in range(rows)]
    marks: list[Mark] = []
    for number, column in enumerate(columns):
        left, top = number * (across + _COLUMN_GAP), 0.0
        for one, high in zip(column, highs, strict=False):
            marks += one.at(left, top)
            top -= high
            marks.append(Line(((left, top), (left + across, top)), SEEN, layer="list"))
    return Laid(tuple(marks), sum(highs))


def _entry(entry: Entry, across: float, text: float) -> Laid:
    """Return a level: its name in as many lines as it takes beside the reading."""
    wide = across - text_width(entry.figure, BIG, bold=True) - 3.0
    fits = text_width(entry.level, text) <= wide
    said = entry.level if fits else entry.short or entry.level
    name, level = paragraph(entry.name, wide, text, bold=True), paragraph(said, wide, text)
    high = max(BIG, name.height + level.height) + 1.8
    figure = Text((across, -high / 2 - BIG / 2), entry.figure, BIG, True, "end", layer="list")
    top = -(high - name.height - level.height + text * (_LEAD - 1)) / 2
    return Laid((*name.at(0, top), *level.at(0, top - name.height), figure), high)


def held(head: str, holds: Sequence[Held], width: float, text: float) -> Laid:
    """Return the hold points in a heavy frame, with a line to sign on for each."""
    inner = width - 2 * _PAD
    band = text + 3.2
    parts: list[Laid] = []
    for hold in holds:
        parts += [paragraph(hold.words, inner, text), _signed(hold, inner, text)]
    body = stacked(parts, 1.2)
    high = band + 1.6 + body.height + _PAD
    marks: tuple[Mark, ...] = (
        Fill(box(0, -band, width, 0), INK, "hold"),
        Text((_PAD, -band + 1.7), head, text, bold=True, colour=PAPER, layer="hold"),
        *body.at(_PAD, -band - 1.6),
        Line(((0, 0), (width, 0), (width, -high), (0, -high), (0, 0)), _FRAME, layer="hold"),
    )
    return Laid(marks, high)


def _signed(hold: Held, width: float, text: float) -> Laid:
    """Return who looks, and a line to sign on: beside it, or under it where there is no room."""
    by, sign = f"{hold.by}:", hold.sign
    base = -text - 1.6
    marks: list[Mark] = [Text((0, base), by, text, bold=True, layer="hold")]
    start = text_width(by, text, bold=True) + 3.0
    end = width - text_width(sign, text) - 2.0
    if end - start < _LINE:
        start, base = 0.0, base - text * _LEAD - 1.6
    marks.append(Line(((start, base - 0.6), (end, base - 0.6)), SEEN, layer="hold"))
    marks.append(Text((width, base), sign, text, anchor="end", layer="hold"))
    return Laid(tuple(marks), -base + DESCENT * text)


def warned(cautions: Sequence[str], width: float, text: float) -> Laid:
    """Return the cautions, each after a triangle."""
    indent = text * 1.9
    parts = [paragraph(words, width - indent, text) for words in cautions]
    marks: list[Mark] = []
    y = 0.0
    for part in parts:
        marks += _triangle(text, y)
        marks += part.at(indent, y)
        y -= part.height + 0.9
    return Laid(tuple(marks), -y)


def _triangle(text: float, y: float) -> Iterator[Mark]:
    size = text * 1.15
    corners = ((0.0, y - size), (size, y - size), (size / 2, y + 0.1 * text))
    yield Fill(Polygon(corners), INK, "cautions")
    yield Line(((size / 2, y - 0.35 * size), (size / 2, y - 0.68 * size)), 0.5, PAPER,
               layer="cautions")  # fmt: skip
    yield Line(((size / 2, y - 0.83 * size), (size / 2, y - 0.85 * size)), 0.5, PAPER,
               layer="cautions")  # fmt: skip


def heading(number: int, title: str, below: str, width: float, text: float) -> Laid:
    """Return the head of a card: the stage's number in a square, its title, lines under it."""
    side, room = 20.0, width - 24.0
    size = next((h for h in _TITLES if text_width(title, h, True) <= room), _TITLES[-1])
    lines = paragraph(below, room, text)
    top = max(0.0, (side - size - 3.4 - lines.height) / 2)
    marks = (
        Fill(box(0, -side, side, 0), INK, "title"),
        Text((side / 2, -side / 2 - 5.2), str(number), 10.4, True, "middle", PAPER, "title"),
        Text((side + 4, -top - size), title, size, bold=True, layer="title"),
        *lines.at(side + 4, -top - size - 3.4),
    )
    return Laid(marks, max(side, top + size + 3.4 + lines.height))
