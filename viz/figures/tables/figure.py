"""A table as figures: words wrapped to solved columns, continued where a piece is full."""

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from viz.drawing.figure import Figure, figure
from viz.drawing.marks import Anchor, Line, Mark, Text
from viz.drawing.page import Box
from viz.drawing.place import NoRoomError
from viz.figures.tables.columns import column_widths, lines
from viz.style.lines import HATCH, SEEN
from viz.style.text import PITCH, SMALLEST
from viz.tables.table import Cell, Table

LAYER = "notes"
# The lines of each cell of a row.
Lines = tuple[tuple[str, ...], ...]
# Air in text heights: beside the words of a column, above and below those of a row.
_BESIDE = 0.7
_ABOVE = 0.75
# Rules over the head, under it and at the end, mm.
_HEAVY = 0.35
_NUMBER = re.compile(
    r"[+−-]?[\d.,]+(?:'-\d+)?(?: \d+/\d+|/\d+)?(?:[\"']| ?(?:mm|m|ft|in|mil|yd³|ft³|m³|%|psi|MPa))?"
)


@dataclass(frozen=True)
class Signs:
    """A first column of drawn signs: its heading, its width, and each row's least height, mm.

    draw: the number of a row and the box its sign has, to marks.
    """

    head: str
    width: float
    heights: Sequence[float]
    draw: Callable[[int, Box], Iterable[Mark]]


def table_figures(
    name: str,
    title: str,
    table: Table,
    text: float,
    width: float,
    height: float = float("inf"),
    signs: Signs | None = None,
) -> tuple[Figure, ...]:
    """Return a table in pieces no wider than `width` and no higher than `height`, mm.

    Every piece has the head; those after the first say in their title that they continue.
    Raises NoRoomError where one row does not fit, ValueError for text that is too small to read.
    """
    if text < SMALLEST:
        raise ValueError(f"text of {text} mm is smaller than {SMALLEST} mm")
    grid = _Grid.of(table, text, width, signs)
    pieces = list(grid.pieces(height))
    return tuple(
        figure(
            name if number == 0 else f"{name}-{number + 1}",
            title if number == 0 else f"{title}, continued",
            grid.marks(rows),
        )
        for number, rows in enumerate(pieces)
    )


def said(cell: Cell) -> str:
    """Return a cell's words."""
    return "" if cell is None else str(cell)


@dataclass(frozen=True)
class _Grid:
    """A table whose words have their lines: `head` and `rows` hold lines by column."""

    head: Lines
    rows: tuple[Lines, ...]
    widths: tuple[float, ...]
    anchors: tuple[Anchor, ...]
    text: float
    signs: Signs | None

    @classmethod
    def of(cls, table: Table, text: float, width: float, signs: Signs | None) -> "_Grid":
        """Return the table with its columns solved and its words wrapped."""
        rows = [[said(cell) for cell in row] for row in table.rows]
        beside = 2 * _BESIDE * text
        taken = signs.width + beside if signs else 0.0
        room = width - taken - beside * len(table.head)
        if room <= 0:
            raise NoRoomError("this paper is too narrow for the table; choose a larger paper")
        widths = column_widths(table.head, rows, text, room)
        head = _wrapped(table.head, widths, text, bold=True)
        body = tuple(_wrapped(row, widths, text) for row in rows)
        return cls(head, body, widths, tuple(map(_anchor, zip(*rows, strict=True))), text, signs)

    def pieces(self, height: float) -> Iterator[tuple[int, ...]]:
        """Yield the numbers of the rows of each piece."""
        head, used, piece = self._tall(self.head), 0.0, list[int]()
        for number in range(len(self.rows)):
            tall = self._row(number)
            if head + tall > height:
                raise NoRoomError("this paper is too low for the table; choose a larger paper")
            if piece and head + used + tall > height:
                yield tuple(piece)
                piece, used = [], 0.0
            piece.append(number)
            used += tall
        yield tuple(piece)

    def marks(self, numbers: Sequence[int]) -> Iterator[Mark]:
        """Yield one piece, its upper left corner at the origin."""
        y = -self._tall(self.head)
        yield self._rule(0.0, _HEAVY)
        yield from self._words(self.head, 0.0, bold=True)
        if self.signs:
            at = (self._beside, -(_ABOVE + 1) * self.text)
            yield Text(at, self.signs.head, self.text, bold=True, layer=LAYER)
        yield self._rule(y, _HEAVY)
        for place, number in enumerate(numbers):
            row, tall = self.rows[number], self._row(number)
            low = y - tall
            yield from self._words(row, y - (tall - self._tall(row)) / 2)
            yield from self._sign(number, y, low)
            yield self._rule(low, _HEAVY if place == len(numbers) - 1 else HATCH)
            y = low

    @property
    def _beside(self) -> float:
        return _BESIDE * self.text

    def _tall(self, row: Lines) -> float:
        most = max(1, *(len(cell) for cell in row))
        return (2 * _ABOVE + 1 + (most - 1) * PITCH) * self.text

    def _row(self, number: int) -> float:
        least = self.signs.heights[number] if self.signs else 0.0
        return max(self._tall(self.rows[number]), least)

    def _lefts(self) -> Iterator[float]:
        """Yield where each column's words begin."""
        x = self.signs.width + 2 * self._beside if self.signs else 0.0
        for width in self.widths:
            yield x + self._beside
            x += width + 2 * self._beside

    def _words(
        self, row: Sequence[Sequence[str]], top: float, bold: bool = False
    ) -> Iterator[Text]:
        parts = zip(row, self._lefts(), self.widths, self.anchors, strict=True)
        for cell, left, width, anchor in parts:
            x = left + width if anchor == "end" else left
            for number, line in enumerate(cell):
                y = top - (_ABOVE + 1 + number * PITCH) * self.text
                yield Text((x, y), line, self.text, bold, anchor, layer=LAYER)

    def _sign(self, number: int, top: float, low: float) -> Iterator[Mark]:
        if self.signs:
            left = self._beside
            yield from self.signs.draw(number, Box(left, low, left + self.signs.width, top))

    def _rule(self, y: float, weight: float) -> Line:
        right = list(self._lefts())[-1] + self.widths[-1] + self._beside
        return Line(((0.0, y), (right, y)), weight if weight > HATCH else SEEN / 2, layer=LAYER)


def _wrapped(row: Sequence[str], widths: Sequence[float], text: float, bold: bool = False) -> Lines:
    return tuple(lines(cell, w, text, bold) for cell, w in zip(row, widths, strict=True))


def _anchor(column: Sequence[str]) -> Anchor:
    """Columns that are mostly figures stand to the right: their units lie under each other."""
    filled = [words for words in column if words not in {"", "–"}]
    figures = [words for words in filled if _NUMBER.fullmatch(words)]
    return "end" if 2 * len(figures) > len(filled) else "start"
