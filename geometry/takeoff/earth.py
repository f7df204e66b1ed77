"""Washed stone up the walls, backfill and grade, in place: level slices, before any mesh."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache, partial
from itertools import pairwise

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from geometry.layout.bodies import Prism
from geometry.layout.ground import Loft, occupied
from geometry.layout.lay import Layout
from geometry.layout.leads import LeadLayout
from geometry.plan.outline import GRID_M, minus

# Two-point Gauss-Legendre: exact for the squares of levels that sloping sides of a hole give.
_GAUSS = (0.5 - 0.5 / np.sqrt(3), 0.5 + 0.5 / np.sqrt(3))
_THIN_M = 1e-6
_SAME_M2 = 1e-7
_SAME_M3 = 1e-6
_HALVINGS = 12
_SLICES = 8
# Farther and deeper than any house.
_FAR, _DEEP_M = (-2000.0, -2000.0, 2000.0, 2000.0), 50.0


@lru_cache(maxsize=8)
def wall_stone_volume(layout: Layout) -> float:
    """Return the volume of the washed stone up the walls, m3; 0 where none is asked for."""
    strip = layout.ground.wall_stone()
    return _in_hole(layout, strip) if strip else 0.0


@lru_cache(maxsize=8)
def backfill_volume(layout: Layout) -> float:
    """Return the volume of the fill in the hole over and beside stone, wrap and footing, m3."""
    all_round = Prism(shapely.box(*_FAR), -_DEEP_M, layout.ground.fill_top)
    leads = [lead for d in layout.drains for lead in layout.leads(d)]
    through = sum(_in_fill(lead) for lead in leads if lead is not layout.pit_lead)
    return _in_hole(layout, all_round) - wall_stone_volume(layout) - through


def _in_fill(lead: LeadLayout) -> float:
    """Volume of a pipe to daylight between the drain's wrap and the edge of the hole, m3."""
    return float(np.pi * lead.outer**2) * max(0.0, lead.end - lead.face) * lead.stretch


def grading_volume(layout: Layout) -> float:
    """Return the volume of the fill that makes the grade fall away from the house, m3.

    The slope's outline grows evenly with depth, so its area is a square of the level.
    """
    ground = layout.ground
    shape = ground.grading()
    if shape is None:
        return 0.0
    steps = [p for p in layout.footing.prisms if p.top > ground.existing]
    risers = [r for d in layout.drains if not d.inside for r in layout.risers(d)]
    stops = {shape.bottom, shape.top, *(z for p in steps for z in (p.bottom, p.top))}
    # A riser ends where the slope is over its middle, which is what it takes out of a slope.
    whole = -sum(float(r.region.area) * max(0.0, r.top - ground.existing) for r in risers)
    for low, high in pairwise(sorted(z for z in stops if shape.bottom <= z <= shape.top)):
        taken = [ground.house, *_at(steps, (low + high) / 2)]
        # Near the top the slope's outline crosses footings that stand out: looked for in slices.
        for a, b in pairwise(np.linspace(low, high, _SLICES + 1).tolist()):
            whole += _summed(partial(_left_of, shape, taken), a, b)
    return whole


def _left_of(shape: Loft, taken: Sequence[BaseGeometry], level: float) -> float:
    """Area of a leaning shape's section at a level, less what stands in it, m2."""
    return float(minus(_section(shape, level), taken).area)


def _in_hole(layout: Layout, strip: Prism) -> float:
    """Return the volume of what a prism shares with the hole around all that stands in it, m3."""
    standing, (cores, lofts) = _standing(layout), _holes(layout)
    whole = 0.0
    for low, high in pairwise(_stops(strip, [*standing, *cores], lofts)):
        if high - low > _THIN_M:
            slices = _slices(strip, standing, cores, lofts, (low + high) / 2)
            whole += _summed(slices.area, low, high)
    return whole


@dataclass(frozen=True, eq=False)
class _Slices:
    """Levels between which nothing begins or ends: only the holes' sides lean.

    free: each hole with what of the strip is free of all that stands in it.
    """

    free: tuple[tuple[Loft, BaseGeometry], ...]

    def area(self, level: float) -> float:
        """Area of the stone at a level, m2."""
        met = [region.intersection(_section(loft, level)) for loft, region in self.free]
        # Two holes' edges may all but coincide: off the grid their union can lose a piece.
        joined = met[0] if len(met) == 1 else shapely.union_all(met, grid_size=GRID_M)
        return float(joined.area)


