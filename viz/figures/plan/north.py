"""The north arrow: a slim dart in a circle, one half filled."""

from collections.abc import Iterator, Sequence
from math import cos, radians, sin

import numpy as np
import shapely
from shapely import Polygon, STRtree
from shapely.geometry.base import BaseGeometry

from viz.drawing.marks import Circle, Fill, Line, Mark, Point, Text
from viz.drawing.page import Box
from viz.figures.plan.words import NORTH
from viz.style.lines import INK, SEEN

LAYER = "north"
RADIUS = 6.0
SMALL = 4.3
# Height of the letter against the radius.
_LETTER = 3.5 / 6.0
_GRID = 7.0


def reach(radius: float = RADIUS) -> float:
    """Return how far the arrow and its letter reach from the middle, mm."""
    return radius * (1 + 2.2 * _LETTER)


def north_marks(centre: Point, degrees: float, radius: float = RADIUS) -> Iterator[Mark]:
    """Yield the arrow. degrees: clockwise from straight up the sheet to north."""
    turn = radians(degrees)
    ahead = np.array((sin(turn), cos(turn)))
    aside = np.array((ahead[1], -ahead[0]))
    middle = np.asarray(centre)
    tip, tail = middle + ahead * radius * 1.15, middle - ahead * radius * 0.45
    left, right = (middle - ahead * radius + s * aside * radius * 0.5 for s in (-1, 1))
    yield Circle(centre, radius, SEEN, layer=LAYER)
    yield Fill(Polygon((tip, tail, left)), INK, LAYER)
    outline = [tuple(map(float, p)) for p in (tip, right, tail, left, tip)]
    yield Line(tuple((p[0], p[1]) for p in outline), SEEN, layer=LAYER)
    letter = _LETTER * radius
    x, y = middle + ahead * (radius + 1.35 * letter)
    yield Text((float(x), float(y) - letter / 2), NORTH, letter, True, "middle", layer=LAYER)


def free_corner(
    around: Box, things: Sequence[BaseGeometry], house: BaseGeometry, radius: float = RADIUS
) -> Point:
    """Return a free middle within a box nearest one of its corners, else one to its right."""
    size = reach(radius)
    xs = np.arange(around.left + size, around.right - size, _GRID)
    ys = np.arange(around.low + size, around.high - size, _GRID)
    places = np.stack(np.meshgrid(xs, ys), axis=-1).reshape(-1, 2)
    marks = np.array([(x, y) for x in (around.right, around.left)
                      for y in (around.high, around.low)])  # fmt: skip
    gaps = np.hypot(*(places[:, None] - marks[None]).transpose(2, 0, 1)).min(axis=1)
    shapely.prepare(house)
    tree = STRtree(things)
    for x, y in places[np.argsort(gaps, kind="stable")]:
        room = shapely.box(x - size, y - size, x + size, y + size)
        if not len(tree.query(room, "intersects")) and not house.intersects(room):
            return (float(x), float(y))
    return (around.right + size + 2.0, around.high - size)
