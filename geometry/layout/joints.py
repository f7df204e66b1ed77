"""Where the slab is cut: lines both ways, through inward corners and piers, none too far apart."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import ceil

import numpy as np
import shapely
from shapely import LineString, affinity
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.layout.tubing.field import slab, turn_of
from geometry.plan.outline import polygons

# Stops nearer than this share of the spacing make slivers of panels: only one of them counts.
_SLIVER = 0.4
# A cut shorter than this only nicks a corner, metres.
_NICK_M = 0.15
_EVEN_M = 1e-6
_FACE_M = 1e-3


@dataclass(frozen=True, eq=False)
class Joints:
    """An area's joints, metres. cuts: lines sawn or tooled. apart: round piers and pit, and along
    walls where a board stands there. panel: the longest panel's sides, the longer first.
    """

    area: AreaLayout
    slab: BaseGeometry
    spacing: float
    cuts: tuple[LineString, ...]
    apart: tuple[LineString, ...]
    panels: tuple[tuple[float, float], ...]

    @property
    def cut_m(self) -> float:
        """Length of all cuts."""
        return float(sum(line.length for line in self.cuts))

    @property
    def largest(self) -> tuple[float, float]:
        """Sides of the panel with the longest side, the longer first."""
        return max(self.panels)

    @property
    def slenderest(self) -> tuple[float, float]:
        """Sides of the panel that is longest for its width."""
        return max(self.panels, key=lambda sides: sides[0] / sides[1])


@lru_cache(maxsize=8)
def lay_joints(layout: Layout) -> tuple[Joints, ...]:
    """Return the joints of every area whose spacing is given and that has a slab."""
    found = []
    for area in layout.areas:
        region = slab(layout, area)
        if area.floor.joints is not None and not region.is_empty:
            found.append(_joints(area, region, area.floor.joints))
    return tuple(found)


def _joints(area: AreaLayout, region: BaseGeometry, spacing: float) -> Joints:
    turn = turn_of(area.outline)
    frame = affinity.rotate(region, -turn, origin=(0, 0), use_radians=True)
    lines = [*_lines(area, frame, spacing, turn, 0), *_lines(area, frame, spacing, turn, 1)]
    cuts = [part for line in lines for part in _within(frame, line)]
    back = [affinity.rotate(x, turn, origin=(0, 0), use_radians=True) for x in cuts]
    pieces = shapely.get_parts(_parted(frame, lines))
    panels = tuple(_sides(piece) for piece in pieces if piece.area > _NICK_M**2)
    return Joints(area, region, spacing, tuple(back), tuple(_apart(area, region)), panels)


def _lines(
    area: AreaLayout, frame: BaseGeometry, spacing: float, turn: float, axis: int
) -> Iterator[LineString]:
    """Yield lines across one axis of the frame, from side to side of the whole slab."""
    bounds = frame.bounds
    low, high = bounds[axis], bounds[axis + 2]
    other = (bounds[1 - axis] - 1.0, bounds[3 - axis] + 1.0)
    for place in _places(low, high, _stops(area, frame, turn, axis), spacing):
        ends = [(place, end) for end in other] if axis == 0 else [(end, place) for end in other]
        yield LineString(ends)


def _places(low: float, high: float, stops: Sequence[float], spacing: float) -> Iterator[float]:
    """Yield places between two sides: at the stops, the first of those too near each other, and
    evenly between them.
    """
    kept = [low, high]
    for stop in stops:
        if all(abs(stop - other) > _SLIVER * spacing for other in kept):
            kept.append(stop)
    for one, other in pairwise(sorted(kept)):
        count = ceil((other - one) / spacing - _EVEN_M)
        yield from (one + (other - one) * n / count for n in range(1, count))
    yield from kept[2:]


def _stops(area: AreaLayout, frame: BaseGeometry, turn: float, axis: int) -> list[float]:
    """Return where joints should run: through corners that look inward, then through piers."""
    piers = [
        affinity.rotate(shapely.Point(p.at), -turn, origin=(0, 0), use_radians=True)
        for p in area.area.piers
    ]
    corners = [c[axis] for part in polygons(frame) for c in _inward(part)]
    return [*sorted(corners), *sorted((p.x, p.y)[axis] for p in piers)]


def _inward(part: shapely.Polygon) -> list[tuple[float, float]]:
    """Return the corners of an outline, counter-clockwise, that look inward."""
    points = shapely.get_coordinates(shapely.orient_polygons(part).exterior)[:-1]
    ahead = np.roll(points, -1, axis=0) - points
    behind = points - np.roll(points, 1, axis=0)
    turned = behind[:, 0] * ahead[:, 1] - behind[:, 1] * ahead[:, 0]
    return [(float(x), float(y)) for x, y in points[turned < -1e-6]]


def _within(frame: BaseGeometry, line: LineString) -> list[LineString]:
    # A line along a wall's face is no cut.
    inside = frame.buffer(-_FACE_M, join_style="mitre")
    parts = shapely.get_parts(inside.intersection(line))
    return [p for p in parts if p.geom_type == "LineString" and p.length > _NICK_M]


def _parted(frame: BaseGeometry, lines: Sequence[LineString]) -> BaseGeometry:
    """Return the slab in its panels; openings count as slab, for a panel's size is its outside."""
    whole = shapely.union_all([shapely.Polygon(p.exterior) for p in polygons(frame)])
    edges = shapely.union_all([whole.boundary, *lines])
    pieces = shapely.get_parts(shapely.polygonize([edges]))
    inside = [p for p in pieces if whole.contains(p.representative_point())]
    return shapely.MultiPolygon(inside)


def _sides(panel: BaseGeometry) -> tuple[float, float]:
    west, south, east, north = panel.bounds
    long, short = sorted((float(east - west), float(north - south)), reverse=True)
    return long, short


def _apart(area: AreaLayout, region: BaseGeometry) -> Iterator[LineString]:
    """Yield the lines along which the slab is kept apart from what it meets."""
    for part in polygons(region):
        yield from (LineString(ring.coords) for ring in part.interiors)
        if area.floor.edge_board:
            yield LineString(part.exterior.coords)
