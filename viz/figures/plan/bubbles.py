"""Bubbles that lead to other drawings, and the circles of details."""

from collections.abc import Iterator, Sequence

import numpy as np
from shapely import LineString

from viz.drawing.fonts import text_width
from viz.drawing.marks import Circle, Line, Mark, Point, Text
from viz.figures.plan.candidates import Wish
from viz.figures.plan.dashes import HIDDEN
from viz.figures.plan.free import Places
from viz.figures.plan.onpaper import OnPaper, ring_line, unit
from viz.figures.plan.refs import DetailRef, SectionRef
from viz.style.lines import PAPER, SEEN

LAYER = "marks"
# Least radius of a detail's circle, mm.
_LEAST = 3.0

Ref = SectionRef | DetailRef


def bubble_radius(refs: Sequence[Ref], text: float) -> float:
    """Return the radius of all bubbles that lead to other sheets, mm."""
    wide = [text_width(words, text, True) for r in refs for words in (r.number, r.sheet)]
    return float(np.hypot(max(wide, default=0.0) / 2, 1.8 * text)) + 0.3


def bubble(centre: Point, radius: float, ref: Ref, text: float) -> Iterator[Mark]:
    """Yield a round bubble: the drawing's number over its sheet."""
    x, y = centre
    yield Circle(centre, radius, SEEN, fill=PAPER, layer=LAYER)
    yield Line(((x - radius, y), (x + radius, y)), SEEN, layer=LAYER)
    yield Text((x, y + 0.4 * text), ref.number, text, True, "middle", layer=LAYER)
    yield Text((x, y - 1.45 * text), ref.sheet, text, False, "middle", layer=LAYER)


def toward(start: Point, end: Point, length: float) -> Point:
    """Return the place so far from a start on the way to an end, mm."""
    way = unit(np.subtract(end, start)) * length
    return (start[0] + float(way[0]), start[1] + float(way[1]))


def least_radius(ref: DetailRef, paper: OnPaper) -> float:
    """Return the radius of a detail's circle on paper, mm."""
    return paper.size(ref.radius_m, _LEAST)


def detail_rings(refs: Sequence[DetailRef], paper: OnPaper) -> list[LineString]:
    """Return the circles of details on paper."""
    return [ring_line(paper.point(r.at), least_radius(r, paper)) for r in refs]


def detail_marks(
    refs: Sequence[DetailRef], paper: OnPaper, places: Places, radius: float, text: float
) -> Iterator[Mark]:
    """Yield dashed circles, each with a bubble in a free place."""
    for ref, ring in zip(refs, detail_rings(refs, paper), strict=True):
        at, size = paper.point(ref.at), least_radius(ref, paper)
        around = 2 * radius
        place = places.put(Wish(at, around, around, away=size + 2.5, start=size))
        box = place.box
        middle = ((box.left + box.right) / 2, (box.low + box.high) / 2)
        points = tuple((float(x), float(y)) for x, y in ring.coords)
        yield Line(points, SEEN, dash=HIDDEN, layer="section line")
        edge = toward(middle, place.leader[1], radius)
        yield Line((*place.leader, edge), SEEN, layer="section line")
        yield from bubble(middle, radius, ref, text)
