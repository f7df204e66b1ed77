"""Plain sums of areas times heights: what fills a room, and what a hole holds."""

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import pi

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.bodies import Prism
from geometry.layout.lay import Layout
from tests.whole.witness import Whole, pipework_void


def between(prism: Prism, low: float, high: float) -> float:
    """Height of a prism between two levels."""
    return max(0.0, min(prism.top, high) - max(prism.bottom, low))


def inside(prisms: Iterable[Prism], block: Sequence[Prism]) -> float:
    """Volume of prisms inside the prisms of a block, which do not overlap each other."""
    total = 0.0
    for p in prisms:
        for b in block:
            height = between(p, b.bottom, b.top)
            if height > 0:
                total += float(p.region.intersection(b.region).area) * height
    return total


def floor_block(area: AreaLayout) -> list[Prism]:
    """The space of a floor: inside the footing below TOF, inside the wall above it."""
    low, high = area.subgrade, area.finished_floor
    parts = [
        Prism(area.core, low, min(high, area.tof)),
        Prism(area.room, max(low, area.tof), high),
    ]
    return [p for p in parts if p.top > p.bottom]


def air_block(layout: Layout) -> list[Prism]:
    """The space over all floors and walls up to the ground before the dig."""
    top = layout.ground.existing
    parts = []
    for area in layout.areas:
        floor = area.finished_floor
        parts.append(Prism(area.room, max(area.tof, floor), top))
        parts.append(Prism(area.core, floor, min(area.tof, top)))
        parts.append(Prism(area.walls, area.wall_top, top))
    return [p for p in parts if p.top > p.bottom]


def all_prisms(layout: Layout) -> list[Prism]:
    return [p for b in layout.bodies for p in b.prisms]


def volume(prisms: Iterable[Prism]) -> float:
    return sum(float(p.region.area) * (p.top - p.bottom) for p in prisms)


def hole_at(layout: Layout, level: float) -> BaseGeometry:
    """Plan of the sloped holes at a level, between their low and high outlines."""
    cuts = []
    for area in layout.areas:
        hole = layout.ground.hole(area)
        if hole and hole.bottom < level < hole.top:
            share = (level - hole.bottom) / (hole.top - hole.bottom)
            cuts.append(shapely.Polygon(hole.low + (hole.high - hole.low) * share))
    return shapely.union_all(cuts)


def integrated(layout: Layout, low: float, high: float, kept: BaseGeometry) -> float:
    """Volume of the sloped holes between levels outside a kept plan.

    Each hole's outline grows evenly, so the area between levels where a hole begins is a
    parabola of the level, but for corners where two holes meet: 24 points hold those too.
    """
    stops = {low, high, *(layout.ground.bench(a) for a in layout.areas)}
    levels = sorted(z for z in stops if low <= z <= high)
    nodes, weights = np.polynomial.legendre.leggauss(24)
    total = 0.0
    for a, b in pairwise(levels):
        for node, weight in zip(nodes, weights, strict=True):
            plan = hole_at(layout, (a + b) / 2 + node * (b - a) / 2).difference(kept)
            total += float(plan.area) * weight * (b - a) / 2
    return total


def above_grade(layout: Layout) -> float:
    """Air in the hole over the backfill, where the finished grade lies below the old ground."""
    ground = layout.ground
    low, high = ground.fill_top, ground.existing
    if low >= high:
        return 0.0
    outside = shapely.box(-400, -400, 400, 400).difference(ground.house)
    standing = inside(layout.footing.prisms, [Prism(outside, low, high)])
    drains = [d for d in layout.drains if not d.inside]
    risers = sum(len(layout.risers(d)) * pi * d.radius**2 for d in drains) * (high - low)
    return integrated(layout, low, high, ground.house) - standing - risers


def put_back(whole: Whole) -> float:
    """Volume of every solid below the ground before the dig: meshes, less what stands higher."""
    layout, ground = whole.layout, whole.layout.ground.existing
    parts = {k: v for k, v in whole.volumes.items() if k != "ground/excavation"}
    parts.pop("ground/grading", None)
    higher = sum(p.region.area * between(p, ground, 1e3) for p in all_prisms(layout))
    total = sum(parts.values()) - float(higher)
    for drain in layout.drains:
        ring = pi * (drain.radius**2 - drain.bore**2)
        total -= sum(ring * max(0.0, r.top - ground) for r in layout.risers(drain))
    return total


def void(layout: Layout) -> float:
    """Air in the hole: over the floors, over a low grade, in the pipes and the pit."""
    air = air_block(layout)
    return (
        volume(air) - inside(all_prisms(layout), air) + above_grade(layout) + pipework_void(layout)
    )
