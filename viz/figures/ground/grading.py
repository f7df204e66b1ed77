"""Grain sizes of stone, sand and soil by the share that passes, over fabric and holes."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import log10

import numpy as np
import shapely
from shapely import Polygon, box

from geometry.layout.lay import Layout
from geometry.materials.catalogue import AGGREGATES
from geometry.materials.kinds import Aggregate
from geometry.water.filtering import Filters
from viz.drawing.figure import Figure, figure
from viz.drawing.fonts import text_width, wrap
from viz.drawing.marks import Circle, Fill, Hatch, Line, Mark, Point, Text
from viz.drawing.page import Box
from viz.style.lines import CUT, HATCH, INK, LEADER, PAPER, QUIET, SEEN
from viz.style.materials import Look, look
from viz.style.text import PITCH
from viz.words import material_name

TITLE = "Grain sizes against fabric and holes"
REMARK = "Bands: from the finest to the coarsest that the grading allows."
NO_200_M = 0.075e-3
LABELS = "labels"
_HOLE_DASH, _SOIL_DASH = (0.8, 0.8), (5.0, 1.0, 1.0, 1.0)
_LIMIT = "#e3e8dc"
# The least window of sizes, metres; height over width of the chart.
_FROM, _TO, _TALL = 0.05e-3, 50e-3, 0.5
# Sample and words of the key, in text heights.
_SAMPLE, _AT, _ROW = 5.0, 6.0, 2.0
_DECADES = (1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 1e-2, 1e-1)

Curve = tuple[tuple[float, float], ...]
Draw = Callable[[Box], Iterator[Mark]]


@dataclass(frozen=True)
class _Chart:
    low: float
    high: float
    left: float
    width: float
    height: float

    def x(self, size_m: float) -> float:
        """Place of a grain size, kept within the chart."""
        kept = min(max(size_m, self.low), self.high)
        return self.left + self.width * log10(kept / self.low) / log10(self.high / self.low)

    def at(self, point: tuple[float, float]) -> Point:
        """Return the place of a size with the share that passes it."""
        return self.x(point[0]), point[1] * self.height


def grading_figure(layout: Layout, filters: Filters, width: float, text: float) -> Figure | None:
    """Return the gradings in one chart; None where there is neither stone nor fabric to show.

    width: mm, of chart and key. text: height of capitals, mm.
    """
    stones, soil = _aggregates(layout), tuple(layout.design.soil.grading)
    if not stones and not filters.fabric:
        return None
    left = text_width("100%", text) + text
    sizes = [size for curve in (*(s.fine_edge for s, _ in stones), soil) for size, _ in curve]
    chart = _Chart(min([_FROM, *sizes]), max([_TO, *sizes]), left, width - left - text, 0.0)
    chart = _Chart(chart.low, chart.high, left, chart.width, _TALL * chart.width)
    rows: list[tuple[str, Draw]] = []
    marks: list[Mark] = [*_limits(filters, chart, rows)]
    marks += _bands(stones, chart, text, rows)
    marks += _grid(chart, text)
    marks += _soil(filters, soil, chart, rows)
    marks += _openings(filters, chart, rows)
    marks += _key(rows, width, text)
    return figure("grading", TITLE, marks, None, REMARK)


def _aggregates(layout: Layout) -> list[tuple[Aggregate, str]]:
    """Return every graded stone and sand of drain and floors once, with what it is used for."""
    uses = [(layout.drain.drain.stone.material, "drain")] if layout.drain else []
    uses += [(layer.material, layer.role) for area in layout.areas for layer in area.floor.layers]
    named: dict[str, list[str]] = {}
    for key, use in uses:
        if key in AGGREGATES and use not in named.setdefault(key, []):
            named[key].append(use)
    found = [(AGGREGATES[key], ", ".join(said)) for key, said in named.items()]
    return [(s, said) for s, said in found if min(len(s.fine_edge), len(s.coarse_edge)) > 1]


def _bands(
    stones: list[tuple[Aggregate, str]], chart: _Chart, text: float, rows: list[tuple[str, Draw]]
) -> Iterator[Mark]:
    """Yield the bands; those of one look are numbered, in the chart and in the key."""
    alike = [stone.kind for stone, _ in stones]
    numbers = iter(range(1, len(stones) + 1))
    for stone, uses in stones:
        number = next(numbers) if alike.count(stone.kind) > 1 else 0
        yield from _band(stone, chart)
        if number:
            middles = [chart.x(_middle(edge)) for edge in (stone.fine_edge, stone.coarse_edge)]
            yield from _ring(number, (sum(middles) / 2, 0.5 * chart.height), text)
        rows.append((f"{material_name(stone.key)}: {uses}", _swatch(stone, number, text)))


def _middle(edge: Curve) -> float:
    """Return the size of which a half passes, between the points of a curve; its end's beyond."""
    points = sorted(edge)
    return float(np.interp(0.5, [share for _, share in points], [size for size, _ in points]))


