"""The whole job laid out: areas, drain, sump, ground, and every body of prisms."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

import shapely

from geometry.label import Label
from geometry.layout.areas import AreaLayout, lay_areas
from geometry.layout.bleeders import Bleeder, lay_bleeders
from geometry.layout.bodies import Body, Prism
from geometry.layout.drain import DrainLayout
from geometry.layout.drain_route import lay_drain
from geometry.layout.drain_stone import stone_bodies
from geometry.layout.drain_way import beside_trench, standing
from geometry.layout.fittings import PIPE_SIDES
from geometry.layout.floors import fill_body, floor_bodies, openings
from geometry.layout.footings import footing_body, pier_bodies, wall_body
from geometry.layout.ground import GroundLayout
from geometry.layout.leads import LeadLayout, daylight_leads
from geometry.layout.naming import labels, named
from geometry.layout.pipework import stone_taken, wrap_taken
from geometry.layout.sump import SumpLayout, lay_sump, sump_bodies
from geometry.layout.vent import VentLayout
from geometry.parts.drain import Drain
from geometry.plan.outline import circle
from geometry.project import Design

# An open end lies over lower stone if it is no farther beside it than this.
UNDER_M = 5e-3


@dataclass(frozen=True, eq=False)
class Layout:
    """A design laid out; every level against the project's top of footing, metres.

    in_view: number of the drain that `drain` is: the one that empties into the pit, else the
    first, unless the layout was asked to look at another.
    """

    design: Design
    areas: tuple[AreaLayout, ...]
    drains: tuple[DrainLayout, ...]
    sump: SumpLayout | None
    ground: GroundLayout
    in_view: int = 0

    def label(self, part: str) -> Label:
        """Return the label of pipework or earthworks by part id. Raises KeyError."""
        return self._labels[part]

    @cached_property
    def _labels(self) -> dict[str, Label]:
        return labels(self.design, self.drains, self.sump, self.bleeders)

    def area(self, name: str) -> AreaLayout:
        """Return an area by name; the lowest for an empty name. Raises KeyError."""
        if not name:
            return self.areas[0]
        return {a.name: a for a in self.areas}[name]

    @property
    def drain(self) -> DrainLayout | None:
        """The drain in view."""
        return self.drains[self.in_view] if self.drains else None

    def views(self) -> tuple["Layout", ...]:
        """Return the layout once for each of its drains, that drain in view; itself without any.

        The drain that is in view now comes first.
        """
        others = [n for n in range(len(self.drains)) if n != self.in_view]
        return (self, *(self.viewing(n) for n in others))

    def viewing(self, number: int) -> "Layout":
        """Return the layout with another of its drains in view."""
        return replace(self, in_view=number)

    @property
    def lead(self) -> LeadLayout | None:
        """The solid pipe to the pit, if the drain in view empties into it."""
        drain, lead = self.drain, self.pit_lead
        return lead if drain and drain is self.sump_drain else None

    @property
    def pit_lead(self) -> LeadLayout | None:
        """The solid pipe to the pit, if a drain empties into it."""
        return self.sump.lead if self.sump else None

    @property
    def sump_drain(self) -> DrainLayout | None:
        """The drain that empties into the pit."""
        return next((d for d in self.drains if self.sump and empties_into_pit(d.drain)), None)

    @cached_property
    def _leads(self) -> dict[str, tuple[LeadLayout, ...]]:
        found = {}
        for drain in self.drains:
            pit = [self.pit_lead] if self.pit_lead and drain is self.sump_drain else []
            found[drain.key] = (*pit, *daylight_leads(drain, self.design.excavation))
        return found

    def leads(self, drain: DrainLayout) -> tuple[LeadLayout, ...]:
        """Return the solid pipes from a drain's tees: to the pit first, then to daylight."""
        return self._leads[drain.key]

    @cached_property
    def _bleeders(self) -> dict[str, tuple[Bleeder, ...]]:
        found = {}
        for drain in self.drains:
            other = across(drain, self.drains)
            empties = drain.drain.outlet == "bleeders" and other is not None
            found[drain.key] = lay_bleeders(drain, other) if empties and other else ()
        return found

    @property
    def bleeders(self) -> tuple[Bleeder, ...]:
        """All bleeders through the footings."""
        return tuple(b for found in self._bleeders.values() for b in found)

    def bleeders_of(self, drain: DrainLayout) -> tuple[Bleeder, ...]:
        """Return the bleeders that empty a drain."""
        return self._bleeders[drain.key]

    def bleeders_at(self, drain: DrainLayout) -> tuple[Bleeder, ...]:
        """Return the bleeders that end in a drain's stone."""
        other = across(drain, self.drains)
        return (*self.bleeders_of(drain), *(self.bleeders_of(other) if other else ()))

    @cached_property
    def footing(self) -> Body:
        """All strip footings, pierced by the sleeve and by bleeders."""
        sleeve = self.pit_lead.sleeve_bore if self.pit_lead else None
        bores = [*([sleeve] if sleeve else []), *(b.outside for b in self.bleeders)]
        return footing_body(self.areas).pierced(bores)

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
            cuts = self.standing_in(area)
            bodies += floor_bodies(area, cuts)
            fill = fill_body(area, self.ground.existing, cuts)
            bodies += [fill] if fill else []
        lead = self.pit_lead
        return tuple(b.pierced([lead.outside]) if lead else b for b in bodies)

    def standing_in(self, area: AreaLayout) -> list[Prism]:
        """Return what an area's floor leaves room for: piers, pit, vent pipe, footings, drains."""
        pit = [self.sump.opening] if self.sump and self.sump.area is area else []
        vent = [self.vent.opening] if self.vent and self.vent.area is area else []
        return [*openings(area), *pit, *vent, *self._footings_in(area), *self._drains_in(area)]

    def _footings_in(self, area: AreaLayout) -> list[Prism]:
        """Footings of lower neighbours that stand out under an area's floor."""
        if not area.earlier:
            return []
        return [p for p in self.footing.prisms if p.region.intersection(area.core).area > 1e-9]

    def _drains_in(self, area: AreaLayout) -> list[Prism]:
        """What the drains under an area's floor take out of it."""
        mine = [d for d in self.drains if d.inside and d.area is area]
        return [p for d in mine for p in (*d.space(), *self.risers(d))]

    @cached_property
    def pit(self) -> tuple[Body, ...]:
        """Sump basin, lid and stone."""
        return tuple(sump_bodies(self.sump)) if self.sump else ()

    @cached_property
    def vent(self) -> VentLayout | None:
        """The vent pipe for soil gas, if there is one."""
        vent = self.design.vent
        return VentLayout(vent, self.area(vent.area)) if vent else None

    @property
    def vents(self) -> tuple[Body, ...]:
        """The vent pipe as a body; none without one."""
        return (self.vent.body,) if self.vent else ()

    @cached_property
    def drain_beds(self) -> tuple[tuple[Body, Body], ...]:
        """Each drain's stone and wrap, less pipe, risers, solid pipes and bleeders."""
        return tuple(self._bed(drain) for drain in self.drains)

    def _bed(self, drain: DrainLayout) -> tuple[Body, Body]:
        stone, wrap = stone_bodies(drain, self.steps(drain), named(drain, self.drains))
        leads = self.leads(drain)
        bleeders = [b.outside for b in self.bleeders_at(drain)]
        stone = replace(stone, taken=stone_taken(drain, leads)).pierced(bleeders)
        wrap = replace(wrap, taken=wrap_taken(drain, wrap))
        bores = [lead.bore(drain.radius, lead.face, lead.outer) for lead in leads]
        return stone, wrap.pierced([*bores, *bleeders])

    def steps(self, drain: DrainLayout) -> tuple[Prism, ...]:
        """Pieces of the strip footings that stand or hang in a drain's stone."""
        return standing(drain, self.footing)

    @cached_property
    def bodies(self) -> tuple[Body, ...]:
        """Every body made of prisms."""
        beds = [body for bed in self.drain_beds for body in bed]
        return (*self.structure, *self.floors, *self.pit, *self.vents, *beds)

    def risers(self, drain: DrainLayout) -> tuple[Prism, ...]:
        """Return a drain's cleanout risers' outsides, from the pipe's centre to where they end.

        Outside that is the finished grade; inside, the finished floor.
        """
        found = []
        for corner in drain.drain.cleanouts:
            station = drain.corner_station(corner)
            x, y = drain.route.at(station)
            top = drain.area.finished_floor if drain.inside else self.ground.finished(x, y)
            outside = circle((x, y), drain.radius, PIPE_SIDES)
            found.append(Prism(outside, drain.centre(station), top))
        return tuple(found)


