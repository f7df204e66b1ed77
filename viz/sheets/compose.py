"""Figures onto sheets: the greatest scale that fits, rows of figures, even spaces between them."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

from geometry.errors import BedcourseError
from geometry.units import System
from viz.drawing.figure import Figure
from viz.drawing.page import Box
from viz.drawing.scale import SCALES, Scale
from viz.figures.section.setting import Labelling
from viz.sheets.caption import captioned

# Least space between figures, mm.
GAP = 9.0
_PLAIN: tuple[Labelling, ...] = ("words", "narrow")
_ANY: tuple[Labelling, ...] = ("words", "narrow", "keyed")


@dataclass(frozen=True, eq=False)
class Wanted:
    """A figure that is asked for before it has a scale. size: width and height, metres.

    beside: what at least stands beside that, whatever the scale, mm.
    greatest: the ratio beyond which it gains nothing. enough: the ratio at which it is easily
    read; further sheets are begun rather than go below it.
    """

    title: str
    size: tuple[float, float]
    draw: Callable[[Scale, Labelling], Figure]
    greatest: int
    enough: int
    labellings: tuple[Labelling, ...] = _ANY
    beside: float = 0.0


@dataclass(frozen=True)
class Group:
    """Figures of one kind, which share sheets. first: digit the sheets' numbers begin with."""

    first: int
    title: str
    wanted: tuple[Wanted, ...]


@dataclass(frozen=True)
class Cased:
    """A figure and the width and height it takes with its caption, mm."""

    figure: Figure
    width: float
    height: float


Row: TypeAlias = tuple[Cased, ...]
Rows: TypeAlias = tuple[Row, ...]


def cased(figure: Figure, text: float, system: System, number: int = 1) -> Cased:
    """Return a figure with the room it takes; words and tables (number 0) have no caption."""
    box = captioned(figure, number, text, system).box
    return Cased(figure, box.width, box.height)


@dataclass(frozen=True, eq=False)
class Composer:
    """Composes one group for a room, mm; remembers what it has drawn."""

    group: Group
    room: Box
    system: System
    text: float
    drawn: dict[tuple[int, int, str], Cased] = field(default_factory=dict)

    def sheets(self, given: Scale | None = None) -> tuple[Rows, ...]:
        """Return the group's figures on as few sheets as readable scales allow.

        given: the scale to use whatever the room. Raises BedcourseError where one does not fit.
        """
        if given:
            return shelved([self._at(w, given) for w in self.group.wanted], self.room)
        least: tuple[Rows, ...] | None = None
        for step in range(len(SCALES[self.system])):
            figures = [self._fitting(w, self._stepped(w, step), _PLAIN) for w in self.group.wanted]
            fitting = [f for f in figures if f]
            if len(fitting) < len(figures):
                break
            rows = shelved(fitting, self.room)
            if least and len(rows) > len(least):
                break
            least = rows
        return least or shelved([self._largest(w) for w in self.group.wanted], self.room)

    def _stepped(self, wanted: Wanted, step: int) -> Scale:
        """Return a scale so many steps greater than the readable one, up to the greatest."""
        good = [s for s in SCALES[self.system] if wanted.greatest <= s.ratio <= wanted.enough]
        return good[max(0, len(good) - 1 - step)]

    def _at(self, wanted: Wanted, scale: Scale) -> Cased:
        found = self._fitting(wanted, scale, _ANY)
        if found is None:
            best = self._largest(wanted).figure.scale
            raise BedcourseError(
                f"{_lowered(wanted.title)} does not fit this paper at {scale.name}; "
                f"the greatest that fits is {best.name if best else 'none'}"
            )
        return found

    def _largest(self, wanted: Wanted) -> Cased:
        """Return a figure at the readable scale, else at the greatest smaller one that fits."""
        readable = self._stepped(wanted, 0).ratio
        for scale in (s for s in SCALES[self.system] if s.ratio >= readable):
            found = self._fitting(wanted, scale, _ANY)
            if found:
                return found
        raise BedcourseError(
            f"{_lowered(wanted.title)} does not fit this paper at any scale; choose a larger paper"
        )

    def _fitting(
        self, wanted: Wanted, scale: Scale, labellings: Sequence[Labelling]
    ) -> Cased | None:
        """Return the figure in the first way of labelling that fits the room alone."""
        across, up = (size * scale.per_metre for size in wanted.size)
        if across + wanted.beside > self.room.width or up > self.room.height:
            return None
        tried = (self._drawn(wanted, scale, way) for way in labellings if way in wanted.labellings)
        return next((f for f in tried if _fits(f, self.room)), None)

    def _drawn(self, wanted: Wanted, scale: Scale, labelling: Labelling) -> Cased:
        key = (id(wanted), scale.ratio, labelling)
        if key not in self.drawn:
            figure = wanted.draw(scale, labelling)
            self.drawn[key] = cased(figure, self.text, self.system)
        return self.drawn[key]


def _lowered(title: str) -> str:
    return title[:1].lower() + title[1:]


def _fits(one: Cased, room: Box) -> bool:
    return one.width <= room.width + 1e-6 and one.height <= room.height + 1e-6


def shelved(figures: Sequence[Cased], room: Box) -> tuple[Rows, ...]:
    """Return figures in rows, and rows on sheets, in their order."""
    sheets: list[list[list[Cased]]] = []
    for one in figures:
        rows = sheets[-1] if sheets else []
        if rows and _row_width([*rows[-1], one]) <= room.width:
            longer = [*rows[:-1], [*rows[-1], one]]
            if _rows_height(longer) <= room.height:
                rows[-1].append(one)
                continue
        if rows and _rows_height([*rows, [one]]) <= room.height:
            rows.append([one])
            continue
        sheets.append([[one]])
    return tuple(tuple(map(tuple, rows)) for rows in sheets)


def _row_width(row: Sequence[Cased]) -> float:
    return sum(one.width for one in row) + GAP * (len(row) - 1)


def _rows_height(rows: Sequence[Sequence[Cased]]) -> float:
    return sum(max(one.height for one in row) for row in rows) + GAP * (len(rows) - 1)


def placed(rows: Rows, room: Box, text: float, system: System) -> Iterator[tuple[int, Figure]]:
    """Yield every figure, numbered from 1, with its caption and in its place.

    What space is left stands evenly between and round the rows, and within each row.
    """
    spare = room.height - sum(max(one.height for one in row) for row in rows)
    between = spare / (len(rows) + 1)
    top, number = room.high - between, 0
    for row in rows:
        tall = max(one.height for one in row)
        aside = (room.width - sum(one.width for one in row)) / (len(row) + 1)
        left = room.left + aside
        for one in row:
            number += 1
            figure = captioned(one.figure, number, text, system)
            yield number, figure.at(left, top - tall)
            left += one.width + aside
        top -= tall + between
