"""Choosing the drain's way: sides, low and high point, outlet invert."""

from collections.abc import Sequence
from functools import lru_cache
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.fittings import SAME_STATION_M, corner_station
from geometry.materials.catalogue import FABRICS, PIPES
from geometry.parts.drain import Drain
from geometry.plan.outline import Point
from geometry.plan.route import (
    STRAIGHT_SINE,
    Route,
    corners_of,
    lengths_along,
    parallel,
    straightened,
)


@lru_cache(maxsize=16)
def lay_drain(key: str, drain: Drain, area: AreaLayout, pit: Point | None) -> DrainLayout:
    """Lay out a drain beside an area; `pit` is the sump's place, if the drain empties into it.

    key leads the ids of its parts. Raises ValueError where the route cannot keep its sides: see
    `collapsed_sides`.
    """
    pipe, wrap_m = PIPES[drain.pipe], FABRICS[drain.wrap.material].thickness_m
    base = _face(area, drain)
    corners = _chosen(base, area, drain)
    route = _route(base, corners, drain)
    tees = tuple(_near(route, at) for at in _solid_outlets(drain, pit))
    lows = tees or (_low(route, area, drain),)
    invert = area.footing_bottom + wrap_m + drain.stone.bedding + pipe.wall_m
    if drain.outlet_invert is not None:
        invert = area.tof + drain.outlet_invert
    high = corner_station(route, area, drain.high_corner) if drain.high_corner else None
    return DrainLayout(
        key, drain, area, pipe, wrap_m, base, corners, route, lows, high, invert, tees,
        base_top(area),
    )  # fmt: skip


def _solid_outlets(drain: Drain, pit: Point | None) -> list[Point]:
    """Return where the solid pipes head to: the pit first, then daylight."""
    return [*([pit] if pit else []), *(outlet.toward for outlet in drain.daylight)]


def base_top(area: AreaLayout) -> float:
    """Level of the top of the floor's lowest layers that are its base; subgrade without any."""
    count = 0
    while count < len(area.floor.layers) and area.floor.layers[count].role == "base":
        count += 1
    return area.stack.levels[count]


def _face(area: AreaLayout, drain: Drain) -> Polygon:
    """Return the footing's face the drain runs along, counter-clockwise."""
    base = _plain(area.core if drain.line == "inside" else area.footing_outer)
    return base if drain.sides == "all" else _with_ends(base, area, drain.sides)


def _with_ends(base: Polygon, area: AreaLayout, sides: Sequence[int]) -> Polygon:
    """Return the face with a corner where a chosen side goes straight on into another.

    There a run along part of the wall has its end.
    """
    drawn = np.asarray(area.area.corners)
    ring = list(corners_of(base))
    for number, corner in enumerate(drawn):
        before, after = number or len(drawn), number + 1
        if (before in sides) != (after in sides) and _straight_on(drawn, number):
            ring = _inserted(ring, corner)
    return Polygon(ring)


def _straight_on(corners: NDArray[np.float64], number: int) -> bool:
    before = corners[number] - corners[number - 1]
    after = corners[(number + 1) % len(corners)] - corners[number]
    cross = before[0] * after[1] - before[1] * after[0]
    return bool(abs(cross) <= STRAIGHT_SINE * np.linalg.norm(before) * np.linalg.norm(after))


def _inserted(ring: list[NDArray[np.float64]], corner: NDArray[np.float64]) -> list[Any]:
    """Return the ring with the foot of a point on its nearest side put in as a corner."""
    sides = [LineString((a, b)) for a, b in zip(ring, [*ring[1:], ring[0]], strict=True)]
    point = shapely.Point(corner)
    nearest = int(np.argmin(shapely.distance(sides, point)))
    foot = sides[nearest].interpolate(sides[nearest].project(point))
    return [*ring[: nearest + 1], np.array((foot.x, foot.y)), *ring[nearest + 1 :]]


def _plain(shape: BaseGeometry) -> Polygon:
    """Return a face of the footing, counter-clockwise, straight-on corners left out."""
    return straightened(shapely.get_parts(shape)[0])


def _chosen(base: Polygon, area: AreaLayout, drain: Drain) -> tuple[int, ...]:
    """Return the base's corner numbers the route passes, in order."""
    corners = corners_of(base)
    if drain.sides == "all":
        return tuple(range(len(corners)))
    wanted = [i for i in range(len(corners)) if _side_of(base, i, area) in set(drain.sides)]
    starts = [i for i in wanted if (i - 1) % len(corners) not in wanted] or [wanted[0]]
    order = [starts[0]]
    while (order[-1] % len(corners)) in wanted and len(order) <= len(corners):
        order.append((order[-1] + 1) % len(corners))
    return tuple(order)


def _side_of(base: Polygon, number: int, area: AreaLayout) -> int:
    """Return the outline side (from 1, in the file's order) nearest to one side of the base."""
    corners = np.asarray(base.exterior.coords)
    middle = shapely.Point((corners[number] + corners[number + 1]) / 2)
    drawn = np.asarray(area.area.corners, dtype=float)
    sides = shapely.linestrings(np.stack((drawn, np.roll(drawn, -1, axis=0)), axis=1))
    return int(np.argmin(shapely.distance(sides, middle))) + 1


def _route(base: Polygon, corners: Sequence[int], drain: Drain) -> Route:
    moved = parallel(base, -drain.offset if drain.line == "inside" else drain.offset)
    return Route(tuple((float(x), float(y)) for x, y in moved[list(corners)]), drain.sides == "all")


def _near(route: Route, point: Point) -> float:
    """Return the station nearest to a point, an end where it is all but one."""
    station = route.station_of(point)
    for end in (0.0, route.length):
        if abs(station - end) < SAME_STATION_M:
            return end
    return station


def _low(route: Route, area: AreaLayout, drain: Drain) -> float:
    """Return the low point of a drain without a solid pipe: a corner, or an end that is open."""
    if drain.outlet == "lower stone" and not route.closed:
        given = corner_station(route, area, drain.low_corner) if drain.low_corner else 0.0
        return route.length if given > route.length / 2 else 0.0
    return corner_station(route, area, drain.low_corner or 1)


def side_lengths(drain: DrainLayout) -> list[tuple[int, float]]:
    """Return (outline side, length of pipe along it); negative where the side turns round."""
    lengths = lengths_along(drain.base, drain.line_at(drain.drain.offset))
    numbers = drain.corners if drain.route.closed else drain.corners[:-1]
    return [(_side_of(drain.base, n, drain.area), float(lengths[n])) for n in numbers]
