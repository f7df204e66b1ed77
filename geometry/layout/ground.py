"""The hole, what fills it, and the finished grade, as shapes before any mesh."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.bodies import Prism
from geometry.layout.drain import DrainLayout
from geometry.layout.sump import SumpLayout
from geometry.plan.outline import offset, polygons
from geometry.plan.route import corners_of, lengths_along, parallel, straightened
from geometry.plan.sides import Sides
from geometry.project import Design
from geometry.units import INCH

# Wall above finished grade unless given (IRC R404.1.6: at least 4 in with veneer, else 6 in).
EXPOSED_WALL_M = 8 * INCH


Floats = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Loft:
    """A body between two outlines with the same corners: (n, 2) low and high, and their levels."""

    low: Floats
    high: Floats
    bottom: float
    top: float

    def outline(self, level: float) -> Polygon:
        """Return its outline at a level; below it its lowest, above it its highest."""
        share = np.clip((level - self.bottom) / (self.top - self.bottom), 0.0, 1.0)
        return Polygon(self.low + share * (self.high - self.low))


@dataclass(frozen=True, eq=False)
class GroundLayout:
    """Levels of the ground and the outlines that hole and grade follow; metres."""

    design: Design
    areas: tuple[AreaLayout, ...]
    drains: tuple[DrainLayout, ...]
    sump: SumpLayout | None

    @cached_property
    def at_wall(self) -> float:
        """Level of the finished grade at the wall."""
        given = self.design.grade.at_wall
        return self.areas[0].wall_top - EXPOSED_WALL_M if given is None else given

    @cached_property
    def existing(self) -> float:
        """Level of the ground before the dig."""
        given = self.design.excavation.existing
        grade = self.design.grade
        return self.at_wall - grade.fall * grade.fall_length if given is None else given

    @property
    def fill_top(self) -> float:
        """Level up to which the hole is filled; the finished grade's slope lies above it."""
        return min(self.at_wall, self.existing)

    @cached_property
    def house(self) -> BaseGeometry:
        """All areas' outlines joined."""
        return shapely.union_all([a.outline for a in self.areas])

    def finished(self, x: float, y: float) -> float:
        """Level of the finished grade at a place outside the house."""
        return float(self.grades(np.array([(x, y)]))[0])

    def grades(self, places: Floats) -> Floats:
        """Levels of the finished grade at (n, 2) places outside the house."""
        away = np.min([sides.away(places) for sides in self._sides], axis=0)
        levels: Floats = self.at_wall - self.design.grade.fall * away
        return np.maximum(self.existing, levels)

    @cached_property
    def _sides(self) -> tuple[Sides, ...]:
        return tuple(Sides(straightened(p)) for p in polygons(self.house))

    def bench(self, area: AreaLayout) -> float:
        """Level of the hole's bottom beside an area's footing."""
        return area.footing_bottom

    def hole(self, area: AreaLayout) -> Loft | None:
        """Return an area's hole from its footing's bottom to the ground, sides sloped back."""
        bench = self.bench(area)
        if bench >= self.existing:
            return None
        dig = self.design.excavation
        foot = offset(area.footing_outer, dig.working_space)
        low, high = grown(foot, dig.slope * (self.existing - bench))
        return Loft(low, high, bench, self.existing)

    def core(self, area: AreaLayout, bottom: float) -> Prism | None:
        """Return the undisturbed ground inside an area's footings, from a level to subgrade."""
        top = min(area.subgrade, self.existing)
        return Prism(area.core, bottom, top) if top > bottom else None

    def pockets(self) -> list[Prism]:
        """Return what is dug below the holes: deep floors, pads, the pit, trenches."""
        found = [
            Prism(a.core, a.subgrade, min(self.bench(a), self.existing))
            for a in self.areas
            if a.subgrade < self.bench(a)
        ]
        for drain in self.drains:
            area = drain.area
            top = min(area.subgrade, self.existing) if drain.inside else self.bench(area)
            found.append(Prism(drain.low_space, drain.stone_bottom, top))
        if self.sump:
            found += [p for p in (self.sump.pocket, self.sump.trench) if p]
        return [p for p in found if p.top > p.bottom]

    def grading(self) -> Loft | None:
        """Return the body of fill above the ground that makes the grade fall, house included."""
        rise = self.at_wall - self.existing
        if rise <= 1e-6 or self.design.grade.fall <= 0:
            return None
        high, low = grown(self.house, rise / self.design.grade.fall)
        return Loft(low, high, self.existing, self.at_wall)

    def house_block(self) -> Prism:
        """Return the house's outline from the ground to above the grade."""
        return Prism(self.house, self.existing, self.at_wall + 1.0)

    def wall_stone(self) -> Prism | None:
        """Return the strip of washed stone up the walls, from below everything to its top."""
        backfill = self.design.backfill
        if backfill.stone_top is None or backfill.stone_width <= 0:
            return None
        region = offset(self.house, backfill.stone_width)
        return Prism(region, -50.0, min(backfill.stone_top, self.fill_top))


def occupied(areas: Sequence[AreaLayout], high: float) -> list[Prism]:
    """Return the space that walls and rooms keep free of backfill."""
    found = []
    for a in areas:
        top = max(high, a.wall_top)
        if a.subgrade > a.tof:
            found += [Prism(a.walls, a.tof, top), Prism(a.room, a.subgrade, top)]
        else:
            found += [Prism(a.outline, a.tof, top), Prism(a.core, a.subgrade, a.tof)]
    return [p for p in found if p.top > p.bottom]


def grown(region: BaseGeometry, by: float) -> tuple[Floats, Floats]:
    """Return an outline's corners and the same corners moved outward, (n, 2) each.

    Notches too narrow to keep their sides are dug straight across: the outline is then closed
    by the growth, or at the worst replaced by its convex hull.
    """
    solid = _filled(region)
    closed = _filled(offset(offset(solid, by), -by))
    for outline in (solid, closed):
        inner = straightened(outline)
        outer = parallel(inner, by)
        if lengths_along(inner, outer).min() > 0 and Polygon(outer).is_valid:
            return corners_of(inner), outer
    hull = straightened(solid.convex_hull)
    return corners_of(hull), parallel(hull, by)


def _filled(shape: BaseGeometry) -> Polygon:
    return Polygon(max(polygons(shape), key=lambda p: p.area).exterior)
