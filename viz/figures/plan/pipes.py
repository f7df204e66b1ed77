"""The drains and the pit from above: pipes and their flow, wrapped stone, solid pipes, bleeders."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from shapely import LineString, MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from geometry.layout.bleeders import Bleeder
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.layout.leads import LeadLayout
from geometry.layout.sump import SumpLayout
from geometry.plan.outline import Point, multi
from viz.drawing.marks import Circle, Fill, Line, Mark
from viz.figures.drainwords import highs
from viz.figures.plan import dashes
from viz.figures.plan.onpaper import OnPaper, ring_line, runs, stroked, unit
from viz.style.lines import PAPER, SEEN
from viz.style.materials import look

WATER = look("drain stone", "water").ink
# Length and half width of a flow arrow, mm; a leg shorter than `_LEG` has none.
_ARROW = (3.4, 0.95)
_LEG = 9.0
# Words keep so far from the middle of a pipe, mm.
_CLEAR = 1.3
_RISER = 1.0
_PIT = 2.0
# A pipe to daylight is drawn on so far beyond the hole, mm, and its arrow stands on that.
_ON = 9.0


@dataclass(frozen=True)
class Flow:
    """A leg of the drain along which water runs one way: stations, metres. ahead: to the end."""

    start: float
    end: float
    ahead: bool


def flows(drain: DrainLayout) -> tuple[Flow, ...]:
    """Return the straight legs between corners, low and high points, each with its way of flow."""
    length = drain.route.length
    turns = (s % length if drain.route.closed else s for s in drain.falls.stations)
    stops = sorted({0.0, length, *turns, *(float(s) for s in drain.route.stations)})
    legs = pairwise(stops)
    return tuple(
        Flow(a, b, drain.invert(a + 1e-6) > drain.invert(b - 1e-6)) for a, b in legs if b - a > 1e-3
    )


def route_line(drain: DrainLayout, paper: OnPaper) -> LineString:
    """Return the pipe's centre line on paper."""
    points = np.asarray(drain.route.line.coords)
    if not drain.route.closed:
        gaps = [drain.gaps[0][0], drain.gaps[-1][1]]
        inner = [p for p, s in zip(points, drain.route.stations, strict=True)
                 if gaps[0] < s < gaps[1]]  # fmt: skip
        points = np.asarray([drain.route.at(gaps[0]), *inner, drain.route.at(gaps[1])])
    return LineString(points * paper.per_metre)


def hard_pipes(layout: Layout, paper: OnPaper) -> list[BaseGeometry]:
    """Return what words keep off: pipes, pit, arrows and risers included."""
    found: list[BaseGeometry] = []
    for drain in layout.drains:
        wide = max(_CLEAR, paper.size(drain.radius))
        found.append(route_line(drain, paper).buffer(wide))
    if layout.sump:
        at = shapely.Point(paper.point(layout.sump.sump.at))
        found.append(at.buffer(paper.size(layout.sump.outer, _PIT) + 0.4))
    for lead in (lead for drain in layout.drains for lead in layout.leads(drain)):
        line = lead_line(lead, layout, paper)
        found.append(line.buffer(max(_CLEAR, paper.size(lead.outer))))
    found += [bleeder_line(b, paper).buffer(_CLEAR / 2) for b in layout.bleeders]
    return found


def lead_line(lead: LeadLayout, layout: Layout, paper: OnPaper) -> LineString:
    """Return a solid pipe on paper: to the pit, or on toward daylight beyond the hole."""
    on = 0.0 if lead is layout.pit_lead else _ON / paper.per_metre
    return LineString([paper.point(lead.at(d)[:2]) for d in (0.0, lead.end + on)])


def bleeder_line(bleeder: Bleeder, paper: OnPaper) -> LineString:
    """Return a pipe through the footing on paper."""
    return LineString([paper.point(e[:2]) for e in (bleeder.outer_end, bleeder.inner_end)])


def band_edge(drain: DrainLayout, paper: OnPaper) -> BaseGeometry:
    """Return the outer edge of the wrapped stone on paper, where it is not a footing's face."""
    faces = paper.drawn(drain.base).boundary.buffer(0.2)
    return paper.drawn(drain.low_space).boundary.difference(faces)


def band_marks(drain: DrainLayout, paper: OnPaper, footings: MultiPolygon) -> Iterator[Mark]:
    """Yield the wrapped stone: a tint, and its edge dashed like the fabric."""
    area = multi(paper.drawn(drain.low_space).difference(footings))
    yield Fill(area, _TINT, "band")
    edge = band_edge(drain, paper)
    yield from stroked(edge, dashes.FABRIC_WEIGHT, dashes.FABRIC, colour=_FABRIC)


_TINT = "#eef3f5"
_FABRIC = look("wrap").ink


