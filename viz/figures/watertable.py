"""The water table as figures draw it: its levels, the mark on its line, the season's range."""

from collections.abc import Iterator
from dataclasses import dataclass

from shapely import LineString, Polygon, box
from shapely.geometry.base import BaseGeometry

from geometry.layout.lay import Layout
from geometry.units import System, show_level
from geometry.water.uplift import low_water_table, water_table
from viz.drawing.marks import Fill, Line, Mark, Point, Strokes
from viz.style.lines import HATCH, PAPER, SEEN

HIGHEST, LOWEST = "Water table, highest seen", "Water table, low"
LAYER = "water table"
COLOUR = "#3f6c8a"
DASH = (4.0, 1.4)
# Size of the triangle; of the ground it takes beside its middle and under the line; mm.
SIZE = 2.6
_HALF, _UNDER = 0.7 * SIZE, 0.75 * SIZE
# The range between high and low is ruled so far apart, in short strokes with gaps; mm.
_RULED, _STROKE, _GAP = 1.7, 1.6, 2.6
# A stretch of line shorter than this is left out, mm.
_LEAST = 1.5
_HALO = 0.6
WEIGHT = 0.35


@dataclass(frozen=True)
class WaterTable:
    """Levels of the water table against the project's top of footing, metres; None: not given."""

    high: float | None = None
    low: float | None = None

    @property
    def named(self) -> tuple[tuple[str, float], ...]:
        """The levels that are given, by name, the highest first."""
        both = ((HIGHEST, self.high), (LOWEST, self.low))
        return tuple((name, level) for name, level in both if level is not None)


def table_of(layout: Layout) -> WaterTable:
    """Return the water table the design gives."""
    return WaterTable(water_table(layout), low_water_table(layout))


def told_outside(table: WaterTable, low: float, high: float, tof: float, system: System) -> str:
    """Return in words the levels that lie above or below what is shown; empty without any.

    low, high: of what is shown, metres against the project's top of footing, like the table's.
    tof: from which the words count.
    """
    said = []
    for name, level in table.named:
        if not low <= level <= high:
            side = "below" if level < low else "above"
            said.append(f"{name}, {show_level(level - tof, system)}: {side} what is shown.")
    return " ".join(said)


def table_marks(wet: BaseGeometry, high: float | None, low: float | None) -> Iterator[Mark]:
    """Yield the lines of the water table within an area of paper, and the range between them.

    wet: ground and open water on paper, mm. high, low: heights on paper, None: not given.
    """
    if high is not None and low is not None:
        yield from _ruled(wet, low, high)
    taken: list[Polygon] = []
    for y in (high, low):
        if y is None:
            continue
        runs = _runs(wet, y)
        for start, end in runs:
            yield Line(((start, y), (end, y)), WEIGHT + _HALO, PAPER, layer=LAYER)
            yield Line(((start, y), (end, y)), WEIGHT, COLOUR, DASH, LAYER)
        spot = _spot(wet, runs, y, taken)
        if spot is not None:
            taken.append(_room(spot))
            yield from water_mark(spot)


def water_mark(at: Point) -> Iterator[Mark]:
    """Yield the mark of a water level: a triangle with its point on it, two short lines under."""
    x, y = at
    half, top = SIZE / 2, y + 0.9 * SIZE
    corners = ((x, y), (x - half, top), (x + half, top))
    yield Fill(Polygon(corners).buffer(_HALO / 2), PAPER, LAYER)
    yield Line((*corners, corners[0]), SEEN, COLOUR, layer=LAYER)
    for down, wide in ((0.3, 0.42), (0.55, 0.22)):
        under = ((x - wide * SIZE, y - down * SIZE), (x + wide * SIZE, y - down * SIZE))
        yield Line(under, SEEN + _HALO, PAPER, layer=LAYER)
        yield Line(under, SEEN, COLOUR, layer=LAYER)


def _runs(wet: BaseGeometry, y: float) -> list[tuple[float, float]]:
    """Return where a level line runs within the area, from the left."""
    if wet.is_empty:
        return []
    left, _, right, _ = wet.bounds
    met = wet.intersection(LineString(((left - 1, y), (right + 1, y))))
    parts = [p for p in getattr(met, "geoms", [met]) if p.length >= _LEAST]
    return sorted((p.bounds[0], p.bounds[2]) for p in parts)


def _spot(
    wet: BaseGeometry, runs: list[tuple[float, float]], y: float, taken: list[Polygon]
) -> Point | None:
    """Return where the mark stands within the area, clear of those before; None without room."""
    places = [
        (start + share * (end - start), y)
        for start, end in sorted(runs, key=lambda run: run[0] - run[1])
        for share in (0.5, 0.25, 0.75)
    ]
    free = [p for p in places if not any(_room(p).intersects(other) for other in taken)]
    whole = [p for p in free if wet.contains(_room(p))]
    return next(iter((*whole, *free)), None)


def _room(at: Point) -> Polygon:
    x, y = at
    return box(x - _HALF, y - _UNDER, x + _HALF, y + 0.9 * SIZE)


def _ruled(wet: BaseGeometry, low: float, high: float) -> Iterator[Mark]:
    """Yield short level strokes, every second row set off, between the two levels."""
    lines = []
    for number in range(1, int((high - low) / _RULED + 0.5)):
        y, step = high - number * _RULED, _STROKE + _GAP
        for start, end in _runs(wet, y):
            x = (start // step) * step + (number % 2) * step / 2
            while x < end:
                a, b = max(x, start), min(x + _STROKE, end)
                if b - a > 0.4:
                    lines.append(((a, y), (b, y)))
                x += step
    if lines:
        yield Strokes(tuple(lines), HATCH + 0.05, COLOUR, LAYER)
