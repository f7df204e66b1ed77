"""One picture of the unrolled drain with everything that belongs round it, as marks."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from geometry.layout.lay import Layout
from geometry.units import System
from viz.drawing.figure import extent
from viz.drawing.marks import Mark
from viz.figures.profile.falls import fall_marks
from viz.figures.profile.levels import named_levels
from viz.figures.profile.names import Names, names_in_full, names_with_figures
from viz.figures.profile.picture import (
    BREAK,
    bleeder_marks,
    bleeder_ticks,
    pipe_marks,
    pipe_words,
    riser_marks,
    stone_marks,
    tee_marks,
    uprights,
    wrap_marks,
)
from viz.figures.profile.piece import Piece
from viz.figures.profile.places import Place, places, start_words
from viz.figures.profile.rows import band, rows
from viz.figures.profile.sides import STAFF_GAP, Sides
from viz.figures.profile.table import place_notes, place_table
from viz.figures.profile.view import View

# How far upright lines pass the picture, and the arrows the risers; mm.
_PAST, _ARROW = 2.0, 4.0


@dataclass(frozen=True)
class Unrolled:
    """Everything a profile's marks are made from.

    span: lowest and highest level, metres. text: height of capitals, widest: the width to stay
    in, mm. compact: narrow sides, and notes under the picture.
    """

    layout: Layout
    piece: Piece
    view: View
    span: tuple[float, float]
    text: float
    compact: bool
    widest: float

    def marks(self) -> tuple[Mark, ...]:
        """Return the marks, what lies behind first."""
        sides = self._sides
        drawn = tuple(self._picture(sides))
        columns = (*drawn, *self._band(sides.foot()))
        if extent(columns).width > self.widest >= extent(drawn).width:
            columns = (*drawn, *self._table(sides.foot(), drawn))
        if not self.compact:
            return columns
        around = extent(columns)
        room = min(around.width, self.widest)
        return (*columns, *place_notes(self._places, around.low, around.left, room, self.text))

    @property
    def _system(self) -> System:
        return self.layout.design.project.units

    @cached_property
    def _places(self) -> tuple[Place, ...]:
        return places(self.layout, self.piece)

    @property
    def _sides(self) -> Sides:
        view, drain = self.view, self.piece.drain
        reach = view.x(max(drain.radius, *(x.outer for x in self.layout.leads(drain)), 0.0))
        names = self._names
        return Sides(
            self.piece, view, names, self.span, self._system, reach, self.text, self.compact
        )

    @property
    def _names(self) -> Names:
        levels = named_levels(self.layout)
        if self.compact:
            return names_with_figures(levels, self.view, self._system, self.text)
        return names_in_full(levels, self.view, self.text)

    def _picture(self, sides: Sides) -> Iterator[Mark]:
        view, piece, found, falling = self.view, self.piece, self._places, self.piece.stretches()
        high, foot = view.y(self.span[1]), sides.foot()
        arrow = max(high + BREAK + _ARROW, sides.names.top + 0.5 * self.text)
        yield from stone_marks(piece, view)
        yield from uprights([p.run for p in found], view, foot, high + _PAST)
        if piece.drain.rise:
            turns = {end for s in falling for end in (s.high, s.low)}
            yield from uprights(sorted(turns), view, high + _PAST, arrow)
        yield from sides.marks(foot)
        yield from wrap_marks(piece, view)
        through = self.layout.bleeders_at(piece.drain)
        yield from bleeder_marks(piece, through, view)
        yield from riser_marks(piece, found, view, high)
        yield from pipe_marks(piece, found, view)
        yield from bleeder_ticks(piece, through, view)
        inverts = [b.outer_end[2] - b.pipe.inside_diameter_m / 2 for b in through[:1]]
        yield from pipe_words(piece, found, view, self.text, inverts)
        yield from tee_marks(found, view)
        yield from fall_marks(piece, view, self._system, arrow, self.text)

    def _xs(self) -> list[float]:
        return [self.view.x(place.run) for place in self._places]

    def _band(self, foot: float) -> Iterator[Mark]:
        table = rows(
            self._places,
            start_words(self.piece),
            self.layout.design.datum,
            self._system,
            noted=not self.compact,
        )
        xs = self._xs()
        return band(table, xs, foot, min(xs) - STAFF_GAP, self.text)

    def _table(self, foot: float, drawn: Sequence[Mark]) -> Iterator[Mark]:
        start = start_words(self.piece)
        table = rows(self._places, start, self.layout.design.datum, self._system, noted=False)
        left = extent(drawn).left
        return place_table(table, self._xs(), foot, left, self.widest, self.text)