def _ring(number: int, at: Point, text: float) -> Iterator[Mark]:
    yield Circle(at, 0.95 * text, LEADER, fill=PAPER, layer=LABELS)
    yield Text((at[0], at[1] - text / 2), str(number), text, True, "middle", layer=LABELS)


def _band(stone: Aggregate, chart: _Chart) -> Iterator[Mark]:
    shown = _look(stone)
    fine, coarse = (_curve(edge, chart) for edge in (stone.fine_edge, stone.coarse_edge))
    shape = Polygon((*fine, *reversed(coarse))).buffer(0)
    for part in shapely.get_parts(shape):
        yield Fill(part, shown.fill, "band")
        yield Hatch(part, shown.hatch, shown.ink, "band")
    for edge in (fine, coarse):
        yield Line(tuple(edge), SEEN, shown.ink, layer="band")


def _look(stone: Aggregate) -> Look:
    return look("drain stone" if stone.kind == "stone" else "blinding", stone.kind)


def _swatch(stone: Aggregate, number: int, text: float) -> Draw:
    shown = _look(stone)

    def draw(place: Box) -> Iterator[Mark]:
        swatch = box(place.left, place.low, place.right, place.high)
        yield Fill(swatch, shown.fill, "key")
        yield Hatch(swatch, shown.hatch, shown.ink, "key")
        yield Line(tuple(swatch.exterior.coords), SEEN, shown.ink, layer="key")
        if number:
            middle = ((place.left + place.right) / 2, (place.low + place.high) / 2)
            yield from _ring(number, middle, text)

    return draw


def _curve(edge: Curve, chart: _Chart) -> list[Point]:
    return [chart.at(point) for point in sorted(edge)]


def _limits(filters: Filters, chart: _Chart, rows: list[tuple[str, Draw]]) -> Iterator[Mark]:
    """Yield for each soil what the fabric's opening may be at most, as a band."""
    for row in (row for row in filters.fabric if row.most_opening_m):
        least, most = row.most_opening_m or (0.0, 0.0)
        left, right = chart.x(min(least, most)), chart.x(max(least, most))
        yield from _tint(box(left, 0.0, max(right, left + 0.8), chart.height))
        words = f"{material_name(row.soil)} allows an opening of at most {_span(least, most)}"
        rows.append((words, lambda place: _tint(box(place.left, place.low, place.right,
                                                    place.high))))  # fmt: skip


def _tint(shape: Polygon) -> Iterator[Mark]:
    yield Fill(shape, _LIMIT, "limit")
    yield Hatch(shape, "diagonal", QUIET, "limit")


def _span(least: float, most: float) -> str:
    low, high = (f"{size * 1000:.2g}" for size in sorted((least, most)))
    return f"{low} mm" if low == high else f"{low} to {high} mm"


