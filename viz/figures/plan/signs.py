"""Signs that stand at places of the plan in the stead of words, which a key then tells."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from shapely import Polygon

from viz.drawing.fonts import text_width
from viz.drawing.marks import Leader, Line, Mark, Point, Text
from viz.drawing.page import Box
from viz.figures.plan import flat
from viz.figures.plan.candidates import Wish
from viz.figures.plan.free import Places
from viz.style.lines import SEEN
from viz.style.text import DESCENT

LAYER = "signs"
# Air round the letters of a sign; height of its box; in text heights.
_BESIDE = 0.45
_TALL = 2 * (0.5 + DESCENT + 0.06)
# Layers whose lines are frames round words.
_FRAMED = (LAYER, flat.LAYER)
# A sign farther than this from its place gets a leader, mm.
_LOOSE = 1.6


@dataclass(frozen=True)
class Sign:
    """Letters that name a place. at: on paper, mm. toward: the way it would like to stand.

    away: least distance from the place. start: its leader begins so far from there.
    """

    letters: str
    at: Point
    toward: Point | None = None
    away: float = 2.4
    start: float = 0.0


def sign_size(letters: str, text: float) -> tuple[float, float]:
    """Return width and height of a sign, mm."""
    return text_width(letters, text, True) + 2 * _BESIDE * text, _TALL * text


def sign_box(letters: str, middle: Point, text: float) -> Box:
    """Return the box of a sign about its middle."""
    wide, tall = sign_size(letters, text)
    x, y = middle
    return Box(x - wide / 2, y - tall / 2, x + wide / 2, y + tall / 2)


def sign_marks(letters: str, middle: Point, text: float) -> Iterator[Mark]:
    """Yield a sign: letters in an upright box."""
    box = sign_box(letters, middle, text)
    points = ((box.left, box.low), (box.right, box.low), (box.right, box.high),
              (box.left, box.high), (box.left, box.low))  # fmt: skip
    yield Line(points, SEEN, layer=LAYER)
    yield Text((middle[0], middle[1] - text / 2), letters, text, True, "middle", layer=LAYER)


def put_signs(signs: Sequence[Sign], places: Places, text: float) -> Iterator[Mark]:
    """Place signs one after the other in the nearest free place and yield their marks."""
    for sign in signs:
        wide, tall = sign_size(sign.letters, text)
        wish = Wish(sign.at, wide, tall, sign.toward, sign.away, _LOOSE, sign.start, air=0.5)
        place = places.put(wish)
        box = place.box
        if place.leader:
            start, end = place.leader
            yield Leader((start, _onto(end, box, wish.air)), layer="leaders")
        yield from sign_marks(
            sign.letters, ((box.left + box.right) / 2, (box.low + box.high) / 2), text
        )


def _onto(end: Point, box: Box, air: float) -> Point:
    """Return the end of a leader brought from a box of air onto the sign's own."""
    x = min(max(end[0], box.left + air), box.right - air)
    y = min(max(end[1], box.low + air), box.high - air)
    return (x, y)


def rooms(marks: Sequence[Mark]) -> list[Polygon]:
    """Return all signs and flat names among marks as shapes, which thin lines stop short of."""
    return [Polygon(m.points) for m in marks if isinstance(m, Line) and m.layer in _FRAMED]
