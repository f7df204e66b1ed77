"""Each area's regions on the plan and its levels."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from geometry.levels import Stack, stack
from geometry.parts.area import Area
from geometry.parts.fields import LevelAt
from geometry.parts.floor import Floor
from geometry.parts.footing import Footing, Wall
from geometry.plan.outline import both, minus, offset, polygon
from geometry.project import Design

# Two areas' corners nearer than this are meant to coincide (0.5 mm).
SNAP_M = 5e-4


@dataclass(frozen=True, eq=False)
class AreaLayout:
    """One area laid out; levels against the project's top of footing, metres.

    outline: outside face of the wall. house: this outline joined with lower neighbours', whose
    walls it shares. earlier: the lower neighbours' outlines.
    """

    area: Area
    footing: Footing
    wall: Wall
    floor: Floor
    outline: Polygon
    house: BaseGeometry
    earlier: tuple[Polygon, ...]

    @property
    def name(self) -> str:
        """The area's name."""
        return self.area.name

    @property
    def tof(self) -> float:
        """Level of this area's top of footing."""
        return self.area.step

    @property
    def footing_bottom(self) -> float:
        """Level of the footing's underside."""
        return self.tof - self.footing.thickness

    @property
    def wall_top(self) -> float:
        """Level of the top of the wall."""
        return self.tof + self.wall.height

    @property
    def projection_out(self) -> float:
        """How far the footing stands out beyond the wall's outside face."""
        return (self.footing.width - self.wall.thickness) / 2 + self.footing.offset

    @property
    def projection_in(self) -> float:
        """How far the footing stands in beyond the wall's inside face."""
        return (self.footing.width - self.wall.thickness) / 2 - self.footing.offset

    @cached_property
    def room(self) -> BaseGeometry:
        """The floor's region from the top of footing up: inside the wall."""
        return both(self.outline, offset(self.house, -self.wall.thickness))

    @cached_property
    def core(self) -> BaseGeometry:
        """The floor's region below the top of footing: inside the footing."""
        inner = offset(self.house, -self.wall.thickness - self.projection_in)
        return both(self.outline, inner)

    @cached_property
    def walls(self) -> BaseGeometry:
        """The wall's region; sides shared with a lower neighbour belong to the neighbour."""
        return self.outline.difference(self.room)

    @cached_property
    def footing_outer(self) -> BaseGeometry:
        """The outline grown to the footing's outer face."""
        return offset(self.outline, self.projection_out)

    @cached_property
    def footings(self) -> BaseGeometry:
        """The strip footing's region, up to the walls of lower neighbours."""
        inner = offset(self.house, -self.wall.thickness - self.projection_in)
        strip = offset(self.house, self.projection_out).difference(inner)
        return minus(both(strip, self.footing_outer), self.earlier)

    @cached_property
    def stack(self) -> Stack:
        """The floor's layers against the project's top of footing, placed by the first tie."""
        tie = self.floor.ties[0]
        layers = self.floor.layers
        level = self.fixed_level(tie.at)
        return stack(
            [x.name for x in layers], [x.thickness for x in layers], tie.interface.lower(), level
        )

    @property
    def subgrade(self) -> float:
        """Level the excavator must cut the floor to."""
        return self.stack.levels[0]

    @property
    def finished_floor(self) -> float:
        """Level of the top layer's top."""
        return self.stack.levels[-1]

    def fixed_level(self, at: LevelAt) -> float:
        """Return a level that hangs on TOF or footing bottom only. Raises KeyError."""
        return {"TOF": self.tof, "footing bottom": self.footing_bottom}[at.base] + at.offset_m

    def level(self, at: LevelAt) -> float:
        """Return any named level of this area. Raises KeyError for an unknown name."""
        if at.base in {"TOF", "footing bottom"}:
            return self.fixed_level(at)
        return self.stack.interfaces[at.base] + at.offset_m

    def level_names(self) -> list[str]:
        """Return the names a level may hang on."""
        return ["TOF", "footing bottom", *self.stack.interfaces]


@lru_cache(maxsize=8)
def lay_areas(design: Design) -> tuple[AreaLayout, ...]:
    """Return the areas laid out, lowest first: lower areas own the walls they share."""
    done: list[AreaLayout] = []
    for area in sorted(design.areas, key=lambda a: a.step):
        outline = _snapped(polygon(area.corners), [d.outline for d in done])
        earlier = tuple(d.outline for d in done if d.outline.distance(outline) < SNAP_M)
        house = shapely.union_all([outline, *earlier])
        footing, wall, floor = design.footing_of(area), design.wall_of(area), design.floor_of(area)
        done.append(AreaLayout(area, footing, wall, floor, outline, house, earlier))
    return tuple(done)


def _snapped(outline: Polygon, others: Sequence[Polygon]) -> Polygon:
    for other in others:
        outline = shapely.snap(outline, other, SNAP_M)
    return outline
