"""The foundation plan as a figure."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

import shapely

from geometry.layout.lay import Layout
from viz.drawing.figure import Figure, extent, figure
from viz.drawing.fonts import wrap
from viz.drawing.marks import Mark, Text
from viz.drawing.scale import Scale
from viz.figures.plan import bubbles, cuts, grid, say
from viz.figures.plan.blocks import area_marks
from viz.figures.plan.heads import Round
from viz.figures.plan.light import Light
from viz.figures.plan.north import free_corner, north_marks
from viz.figures.plan.onpaper import OnPaper
from viz.figures.plan.order import covered, in_order
from viz.figures.plan.refs import DetailRef, SectionRef
from viz.figures.plan.strings import places_by_side, strings
from viz.figures.plan.tags import Tag, put
from viz.figures.plan.whole import Whole
from viz.figures.plan.words import Saying
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
    light: bool = False,
    widest: float = 0.0,
) -> Figure:
    """Draw the foundation plan of a sound design at a scale.

    text: height of capitals, mm. refs, details: marks that lead to other drawings. Words stand in
    the nearest free place; the figure grows outward where the house leaves no room.
    light: for small papers: signs at the places, what is said of them in a key beside or under the
    plan. widest: how wide plan and key may be together, mm; no narrower than the plan itself.
    """
    held = (layout, OnPaper(scale.per_metre), text, tuple(refs), tuple(details))
    marks = Light(*held).marks(widest) if light else _Worded(*held).marks()
    return figure("plan", "Foundation plan", marks, scale)


@dataclass(frozen=True, eq=False)
class _Worded(Whole):
    """The plan whose words stand at what they name."""

    @cached_property
    def bubble(self) -> float:
        """The radius of bubbles that lead to other drawings, mm."""
        return bubbles.bubble_radius((*self.refs, *self.details), self.text)

    @property
    def _head(self) -> Round:
        return Round(self.bubble, self.text)

    def labels(self) -> Iterator[Mark]:
        """Yield all words near the house, placed one after the other."""
        layout, paper, text = self.layout, self.paper, self.text
        places = self.places(_BELT * text, self._head)
        tags, pads = self._tags(), [p.pad for p in self.made.piers]
        under = self._under()
        dots = [t for t in (*under, *tags) if not t.loose]
        places.keep_off([shapely.Point(t.at).buffer(_DOT) for t in dots])
        # Words of a drain under the floor, and of its pit, have less choice than the floor's own.
        piers, pit = list(say.pier_tags(layout, self.made)), self._pit()
        if not under:
            yield from area_marks(layout, pads, paper, places, text)
        yield from put(piers, places, text)
        places.keep_off(pads)
        yield from put([*pit, *under], places, text)
        if under:
            yield from area_marks(layout, pads, paper, places, text)
        yield from put(tags, places, text)
        yield from bubbles.detail_marks(self.details, paper, places, self.bubble, text)

    def _pit(self) -> list[Tag]:
        pit = self.layout.sump
        return list(say.pit_tags(self.layout, pit, self.paper)) if pit else []

    def _under(self) -> list[Tag]:
        """Return the tags of drains under floors."""
        found: list[Tag] = []
        for drain in (d for d in self.layout.drains if d.inside):
            found += say.drain_tags(self.layout, drain, self.paper)
            found += say.pipe_tags(self.layout, drain, self.paper, self.text)
        return found

    def _tags(self) -> list[Tag]:
        layout, paper, text = self.layout, self.paper, self.text
        tags = list(say.side_tags(layout, self.corners.untold(), paper))
        tags += say.outward_tags(layout, paper)
        for drain in (d for d in layout.drains if not d.inside):
            tags += say.drain_tags(layout, drain, paper)
            tags += say.pipe_tags(layout, drain, paper, text)
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
        rest = (extent(drawn), self.solid, self._head)
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
