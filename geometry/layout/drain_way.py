"""What other areas build in a drain's way: beside its trench, hung over it, or stood under it."""

from collections.abc import Sequence

import shapely
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.bodies import SAME_LEVEL_M, TOUCHING_M2, Body, Prism
from geometry.layout.drain import DrainLayout
from geometry.plan.outline import EMPTY


def at_pipes_height(area: AreaLayout, drain: DrainLayout) -> bool:
    """Say whether a strip footing neither hangs over pipe and wrap nor lies under them."""
    low, high = drain.outlet_invert - drain.pipe.wall_m - drain.wrap_m, drain.crown + drain.wrap_m
    return area.footing_bottom < high and area.tof > low


def beside_trench(drain: DrainLayout, areas: Sequence[AreaLayout]) -> BaseGeometry:
    """Return the plan of what other areas build in a drain's trench: footings and walls.

    Stone does not go on under a strip at the pipe's height. It does under one that hangs over the
    pipe, and over one that lies below it: see `standing`.
    """
    if drain.inside:
        return EMPTY
    found = []
    for other in areas:
        if other is drain.area:
            continue
        if other.footing_bottom < drain.area.tof and at_pipes_height(other, drain):
            found.append(other.footings)
        if other.tof < drain.area.tof:
            found.append(other.outline)
    return shapely.union_all([f for f in found if _shared(f, drain.low_space)])


def standing(drain: DrainLayout, footing: Body) -> tuple[Prism, ...]:
    """Return the pieces of the strip footings that stand or hang in a drain's stone or lap."""
    if drain.inside:
        return ()
    tof = drain.area.tof
    found = []
    for p in footing.prisms:
        low = p.bottom < tof - SAME_LEVEL_M and p.top > drain.stone_bottom
        high = p.top > tof + SAME_LEVEL_M and p.bottom < drain.lap_top
        if (low and _shared(p.region, drain.low_space)) or (
            high and _shared(p.region, drain.high_space)
        ):
            found.append(p)
    return tuple(found)


def _shared(one: BaseGeometry, other: BaseGeometry) -> bool:
    return bool(one.intersection(other).area > TOUCHING_M2)
