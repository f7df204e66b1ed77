"""The key of a light plan: signs with their words, in columns beside the plan or under it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import zip_longest

from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Mark, Point, Text
from viz.drawing.page import Box
from viz.figures.plan.signs import sign_marks, sign_size
from viz.style.text import PITCH

LAYER = "notes"
# Between plan and key, between columns of the key; mm.
_BETWEEN = 5.0
# In text heights: the narrowest column, between cells of one line, a signed line, between kinds.
_NARROWEST = 23.4
# Columns beside the plan, and under it, at most.
_MOST = 4
_CELL = 1.0
_SIGNED = 1.95
_KINDS = 0.8
_HEADED = 0.3
_AFTER_SIGN = 0.7

# Words of a line: how far in they begin, mm; the words; whether they are bold.
_Line = tuple[tuple[float, str, bool], ...]


@dataclass(frozen=True)
class Entry:
    """What a key says of one thing. cells: stand under each other in lines of one kind."""

    letters: str = ""
    head: str = ""
    cells: tuple[str, ...] = ()
    lines: tuple[str, ...] = ()


Groups = Sequence[Sequence[Entry]]


def key_marks(groups: Groups, plan: Box, widest: float, text: float) -> list[Mark]:
    """Return the key's marks beside a plan and under it, as both together are lowest.

    widest: of plan and key together, mm; no narrower than the plan.
    """
    narrowest = _NARROWEST * text
    beside = int((widest - plan.width) // (narrowest + _BETWEEN))
    under = int(max(widest, plan.width) // narrowest)
    keys = [
        _Key(groups, plan, aside, below, max(widest, plan.width, narrowest), text)
        for aside in range(min(max(beside, 0), _MOST) + 1)
        for below in range(min(under, _MOST) + 1)
        if aside or below
    ]
    wide = [key for key in keys if key.room >= narrowest - 1e-6]
    return list(min(wide or keys[:1], key=lambda key: key.cost).marks())


@dataclass(frozen=True, eq=False)
class _Key:
    """Entries in columns: first those beside the plan, then those under it.

    widest: of plan and key together, mm.
    """

    groups: Groups
    plan: Box
    beside: int
    under: int
    widest: float
    text: float

    @cached_property
    def room(self) -> float:
        """The widest that every column may be, mm."""
        rooms = []
        if self.beside:
            aside = self.widest - self.plan.width
            rooms.append(aside / self.beside - _BETWEEN)
        if self.under:
            whole = self.plan.width if self.beside else self.widest
            rooms.append((whole + _BETWEEN) / self.under - _BETWEEN)
        return min(rooms)

    @property
    def cost(self) -> float:
        """How high plan and key are together, mm; of like ones, few columns and none under."""
        return max(self.plan.height, self.height) + 0.5 * self.beside + self.under

    @cached_property
    def indent(self) -> float:
        """How far in words begin where a sign stands before them, mm."""
        letters = [e.letters for group in self.groups for e in group if e.letters]
        wide = max((sign_size(one, self.text)[0] for one in letters), default=0.0)
        return wide + _AFTER_SIGN * self.text

    @cached_property
    def laid(self) -> list[tuple[Entry, list[_Line], bool]]:
        """Every entry with its lines, and whether it begins a kind."""
        found = []
        for group in self.groups:
            stops = self._stops(group)
            for number, entry in enumerate(group):
                found.append((entry, list(self._lines(entry, stops)), number == 0))
        return found

    @cached_property
    def width(self) -> float:
        """How wide the columns are, mm: no wider than their words."""
        ends = [
            x + text_width(words, self.text, bold)
            for _, lines, _ in self.laid
            for line in lines
            for x, words, bold in line
        ]
        return max(ends)

    @cached_property
    def height(self) -> float:
        """The height from the plan's top to the end of the lowest column, mm."""
        low, high = 0.0, self.plan.height + _BETWEEN + sum(map(self._tall, range(len(self.laid))))
        while high - low > 0.05:
            middle = (low + high) / 2
            low, high = (low, middle) if self._columns(middle) else (middle, high)
        return high

    def marks(self) -> Iterator[Mark]:
        """Yield all columns."""
        height = self.height + 0.01
        for (x, top), column in zip(self._tops(), self._columns(height) or (), strict=False):
            y = top
            for number in column:
                upper = y - self._above(number, column)
                yield from self._drawn(number, (x, upper))
                y = upper - self._tall_alone(number)

    def _tops(self) -> Iterator[Point]:
        """Yield the upper left corner of each column."""
        for number in range(self.beside):
            aside = _BETWEEN + number * (self.width + _BETWEEN)
            yield (self.plan.right + aside, self.plan.high)
        for number in range(self.under):
            yield (self.plan.left + number * (self.width + _BETWEEN), self.plan.low - _BETWEEN)

    def _drawn(self, number: int, at: Point) -> Iterator[Mark]:
        entry, lines, _ = self.laid[number]
        x, text = at[0], self.text
        first = (
            at[1] - (_SIGNED / 2 + 0.5) * text
            if entry.letters
            else at[1] - (1.3 + (_HEADED if entry.head else 0.0)) * text
        )
        if entry.letters:
            middle = x + (self.indent - _AFTER_SIGN * text) / 2
            yield from sign_marks(entry.letters, (middle, first + text / 2), text)
        for row, line in enumerate(lines):
            y = first - row * PITCH * text
            for aside, words, bold in line:
                yield Text((x + aside, y), words, text, bold, layer=LAYER)

    def _columns(self, height: float) -> list[list[int]] | None:
        """Return the entries of each column down to a height; None where there is no room."""
        below = height - self.plan.height - _BETWEEN
        columns, number = [], 0
        for room in (*[height] * self.beside, *[below] * self.under):
            column: list[int] = []
            while number < len(self.laid):
                room -= self._tall(number) if column else self._tall_alone(number)
                if room < 0:
                    break
                column.append(number)
                number += 1
            columns.append(column)
        return columns if number == len(self.laid) else None

    def _above(self, number: int, column: Sequence[int]) -> float:
        return self._tall(number) - self._tall_alone(number) if number != column[0] else 0.0

    def _tall(self, number: int) -> float:
        return self._tall_alone(number) + (_KINDS * self.text if self.laid[number][2] else 0.0)

    def _tall_alone(self, number: int) -> float:
        entry, lines, _ = self.laid[number]
        first = _SIGNED if entry.letters else PITCH + (_HEADED if entry.head else 0.0)
        return (first + (len(lines) - 1) * PITCH) * self.text

    def _stops(self, group: Sequence[Entry]) -> list[float]:
        """Return the widths of the heads and cells of a kind, mm."""
        rows = [(self._wide(e.head, True), *map(self._wide, e.cells)) for e in group if e.cells]
        return [max(column) for column in zip_longest(*rows, fillvalue=0.0)]

    def _wide(self, words: str, bold: bool = False) -> float:
        return text_width(words, self.text, bold)

    def _lines(self, entry: Entry, stops: Sequence[float]) -> Iterator[_Line]:
        start = self.indent if entry.letters else 0.0
        room = self.room - start
        if entry.cells:
            yield from self._celled(entry, stops, start)
            return
        for line in wrap(entry.head, room, self.text, True) if entry.head else ():
            yield ((start, line, True),)
        for words in entry.lines:
            yield from (((start, line, False),) for line in wrap(words, room, self.text))

    def _celled(self, entry: Entry, stops: Sequence[float], start: float) -> Iterator[_Line]:
        """Yield head and cells on one line, else the cells under the head, else each alone."""
        room, gap = self.room - start, _CELL * self.text
        cells = [(entry.head, True), *((cell, False) for cell in entry.cells)]
        if not entry.head:
            cells, stops = cells[1:], stops[1:]
        if sum(stops) + gap * (len(stops) - 1) <= room:
            yield tuple(_strung(cells, stops, start, gap))
            return
        for line in wrap(entry.head, room, self.text, True):
            yield ((start, line, True),)
        if sum(stops[1:]) + gap * (len(stops) - 2) <= room:
            yield tuple(_strung(cells[1:], stops[1:], start, gap))
            return
        yield from (((start, words, bold),) for words, bold in cells[1:])


def _strung(
    cells: Sequence[tuple[str, bool]], stops: Sequence[float], start: float, gap: float
) -> Iterator[tuple[float, str, bool]]:
    x = start
    for (words, bold), wide in zip(cells, stops, strict=True):
        yield x, words, bold
        x += wide + gap
