"""How loops are told apart in black and white: weight and dash, number, arrow at the supply."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot

import shapely
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from geometry.layout.tubing.lay import Loop
from viz.drawing.fonts import text_width
from viz.drawing.marks import Circle, Fill, Line, Mark, Point, Text
from viz.figures.plan.onpaper import OnPaper
from viz.style.lines import INK, PAPER, SEEN

LAYER = "outline"
# Weight and dash of neighbouring loops, over and over, mm.
STYLES: tuple[tuple[float, tuple[float, ...]], ...] = (
    (0.50, ()),
    (0.25, ()),
    (0.40, (3.2, 1.0)),
    (0.30, (1.1, 0.8)),
    (0.40, (5.0, 0.9, 0.6, 0.9)),
)
_ARROW = (2.6, 0.85)
# The arrow stands so far behind the end of the lead, mm.
_BEHIND = 2.0
_AIR = 0.7


@dataclass(frozen=True, eq=False)
class Numbered:
    """A loop on paper, mm, and where its number stands. lead: length of its supply's lead."""

    number: int
    line: LineString
    at: Point
    radius: float
    lead: float


def numbered(loops: Sequence[Loop], paper: OnPaper, text: float) -> tuple[Numbered, ...]:
    """Return loops on paper, each number in the middle of its own tubes."""
    lines = [LineString([paper.point(p) for p in loop.points]) for loop in loops]
    found = []
    for loop, line in zip(loops, lines, strict=True):
        radius = max(text_width(str(loop.number), text, bold=True), text) / 2 + _AIR
        others = [other for other in lines if other is not line]
        at = _middle(line, shapely.union_all(others) if others else LineString(), radius)
        found.append(Numbered(loop.number, line, at, radius, paper.size(loop.lead_m / 2)))
    return tuple(found)


def _middle(line: LineString, others: BaseGeometry, radius: float) -> Point:
    """Return the place on a loop nearest its middle whose ring covers no other loop's tube."""
    middle = line.centroid
    count = max(12, int(line.length / radius))
    places = [line.interpolate((n + 0.5) / count, normalized=True) for n in range(count)]
    # Ends of the loop lie in the fan, where all are near.
    places = [p for n, p in enumerate(places) if 0.1 < (n + 0.5) / count < 0.9]
    free = [p for p in places if others.is_empty or others.distance(p) > radius + _AIR]
    best = min(free or places, key=lambda p: (round(p.distance(middle), 3), p.x, p.y))
    return best.x, best.y


def loop_marks(loops: Sequence[Numbered]) -> Iterator[Mark]:
    """Yield tubes, then arrows at their supply, then numbers in rings."""
    for loop in loops:
        weight, dash = style(loop.number)
        yield Line(tuple((x, y) for x, y in loop.line.coords), weight, dash=dash, layer=LAYER)
    for loop in loops:
        yield from _arrow(loop.line, loop.lead + _BEHIND)
    for loop in loops:
        yield Circle(loop.at, loop.radius, SEEN, fill=PAPER, layer="labels")


def number_marks(loops: Sequence[Numbered], text: float) -> Iterator[Text]:
    """Yield the numbers."""
    for loop in loops:
        x, y = loop.at
        yield Text((x, y - text / 2), str(loop.number), text, True, "middle", layer="labels")


def style(number: int) -> tuple[float, tuple[float, ...]]:
    """Return a loop's weight and dash, mm."""
    return STYLES[(number - 1) % len(STYLES)]


def _arrow(line: LineString, start: float) -> Iterator[Fill]:
    """Yield the arrow along the supply, on the first straight past the start that has room."""
    long, half = _ARROW
    points = list(line.coords)
    gone = 0.0
    for (x0, y0), (x1, y1) in pairwise(points):
        run = hypot(x1 - x0, y1 - y0)
        if run >= long * 1.2 and gone + run > start + long:
            ux, uy = (x1 - x0) / run, (y1 - y0) / run
            along = min(max(start - gone, 0.0) + long, run)
            tip = (x0 + ux * along, y0 + uy * along)
            tail = (tip[0] - ux * long, tip[1] - uy * long)
            sides = [(tail[0] - s * uy * half, tail[1] + s * ux * half) for s in (1, -1)]
            yield Fill(Polygon((tip, *sides)), INK, LAYER)
            return
        gone += run


def manifold(at: Point, inward: Point, wide: float, deep: float) -> Polygon:
    """Return the box of a manifold behind where its tubes leave the slab, mm."""
    (x, y), (dx, dy) = at, inward
    corners = [
        (x - dy * s * wide / 2 - dx * t * deep, y + dx * s * wide / 2 - dy * t * deep)
        for s, t in ((-1, 0), (1, 0), (1, 1), (-1, 1))
    ]
    return Polygon(corners)
