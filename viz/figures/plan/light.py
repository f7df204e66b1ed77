"""The plan for small papers: signs at the places, their words in a key beside the plan."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

import shapely
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from viz.drawing.figure import extent
from viz.drawing.marks import Line, Mark
from viz.drawing.page import Box
from viz.figures.plan import cuts, grid, say
from viz.figures.plan.blocks import Block, area_marks
from viz.figures.plan.flat import flat_details
from viz.figures.plan.heads import Flat
from viz.figures.plan.key import key_marks
from viz.figures.plan.listed import Listed, Rows
from viz.figures.plan.north import SMALL, free_corner, north_marks
from viz.figures.plan.order import covered, in_order
from viz.figures.plan.signs import put_signs, rooms
from viz.figures.plan.strings import places_by_side, strings
from viz.figures.plan.tags import put
from viz.figures.plan.told import Told
from viz.figures.plan.whole import Whole

# Room for signs between the works and the strings of dimensions, text heights.
_BELT = 2.5
# Signs keep off the places they stand for; strings stand so much nearer; mm.
_DOT = 0.9
_CLOSER = 3.2


@dataclass(frozen=True, eq=False)
class Light(Whole):
    """The plan whose words stand in a key."""

    @property
    def _head(self) -> Flat:
        return Flat(self.refs, self.text)

    @cached_property
    def told(self) -> Told:
        """Signs and key."""
        return Told(self.layout, self.made, self.paper)

    @cached_property
    def listed(self) -> Listed:
        """Corners and grid as the key may list them."""
        return Listed(self.layout, self.corners, self.grid, self.paper)

    @cached_property
    def full_rows(self) -> Rows:
        """The strings of a plan with room for them."""
        lines = self.grid
        axes = ([x.place for x in lines[0]], [x.place for x in lines[1]])
        return places_by_side(self.corners, axes)

    @cached_property
    def is_listed(self) -> bool:
        """Whether the key lists corners and grid: strings would crowd the plan."""
        return self.listed.crowded(self.full_rows, self.text)

    def marks(self, widest: float) -> tuple[Mark, ...]:
        """Return everything, words last. widest: of plan and key together, mm."""
        plan = self._plan()
        groups = self.told.groups((*self.refs, *self.details))
        if self.is_listed:
            groups = (*groups[:1], *self.listed.groups(), *groups[1:])
        key = key_marks(groups, extent(plan), widest, self.text)
        return tuple(in_order([*plan, *key], rooms([*plan, *key])))

    def _labels(self) -> Iterator[Mark]:
        """Yield the few words and the signs near the house, placed one after the other."""
        layout, paper, text = self.layout, self.paper, self.text
        places = self.places(_BELT * text, self._head)
        signs, pads = list(self.told.signs()), [p.pad for p in self.made.piers]
        if self.is_listed:
            signs += self.listed.signs()
        places.keep_off([shapely.Point(s.at).buffer(_DOT) for s in signs])
        yield from area_marks(layout, pads, paper, places, text, _named)
        names = [replace(t, lines=t.lines[:1]) for t in say.pier_tags(layout, self.made)]
        yield from put(names, places, text)
        places.keep_off(pads)
        yield from put_signs(signs, places, text)
        if not self.is_listed:
            yield from put(list(say.side_tags(layout, self.corners.untold(), paper)), places, text)
        yield from flat_details(self.details, paper, places, text)

    def _plan(self) -> list[Mark]:
        """Return all but the key."""
        labels, below, lines = list(self._labels()), self.below, self.grid
        rows = self.listed.rows if self.is_listed else self.full_rows
        inner = extent([*below, *labels])
        strung = strings(self.layout, self.corners, rows, self.paper, inner, self.text, _CLOSER)
        around = extent([*below, *labels, *strung.marks])
        drawn = [*below, *strung.marks, *strung.extensions, *labels]
        for axis in (0, 1):
            drawn += grid.grid_marks(lines[axis], axis, self.paper, around, self.text, small=True)
        drawn += self._pointers(drawn)
        return [*drawn, *self._north(drawn)]

    def _pointers(self, drawn: Sequence[Mark]) -> list[Mark]:
        """Return the cutting lines, their bubbles as near the works as is free."""
        left, low, right, high = shapely.union_all([self.made.footings, self.solid]).bounds
        rest = (Box(left, low, right, high), self.solid, self._head)
        taken = list(_taken(drawn))
        return list(cuts.section_marks(self.refs, self.house, self.paper, *rest, taken))

    def _north(self, drawn: Sequence[Mark]) -> Iterator[Mark]:
        things = [shape for mark in drawn if (shape := covered(mark)) is not None]
        centre = free_corner(extent(drawn), things, self.house, SMALL)
        yield from north_marks(centre, self.layout.design.datum.north, SMALL)


def _named(area: AreaLayout) -> Block:
    """Return an area's name alone, and the same in several lines."""
    name = area.name.upper()
    return (name,), tuple(name.split())


def _taken(drawn: Sequence[Mark]) -> Iterator[BaseGeometry]:
    """Yield what bubbles keep off: all but the thin lines that stop short of them."""
    for mark in drawn:
        thin = isinstance(mark, Line) and mark.layer in ("dig", "band", "grid", "section line")
        shape = None if thin else covered(mark)
        if shape is not None:
            yield shape
