"""Choosing the drain's way: sides, low and high point, outlet invert."""

from collections.abc import Sequence
from functools import lru_cache

import numpy as np
import shapely
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout, corner_station
from geometry.materials.catalogue import FABRICS, PIPES
from geometry.parts.drain import Drain
from geometry.plan.outline import Point
from geometry.plan.route import Route, corners_of, lengths_along, parallel, straightened


@lru_cache(maxsize=8)
def lay_drain(drain: Drain, area: AreaLayout, outlet: Point | None) -> DrainLayout:
    """Lay out the drain beside an area; `outlet` is the sump pit's place, if there is one.

    Raises ValueError where the route cannot keep its sides: see `collapsed_sides`.
    """
    pipe, wrap_m = PIPES[drain.pipe], FABRICS[drain.wrap.material].thickness_m
    base = _plain(area.footing_outer)
    corners = _chosen(base, area, drain)
    route = _route(base, corners, drain)
    low = _low(route, area, drain, outlet)
    high = _high(route, low, area, drain)
    invert = area.footing_bottom + wrap_m + drain.stone.bedding + pipe.wall_m
    if drain.outlet_invert is not None:
        invert = area.tof + drain.outlet_invert
    return DrainLayout(
        drain, area, pipe, wrap_m, base, corners, route, low, high, invert, outlet is not None
    )


def _plain(shape: BaseGeometry) -> Polygon:
    """Return the footing's outer face, counter-clockwise, straight-on corners left out."""
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
    drawn = area.area.corners
    sides = [LineString((drawn[i], drawn[(i + 1) % len(drawn)])) for i in range(len(drawn))]
    return int(np.argmin(shapely.distance(sides, middle))) + 1


def _route(base: Polygon, corners: Sequence[int], drain: Drain) -> Route:
    moved = parallel(base, drain.offset)
    return Route(tuple((float(x), float(y)) for x, y in moved[list(corners)]), drain.sides == "all")


def _low(route: Route, area: AreaLayout, drain: Drain, outlet: Point | None) -> float:
    if outlet is not None:
        return route.station_of(outlet)
    return corner_station(route, area, drain.low_corner or 1)


def _high(route: Route, low: float, area: AreaLayout, drain: Drain) -> float:
    if drain.high_corner:
        return corner_station(route, area, drain.high_corner)
    if route.closed:
        return (low + route.length / 2) % route.length
    return route.length if low < route.length / 2 else 0.0


def side_lengths(drain: DrainLayout) -> list[tuple[int, float]]:
    """Return (outline side, length of pipe along it); negative where the side turns round."""
    lengths = lengths_along(drain.base, parallel(drain.base, drain.drain.offset))
    numbers = drain.corners if drain.route.closed else drain.corners[:-1]
    return [(_side_of(drain.base, n, drain.area), float(lengths[n])) for n in numbers]
