"""A form: its entries from the top down, continued where a page is full."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from viz.drawing.figure import Figure
from viz.drawing.marks import Line, Mark
from viz.drawing.page import Box
from viz.drawing.place import NoRoomError
from viz.figures.forms.drawn import LAYER, entry_marks, heads
from viz.figures.forms.entries import Entry
from viz.figures.forms.grid import Grid
from viz.style.lines import CUT


@dataclass(frozen=True)
class Form:
    """Entries over a grid of columns."""

    grid: Grid
    entries: tuple[Entry, ...]

    def pages(self, height: float, first: float | None = None) -> tuple[Figure, ...]:
        """Return the form in pieces no higher than `height`, the first than `first`, mm.

        Raises NoRoomError where one entry does not fit.
        """
        rooms = (height if first is None else first, height)
        return tuple(self._piece(n, rows) for n, rows in enumerate(self._filled(*rooms), 1))

    @property
    def least(self) -> float:
        """Least height with which it can begin on a page: head and first entries, mm."""
        return self.grid.head_height + (self._together(0) if self.entries else 0.0)

    def _filled(self, first: float, height: float) -> Iterator[list[Entry]]:
        """Yield the entries of each piece."""
        head = self.grid.head_height
        page, used, room = list[Entry](), head, first
        for number, entry in enumerate(self.entries):
            need = self._together(number)
            if need + head > height:
                raise NoRoomError("this paper is too low for the form; choose a larger paper")
            if page and used + need > room + 1e-6:
                yield page
                page, used, room = [], head, height
            page.append(entry)
            used += self.grid.height(entry)
        yield page

    def _together(self, number: int) -> float:
        """Return the height of an entry and of what may not be parted from it, mm.

        A heading keeps the two entries after it, a line to sign on the entry before it.
        """
        kinds = [entry.kind for entry in self.entries[number : number + 5]]
        last = 2 if kinds[0] == "heading" else 0
        while kinds[last + 1 : last + 2] == ["sign"]:
            last += 1
        return sum(map(self.grid.height, self.entries[number : number + last + 1]))

    def _piece(self, number: int, entries: Sequence[Entry]) -> Figure:
        width, y = self.grid.width, -self.grid.head_height
        marks: list[Mark] = list(heads(self.grid)) if self.grid.headed else []
        marks.append(Line(((0.0, y), (width, y)), CUT, layer=LAYER))
        for entry in entries:
            low = y - self.grid.height(entry)
            marks += entry_marks(self.grid, entry, y, low)
            y = low
        marks.append(Line(((0.0, y), (width, y)), CUT, layer=LAYER))
        return Figure(f"form-{number}", "", tuple(marks), Box(0.0, y, width, 0.0))


def largest(
    form: Form, sizes: Sequence[float], height: float, most: int, first: float | None = None
) -> tuple[Figure, ...]:
    """Return the form's pages at the largest text that needs no more than so many pages.

    sizes: text heights, mm, from the largest down; the last is taken where none is large enough.
    height: of a page, first: of the first one, mm.
    """
    for size in sizes:
        pages = Form(replace(form.grid, text=size), form.entries).pages(height, first)
        if len(pages) <= most:
            break
    return pages
