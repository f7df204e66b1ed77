"""Heads of cutting lines: the heavy end, the arrow the way one looks, the name of the drawing."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Protocol

import numpy as np
import shapely
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from geometry.plan.outline import multi
from viz.drawing.marks import Fill, Line, Mark, Point
from viz.figures.plan.bubbles import LAYER, bubble
from viz.figures.plan.dashes import THICK_END
from viz.figures.plan.flat import flat_box, flat_marks, flat_size, flat_words
from viz.figures.plan.refs import SectionRef
from viz.style.lines import INK

# Heavy end of a cutting line, and of one with a flat name, mm.
_END = 6.0
_SHORT = 4.4
# A bubble with its arrow reaches so many radii from its middle.
_REACH = 1.5
# Size of the arrow at an end without a bubble; room beside a heavy stroke; mm.
_BARE = 2.2
SPARE = 0.8
# Between the heavy end and a flat name, mm.
_GAP = 0.5


@dataclass(frozen=True)
class End:
    """One end of a cutting line, mm. out: unit vector off the line. local: it lies in the house."""

    at: Point
    out: Point
    view: Point
    local: bool

    def on(self, far: float) -> Point:
        """Return the place so far out on the line, mm."""
        return (self.at[0] + self.out[0] * far, self.at[1] + self.out[1] * far)


class Head(Protocol):
    """How the ends of cutting lines are drawn."""

    @property
    def unnamed(self) -> "Head | None":
        """The head of the second end; None where both bear the name."""

    @property
    def before(self) -> float:
        """How far its middle lies from where a line within the house ends, mm."""

    @property
    def clear(self) -> float:
        """How far its middle keeps outside the box it stands round, mm."""

    def taken(self, end: End, tip: Point) -> BaseGeometry:
        """Return the room of a head on paper."""

    def marks(self, end: End, tip: Point, ref: SectionRef) -> Iterator[Mark]:
        """Yield a head at its place."""


@dataclass(frozen=True)
class Round:
    """A bubble within an arrow, beyond a heavy end."""

    radius: float
    text: float

    @property
    def unnamed(self) -> None:
        """Both ends bear the name."""

    @property
    def before(self) -> float:
        """How far its middle lies from where a line within the house ends, mm."""
        return self.radius

    @property
    def clear(self) -> float:
        """How far its middle keeps outside the box it stands round, mm."""
        return self.radius + _END + 1.5

    def taken(self, end: End, tip: Point) -> BaseGeometry:
        """Return the room of a head on paper."""
        disc = shapely.Point(tip).buffer(self.radius * _REACH)
        return shapely.union_all([disc, LineString(self._heavy(end, tip)).buffer(SPARE)])

    def marks(self, end: End, tip: Point, ref: SectionRef) -> Iterator[Mark]:
        """Yield a head at its place."""
        yield Line(self._heavy(end, tip), THICK_END, layer=LAYER)
        whole = _triangle(tip, end.view, self.radius)
        yield Fill(multi(whole.difference(shapely.Point(tip).buffer(self.radius, 32))), INK, LAYER)
        yield from bubble(tip, self.radius, ref, self.text)

    def _heavy(self, end: End, tip: Point) -> tuple[Point, Point]:
        return _back(end, tip, self.radius), _back(end, tip, self.radius + _END)


@dataclass(frozen=True)
class Flat:
    """An arrow upon a heavy end, beyond one of the two the drawing's name written flat."""

    refs: Sequence[SectionRef]
    text: float
    named: bool = True

    @property
    def unnamed(self) -> "Flat":
        """The head of the second end."""
        return replace(self, named=False)

    @property
    def before(self) -> float:
        """How far its middle lies from where a line within the house ends, mm."""
        return _SHORT

    @property
    def clear(self) -> float:
        """How far its middle keeps outside the box it stands round, mm."""
        return _SHORT + _GAP

    def taken(self, end: End, tip: Point) -> BaseGeometry:
        """Return the room of a head on paper."""
        if not self.named:
            return self._arrow(end, tip).buffer(SPARE)
        wide = max(flat_size(flat_words(ref), self.text)[0] for ref in self.refs)
        middle = self._middle(end, tip, wide)
        name = flat_box(middle, wide, self.text).buffer(SPARE)
        return shapely.union_all([self._arrow(end, tip).buffer(SPARE), name])

    def marks(self, end: End, tip: Point, ref: SectionRef) -> Iterator[Mark]:
        """Yield a head at its place."""
        yield Line((tip, _back(end, tip, _SHORT)), THICK_END, layer=LAYER)
        yield Fill(self._arrow(end, tip), INK, LAYER)
        if not self.named:
            return
        wide = flat_size(flat_words(ref), self.text)[0]
        yield from flat_marks(flat_words(ref), self._middle(end, tip, wide), self.text)

    def _arrow(self, end: End, tip: Point) -> Polygon:
        return _triangle(_back(end, tip, _SHORT / 2), end.view, _SHORT / 2 / np.sqrt(2))

    def _middle(self, end: End, tip: Point, wide: float) -> Point:
        """Return the middle of a name wholly beyond the end of its line."""
        tall = flat_size("", self.text)[1]
        halves = (wide / 2, tall / 2)
        far = float(np.abs(end.out) @ halves)
        return _back(end, tip, -far - _GAP)


def bare_taken(end: End) -> BaseGeometry:
    """Return the room of an end without a name."""
    disc = shapely.Point(end.at).buffer(_BARE * _REACH)
    return shapely.union_all([disc, LineString(_bare_heavy(end)).buffer(SPARE)])


def bare_marks(end: End) -> Iterator[Mark]:
    """Yield the heavy end and the arrow of an end without a name."""
    yield Line(_bare_heavy(end), THICK_END, layer=LAYER)
    yield Fill(_triangle(end.at, end.view, _BARE), INK, LAYER)


def _bare_heavy(end: End) -> tuple[Point, Point]:
    return end.at, _back(end, end.at, _END)


def _back(end: End, tip: Point, far: float) -> Point:
    """Return the place so far from a tip back along the line, mm."""
    return (tip[0] - end.out[0] * far, tip[1] - end.out[1] * far)


def _triangle(tip: Point, view: Point, radius: float) -> Polygon:
    """Return a half square that looks at the cut, its sides touching a circle about its base."""
    at, way = np.asarray(tip), np.asarray(view)
    aside = np.array((-way[1], way[0]))
    wide = radius * np.sqrt(2)
    return Polygon((at + way * wide, at + aside * wide, at - aside * wide))
