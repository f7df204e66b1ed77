"""Every part of a design as labelled solids that touch but never overlap."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from manifold3d import Manifold

from geometry.label import Label
from geometry.layout.bodies import SAME_LEVEL_M, Body, Bore, Prism
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.layout.sump import LeadLayout
from geometry.materials.kinds import Pipe
from geometry.solids import earthworks, pipes
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
    solids = [body_solid(b, layout) for b in (*layout.structure, *layout.floors, *layout.pit)]
    solids += _pipework(layout)
    return _with_ground(layout, solids)


def body_solid(body: Body, layout: Layout) -> Solid:
    """Return a body of prisms as a solid: raised, joined, pierced."""
    return _solid(body.label, body_mesh(body, layout))


def body_mesh(body: Body, layout: Layout) -> Mesh:
    """Return a body's mesh: one prism as it is, several joined, bores cut."""
    whole = stacked(body.prisms)
    lead = layout.lead
    tools = [_bore(b, lead) for b in body.bores] if lead else []
    return mesh_of(cut_away(manifold(whole), tools)) if tools else whole


def stacked(prisms: Sequence[Prism]) -> Mesh:
    """Return prisms as one mesh: exactly where they stand on each other, else by union."""
    if len(prisms) == 1:
        return raised(*prisms[0])
    ordered = sorted(prisms, key=lambda p: p.bottom)
    on_each_other = all(abs(b.bottom - a.top) < SAME_LEVEL_M for a, b in pairwise(ordered))
    mesh = terraced(ordered) if on_each_other else None
    return mesh or mesh_of(union([earthworks.prism(p) for p in prisms]))


def _bore(bore: Bore, lead: LeadLayout) -> Manifold:
    run = (
        [0.0, lead.end]
        if bore.start == lead.at(0.0)
        else [lead.face - pipes.PAST_M, lead.back + pipes.PAST_M]
    )
    return manifold(pipes.solid(pipes.lead_frames(lead, run), bore.radius))


def _solid(label: Label, mesh: Mesh) -> Solid:
    return Solid(label, mesh.vertices, mesh.faces)


def _pipework(layout: Layout) -> list[Solid]:
    drain = layout.drain
    if drain is None:
        return []
    found = [_solid(layout.label("drain/pipe"), pipes.perforated_pipe(drain))]
    found += [*_fittings(layout, drain), *_risers(layout, drain), *_bed(layout, drain)]
    lead = layout.lead
    if lead:
        found.append(
            _solid(layout.label("sump/pipe"), _tube(lead, lead.pipe, lead.begin, lead.end))
        )
        sleeve = _tube(lead, lead.sleeve, lead.face, lead.back)
        found.append(_solid(layout.label("sump/sleeve"), sleeve))
    return found


def _tube(lead: LeadLayout, pipe: Pipe, start: float, end: float) -> Mesh:
    frames = pipes.lead_frames(lead, (start, end))
    return pipes.tube(frames, pipe.outside_diameter_m / 2, pipe.inside_diameter_m / 2)


def _fittings(layout: Layout, drain: DrainLayout) -> list[Solid]:
    lead = layout.lead
    opened = [drain.bend_at(drain.corner_station(c)) for c in drain.drain.cleanouts]
    meshes = []
    for fitting in drain.fittings:
        if fitting.kind == "tee" and lead:
            meshes.append(pipes.tee_mesh(drain, lead, fitting))
            continue
        point, centre = drain.route.at(fitting.station), drain.centre(fitting.station)
        bore = (
            pipes.riser_tools(point, drain.bore, centre, centre + 1) if fitting in opened else None
        )
        meshes.append(pipes.bend_mesh(drain, fitting, bore))
    if not drain.route.closed:
        meshes += pipes.cap_meshes(drain)
    return [_solid(layout.label("drain/fittings"), joined(meshes))] if meshes else []


def _risers(layout: Layout, drain: DrainLayout) -> list[Solid]:
    found = []
    for corner, riser in zip(drain.drain.cleanouts, layout.risers, strict=True):
        station = drain.corner_station(corner)
        point = drain.route.at(station)
        tube = pipes.riser_tube(point, drain, riser.bottom, riser.top)
        bend = drain.bend_at(station)
        frames = pipes.fitting_frames(drain, bend) if bend else []
        under = [manifold(pipes.solid(frames, drain.radius))] if frames else []
        label = layout.label(f"drain/cleanout {corner}")
        found.append(_solid(label, mesh_of(cut_away(tube, under))))
    return found


def _bed(layout: Layout, drain: DrainLayout) -> list[Solid]:
    stone, wrap = layout.drain_bed
    run = pipes.run_mesh(drain)
    tools = _riser_bars(layout)
    if lead := layout.lead:
        frames = pipes.lead_frames(lead, (0.0, lead.face + pipes.PAST_M))
        tools.append(manifold(pipes.solid(frames, lead.outer)))
    body = manifold(stacked(stone.prisms))
    caps = [] if drain.route.closed else [manifold(m) for m in pipes.cap_meshes(drain)]
    cavity = manifold(run)
    stone_mesh = mesh_of(cut_away(body, [cavity, *caps, *tools]))
    # The wrap is what the stone leaves of the trench: one cut instead of many joints.
    trench = manifold(stacked(drain.space(layout.steps)))
    wrap_mesh = mesh_of(cut_away(trench, [body, *tools]))
    return [_solid(stone.label, stone_mesh), _solid(wrap.label, wrap_mesh)]


def _riser_bars(layout: Layout) -> list[Manifold]:
    drain = layout.drain
    if drain is None:
        return []
    return [
        pipes.riser_tools(
            drain.route.at(drain.corner_station(c)), drain.radius, r.bottom, r.bottom + HIGH_M
        )
        for c, r in zip(drain.drain.cleanouts, layout.risers, strict=True)
    ]


def _with_ground(layout: Layout, solids: list[Solid]) -> Foundation:
    ground, bars = layout.ground, _riser_bars(layout)
    beside = earthworks.holes(ground)
    stone, soil = earthworks.backfill(layout, beside, bars)
    bodies = {
        "ground/wall stone": stone,
        "ground/backfill": soil,
        "ground/grading": earthworks.grading(layout, bars),
    }
    there = {part: body for part, body in bodies.items() if not body.is_empty()}
    solids += [_solid(layout.label(part), mesh_of(body)) for part, body in there.items()]
    hole = mesh_of(earthworks.excavation(ground, beside))
    return Foundation(tuple(solids), _solid(layout.label("ground/excavation"), hole))