def drain_marks(drain: DrainLayout, paper: OnPaper) -> Iterator[Mark]:
    """Yield the pipe as a heavy chain line, arrows down its falls, ends, risers, high points."""
    line = route_line(drain, paper)
    for run in runs(line):
        points = tuple((float(x), float(y)) for x, y in run.coords)
        yield Line(points, dashes.PIPE, WATER, dashes.PIPE_CHAIN, "drain")
    if drain.rise > 1e-9:
        for flow in flows(drain):
            yield from _arrow(drain, flow, paper)
        for high in highs(drain):
            yield from _tick(drain, high, paper)
    if not drain.route.closed:
        for end in (drain.gaps[0][0], drain.gaps[-1][1]):
            yield from _tick(drain, end, paper)
    for corner in drain.drain.cleanouts:
        at = paper.point(drain.route.at(drain.corner_station(corner)))
        radius = paper.size(drain.radius, _RISER)
        yield Circle(at, radius + 0.7, SEEN, WATER, PAPER, "drain")
        yield Circle(at, radius, SEEN, WATER, None, "drain")


def outward_marks(layout: Layout, paper: OnPaper) -> Iterator[Mark]:
    """Yield solid pipes to daylight, an arrow on each, and bleeders as dashes."""
    for lead in (lead for drain in layout.drains for lead in layout.leads(drain)):
        if lead is not layout.pit_lead:
            start, end = lead_line(lead, layout, paper).coords
            yield Line((start, end), dashes.SOLID_PIPE, WATER, layer="drain")
            back = (end[0] - 0.55 * _ON * lead.along[0], end[1] - 0.55 * _ON * lead.along[1])
            yield Fill(head(back, lead.along, _ARROW), WATER, "drain")
    for bleeder in layout.bleeders:
        start, end = bleeder_line(bleeder, paper).coords
        yield Line((start, end), dashes.SOLID_PIPE, WATER, dashes.BLEEDER, "drain")


def _along(drain: DrainLayout, station: float) -> tuple[Point, Point]:
    """Return a place of the route, and its direction ahead there (or behind, at the end)."""
    a = np.asarray(drain.route.at(max(station - 1e-3, 0.0)))
    b = np.asarray(drain.route.at(min(station + 1e-3, drain.route.length - 1e-9)))
    way = unit(b - a)
    return drain.route.at(station), (float(way[0]), float(way[1]))


def _arrow(drain: DrainLayout, flow: Flow, paper: OnPaper) -> Iterator[Mark]:
    if paper.size(flow.end - flow.start) < _LEG:
        return
    at, way = _along(drain, (flow.start + flow.end) / 2)
    yield Fill(head(paper.point(at), way if flow.ahead else (-way[0], -way[1]), _ARROW), WATER,
               "drain")  # fmt: skip


def head(at: Point, way: Point, size: tuple[float, float]) -> Polygon:
    """Return an arrow head about a place. way: unit vector. size: length, half width."""
    middle, ahead = np.asarray(at), np.asarray(way)
    aside = np.array((-ahead[1], ahead[0]))
    back = middle - ahead * size[0] / 2
    tip = middle + ahead * size[0] / 2
    return Polygon((tip, back + aside * size[1], back - aside * size[1]))


def _tick(drain: DrainLayout, station: float, paper: OnPaper) -> Iterator[Mark]:
    at, way = _along(drain, station)
    x, y = paper.point(at)
    dx, dy = way[1] * 1.7, -way[0] * 1.7
    yield Line(((x - dx, y - dy), (x + dx, y + dy)), dashes.PIPE, WATER, layer="drain")


def pit_marks(pit: SumpLayout, paper: OnPaper) -> Iterator[Mark]:
    """Yield the pit as two circles, the stone round it, and the pipe to it with its sleeve."""
    at = paper.point(pit.sump.at)
    stone = paper.drawn(pit.pocket.region)
    if pit.trench:
        stone = stone.union(paper.drawn(pit.trench.region))
    yield from stroked(stone, dashes.HIDDEN_WEIGHT, dashes.HIDDEN)
    if pit.lead:
        yield from _lead_marks(pit.lead, paper)
    outer = paper.size(pit.outer, _PIT)
    inner = min(paper.size(pit.inner), outer - 0.6)
    yield Circle(at, outer, dashes.SOLID_PIPE, fill=PAPER, layer="pit")
    yield Circle(at, inner, SEEN, layer="pit")


def _lead_marks(lead: LeadLayout, paper: OnPaper) -> Iterator[Mark]:
    ends = tuple(paper.point(lead.at(d)[:2]) for d in (0.0, lead.end))
    if lead.sleeve:
        sleeve = LineString([paper.point(lead.at(d)[:2]) for d in (lead.face, lead.back)])
        wide = paper.size(lead.sleeve.outside_diameter_m / 2, 1.3)
        box = sleeve.buffer(wide, cap_style="flat")
        yield from stroked(box, SEEN, dashes.HIDDEN, layer="drain")
    yield Line(ends, dashes.SOLID_PIPE, WATER, layer="drain")
    middle = tuple(paper.point(lead.at((lead.back + lead.end) / 2)[:2]))
    if paper.size(lead.end - lead.back) > _LEG:
        yield Fill(head((middle[0], middle[1]), lead.along, _ARROW), WATER, "drain")


def pit_ring(pit: SumpLayout, paper: OnPaper) -> LineString:
    """Return the edge of the stone round the pit on paper."""
    around = pit.outer + pit.sump.stone_beside
    return ring_line(paper.point(pit.sump.at), paper.size(around))
