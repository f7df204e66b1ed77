"""True bends: the corners of a way rounded off, its length, and which bends are too tight."""

from dataclasses import dataclass
from itertools import pairwise
from math import acos, atan2, ceil, cos, hypot, pi, sin, tan

from shapely import LineString, Polygon

Point = tuple[float, float]

# Chords of an arc turn by no more than this, radians.
_CHORD = pi / 16
_STRAIGHT = 1e-6
_SAME_M = 1e-9
# Bends are too tight if they are so by more than this, metres.
_WITHIN_M = 1e-4


@dataclass(frozen=True)
class Bent:
    """A way with its bends as short chords. length_m: of straights and true arcs.

    tight: how many bends are tighter than the tube bends.
    """

    points: tuple[Point, ...]
    length_m: float
    tight: int


def bent(corners: list[Point], spacing: float, least: float, edge: float, room: Polygon) -> Bent:
    """Round off every corner of a way.

    A bend's radius is half the spacing, or `least` where there is room for it, but never more than
    the spacing, so that runs keep apart. A bend that would cut a corner of the `room` (prepared)
    gets the radius `edge`, by which it keeps its distance from the corner. Metres.
    """
    kept = _turning(corners)
    wanted = min(max(spacing / 2, least), spacing)
    points, length, tight = [kept[0]], 0.0, 0
    for before, here, after in zip(kept, kept[1:], kept[2:], strict=False):
        turn = _turn(before, here, after)
        reach = min(hypot(here[0] - p[0], here[1] - p[1]) for p in (before, after)) / 2
        radius = min(wanted, reach / tan(turn / 2))
        arc = _arc(before, here, after, radius)
        if radius > edge and not room.contains(LineString(arc)):
            radius = edge
            arc = _arc(before, here, after, radius)
        tight += radius < least - _WITHIN_M
        length += hypot(arc[0][0] - points[-1][0], arc[0][1] - points[-1][1]) + radius * turn
        # Where two bends meet, the one ends where the other begins.
        points += (
            arc[1:]
            if hypot(arc[0][0] - points[-1][0], arc[0][1] - points[-1][1]) < _SAME_M
            else arc
        )
    end = kept[-1]
    length += hypot(end[0] - points[-1][0], end[1] - points[-1][1])
    return Bent((*points, end), length, tight)


def _turning(corners: list[Point]) -> list[Point]:
    """Leave out corners at which the way goes straight on."""
    kept = [corners[0]]
    for here, after in pairwise(corners[1:]):
        if _turn(kept[-1], here, after) > _STRAIGHT:
            kept.append(here)
    return [*kept, corners[-1]]


def _turn(before: Point, here: Point, after: Point) -> float:
    """Return by how much a way turns at a corner, radians, 0 straight on."""
    ux, uy = here[0] - before[0], here[1] - before[1]
    vx, vy = after[0] - here[0], after[1] - here[1]
    shared = (ux * vx + uy * vy) / (hypot(ux, uy) * hypot(vx, vy))
    return acos(max(-1.0, min(1.0, shared)))


def _arc(before: Point, here: Point, after: Point, radius: float) -> list[Point]:
    """Return points of the arc that rounds a corner off, its two ends with it."""
    ux, uy = _unit(before, here)
    vx, vy = _unit(here, after)
    turn = _turn(before, here, after)
    cut = radius * tan(turn / 2)
    left = 1.0 if ux * vy - uy * vx > 0 else -1.0
    start = (here[0] - ux * cut, here[1] - uy * cut)
    centre = (start[0] - left * uy * radius, start[1] + left * ux * radius)
    first = atan2(start[1] - centre[1], start[0] - centre[0])
    count = max(2, ceil(turn / _CHORD))
    return [
        (centre[0] + radius * cos(first + left * turn * n / count),
         centre[1] + radius * sin(first + left * turn * n / count))
        for n in range(count + 1)
    ]  # fmt: skip


def _unit(start: Point, end: Point) -> Point:
    x, y = end[0] - start[0], end[1] - start[1]
    long = hypot(x, y)
    return x / long, y / long
