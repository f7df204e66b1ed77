"""The heating tubes of a design laid out: every loop's way, and how well the floor is covered."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from math import cos, hypot, sin

import shapely
from shapely import LineString, Polygon, affinity
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.layout.tubing.bends import Point
from geometry.layout.tubing.field import fields, slab, turn_of
from geometry.layout.tubing.loops import Asked, Laid, lay_loops
from geometry.materials.tubes import TUBES, Tube
from geometry.parts.floor import Tubing

# A part of a floor smaller than this many squares of the spacing takes no tube.
_LEAST_SQUARES = 1.0
# A manifold so near to where the tubes leave the slab stands there.
_NEAR_M = 0.3


@dataclass(frozen=True, eq=False)
class Loop:
    """One loop, metres. points: from supply to return, bends as short chords.

    length_m: in the slab, of it lead_m before the first and after the last place of the field.
    way_m: outside the slab, both ends. tight: bends that are tighter than the tube bends.
    """

    number: int
    points: tuple[Point, ...]
    length_m: float
    lead_m: float
    way_m: float
    tight: int

    @property
    def whole_m(self) -> float:
        """The coil to cut: in the slab, and both ways to the manifold."""
        return self.length_m + self.way_m

    @property
    def line(self) -> LineString:
        """The loop on the plan."""
        return LineString(self.points)


@dataclass(frozen=True, eq=False)
class Part:
    """A part of a floor that hangs together, with its loops.

    taps: the middle of where its tubes leave the slab. inward: from there into the floor, a unit
    vector.
    """

    field: Polygon
    taps: Point
    inward: Point
    loops: tuple[Loop, ...]


@dataclass(frozen=True, eq=False)
class Tubes:
    """An area's tubes. slab: the region of its slab. field: where tubes may lie.

    left_out: parts of the field that no loop fits in.
    """

    area: AreaLayout
    tubing: Tubing
    slab: BaseGeometry
    parts: tuple[Part, ...]
    left_out: tuple[Polygon, ...]

    @property
    def tube(self) -> Tube:
        """The tube that is laid."""
        return TUBES[self.tubing.tube]

    @property
    def loops(self) -> tuple[Loop, ...]:
        """All loops in the order of their numbers."""
        return tuple(loop for part in self.parts for loop in part.loops)

    @property
    def length_m(self) -> float:
        """Tube in the slab."""
        return sum(loop.length_m for loop in self.loops)

    @cached_property
    def covered(self) -> float:
        """Share of the slab that lies within a spacing of a tube."""
        lines = shapely.union_all([loop.line for loop in self.loops])
        if lines.is_empty or self.slab.area == 0:
            return 0.0
        near = lines.buffer(self.tubing.spacing).intersection(self.slab)
        return float(near.area / self.slab.area)

    @property
    def too_long(self) -> tuple[Loop, ...]:
        """Loops longer than the longest that is allowed."""
        return tuple(x for x in self.loops if x.whole_m > self.tubing.longest + 1e-6)


@lru_cache(maxsize=8)
def lay_tubes(layout: Layout) -> tuple[Tubes, ...]:
    """Return the tubes of every area that has them."""
    return tuple(
        _tubes(layout, area, area.floor.tubing) for area in layout.areas if area.floor.tubing
    )


def _tubes(layout: Layout, area: AreaLayout, tubing: Tubing) -> Tubes:
    region = slab(layout, area)
    turn = turn_of(area.outline)
    parts: list[Part] = []
    left_out = []
    for field in fields(region, tubing.edge, 0.0):
        small = field.area < _LEAST_SQUARES * tubing.spacing**2
        part = None if small else _part(field, tubing, turn, sum(len(p.loops) for p in parts))
        if part:
            parts.append(part)
        else:
            left_out.append(field)
    return Tubes(area, tubing, region, tuple(parts), tuple(left_out))


def _part(field: Polygon, tubing: Tubing, turn: float, before: int) -> Part | None:
    """Return the loops of one part of a floor, numbered on from those before."""
    frame = affinity.rotate(field, -turn, origin=(0, 0), use_radians=True)
    aim = _turned(tubing.manifold, -turn) if tubing.manifold else None
    room = tubing.longest - 2 * tubing.way
    tube = TUBES[tubing.tube]
    asked = Asked(tubing.spacing, tubing.pattern, tube.bend, tubing.edge, room, aim)
    laid = lay_loops(frame, asked)
    if laid is None:
        return None
    far = _far(laid, aim)
    if 0 < far < room / 4:
        # The manifold stands off the field: the way to it is a part of every loop.
        laid = lay_loops(frame, replace(asked, loop=room - 2 * far)) or laid
    way = 2 * (tubing.way + _far(laid, aim))
    loops = tuple(_loops(laid, way, turn, before))
    inward = _turned((float(laid.inward[0]), float(laid.inward[1])), turn)
    return Part(field, _turned(laid.manifold, turn), inward, loops)


def _far(laid: Laid, aim: Point | None) -> float:
    """Return how far off the manifold stands, metres; what is near is a part of the way."""
    far = hypot(laid.manifold[0] - aim[0], laid.manifold[1] - aim[1]) if aim else 0.0
    return far if far > _NEAR_M else 0.0


def _loops(laid: Laid, way: float, turn: float, before: int) -> Iterator[Loop]:
    for number, (one, lead) in enumerate(laid.loops, before + 1):
        points = tuple(_turned(p, turn) for p in one.points)
        yield Loop(number, points, one.length_m, lead, way, one.tight)


def _turned(point: Point, turn: float) -> Point:
    x, y = point
    return x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn)
