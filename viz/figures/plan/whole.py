"""What every plan draws of a design, whether its words stand at their place or in a key."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import shapely
from shapely import LineString
from shapely.geometry.base import BaseGeometry

from geometry.layout.lay import Layout
from viz.drawing.marks import Circle, Mark
from viz.drawing.page import Box
from viz.figures.plan import bubbles, cuts, grid, pipes
from viz.figures.plan.dashes import DIG, THIN
from viz.figures.plan.free import Places, Soft
from viz.figures.plan.heads import Head
from viz.figures.plan.onpaper import OnPaper, runs, stroked
from viz.figures.plan.refs import DetailRef, SectionRef
from viz.figures.plan.strings import Corners, corners
from viz.figures.plan.structure import Structure, structure, structure_marks
from viz.style.lines import INK, PAPER, QUIET, SEEN

# The least radius of a vent pipe on paper, mm.
_RING = 1.1


@dataclass(frozen=True, eq=False)
class Whole:
    """A design brought to paper at a scale. text: height of capitals, mm."""

    layout: Layout
    paper: OnPaper
    text: float
    refs: tuple[SectionRef, ...]
    details: tuple[DetailRef, ...]

    @cached_property
    def made(self) -> Structure:
        """The concrete on paper."""
        return structure(self.layout, self.paper)

    @cached_property
    def corners(self) -> Corners:
        """The corners of all outlines."""
        return corners(self.layout)

    @cached_property
    def house(self) -> BaseGeometry:
        """All outlines joined, on paper."""
        return self.paper.drawn(self.corners.house)

    @cached_property
    def below(self) -> tuple[Mark, ...]:
        """Everything drawn of the building itself."""
        found: list[Mark] = []
        drains, sump = self.layout.drains, self.layout.sump
        for drain in drains:
            found += pipes.band_marks(drain, self.paper, self.made.footings)
        found += stroked(self.dig, THIN, DIG, "dig", QUIET)
        found += structure_marks(self.made)
        for drain in drains:
            found += pipes.drain_marks(drain, self.paper)
        found += pipes.outward_marks(self.layout, self.paper)
        if sump:
            found += pipes.pit_marks(sump, self.paper)
        found += self._vent()
        return tuple(found)

    def _vent(self) -> Iterator[Mark]:
        """Yield the vent pipe for soil gas: a ring round a dot, of its size where that shows."""
        vent = self.layout.vent
        if vent:
            centre = self.paper.point(vent.vent.at)
            radius = self.paper.size(vent.pipe.outside_diameter_m / 2, _RING)
            yield Circle(centre, radius, SEEN, fill=PAPER, layer="outline")
            yield Circle(centre, radius / 3, 0.0, fill=INK, layer="outline")

    @cached_property
    def dig(self) -> BaseGeometry:
        """The foot of the hole's sides on paper."""
        holes = [h for a in self.layout.areas if (h := self.layout.ground.hole(a))]
        feet = [shapely.Polygon(h.low) for h in holes]
        return self.paper.drawn(shapely.union_all(feet).boundary) if feet else LineString()

    @cached_property
    def grid(self) -> tuple[tuple[grid.GridLine, ...], tuple[grid.GridLine, ...]]:
        """The piers' numbered and lettered lines."""
        return grid.grid_lines(self.layout, self.made, self.paper)

    @cached_property
    def solid(self) -> BaseGeometry:
        """What neither words nor bubbles stand on: cut concrete, pipes, the pit."""
        vent = self.layout.vent
        pipe = [self.paper.drawn(vent.outside).buffer(_RING)] if vent else []
        return shapely.union_all([self.made.cut, *pipes.hard_pipes(self.layout, self.paper), *pipe])

    def places(self, room: float, head: Head) -> Places:
        """Return the ground on which words are placed.

        room: for words between the works and the strings of dimensions, mm. head: of cutting lines.
        """
        solid = self.solid
        core = shapely.union_all([self.made.footings, self.house, solid])
        marked = cuts.reserved(self.refs, self.house, self.paper, solid, head)
        left, low, right, high = core.bounds
        belt = Box(left - room, low - room, right + room, high + room)
        hard = shapely.union_all([solid, *marked])
        return Places(hard, self.made.cut, tuple(self._soft(belt)), belt)

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
        for drain in self.layout.drains:
            yield Soft(tuple(runs(pipes.band_edge(drain, self.paper))), 2.0)
        if self.layout.sump:
            yield Soft((pipes.pit_ring(self.layout.sump, self.paper),), 3.0)
