"""What a vertical cut follows on the plan, and what it shows: one polygon set per solid."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np
import shapely
from shapely import LineString, MultiLineString, MultiPolygon
from shapely.geometry.base import BaseGeometry

from geometry.errors import BedcourseError
from geometry.label import Label
from geometry.plan.outline import SAME_POINT_M, Point

# A leg within one degree of square to the first is a step of the cutting plane.
_SQUARE = math.sin(math.radians(1))
# Nearer than this two places on a cut are one.
_SAME_M = 1e-9
# Where a cut meets a line on a shorter stretch, it crosses it instead of running along it.
_CROSSED_M = 1e-6


@dataclass(frozen=True)
class Leg:
    """A straight stretch of a cut that is drawn: ends on the plan, metres.

    begin: distance along the drawn cut at which it starts. stepped: the plane stepped aside just
    before it; otherwise it goes on from where the leg before it ends.
    """

    start: Point
    end: Point
    begin: float
    stepped: bool = False

    @property
    def run(self) -> Point:
        """From start to end, metres."""
        return self.end[0] - self.start[0], self.end[1] - self.start[1]

    @property
    def length(self) -> float:
        """Width it takes in the section."""
        return math.hypot(*self.run)

    @property
    def finish(self) -> float:
        """Distance along the drawn cut at which it ends."""
        return self.begin + self.length

    def place(self, distance: float) -> Point:
        """Return the place on the plan at a distance along the drawn cut."""
        share = (distance - self.begin) / self.length
        return self.start[0] + share * self.run[0], self.start[1] + share * self.run[1]


@dataclass(frozen=True)
class CutLine:
    """A cut across the plan, from start over its jogs to end, seen with the left hand at start.

    start, end, jogs: (x, y) in metres. Legs square to the first are steps of the cutting plane
    and take no width in the section; the others are unrolled end to end. Distances along the cut
    run over the drawn legs. Raises BedcourseError for a cut without length or one that runs back.
    """

    start: Point
    end: Point
    jogs: tuple[Point, ...] = ()

    def __post_init__(self) -> None:
        """Refuse what cannot be drawn."""
        if len(self.path) < 2:
            raise BedcourseError("the cut has no length; its two ends must differ")
        first = self._first
        for number, (one, two) in enumerate(pairwise(self.path), 1):
            if math.cos(_turn(first, _run(one, two))) < -_SQUARE:
                raise BedcourseError(
                    f"leg {number} of the cut runs back towards its start; "
                    "let every leg go on in the first one's direction or square to it"
                )

    @cached_property
    def path(self) -> tuple[Point, ...]:
        """All corners from start to end, steps included; one of those that coincide."""
        kept: list[Point] = []
        for corner in (self.start, *self.jogs, self.end):
            if not kept or math.dist(kept[-1], corner) > SAME_POINT_M:
                kept.append(corner)
        return tuple(kept)

    @property
    def _first(self) -> Point:
        return _run(self.path[0], self.path[1])

    @cached_property
    def legs(self) -> tuple[Leg, ...]:
        """The drawn legs in order."""
        legs: list[Leg] = []
        stepped = False
        for one, two in pairwise(self.path):
            if abs(math.cos(_turn(self._first, _run(one, two)))) <= _SQUARE:
                stepped = bool(legs)
                continue
            legs.append(Leg(one, two, legs[-1].finish if legs else 0.0, stepped))
            stepped = False
        return tuple(legs)

    @property
    def length(self) -> float:
        """Width of the section, metres."""
        return self.legs[-1].finish

    @property
    def steps(self) -> tuple[float, ...]:
        """Distances at which the plane steps aside."""
        return tuple(leg.begin for leg in self.legs if leg.stepped)

    @property
    def bends(self) -> tuple[float, ...]:
        """Distances at which the plane turns into another direction without a step."""
        turns = [
            (two.begin, _turn(one.run, two.run))
            for one, two in pairwise(self.legs)
            if not two.stepped
        ]
        return tuple(at for at, turn in turns if abs(turn) > _SAME_M)

    def place(self, distance: float) -> Point:
        """Return the place on the plan at a distance; beyond the ends straight on.

        Where the plane steps, it is the place before the step.
        """
        leg = next((leg for leg in self.legs if distance <= leg.finish), self.legs[-1])
        return leg.place(distance)

    def track(self, low: float = -math.inf, high: float = math.inf) -> MultiLineString:
        """Return the drawn legs on the plan, or what lies between two distances of them."""
        found = []
        for leg in self.legs:
            begin, finish = max(low, leg.begin), min(high, leg.finish)
            if finish - begin > _SAME_M:
                ends = [leg.place(begin), leg.place(finish)]
                whole = begin == leg.begin and finish == leg.finish
                found.append(LineString((leg.start, leg.end) if whole else ends))
        return MultiLineString(found)

    def spans(self, shape: BaseGeometry) -> tuple[tuple[float, float], ...]:
        """Return from where to where, in order, the drawn legs meet a shape on the plan.

        A line that is crossed gives a span of no length. Spans that meet at a step or bend are
        not joined.
        """
        found = sorted(span for leg in self.legs for span in _spans(leg, shape))
        kept: list[tuple[float, float]] = []
        for span in found:
            if not kept or max(abs(span[0] - kept[-1][0]), abs(span[1] - kept[-1][1])) > _SAME_M:
                kept.append(span)
        return tuple(kept)

    def crossings(self, line: BaseGeometry) -> tuple[float, ...]:
        """Return the distances at which the drawn legs cross a line on the plan, in order.

        Where they run along it, nothing is crossed.
        """
        return tuple((a + b) / 2 for a, b in self.spans(line) if b - a < _CROSSED_M)


@dataclass(frozen=True)
class CutFace:
    """The face a cut leaves in one solid: x = distance along the cut, y = level, both metres."""

    label: Label
    shape: MultiPolygon


def _run(one: Point, two: Point) -> Point:
    return two[0] - one[0], two[1] - one[1]


def _turn(one: Point, two: Point) -> float:
    """Return the angle from one direction to another, radians."""
    across = one[0] * two[1] - one[1] * two[0]
    return math.atan2(across, one[0] * two[0] + one[1] * two[1])


def _spans(leg: Leg, shape: BaseGeometry) -> Iterator[tuple[float, float]]:
    """Yield where one leg meets a shape, as distances along the whole cut."""
    met = shapely.intersection(LineString((leg.start, leg.end)), shape)
    along = np.divide(leg.run, leg.length)
    for part in _pieces(met):
        far = (shapely.get_coordinates(part) - leg.start) @ along
        yield leg.begin + float(far.min()), leg.begin + float(far.max())


def _pieces(met: BaseGeometry) -> list[BaseGeometry]:
    """Return the points and lines of an intersection, touching lines joined."""
    flat = [p for part in shapely.get_parts(met) for p in shapely.get_parts(part)]
    lines = [p for p in flat if p.geom_type == "LineString" and not p.is_empty]
    points = [p for p in flat if p.geom_type == "Point" and not p.is_empty]
    joined = shapely.get_parts(shapely.line_merge(shapely.union_all(lines))) if lines else []
    return [*joined, *points]
