"""The part of a cut that a detail shows."""

from collections.abc import Sequence

import shapely
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.footings import pad_prism
from geometry.layout.lay import Layout
from geometry.sections.face import CutFace, CutLine
from geometry.units import FOOT, INCH
from viz.figures.section.view import Window

# How much of wall, floor and ground a detail shows around the footing and its drain.
_AROUND_M = 6 * INCH
_FLOOR_SHOWN_M = 3 * FOOT
_WALL_SHOWN_M = 18 * INCH
_UNDER_M = 4 * INCH
# Stone of two drains at one footing lies about as near to it on either side.
_AT_IT_M = 1 * INCH


def detail_window(layout: Layout, faces: Sequence[CutFace]) -> Window | None:
    """Return the part of a cut round a drained footing, its drain and pit; None without a footing.

    Of the footings nearest to a drain it is the one nearest to an end of the cut.
    """
    footings = [p for f in faces if f.label.role == "footing" for p in shapely.get_parts(f.shape)]
    if not footings:
        return None
    stones = [shapely.get_parts(f.shape) for f in faces if f.label.role == "drain stone"]
    footing = _drained(footings, [stone for pieces in stones for stone in pieces])
    drains = _beside(stones, footing)
    pit = [f.shape for f in faces if f.label.role in {"basin", "pit stone"}]
    near = [p for p in pit if p.distance(footing) < _FLOOR_SHOWN_M]
    left, low, right, high = shapely.union_all([footing, *drains, *near]).bounds
    high = max(layout.areas[0].finished_floor, high) + _WALL_SHOWN_M
    sides = [_AROUND_M, _AROUND_M if near else _FLOOR_SHOWN_M]
    if _from_left(footings, footing) > _from_right(footings, footing):
        sides.reverse()
    return (left - sides[0], low - _AROUND_M, right + sides[1], high)


def _drained(footings: Sequence[BaseGeometry], stones: Sequence[BaseGeometry]) -> BaseGeometry:
    """Return the footing with a drain beside it that stands nearest to an end of the cut."""
    away = [min((s.distance(f) for s in stones), default=0.0) for f in footings]
    found = [f for f, d in zip(footings, away, strict=True) if d <= min(away) + _AT_IT_M]
    ends = [min(_from_left(footings, f), _from_right(footings, f)) for f in found]
    return min(zip(ends, found, strict=True), key=lambda pair: (pair[0], pair[1].bounds[0]))[1]


def _from_left(footings: Sequence[BaseGeometry], footing: BaseGeometry) -> float:
    return float(footing.bounds[0] - min(f.bounds[0] for f in footings))


def _from_right(footings: Sequence[BaseGeometry], footing: BaseGeometry) -> float:
    return float(max(f.bounds[2] for f in footings) - footing.bounds[2])


def _beside(stones: Sequence[Sequence[BaseGeometry]], footing: BaseGeometry) -> list[BaseGeometry]:
    """Return the drain stone at a footing: each drain's nearest piece, those far off left out."""
    pieces = [min(each, key=lambda piece: piece.distance(footing)) for each in stones]
    nearest = min((p.distance(footing) for p in pieces), default=0.0)
    return [p for p in pieces if p.distance(footing) <= nearest + _AT_IT_M]


def floor_window(layout: Layout, line: CutLine) -> Window | None:
    """Return the part of a cut where the floor meets the first wall; None without a floor there."""
    area = layout.areas[0]
    floor = line.spans(area.room)
    if not floor:
        return None
    inside = floor[0][0]
    low = min(area.subgrade, area.tof) - _UNDER_M
    # The footing is cut off well within it, or shown to its bottom.
    if low < area.footing_bottom + _UNDER_M:
        low = min(low, area.footing_bottom - _UNDER_M)
    return (
        inside - area.wall.thickness - _AROUND_M / 2,
        low,
        inside + _FLOOR_SHOWN_M / 2,
        area.finished_floor + _AROUND_M,
    )


def edge_window(area: AreaLayout, line: CutLine) -> Window | None:
    """Return the part of a cut at an area's edge round footing and floor; None without a wall."""
    wall = line.spans(area.walls)
    if not wall:
        return None
    outside, inside = wall[0]
    return (
        outside - max(area.projection_out, 0.0) - 2 * _AROUND_M,
        min(area.footing_bottom, area.subgrade) - _AROUND_M,
        inside + _FLOOR_SHOWN_M * 0.8,
        max(area.finished_floor, area.tof) + _WALL_SHOWN_M,
    )


def pier_window(layout: Layout, line: CutLine) -> Window | None:
    """Return the part of a cut round the first pier it goes through; None without one."""
    for area in layout.areas:
        for pier in area.area.piers:
            pad = pad_prism(area, pier)
            met = [(a, b) for a, b in line.spans(pad.region) if b > a]
            if met:
                (start, end), around = met[0], _FLOOR_SHOWN_M / 2
                high = max(area.finished_floor, area.level(pier.column_top), pad.top)
                low = min(pad.bottom, area.subgrade) - _UNDER_M
                return (start - around, low, end + around, high + 2 * _AROUND_M)
    return None