def _slices(
    strip: Prism,
    standing: Sequence[Prism],
    cores: Sequence[Prism],
    lofts: Sequence[tuple[Loft, int]],
    level: float,
) -> _Slices:
    """Return the slices about a level; a hole leaves the ground inside its own footings alone."""
    open_here = [(loft, count) for loft, count in lofts if loft.bottom < level < loft.top]
    region = minus(strip.region, _at(standing, level))
    return _Slices(
        tuple((loft, minus(region, _at(cores[:count], level))) for loft, count in open_here)
    )


def _section(loft: Loft, level: float) -> Polygon:
    share = (level - loft.bottom) / (loft.top - loft.bottom)
    return Polygon(loft.low + share * (loft.high - loft.low))


def _summed(
    area: Callable[[float], float], low: float, high: float, halvings: int = _HALVINGS
) -> float:
    """Sum slices; where a leaning side meets a corner of what stands, in ever smaller steps."""
    whole, same = _volume(area, low, high)
    if same or halvings == 0:
        return whole
    middle = (low + high) / 2
    halves = _volume(area, low, middle)[0] + _volume(area, middle, high)[0]
    if abs(halves - whole) < _SAME_M3:
        return halves
    parts = ((low, middle), (middle, high))
    return sum(_summed(area, a, b, halvings - 1) for a, b in parts)


def _volume(area: Callable[[float], float], low: float, high: float) -> tuple[float, bool]:
    """Volume between levels by Gauss, and whether the area stays the same.

    It does only where it does at the ends as well: a side may stop leaning in before the first
    level of Gauss.
    """
    first, second = (area(low + share * (high - low)) for share in _GAUSS)
    # The ends are asked only where the two agree: a section costs more than all else here.
    same = abs(second - first) < _SAME_M2 and all(
        abs(area(end) - first) < _SAME_M2 for end in (low, high)
    )
    return (high - low) * (first + second) / 2, same


def _standing(layout: Layout) -> list[Prism]:
    """Return all that stands in the hole: house, footings, drains, piers and pit beside."""
    ground = layout.ground
    found = occupied(ground.areas, ground.existing + 1.0)
    found += layout.footing.prisms
    outside = [d for d in layout.drains if not d.inside]
    for drain in outside:
        found += drain.space(layout.steps(drain))
    higher = {a.name for a in layout.areas if a.earlier}
    bodies = (*layout.structure, *layout.pit)
    beside = [b for b in bodies if b.label.area in higher and b.label.role != "wall"]
    found += [p for b in beside for p in b.prisms]
    # Risers are round prisms of their own circle, as the solids cut them.
    risers = [r for drain in outside for r in layout.risers(drain)]
    return [*found, *(Prism(r.region, r.bottom, r.top + 1.0) for r in risers)]


def _holes(layout: Layout) -> tuple[list[Prism], list[tuple[Loft, int]]]:
    """Return the ground left standing, and each hole with the number of cores cut from it."""
    ground = layout.ground
    low = min(ground.bench(a) for a in ground.areas)
    cores: list[Prism] = []
    lofts: list[tuple[Loft, int]] = []
    for area in ground.areas:
        core, hole = ground.core(area, low), ground.hole(area)
        cores += [core] if core else []
        if hole:
            lofts.append((hole, len(cores)))
    return cores, lofts


def _stops(strip: Prism, prisms: Sequence[Prism], lofts: Sequence[tuple[Loft, int]]) -> list[float]:
    ends = [z for p in prisms for z in (p.bottom, p.top)]
    ends += [z for loft, _ in lofts for z in (loft.bottom, loft.top)]
    bottom = min((loft.bottom for loft, _ in lofts), default=strip.top)
    inside = {z for z in ends if bottom < z < strip.top}
    return sorted({bottom, strip.top, *inside}) if strip.top > bottom else []


def _at(prisms: Sequence[Prism], level: float) -> list[BaseGeometry]:
    return [p.region for p in prisms if p.bottom < level < p.top]
