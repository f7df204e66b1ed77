"""Each area's block of words: its name, levels, slab, wall and footing, in its free room."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

import shapely
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from viz.drawing.marks import Mark, Point
from viz.figures.plan.candidates import AIR
from viz.figures.plan.free import Place, Places
from viz.figures.plan.onpaper import OnPaper
from viz.figures.plan.say import house_of
from viz.figures.plan.tags import Tag
from viz.figures.plan.words import Saying

# What is said of an area: its lines, and the same in more and narrower ones.
Block = tuple[tuple[str, ...], tuple[str, ...]]

_NEVER = 1e9
# A pit has words of its own: the block leans away from it by so much of their distance.
_LEAN = 0.8


@dataclass(frozen=True, eq=False)
class Room:
    """An area's room on paper, and what stands in it: pads, and the pit if there is one."""

    shape: BaseGeometry
    pads: BaseGeometry
    pit: BaseGeometry

    def free(self, clear: float) -> BaseGeometry:
        """Return the room that is left with so much kept clear, mm."""
        pads = self.pads.buffer(clear, join_style="mitre")
        return self.shape.difference(pads.union(self.pit.buffer(clear)))

    @property
    def middle(self) -> Point:
        """Return the middle, or some place inside where that lies outside."""
        middle = self.shape.centroid
        spot = middle if self.shape.contains(middle) else self.shape.representative_point()
        return (spot.x, spot.y)

    @property
    def wanted(self) -> Point:
        """Return where the block would like to stand: about the middle, away from the pit."""
        x, y = self.middle
        if self.pit.is_empty or not self.shape.intersects(self.pit):
            return (x, y)
        pit = self.pit.centroid
        return (x + (x - pit.x) * _LEAN, y + (y - pit.y) * _LEAN)


def area_marks(
    layout: Layout,
    pads: Sequence[BaseGeometry],
    paper: OnPaper,
    places: Places,
    text: float,
    said: Callable[[AreaLayout], Block] | None = None,
) -> Iterator[Mark]:
    """Yield each area's block, in its free room if it can be, else beside the house.

    pads: on paper. said: what the block says; all there is to say unless given.
    """
    say, house = Saying(layout), house_of(layout, paper)
    shapely.prepare(house)
    pit = paper.drawn(layout.sump.outer_circle) if layout.sump else shapely.Point()
    for area in layout.areas:
        inner = area.outline if area.core.is_empty else area.core
        room = Room(paper.drawn(inner), shapely.union_all(list(pads)), pit)
        wide, narrow = said(area) if said else (say.area(area), say.area_narrow(area))
        tag, found = _in_room(wide, narrow, room, places, text)
        if found is None:
            tag = Tag(wide, _clear_spot(room, places))
            found = places.put(tag.wish(text), house)
        yield from tag.marks(found, text)


def _in_room(
    wide: tuple[str, ...], narrow: tuple[str, ...], room: Room, places: Places, text: float
) -> tuple[Tag, Place | None]:
    """Return an area's block placed in its room, ever tighter; without a place if none is free."""
    tag, found = Tag(wide, room.middle), None
    tries = [(wide, 3.0, 2.5), (wide, AIR, 0.8), (wide, AIR, 0.2)]
    tries += [(narrow, AIR, 0.8), (narrow, AIR, 0.3)]
    for lines, air, clear in tries:
        tag = Tag(lines, room.wanted, loose=_NEVER, air=air)
        found = places.put_within(tag.wish(text), room.free(clear * text))
        if found is not None:
            break
    return tag, found


def _clear_spot(room: Room, places: Places) -> Point:
    """Return a place of a room clear of piers and words, for a leader to start from."""
    words = [shapely.box(b.left, b.low, b.right, b.high) for b in places.boxes]
    free = room.free(0.0).difference(shapely.union_all(words))
    inner = free.buffer(-1.0)
    free = free if inner.is_empty else inner
    if free.is_empty or free.contains(shapely.Point(room.middle)):
        return room.middle
    spot = free.representative_point()
    return (spot.x, spot.y)
