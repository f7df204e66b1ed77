"""A line of straight pieces over a distance: where it reaches a value, where it lies below one.

Plane geometry, exact between the given points.
"""

from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

Point = tuple[float, float]


@dataclass(frozen=True)
class Stretch:
    """From one distance to another, and the least value between, with its place."""

    start: float
    end: float
    least: float
    least_at: float

    @property
    def length(self) -> float:
        """Return its length."""
        return self.end - self.start


@dataclass(frozen=True)
class BrokenLine:
    """Points (distance, value), two at least, distances rising, else ValueError."""

    points: tuple[Point, ...]

    def __post_init__(self) -> None:
        """Raise ValueError for too few points or distances that do not rise."""
        if len(self.points) < 2 or any(b <= a for (a, _), (b, _) in pairwise(self.points)):
            raise ValueError("a line needs two points or more, their distances rising")

    @property
    def start(self) -> float:
        """Return the first distance."""
        return self.points[0][0]

    @property
    def end(self) -> float:
        """Return the last distance."""
        return self.points[-1][0]

    @cached_property
    def _distances(self) -> tuple[float, ...]:
        return tuple(x for x, _ in self.points)

    def at(self, distance: float) -> float:
        """Return the value at a distance; beyond the ends it goes on level."""
        if distance <= self.start:
            return self.points[0][1]
        if distance >= self.end:
            return self.points[-1][1]
        place = bisect_right(self._distances, distance)
        (x, a), (y, b) = self.points[place - 1 : place + 1]
        return a + (b - a) * (distance - x) / (y - x)

    def less_line(self, level: float, fall: float) -> "BrokenLine":
        """Return its height over the straight line that starts at a level and falls."""
        return BrokenLine(tuple((x, v - (level - fall * x)) for x, v in self.points))

    def negative(self) -> "BrokenLine":
        """Return the line with its values' signs turned."""
        return BrokenLine(tuple((x, -v) for x, v in self.points))

    def between(self, start: float, end: float) -> "BrokenLine":
        """Return the part between two distances on it. Raises ValueError for an empty part."""
        inside = tuple(p for p in self.points if start < p[0] < end)
        return BrokenLine(((start, self.at(start)), *inside, (end, self.at(end))))

    def first_at_least(self, value: float) -> float | None:
        """Return the first distance at which the line is as high as a value; None: nowhere."""
        if self.points[0][1] >= value:
            return self.start
        for (x, a), (y, b) in pairwise(self.points):
            if b >= value:
                return x + (y - x) * (value - a) / (b - a)
        return None

    def below(self, value: float) -> tuple[Stretch, ...]:
        """Return the stretches on which the line lies below a value, in order."""
        cut = sorted({x for x, _ in self.points} | set(self._crossings(value)))
        runs: list[tuple[float, float]] = []
        for a, b in pairwise(cut):
            if self.at((a + b) / 2) >= value:
                continue
            if runs and runs[-1][1] == a:
                a = runs.pop()[0]
            runs.append((a, b))
        return tuple(self._stretch(a, b) for a, b in runs)

    def least(self) -> Point:
        """Return the first lowest point."""
        return min(self.points, key=lambda point: point[1])

    def area_above(self) -> float:
        """Return the area between the line and zero where it lies above zero."""
        return sum(_positive(*pair) for pair in pairwise(self.points))

    def _stretch(self, start: float, end: float) -> Stretch:
        at, least = self.between(start, end).least()
        return Stretch(start, end, least, at)

    def _crossings(self, value: float) -> Iterator[float]:
        for (x, a), (y, b) in pairwise(self.points):
            if (a - value) * (b - value) < 0:
                yield x + (y - x) * (value - a) / (b - a)


def _positive(one: Point, two: Point) -> float:
    """Return the area of one piece above zero: a trapezoid, or what a crossing leaves of it."""
    (x, a), (y, b) = one, two
    if a >= 0 and b >= 0:
        return (y - x) * (a + b) / 2
    if a <= 0 and b <= 0:
        return 0.0
    top = max(a, b)
    return (y - x) * top * top / (abs(a) + abs(b)) / 2
