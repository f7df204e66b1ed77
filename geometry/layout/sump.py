"""The sump pit laid out: basin, stone round it, and the trench of the pipe that feeds it."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import shapely
from shapely import Polygon

from geometry.label import STAGE, Label
from geometry.layout.areas import AreaLayout
from geometry.layout.bodies import Body, Prism, merged
from geometry.layout.drain import DrainLayout
from geometry.layout.leads import LeadLayout, pit_lead
from geometry.parts.drain import Sump
from geometry.plan.outline import circle
from geometry.units import INCH

BASIN_SIDES = 48
# Beside and under the solid pipe in its trench below the floor.
TRENCH_BESIDE_M = 4 * INCH
TRENCH_BELOW_M = 2 * INCH


@dataclass(frozen=True, eq=False)
class SumpLayout:
    """The pit in its area's floor; levels against the project's TOF, metres."""

    sump: Sump
    area: AreaLayout
    lead: LeadLayout | None

    @property
    def inner(self) -> float:
        """Inner radius of the basin."""
        return self.sump.diameter / 2

    @property
    def outer(self) -> float:
        """Outer radius of the basin."""
        return self.inner + self.sump.wall

    @property
    def rim(self) -> float:
        """Level of the basin's rim: the finished floor."""
        return self.area.finished_floor

    @property
    def floor(self) -> float:
        """Level of the basin's inside bottom."""
        return self.rim - self.sump.depth

    @property
    def pump_off(self) -> float | None:
        """Level of the water at which the pump stops; None without a pump."""
        return self._water(self.sump.pump.off if self.sump.pump else None)

    @property
    def pump_on(self) -> float | None:
        """Level of the water at which the pump starts; None without a pump."""
        return self._water(self.sump.pump.on if self.sump.pump else None)

    @property
    def alarm(self) -> float | None:
        """Level of the high-water alarm; None without one."""
        return self._water(self.sump.pump.alarm if self.sump.pump else None)

    def _water(self, height: float | None) -> float | None:
        return None if height is None else self.floor + height

    @cached_property
    def outer_circle(self) -> Polygon:
        """Plan of the basin's outside."""
        return circle(self.sump.at, self.outer, BASIN_SIDES)

    @cached_property
    def inner_circle(self) -> Polygon:
        """Plan of the basin's inside."""
        return circle(self.sump.at, self.inner, BASIN_SIDES)

    @cached_property
    def pocket(self) -> Prism:
        """The hole below the subgrade that takes basin and stone."""
        around = circle(self.sump.at, self.outer + self.sump.stone_beside, BASIN_SIDES)
        bottom = self.floor - self.sump.wall - self.sump.stone_below
        return Prism(around, bottom, self.area.subgrade)

    @property
    def opening(self) -> Prism:
        """What the basin takes out of the floor."""
        return Prism(self.outer_circle, self.floor - self.sump.wall, self.rim)

    @cached_property
    def trench(self) -> Prism | None:
        """The solid pipe's trench below the subgrade, footing to pit stone, if it needs one."""
        if self.lead is None:
            return None
        lead = self.lead
        bottom = lead.at(lead.end)[2] - lead.outer - TRENCH_BELOW_M
        if bottom >= self.area.subgrade - 1e-4:
            return None
        wide = lead.outer + TRENCH_BESIDE_M
        line = shapely.LineString((lead.at(lead.back)[:2], self.sump.at))
        strip = line.buffer(wide, cap_style="flat").difference(self.pocket.region)
        return Prism(strip, bottom, self.area.subgrade)


def lay_sump(sump: Sump, area: AreaLayout, drain: DrainLayout | None) -> SumpLayout:
    """Lay out the pit, and the solid pipe to it from the drain that empties into it, if any."""
    return SumpLayout(sump, area, pit_lead(sump, drain) if drain else None)


def sump_bodies(pit: SumpLayout) -> list[Body]:
    """Return basin, lid, pit stone and the stone in the solid pipe's trench."""
    sump, name = pit.sump, pit.area.name
    shell = pit.outer_circle.difference(pit.inner_circle)
    basin = merged(
        (
            Prism(pit.outer_circle, pit.floor - sump.wall, pit.floor),
            Prism(shell, pit.floor, pit.rim),
        )
    )
    lid = Prism(pit.inner_circle, pit.rim - sump.lid, pit.rim)
    pocket = pit.pocket
    under = pit.floor - sump.wall
    around = pocket.region.difference(pit.outer_circle)
    stone = [Prism(pocket.region, pocket.bottom, under), Prism(around, under, pocket.top)]
    trench = [pit.trench] if pit.trench else []
    rows = [
        ("sump/basin", "Sump basin", "basin", sump.material, basin, STAGE["basin"]),
        ("sump/lid", "Sump lid", "lid", sump.material, (lid,), STAGE["basin"] + 10),
        (
            "sump/stone",
            "Stone round the sump",
            "pit stone",
            sump.stone,
            merged(stone),
            STAGE["pit stone"],
        ),
        (
            "sump/trench",
            "Stone under the pipe to the sump",
            "pit stone",
            sump.stone,
            merged(trench),
            STAGE["pit stone"],
        ),
    ]
    bodies = [
        Body(Label(part, words, role, material, name, stage), prisms)  # type: ignore[arg-type]
        for part, words, role, material, prisms, stage in rows
        if prisms
    ]
    return _pierced(bodies, pit)


def _pierced(bodies: Sequence[Body], pit: SumpLayout) -> list[Body]:
    return [b.pierced([pit.lead.outside]) for b in bodies] if pit.lead else list(bodies)
