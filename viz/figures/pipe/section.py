"""The perforated pipe cut across: ring with its holes, in stone on its bedding, wrap and soil."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, radians, sin

from shapely import LineString, box
from shapely import Point as Spot

from geometry.layout.drain import DrainLayout
from viz.drawing.marks import Area, Fill, Hatch, Line, Mark, Point
from viz.drawing.page import Box
from viz.style.lines import DIMENSION, PAPER, SEEN
from viz.style.materials import look

# Stone shown beside and above the pipe, soil below the wrap, mm of paper.
_BESIDE, _ABOVE, _SOIL = 14.0, 7.0, 8.0
# How far a hole's centre line runs past the wall, outward and inward, mm.
_OUT, _IN = 5.0, 1.5
_CENTRE = (3.0, 0.8, 0.6, 0.8)
HALO = 0.7


@dataclass(frozen=True)
class Cross:
    """The cut on paper, mm: the pipe's centre is the origin, up is up, the house to the left.

    outer, inner: radii. hole: a hole's diameter. stone: what is shown of it, down to the wrap.
    """

    outer: float
    inner: float
    hole: float
    rows: tuple[float, ...]
    stone: Box
    wrap: float
    bedding: float

    def spoke(self, row: float, radius: float) -> Point:
        """Return the point at a radius along a row's axis; row: degrees from straight down."""
        return -radius * sin(radians(row)), -radius * cos(radians(row))

    @property
    def beyond(self) -> float:
        """Radius at which the holes' centre lines end."""
        return self.outer + min(_OUT, 0.6 * self.bedding)

    def centre_line(self, row: float) -> tuple[Point, Point]:
        """Return a hole's centre line from inside the bore to beyond the wall."""
        return self.spoke(row, self.inner - _IN), self.spoke(row, self.beyond)


def cross(drain: DrainLayout, per_metre: float) -> Cross:
    """Return the cut at the low point, where the bedding is least."""
    outer, stone = drain.radius * per_metre, drain.drain.stone
    beside = min(drain.drain.offset, stone.width - drain.drain.offset) * per_metre
    half = min(outer + _BESIDE, beside)
    bedding = stone.bedding * per_metre
    shown = Box(-half, -outer - bedding, half, outer + min(_ABOVE, stone.cover * per_metre))
    return Cross(
        outer,
        drain.bore * per_metre,
        drain.drain.holes.diameter * per_metre,
        drain.drain.holes.rows,
        shown,
        drain.wrap_m * per_metre,
        bedding,
    )


def ring(shape: Cross) -> Area:
    """Return the pipe's wall with its holes cut through."""
    wall = Spot(0, 0).buffer(shape.outer, 64).difference(Spot(0, 0).buffer(shape.inner, 64))
    for row in shape.rows:
        drill = LineString((shape.spoke(row, 0.6 * shape.inner), shape.spoke(row, shape.beyond)))
        wall = wall.difference(drill.buffer(shape.hole / 2, cap_style="flat"))
    found: Area = wall
    return found


def bed_marks(shape: Cross) -> Iterator[Mark]:
    """Yield soil, stone and the wrap between them, shown heavy."""
    around = shape.stone
    bottom = around.low - shape.wrap
    soil, stone = look("excavation"), look("drain stone")
    for found, area in (
        (soil, box(around.left, bottom - _SOIL, around.right, bottom)),
        (stone, _stone(shape)),
    ):
        yield Fill(area, found.fill, "cut")
        yield Hatch(area, found.hatch, found.ink, "hatch")
    wrap, middle = look("wrap"), around.low - shape.wrap / 2
    yield Line(((around.left, middle), (around.right, middle)), wrap.thin_mm + HALO, PAPER)
    ends = ((around.left, middle), (around.right, middle))
    yield Line(ends, wrap.thin_mm, wrap.ink, wrap.dash, layer="cut")


def _stone(shape: Cross) -> Area:
    """Return the stone round the pipe, a little clear of it."""
    around = shape.stone
    whole = box(around.left, around.low, around.right, around.high)
    found: Area = whole.difference(Spot(0, 0).buffer(shape.outer + HALO / 2, 64))
    return found


def pipe_marks(shape: Cross) -> Iterator[Mark]:
    """Yield the pipe's wall and the holes' centre lines."""
    yield Fill(ring(shape), look("pipe").ink, "cut")
    for row in shape.rows:
        yield from haloed(shape.centre_line(row), DIMENSION, _CENTRE)


def haloed(
    points: tuple[Point, ...], weight: float, dash: tuple[float, ...] = (), layer: str = "leaders"
) -> Iterator[Line]:
    """Yield a line with a white edge that keeps it clear of the hatch."""
    yield Line(points, weight + HALO, PAPER, layer=layer)
    yield Line(points, weight, dash=dash, layer=layer)


def bedding_mark(shape: Cross) -> tuple[Point, tuple[Line, ...]]:
    """Return the middle of the bedding's dimension, and its lines at the pipe's right."""
    x = min(shape.outer + 3.0, shape.stone.right - 2.0)
    high, low = -shape.outer, shape.stone.low
    marks = [*haloed(((0.4 * shape.outer, high), (x + 1.5, high)), DIMENSION, layer="dimensions")]
    marks += haloed(((x, high), (x, low)), DIMENSION, layer="dimensions")
    for y in (high, low):
        marks.append(Line(((x - 1.1, y - 1.1), (x + 1.1, y + 1.1)), SEEN, layer="dimensions"))
    return (x, (high + low) / 2), tuple(marks)


def soil_low(shape: Cross) -> float:
    """Return the lowest line of the section, mm."""
    return shape.stone.low - shape.wrap - _SOIL
