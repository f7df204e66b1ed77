"""How a form's words break into lines, and the height each entry takes."""

from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate, pairwise

from viz.drawing.fonts import wrap
from viz.figures.forms.entries import Column, Entry
from viz.style.text import SMALLEST

PITCH = 1.5
# Air in text heights: beside words, and over and under those of a row.
_BESIDE = 0.6
AIR = 0.55
# Least height of a row to write in, and height of lines to sign on, mm.
_LEAST = 6.0
_SIGN = 11.0

Lines = tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class Grid:
    """Columns at a text height and a width, mm. headed: the columns' names are shown."""

    columns: tuple[Column, ...]
    text: float
    width: float
    headed: bool = True

    @cached_property
    def edges(self) -> tuple[float, ...]:
        """Where columns begin and end, mm from the left."""
        total = sum(column.share for column in self.columns)
        sums = accumulate((c.share / total * self.width for c in self.columns), initial=0.0)
        return tuple(sums)

    @property
    def beside(self) -> float:
        """Air beside words, mm."""
        return _BESIDE * self.text

    def height(self, entry: Entry) -> float:
        """Return the height of an entry, mm."""
        if entry.kind == "sign":
            return _SIGN
        counts = [len(cell) for cell in self.lines(entry)]
        lines = max(counts) if entry.kind == "row" else sum(counts)
        tall = ((lines - 1) * PITCH + 1 + 2 * AIR) * self.text
        return max(tall, _LEAST) if entry.kind == "row" else tall

    def lines(self, entry: Entry) -> Lines:
        """Return the lines of each cell: a row's in its column, others over the whole width."""
        if entry.kind == "row":
            spans = zip(entry.cells, self.columns, pairwise(self.edges), strict=True)
            return tuple(self._wrapped(*span) for span in spans)
        room = self.width - 2 * self.beside
        return tuple(
            wrap(cell, room, self.text, entry.kind == "heading" and not number)
            for number, cell in enumerate(entry.cells)
        )

    def _wrapped(self, cell: str, column: Column, span: tuple[float, float]) -> tuple[str, ...]:
        room = span[1] - span[0] - 2 * self.beside
        return wrap(cell, room, self.text, column.kind == "strong") or ("",)

    @cached_property
    def heads(self) -> Lines:
        """The lines of the columns' names."""
        spans = zip(self.columns, pairwise(self.edges), strict=True)
        return tuple(
            wrap(c.head, right - left - 2 * self.beside, SMALLEST, bold=True)
            for c, (left, right) in spans
        )

    @property
    def head_height(self) -> float:
        """Height of the columns' names, mm; 0 where they are not shown."""
        if not self.headed:
            return 0.0
        return ((max(map(len, self.heads)) - 1) * PITCH + 1 + 2 * AIR) * SMALLEST