def empties_into_pit(drain: Drain) -> bool:
    """Whether a drain empties into the sump, if there is one."""
    return drain.outlet in {"pit", None}


def across(drain: DrainLayout, drains: Sequence[DrainLayout]) -> DrainLayout | None:
    """Return the drain along the other face of the same footing."""
    return next((d for d in drains if d.area is drain.area and d.inside != drain.inside), None)


def lower_drain(drain: DrainLayout, drains: Sequence[DrainLayout]) -> DrainLayout | None:
    """Return the drain whose stone lies under the open low end of an upper one."""
    end = shapely.Point(drain.route.at(drain.low))
    below = [d for d in drains if d.stone_top < drain.stone_bottom and not d.inside]
    return next((d for d in below if d.band_plan.buffer(UNDER_M).contains(end)), None)


def empties_into(drain: DrainLayout, drains: Sequence[DrainLayout]) -> DrainLayout | None:
    """Return the drain that takes another's water: through bleeders, or under its open end."""
    if drain.drain.outlet == "bleeders":
        return across(drain, drains)
    return lower_drain(drain, drains) if drain.drain.outlet == "lower stone" else None


def drain_key(number: int) -> str:
    """Return what leads the part ids of a drain by its number from 0."""
    return "drain" if number == 0 else f"drain {number + 1}"


@lru_cache(maxsize=8)
def lay_out(design: Design) -> Layout:
    """Lay out a sound design. Faults in a design show as exceptions here: see `geometry.faults`."""
    areas = lay_areas(design)
    drains = lay_drains(design, areas)
    sump, main = None, 0
    if design.sump:
        named = {a.name: a for a in areas}
        main, into = next(
            ((n, d) for n, d in enumerate(drains) if empties_into_pit(d.drain)), (0, None)
        )
        sump = lay_sump(design.sump, named.get(design.sump.area, areas[0]), into)
    ground = GroundLayout(design, areas, drains, sump)
    return Layout(design, areas, drains, sump, ground, main)


def lay_drains(design: Design, areas: Sequence[AreaLayout]) -> tuple[DrainLayout, ...]:
    """Lay out all drains. Raises ValueError where one finds no way: see `lay_drain`."""
    named = {a.name: a for a in areas}
    found = []
    for number, drain in enumerate(design.drains):
        pit = design.sump.at if design.sump and empties_into_pit(drain) else None
        laid = lay_drain(drain_key(number), drain, named.get(drain.area, areas[0]), pit)
        found.append(replace(laid, beside=beside_trench(laid, areas)))
    return tuple(found)
