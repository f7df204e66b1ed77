"""The part of a cut that shows a stage, as large as its room on paper allows."""

from dataclasses import dataclass
from math import ceil

from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.sections.face import CutLine
from geometry.site.records import Stage
from geometry.units import INCH
from viz.drawing.page import Box
from viz.drawing.scale import Scale
from viz.figures.section.view import View, Window

# Air left above what is shown, for the stage's name, mm of paper.
AIR = 17.0
_EDGE_M = 4 * INCH
_INSIDE_M = 0.75
_FLOOR_M = 0.3
_PIT_SIDE_M = 0.25
_LEAST_RATIO = 4
_SPARE_OUTSIDE = 0.3


@dataclass(frozen=True)
class _Wanted:
    """What must be seen, metres: from and to along the cut, lowest and highest level."""

    left: float
    right: float
    low: float
    high: float


def stage_view(layout: Layout, stage: Stage, line: CutLine, room: Box) -> View:
    """Return the view of a stage that fills a room on paper."""
    wanted = _wanted(layout, stage, line)
    tall = (wanted.high - wanted.low) / (room.height - AIR)
    ratio = max(_LEAST_RATIO, ceil(1000 * max((wanted.right - wanted.left) / room.width, tall)))
    across, up = room.width * ratio / 1000, room.height * ratio / 1000
    # What is to spare goes to the house's side, and to the air.
    left = wanted.left - _SPARE_OUTSIDE * (across - (wanted.right - wanted.left))
    window: Window = (left, wanted.low, left + across, wanted.low + up)
    return View(window, (room.left, room.low), Scale("", ratio), True)


def _wanted(layout: Layout, stage: Stage, line: CutLine) -> _Wanted:
    area = layout.area(stage.areas[0])
    drain = next((d for d in layout.drains if d.key == stage.drain), None)
    if drain:
        return _round_drain(drain, line)
    if stage.key == "pit" and layout.sump:
        return _round_pit(layout, line)
    if stage.key == "subgrade":
        return _open_hole(layout, area, line)
    if stage.key == "backfill":
        return _whole_side(layout, area, line)
    return _floor_edge(area, line)


def _floor_edge(area: AreaLayout, line: CutLine) -> _Wanted:
    inside = _wall(area, line)[1]
    thick = area.finished_floor - area.subgrade
    low = min(area.subgrade, area.tof) - max(_EDGE_M, thick / 4)
    high = max(area.finished_floor, area.tof)
    left = inside - area.wall.thickness - _EDGE_M / 2
    return _Wanted(left, inside + max(area.projection_in, 0.0) + _FLOOR_M, low, high)


def _round_drain(drain: DrainLayout, line: CutLine) -> _Wanted:
    area, (outside, inside) = drain.area, _wall(drain.area, line)
    low = min(drain.stone_bottom, area.footing_bottom) - _EDGE_M
    high = max(drain.lap_top, area.tof, area.finished_floor if drain.inside else area.tof)
    width = drain.drain.stone.width
    if drain.inside:
        right = inside + area.projection_in + width + 2 * _EDGE_M
        return _Wanted(outside - _EDGE_M, right, low, high)
    left = outside - area.projection_out - width - 2 * _EDGE_M
    return _Wanted(left, inside + 2 * _EDGE_M, low, high)


def _round_pit(layout: Layout, line: CutLine) -> _Wanted:
    pit = layout.sump
    if pit is None:
        raise ValueError("there is no pit")
    spans = line.spans(pit.pocket.region)
    left, right = (spans[0][0], spans[-1][1]) if spans else (0.0, line.length)
    return _Wanted(left - _PIT_SIDE_M, right + _PIT_SIDE_M, pit.pocket.bottom - _EDGE_M, pit.rim)


def _open_hole(layout: Layout, area: AreaLayout, line: CutLine) -> _Wanted:
    outside, inside = _wall(area, line)
    bottoms = [d.stone_bottom for d in layout.drains] + [area.footing_bottom, area.subgrade]
    widest = max((d.drain.stone.width for d in layout.drains if not d.inside), default=0.0)
    left = outside - area.projection_out - widest - 2 * _EDGE_M
    right = inside + max(area.projection_in, 0.0) + _INSIDE_M
    return _Wanted(left, right, min(bottoms) - _EDGE_M, max(area.tof, area.finished_floor))


def _whole_side(layout: Layout, area: AreaLayout, line: CutLine) -> _Wanted:
    outside, inside = _wall(area, line)
    ground = layout.ground
    dug = layout.design.excavation.working_space + area.projection_out
    widest = max((d.drain.stone.width for d in layout.drains if not d.inside), default=0.0)
    left = outside - max(dug, area.projection_out + widest) - 6 * _EDGE_M
    low = min([area.footing_bottom, *(d.stone_bottom for d in layout.drains if not d.inside)])
    return _Wanted(left, inside + 4 * _EDGE_M, low - _EDGE_M, max(area.wall_top, ground.at_wall))


def _wall(area: AreaLayout, line: CutLine) -> tuple[float, float]:
    """Return where a cut enters the first wall of an area and leaves it, metres along."""
    met = [span for span in line.spans(area.walls) if span[1] > span[0]]
    if met:
        return met[0]
    room = line.spans(area.room)
    start = room[0][0] if room else 0.0
    return start - area.wall.thickness, start
