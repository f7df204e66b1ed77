"""The whole job laid out: areas, drain, sump, ground, and every body of prisms."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

import shapely
from shapely.geometry.base import BaseGeometry

from geometry.label import Label
from geometry.layout.areas import AreaLayout, lay_areas
from geometry.layout.bodies import Body, Prism
from geometry.layout.drain import PIPE_SIDES, DrainLayout
from geometry.layout.drain_route import lay_drain
from geometry.layout.drain_stone import stone_bodies
from geometry.layout.floors import fill_body, floor_bodies, openings
from geometry.layout.footings import footing_body, pier_bodies, wall_body
from geometry.layout.ground import GroundLayout
from geometry.layout.naming import labels
from geometry.layout.pipework import stone_taken, wrap_taken
from geometry.layout.sump import LeadLayout, SumpLayout, lay_sump, sump_bodies
from geometry.plan.outline import EMPTY, circle
from geometry.project import Design


@dataclass(frozen=True, eq=False)
class Layout:
    """A design laid out; every level against the project's top of footing, metres."""

    design: Design
    areas: tuple[AreaLayout, ...]
    drain: DrainLayout | None
    sump: SumpLayout | None
    ground: GroundLayout

    def label(self, part: str) -> Label:
        """Return the label of pipework or earthworks by part id. Raises KeyError."""
        return self._labels[part]

    @cached_property
    def _labels(self) -> dict[str, Label]:
        return labels(self.design, self.drain, self.sump)

    def area(self, name: str) -> AreaLayout:
        """Return an area by name; the lowest for an empty name. Raises KeyError."""
        if not name:
            return self.areas[0]
        return {a.name: a for a in self.areas}[name]

    @property
    def lead(self) -> LeadLayout | None:
        """The solid pipe from drain to pit, if there are both."""
        return self.sump.lead if self.sump else None

    @cached_property
    def footing(self) -> Body:
        """All strip footings, pierced by the sleeve."""
        body = footing_body(self.areas)
        return body.pierced([self.lead.sleeve_bore]) if self.lead else body

    @cached_property
    def structure(self) -> tuple[Body, ...]:
        """Footings, walls, pads and columns."""
        walls = [wall_body(a) for a in self.areas]
        piers = [b for a in self.areas for b in pier_bodies(a)]
        return (self.footing, *walls, *piers)

    @cached_property
    def floors(self) -> tuple[Body, ...]:
        """Floor layers and edge boards, pierced by the pipe to the sump; fill under floors."""
        bodies: list[Body] = []
        for area in self.areas:
            pit = [self.sump.opening] if self.sump and self.sump.area is area else []
            cuts = [*openings(area), *pit, *self._footings_in(area)]
            bodies += floor_bodies(area, cuts)
            fill = fill_body(area, self.ground.existing, cuts)
            bodies += [fill] if fill else []
        lead = self.lead
        return tuple(b.pierced([lead.outside]) if lead else b for b in bodies)

    def _footings_in(self, area: AreaLayout) -> list[Prism]:
        """Footings of lower neighbours that stand out under an area's floor."""
        if not area.earlier:
            return []
        return [p for p in self.footing.prisms if p.region.intersection(area.core).area > 1e-9]

    @cached_property
    def pit(self) -> tuple[Body, ...]:
        """Sump basin, lid and stone."""
        return tuple(sump_bodies(self.sump)) if self.sump else ()

    @cached_property
    def drain_bed(self) -> tuple[Body, ...]:
        """Drain stone and wrap, less pipe, risers and the pipe to the sump."""
        if self.drain is None:
            return ()
        stone, wrap = stone_bodies(self.drain, self.steps)
        lead = self.lead
        stone = replace(stone, taken=stone_taken(self.drain, lead))
        wrap = replace(wrap, taken=wrap_taken(self.drain, wrap))
        bores = [lead.bore(self.drain.radius, lead.face, lead.outer)] if lead else []
        return (stone, wrap.pierced(bores))

    @cached_property
    def steps(self) -> BaseGeometry:
        """Plan of footing steps standing in the drain stone above the drained area's footing."""
        if self.drain is None:
            return EMPTY
        low, high = self.drain.area.tof, self.drain.stone_top
        above = [p.region for p in self.footing.prisms if p.top > low + 1e-6 and p.bottom < high]
        return shapely.union_all(above) if above else EMPTY

    @cached_property
    def bodies(self) -> tuple[Body, ...]:
        """Every body made of prisms."""
        return (*self.structure, *self.floors, *self.pit, *self.drain_bed)

    @cached_property
    def risers(self) -> tuple[Prism, ...]:
        """The cleanout risers' outsides, from the pipe's centre to the finished grade."""
        if self.drain is None:
            return ()
        found = []
        for corner in self.drain.drain.cleanouts:
            station = self.drain.corner_station(corner)
            x, y = self.drain.route.at(station)
            outside = circle((x, y), self.drain.radius, PIPE_SIDES)
            found.append(Prism(outside, self.drain.centre(station), self.ground.finished(x, y)))
        return tuple(found)


@lru_cache(maxsize=8)
def lay_out(design: Design) -> Layout:
    """Lay out a sound design. Faults in a design show as exceptions here: see `geometry.faults`."""
    areas = lay_areas(design)
    named = {a.name: a for a in areas}
    drain = sump = None
    if design.drain:
        outlet = design.sump.at if design.sump else None
        drain = lay_drain(design.drain, named.get(design.drain.area, areas[0]), outlet)
        drain = replace(drain, beside=_footings_beside(drain, areas))
    if design.sump:
        sump = lay_sump(design.sump, named.get(design.sump.area, areas[0]), drain)
    return Layout(design, areas, drain, sump, GroundLayout(design, areas, drain, sump))


def _footings_beside(drain: DrainLayout, areas: Sequence[AreaLayout]) -> BaseGeometry:
    """Return the plan of other areas' footings that reach down into the drain's trench."""
    low = [a.footings for a in areas if a is not drain.area and a.footing_bottom < drain.area.tof]
    return shapely.union_all([f for f in low if f.intersection(drain.low_space).area > 1e-9])
