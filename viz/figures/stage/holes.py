"""The end of a pipe with its holes, and an arrow the way most of them look."""

from collections.abc import Iterator, Sequence
from math import cos, radians, sin

from shapely import Polygon

from viz.drawing.marks import Circle, Fill, Line, Mark, Point
from viz.style.lines import INK, PAPER

_WALL = 1.6


def pipe_end(rows: Sequence[float], centre: Point, radius: float) -> Iterator[Mark]:
    """Yield a pipe seen from its end. rows: its holes, degrees from straight down; radius: mm."""
    yield Circle(centre, radius, _WALL, layer="holes")
    for row in rows:
        way = (-sin(radians(row)), -cos(radians(row)))
        ends = [(centre[0] + r * way[0], centre[1] + r * way[1]) for r in
                (radius - _WALL, radius + _WALL)]  # fmt: skip
        yield Line((ends[0], ends[1]), 2.2, PAPER, layer="holes")
        out = (centre[0] + (radius + 3.0) * way[0], centre[1] + (radius + 3.0) * way[1])
        yield Line((ends[0], out), 0.5, INK, layer="holes")
    if rows and (all(abs(row) <= 90 for row in rows) or all(abs(row) > 90 for row in rows)):
        down = -1.0 if abs(rows[0]) <= 90 else 1.0
        x, y = centre
        reach = 0.62 * radius * down
        yield Line(((x, y - reach), (x, y)), 1.4, INK, layer="holes")
        head = ((x, y + reach), (x - 2.6, y), (x + 2.6, y))
        yield Fill(Polygon(head), INK, "holes")
