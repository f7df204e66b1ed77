"""Where tubes may lie: the slab of a floor, less its edge and what passes through it."""

from math import pi

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.plan.outline import EMPTY, offset, polygons


def slab(layout: Layout, area: AreaLayout) -> BaseGeometry:
    """Return the region of an area's topmost slab; empty without one.

    Where piers, pit and pipes pass through it at any of its levels, it is open.
    """
    names = [x.name for x in area.floor.layers if x.role == "slab"]
    if not names:
        return EMPTY
    part = f"{area.name}/{names[-1]}"
    prisms = [p for body in layout.floors if body.label.part == part for p in body.prisms]
    return shapely.intersection_all([p.region for p in prisms]) if prisms else EMPTY


def fields(region: BaseGeometry, edge: float, least_m2: float) -> list[Polygon]:
    """Return what of a slab lies an edge's distance inside it, in parts that hang together."""
    found = [p for p in polygons(offset(region, -edge)) if p.area > least_m2]
    return sorted(found, key=lambda p: -float(p.area))


def turn_of(outline: Polygon) -> float:
    """Return the angle of most of an outline's length, radians, within a quarter turn."""
    corners = shapely.get_coordinates(outline.exterior)
    runs = np.diff(corners, axis=0)
    long = np.hypot(runs[:, 0], runs[:, 1])
    angles = np.round(np.mod(np.arctan2(runs[:, 1], runs[:, 0]), pi / 2), 6) % round(pi / 2, 6)
    totals = {float(a): float(long[angles == a].sum()) for a in np.unique(angles)}
    return max(totals, key=lambda a: (round(totals[a], 6), -a))
