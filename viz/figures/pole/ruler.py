"""A ruler at full size along an upright edge, zero at top of footing."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor

from geometry.units import INCH, System
from viz.drawing.marks import Mark, Point, Strokes, Text
from viz.style.lines import HATCH
from viz.style.text import SMALLEST

LAYER = "ruler"


@dataclass(frozen=True)
class Division:
    """A ruler's finest step in mm, its longer ticks by every so many steps, and its figures.

    ticks: every so many steps, length in mm; the longest that divides decides.
    """

    step: float
    ticks: tuple[tuple[int, float], ...]
    lettered: int
    unit: int


DIVISIONS: dict[System, Division] = {
    "ft-in": Division(INCH * 1000 / 8, ((8, 9.0), (4, 6.5), (2, 5.0), (1, 3.2)), 8, 1),
    "metric": Division(1.0, ((10, 9.0), (5, 6.0), (1, 3.2)), 10, 10),
}
# Where the figures stand: right of the longest tick.
FIGURES_AT = 10.0


def ruler(low: float, high: float, lines: Sequence[float], system: System) -> Iterator[Mark]:
    """Yield ticks from the edge x = 0 between two heights, mm, and a figure at each whole unit.

    lines: heights of lines that cross the figures; those they would strike are left out.
    """
    division = DIVISIONS[system]
    first, last = ceil(low / division.step - 1e-6), floor(high / division.step + 1e-6)
    numbers = range(first, last + 1)
    for _, long in division.ticks:
        alike = tuple(_tick(n, division, long) for n in numbers if _long(n, division) == long)
        if alike:
            yield Strokes(alike, HATCH, layer=LAYER)
    for number in numbers:
        y = number * division.step
        struck = any(abs(y - line) < 0.75 * SMALLEST for line in (low, high, *lines))
        if number % division.lettered == 0 and not struck:
            words = str(number // division.lettered * division.unit).replace("-", "−")
            yield Text((FIGURES_AT, y - SMALLEST / 2), words, SMALLEST, layer=LAYER)


def _long(number: int, division: Division) -> float:
    return next(length for every, length in division.ticks if number % every == 0)


def _tick(number: int, division: Division, long: float) -> tuple[Point, ...]:
    y = number * division.step
    return ((0.0, y), (long, y))
