"""The foundation plan as a figure."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

import shapely
from shapely import LineString
from shapely.geometry.base import BaseGeometry

from geometry.layout.lay import Layout
from viz.drawing.figure import Figure, extent, figure
from viz.drawing.fonts import wrap
from viz.drawing.marks import Mark, Text
from viz.drawing.page import Box
from viz.drawing.scale import Scale
from viz.figures.plan import bubbles, cuts, grid, pipes, say
from viz.figures.plan.blocks import area_marks
from viz.figures.plan.dashes import DIG, THIN
from viz.figures.plan.free import Places, Soft
from viz.figures.plan.north import free_corner, north_marks
from viz.figures.plan.onpaper import OnPaper, runs, stroked
from viz.figures.plan.order import covered, in_order
from viz.figures.plan.refs import DetailRef, SectionRef
from viz.figures.plan.strings import Corners, corners, places_by_side, strings
from viz.figures.plan.structure import Structure, structure, structure_marks
from viz.figures.plan.tags import Tag, put
from viz.figures.plan.words import Saying
from viz.style.lines import QUIET
from viz.style.text import PITCH

# Room for words between the house with its drain and the strings of dimensions, text heights.
_BELT = 5.0
_NOTE_WIDTH = 90.0
# Words keep off the places that leaders start from, mm.
_DOT = 0.9


def plan_figure(
    layout: Layout,
    scale: Scale,
    text: float,
    refs: Sequence[SectionRef] = (),
    details: Sequence[DetailRef] = (),
) -> Figure:
    """Draw the foundation plan of a sound design at a scale.

    text: height of capitals, mm. refs, details: marks that lead to other drawings. Words stand in
    the nearest free place; the figure grows outward where the house leaves no room.
    """
    plan = _Plan(layout, OnPaper(scale.per_metre), text, tuple(refs), tuple(details))
    return figure("plan", "Foundation plan", plan.marks(), scale)


@dataclass(frozen=True, eq=False)
class _Plan:
    layout: Layout
    paper: OnPaper
    text: float
    refs: tuple[SectionRef, ...]
    details: tuple[DetailRef, ...]

    @cached_property
    def made(self) -> Structure:
        return structure(self.layout, self.paper)

    @cached_property
    def corners(self) -> Corners:
        return corners(self.layout)

    @cached_property
    def house(self) -> BaseGeometry:
        return self.paper.drawn(self.corners.house)

    @cached_property
    def below(self) -> tuple[Mark, ...]:
        """Everything drawn of the building itself."""
        found: list[Mark] = []
        drain, sump = self.layout.drain, self.layout.sump
        if drain:
            found += pipes.band_marks(drain, self.paper, self.made.footings)
        found += stroked(self.dig, THIN, DIG, "dig", QUIET)
        found += structure_marks(self.made)
        if drain:
            found += pipes.drain_marks(drain, self.paper)
        if sump:
            found += pipes.pit_marks(sump, self.paper)
        return tuple(found)

    @cached_property
    def dig(self) -> BaseGeometry:
        """The foot of the hole's sides on paper."""
        holes = [h for a in self.layout.areas if (h := self.layout.ground.hole(a))]
        feet = [shapely.Polygon(h.low) for h in holes]
        return self.paper.drawn(shapely.union_all(feet).boundary) if feet else LineString()

    @cached_property
    def grid(self) -> tuple[tuple[grid.GridLine, ...], tuple[grid.GridLine, ...]]:
        return grid.grid_lines(self.layout, self.made, self.paper)

    @cached_property
    def solid(self) -> BaseGeometry:
        """What neither words nor bubbles stand on: cut concrete, pipes, the pit."""
        return shapely.union_all([self.made.cut, *pipes.hard_pipes(self.layout, self.paper)])

    @cached_property
    def bubble(self) -> float:
        """The radius of bubbles that lead to other drawings, mm."""
        return bubbles.bubble_radius((*self.refs, *self.details), self.text)

    def places(self) -> Places:
        """Return the ground on which words are placed."""
        solid = self.solid
        core = shapely.union_all([self.made.footings, self.house, solid])
        marked = cuts.reserved(self.refs, self.house, self.paper, solid, self.bubble)
        left, low, right, high = core.bounds
        room = _BELT * self.text
        belt = Box(left - room, low - room, right + room, high + room)
        return Places(
            shapely.union_all([solid, *marked]), self.made.cut, tuple(self._soft(belt)), belt
        )

    def _soft(self, belt: Box) -> Iterator[Soft]:
        yield Soft(tuple(runs(self.made.hidden)), 3.0)
        yield Soft(tuple(p.pad.boundary for p in self.made.piers), 5.0)
        rows = zip((0, 1), self.grid, (belt.high, belt.right), strict=True)
        for axis, lines, end in rows:
            made = [((self.paper.size(x.place), x.start), (self.paper.size(x.place), end))
                    for x in lines]  # fmt: skip
            turned = [tuple(p[::-1] for p in line) if axis else line for line in made]
            yield Soft(tuple(LineString(line) for line in turned), 5.0)
        sections = cuts.lines_of(self.refs, self.house, self.paper)
        yield Soft(tuple(sections), 6.0)
        yield Soft(tuple(bubbles.detail_rings(self.details, self.paper)), 12.0)
        yield Soft(tuple(runs(self.dig)), 1.0)
        if self.layout.drain:
            yield Soft(tuple(runs(pipes.band_edge(self.layout.drain, self.paper))), 2.0)
        if self.layout.sump:
            yield Soft((pipes.pit_ring(self.layout.sump, self.paper),), 3.0)

    def labels(self) -> Iterator[Mark]:
        """Yield all words near the house, placed one after the other."""
        layout, paper, text, places = self.layout, self.paper, self.text, self.places()
        tags, pads = self._tags(), [p.pad for p in self.made.piers]
        places.keep_off([shapely.Point(t.at).buffer(_DOT) for t in tags if not t.loose])
        yield from area_marks(layout, pads, paper, places, text)
        yield from put(list(say.pier_tags(layout, self.made)), places, text)
        places.keep_off(pads)
        if layout.sump:
            yield from put(list(say.pit_tags(layout, layout.sump, paper)), places, text)
        yield from put(tags, places, text)
        yield from bubbles.detail_marks(self.details, paper, places, self.bubble, text)

    def _tags(self) -> list[Tag]:
        layout, paper, text = self.layout, self.paper, self.text
        tags = list(say.side_tags(layout, self.corners.untold(), paper))
        if layout.drain:
            tags += say.drain_tags(layout, layout.drain, paper)
            tags += say.pipe_tags(layout, layout.drain, paper, text)
        return [*tags, *say.step_tags(layout, self.made)]

    def marks(self) -> tuple[Mark, ...]:
        """Return everything, words last."""
        labels = list(self.labels())
        below = self.below
        inner = extent([*below, *labels])
        lines = self.grid
        axes = ([x.place for x in lines[0]], [x.place for x in lines[1]])
        rows = places_by_side(self.corners, axes)
        strung = strings(self.layout, self.corners, rows, self.paper, inner, self.text)
        around = extent([*below, *labels, *strung.marks])
        drawn = [*below, *strung.marks, *strung.extensions, *labels]
        for axis in (0, 1):
            drawn += grid.grid_marks(lines[axis], axis, self.paper, around, self.text)
        drawn += self._pointers(drawn)
        drawn += self._notes(drawn)
        drawn += self._north(drawn)
        return tuple(in_order(drawn))

    def _pointers(self, drawn: Sequence[Mark]) -> list[Mark]:
        rest = (extent(drawn), self.solid, self.bubble, self.text)
        return list(cuts.section_marks(self.refs, self.house, self.paper, *rest))

    def _notes(self, drawn: Sequence[Mark]) -> list[Mark]:
        box = extent(drawn)
        words = " ".join(Saying(self.layout).notes())
        rows = wrap(words, max(box.width, _NOTE_WIDTH), self.text)
        step = PITCH * self.text
        return [
            Text((box.left, box.low - 2.0 - self.text - n * step), row, self.text, layer="notes")
            for n, row in enumerate(rows)
        ]

    def _north(self, drawn: Sequence[Mark]) -> Iterator[Mark]:
        things = [shape for mark in drawn if (shape := covered(mark)) is not None]
        centre = free_corner(extent(drawn), things, self.house)
        yield from north_marks(centre, self.layout.design.datum.north)
