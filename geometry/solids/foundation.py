"""Every part of a design as labelled solids that touch but never overlap."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from geometry.label import Label
from geometry.layout.bodies import SAME_LEVEL_M, Body, Prism
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.layout.leads import LeadLayout, lead_at
from geometry.materials.kinds import Pipe
from geometry.solids import earthworks, pipes
from geometry.solids.carving import carved, name_of, remembered
from geometry.solids.kernel import (
    Mesh,
    cut_away,
    joined,
    manifold,
    mesh_of,
    raised,
    terraced,
    union,
)
from geometry.solids.solid import Solid

# A riser as a tool for ground and stone reaches above any grade.
HIGH_M = 10.0
# What holds less is rounding (1 mm3).
CRUMB_M3 = 1e-9


@dataclass(frozen=True, eq=False)
class Foundation:
    """All solids of a design, and the hole they stand in."""

    solids: tuple[Solid, ...]
    excavation: Solid

    def named(self, part: str) -> Solid:
        """Return a solid by its part id. Raises KeyError."""
        return {s.label.part: s for s in self.solids}[part]


def build(layout: Layout) -> Foundation:
    """Return every solid of a laid-out design."""
    stacks = (*layout.structure, *layout.floors, *layout.pit, *layout.vents)
    solids = [body_solid(b) for b in stacks]
    solids += _pipework(layout)
    return _with_ground(layout, solids)


def body_solid(body: Body) -> Solid:
    """Return a body of prisms as a solid: raised, joined, pierced."""
    return _solid(body.label, body_mesh(body))


def body_mesh(body: Body) -> Mesh:
    """Return a body's mesh: one prism as it is, several joined, bores cut."""
    return stacked(body.prisms, [pipes.bore_tool(b) for b in body.bores])


def stacked(prisms: Sequence[Prism], tools: Sequence[Mesh] = ()) -> Mesh:
    """Return prisms as one mesh, tools cut out of it: exactly where they stand on each other."""
    key = ("stacked", *prisms, *map(name_of, tools))
    return remembered(key, lambda: _stacked(prisms, tools))


def _stacked(prisms: Sequence[Prism], tools: Sequence[Mesh]) -> Mesh:
    if len(prisms) == 1:
        return carved(raised(*prisms[0]), tools)
    ordered = sorted(prisms, key=lambda p: p.bottom)
    on_each_other = all(abs(b.bottom - a.top) < SAME_LEVEL_M for a, b in pairwise(ordered))
    mesh = terraced(ordered) if on_each_other else None
    if mesh:
        return carved(mesh, tools)
    # Cut before it is a mesh: taken out of the kernel and handed in again a union can lose a piece.
    whole = union([earthworks.prism(p) for p in prisms])
    return mesh_of(cut_away(whole, [manifold(tool) for tool in tools]))


def _solid(label: Label, mesh: Mesh) -> Solid:
    return Solid(label, mesh.vertices, mesh.faces)


def _pipework(layout: Layout) -> list[Solid]:
    found: list[Solid] = []
    for drain, bed in zip(layout.drains, layout.drain_beds, strict=True):
        found.append(_solid(layout.label(f"{drain.key}/pipe"), pipes.perforated_pipe(drain)))
        found += [*_fittings(layout, drain), *_risers(layout, drain)]
        found += [*_bed(layout, drain, bed), *_to_daylight(layout, drain)]
    if bleeders := layout.bleeders:
        tubes = joined([pipes.bleeder_tube(b) for b in bleeders])
        found.append(_solid(layout.label("bleeders"), tubes))
    return [*found, *_to_pit(layout)]


def _to_daylight(layout: Layout, drain: DrainLayout) -> list[Solid]:
    leads = [lead for lead in layout.leads(drain) if lead is not layout.pit_lead]
    return [
        _solid(
            layout.label(f"{drain.key}/daylight {number}"),
            _tube(lead, lead.pipe, lead.begin, lead.end),
        )
        for number, lead in enumerate(leads, 1)
    ]


def _to_pit(layout: Layout) -> list[Solid]:
    lead = layout.pit_lead
    if lead is None:
        return []
    found = [_solid(layout.label("sump/pipe"), _tube(lead, lead.pipe, lead.begin, lead.end))]
    if lead.sleeve:
        sleeve = _tube(lead, lead.sleeve, lead.face, lead.back)
        found.append(_solid(layout.label("sump/sleeve"), sleeve))
    return found


