"""The edges of a drain pipe's holes as heights over the invert, and where water starts to run in.

A hole is a cylinder drilled along a radius through the wall. Its lower edge is a straight line
from the wall's outside to its inside; water gets in over the higher end of that line. Angles are
from straight down, degrees; heights in metres over the inside bottom of the pipe.
"""

from dataclasses import dataclass, replace
from math import asin, cos, degrees, radians

from geometry.layout.drain import DrainLayout


@dataclass(frozen=True)
class Holes:
    """Rows of holes in a pipe: their angles, hole diameter, inside and outside radius, metres."""

    rows: tuple[float, ...]
    hole: float
    inside: float
    outside: float

    @property
    def turned(self) -> "Holes":
        """The same pipe rolled half round: holes that looked down look up."""
        return replace(self, rows=tuple(180.0 - abs(row) for row in self.rows))

    def sill(self, row: float) -> float:
        """Height that water must stand at before it runs in through one row."""
        return self.inside + max(self._edge(row, -1, r) for r in (self.inside, self.outside))

    def head(self, row: float) -> float:
        """Height of the highest point of one row's holes."""
        return self.inside + max(self._edge(row, 1, r) for r in (self.inside, self.outside))

    @property
    def lowest(self) -> float | None:
        """Height at which water starts to run in: the lowest row's sill; None without holes."""
        return min(map(self.sill, self.rows), default=None)

    @property
    def highest(self) -> float | None:
        """Height of the highest point of all holes; None without holes."""
        return max(map(self.head, self.rows), default=None)

    def _edge(self, row: float, side: int, radius: float) -> float:
        """Height over the pipe's centre of a hole's edge at a radius; side: -1 lower, 1 upper."""
        half = degrees(asin(min(1.0, self.hole / 2 / radius)))
        angle = min(180.0, max(0.0, _from_down(row) + side * half))
        return -radius * cos(radians(angle))


def _from_down(row: float) -> float:
    """Return an angle's size from straight down, 0 to 180 degrees."""
    turned = abs(row) % 360.0
    return min(turned, 360.0 - turned)


def holes_of(drain: DrainLayout) -> Holes:
    """Return the pipe's holes as they are drilled and laid."""
    holes = drain.drain.holes
    return Holes(holes.rows, holes.diameter, drain.bore, drain.radius)


@dataclass(frozen=True)
class FirstWater:
    """Levels at which the drain starts to take water, against the project's TOF, metres.

    as_laid, turned: at the low and at the high point, holes as laid and the pipe rolled half
    round. None without holes. tof, floor: the levels to compare with.
    """

    as_laid: tuple[float, float] | None
    turned: tuple[float, float] | None
    tof: float
    floor: float


def first_water(drain: DrainLayout) -> FirstWater:
    """Return the levels at which water starts to run in, holes as laid and turned over."""
    found = [_at_both(drain, holes) for holes in (holes_of(drain), holes_of(drain).turned)]
    return FirstWater(found[0], found[1], drain.area.tof, drain.area.finished_floor)


def _at_both(drain: DrainLayout, holes: Holes) -> tuple[float, float] | None:
    height = holes.lowest
    if height is None:
        return None
    return drain.outlet_invert + height, drain.high_invert + height
