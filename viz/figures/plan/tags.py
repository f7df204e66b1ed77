"""Words with their place: lines of text in one box, and the leader to what they name."""

from collections.abc import Iterator
from dataclasses import dataclass

from shapely.geometry.base import BaseGeometry

from viz.drawing.fonts import text_width
from viz.drawing.marks import Anchor, Leader, Mark, Point, Text
from viz.figures.plan.candidates import AIR, Wish
from viz.figures.plan.free import Place, Places
from viz.style.text import DESCENT, PITCH

# Between baselines of one tag, in text heights: closer than in running notes.
_PITCH = min(PITCH, 1.6)


@dataclass(frozen=True)
class Tag:
    """What is said of one thing, its first line bold unless `plain`.

    at: on the thing, mm. toward: unit vector the words would like to stand along. away, loose,
    start, air: as for a `Wish`. shunned: where the words had better not stand, on paper.
    """

    lines: tuple[str, ...]
    at: Point
    toward: Point | None = None
    loose: float = 0.0
    plain: bool = False
    away: float = 2.4
    start: float = 0.0
    air: float = AIR
    shunned: BaseGeometry | None = None

    def size(self, text: float) -> tuple[float, float]:
        """Return width and height of the words, mm."""
        wide = max(text_width(w, text, self._bold(n)) for n, w in enumerate(self.lines))
        return wide, ((len(self.lines) - 1) * _PITCH + 1 + DESCENT) * text

    def wish(self, text: float) -> Wish:
        """Return what the words ask of their place."""
        wide, high = self.size(text)
        return Wish(self.at, wide, high, self.toward, self.away, self.loose, self.start, self.air)

    def _bold(self, number: int) -> bool:
        return number == 0 and not self.plain

    def marks(self, place: Place, text: float) -> Iterator[Mark]:
        """Yield leader and words in their place."""
        if place.leader:
            yield Leader(place.leader, layer="leaders")
        box, anchor = place.box, self._anchor(place)
        middle = (box.left + box.right) / 2
        x = {"start": box.left + self.air, "middle": middle, "end": box.right - self.air}[anchor]
        for number, words in enumerate(self.lines):
            y = box.high - self.air - text - number * _PITCH * text
            yield Text((x, y), words, text, self._bold(number), anchor, layer="labels")

    def _anchor(self, place: Place) -> Anchor:
        if self.loose:
            return "middle" if len(self.lines) == 1 else "start"
        if place.box.left >= self.at[0]:
            return "start"
        return "end" if place.box.right <= self.at[0] else "middle"


def put(tags: list[Tag], places: Places, text: float) -> Iterator[Mark]:
    """Place tags one after the other and yield their marks."""
    for tag in tags:
        yield from tag.marks(places.put(tag.wish(text), shunned=tag.shunned), text)