def _grid(chart: _Chart, text: float) -> Iterator[Mark]:
    """Yield the chart's frame, a thin line at every power of ten and quarter, and their names."""
    right, high = chart.left + chart.width, chart.height
    corners = ((chart.left, 0.0), (right, 0.0), (right, high), (chart.left, high))
    for size in (d for d in _DECADES if chart.low * 1.001 < d < chart.high * 0.999):
        x = chart.x(size)
        yield Line(((x, 0.0), (x, high)), HATCH, QUIET, layer="grid")
        name = f"{size * 1000:g} mm"
        yield Text((x, -1.7 * text), name, text, anchor="middle", layer=LABELS)
    for share in (0.0, 0.25, 0.5, 0.75, 1.0):
        y = share * high
        yield Line(((chart.left, y), (right, y)), HATCH, QUIET, layer="grid")
        name, at = f"{share:.0%}", (chart.left - 0.7 * text, y - text / 2)
        yield Text(at, name, text, anchor="end", layer=LABELS)
    yield Line((*corners, corners[0]), SEEN, layer="frame")
    yield Text((chart.left, high + 0.9 * text), "share that passes", text, colour=QUIET,
               layer=LABELS)  # fmt: skip


def _soil(
    filters: Filters, curve: Curve, chart: _Chart, rows: list[tuple[str, Draw]]
) -> Iterator[Mark]:
    """Yield the soil: its own grading where given, else the share of its group passing No. 200."""
    if len(curve) > 1:
        yield Line(tuple(_curve(curve, chart)), CUT, look("excavation").ink, _SOIL_DASH, "soil")
        rows.append(("The ground, by its own grading",
                     _stroke(CUT, look("excavation").ink, _SOIL_DASH)))  # fmt: skip
        return
    for number, row in enumerate(row for row in filters.fabric if row.fines):
        low, high = row.fines or (0.0, 0.0)
        x = chart.x(NO_200_M) - 2.0 * number
        yield Line(((x, low * chart.height), (x, high * chart.height)), 1.4,
                   look("excavation").ink, layer="soil")  # fmt: skip
        words = (
            f"{material_name(row.soil)}: {low:.0%} to {high:.0%} passes No. 200 (0.075 mm); "
            "no grading known"
        )
        rows.append((words, _stroke(1.4, look("excavation").ink, ())))


def _openings(filters: Filters, chart: _Chart, rows: list[tuple[str, Draw]]) -> Iterator[Mark]:
    """Yield the fabric's opening and the pipe's holes as lines across the chart."""
    wrap_look = look("wrap")
    for row in filters.fabric[:1]:
        yield _upright(row.opening_m, chart, wrap_look.thin_mm, wrap_look.ink, wrap_look.dash)
        words = f"{material_name(row.fabric)}: opening {row.opening_m * 1000:.2g} mm"
        rows.append((words, _stroke(wrap_look.thin_mm, wrap_look.ink, wrap_look.dash)))
    for fit in filters.holes[:1]:
        yield _upright(fit.hole_m, chart, CUT, INK, _HOLE_DASH)
        rows.append((f"Holes of the pipe, {fit.hole_m * 1000:.3g} mm",
                     _stroke(CUT, INK, _HOLE_DASH)))  # fmt: skip


def _upright(size: float, chart: _Chart, weight: float, ink: str, dash: tuple[float, ...]) -> Line:
    x = chart.x(size)
    return Line(((x, 0.0), (x, chart.height)), weight, ink, dash, "openings")


def _stroke(weight: float, ink: str, dash: tuple[float, ...]) -> Draw:
    def draw(place: Box) -> Iterator[Mark]:
        y = (place.low + place.high) / 2
        yield Line(((place.left, y), (place.right, y)), weight, ink, dash, "key")

    return draw


def _key(rows: list[tuple[str, Draw]], width: float, text: float) -> Iterator[Mark]:
    y = -4.6 * text
    for words, draw in rows:
        yield from draw(Box(0.0, y - 0.15 * text, _SAMPLE * text, y + 1.15 * text))
        for line in wrap(words, width - _AT * text, text):
            yield Text((_AT * text, y), line, text, layer=LABELS)
            y -= PITCH * text
        y -= (_ROW - PITCH) * text