def _tube(lead: LeadLayout, pipe: Pipe, start: float, end: float) -> Mesh:
    frames = pipes.lead_frames(lead, (start, end))
    return pipes.tube(frames, pipe.outside_diameter_m / 2, pipe.inside_diameter_m / 2)


def _fittings(layout: Layout, drain: DrainLayout) -> list[Solid]:
    opened = [drain.bend_at(drain.corner_station(c)) for c in drain.drain.cleanouts]
    meshes = []
    for fitting in drain.fittings:
        lead = lead_at(layout.leads(drain), fitting.station) if fitting.kind == "tee" else None
        if lead:
            meshes.append(pipes.tee_mesh(drain, lead, fitting))
            continue
        point, centre = drain.route.at(fitting.station), drain.centre(fitting.station)
        bore = (
            pipes.riser_tools(point, drain.bore, centre, centre + 1) if fitting in opened else None
        )
        meshes.append(pipes.bend_mesh(drain, fitting, bore))
    meshes += pipes.cap_meshes(drain)
    return [_solid(layout.label(f"{drain.key}/fittings"), joined(meshes))] if meshes else []


def _risers(layout: Layout, drain: DrainLayout) -> list[Solid]:
    found = []
    for corner, riser in zip(drain.drain.cleanouts, layout.risers(drain), strict=True):
        station = drain.corner_station(corner)
        point = drain.route.at(station)
        tube = pipes.riser_tube(point, drain, riser.bottom, riser.top)
        bend = drain.bend_at(station)
        frames = pipes.fitting_frames(drain, bend) if bend else []
        under = [pipes.solid(frames, drain.radius)] if frames else []
        label = layout.label(f"{drain.key}/cleanout {corner}")
        found.append(_solid(label, carved(tube, under)))
    return found


def _bed(layout: Layout, drain: DrainLayout, bed: tuple[Body, Body]) -> list[Solid]:
    stone, wrap = bed
    tools = [*_riser_bars(layout, drain), *(pipes.bar(b) for b in stone.bores)]
    for lead in layout.leads(drain):
        frames = pipes.lead_frames(lead, (0.0, lead.face + pipes.PAST_M))
        tools.append(pipes.solid(frames, lead.outer))
    body = stacked(stone.prisms)
    stone_mesh = carved(body, [pipes.run_mesh(drain), *pipes.cap_meshes(drain), *tools])
    # The wrap is what the stone leaves of the trench: one cut instead of many joints.
    wrap_mesh = stacked(drain.space(layout.steps(drain)), [body, *tools])
    return [_solid(stone.label, stone_mesh), _solid(wrap.label, wrap_mesh)]


def _riser_bars(layout: Layout, drain: DrainLayout) -> list[Mesh]:
    return [
        pipes.riser_tools(
            drain.route.at(drain.corner_station(c)), drain.radius, r.bottom, r.bottom + HIGH_M
        )
        for c, r in zip(drain.drain.cleanouts, layout.risers(drain), strict=True)
    ]


def _through_backfill(layout: Layout) -> list[Mesh]:
    """Return what passes through the backfill: risers outside the house, pipes to daylight."""
    outside = [d for d in layout.drains if not d.inside]
    found = [bar for drain in outside for bar in _riser_bars(layout, drain)]
    for drain in outside:
        for lead in layout.leads(drain):
            if lead is not layout.pit_lead and lead.end > lead.face:
                found.append(pipes.bar(lead.bore(lead.begin, lead.end, lead.outer)))
    return found


def _with_ground(layout: Layout, solids: list[Solid]) -> Foundation:
    ground, through = layout.ground, _through_backfill(layout)
    digs = earthworks.digs(ground)
    stone, soil = earthworks.backfill(layout, digs, through)
    bodies = {
        "ground/wall stone": stone,
        "ground/backfill": soil,
        "ground/grading": earthworks.grading(layout, through),
    }
    # Where the stone would end at the hole's bottom a body of no thickness can be left of it.
    there = {part: mesh for part, mesh in bodies.items() if mesh.volume > CRUMB_M3}
    solids += [_solid(layout.label(part), mesh) for part, mesh in there.items()]
    hole = earthworks.excavation(ground, digs)
    return Foundation(tuple(solids), _solid(layout.label("ground/excavation"), hole))
