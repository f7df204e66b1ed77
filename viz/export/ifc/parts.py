"""All parts of a house in the terms of IFC, in the order of the build's rooms."""

from collections.abc import Iterator

from geometry.layout.bodies import Body
from geometry.layout.lay import Layout
from geometry.solids.foundation import Foundation
from geometry.solids.kernel import Mesh
from viz.export.ifc.kinds import LAYERS, kind_of
from viz.export.ifc.part import Part
from viz.export.ifc.pipework import pipe_parts


def parts(layout: Layout, foundation: Foundation) -> tuple[Part, ...]:
    """Return every part: prisms with their bores, pipes as tubes, the rest as closed meshes."""
    return (
        *map(_prismatic, (*layout.structure, *layout.floors, *layout.pit, *layout.vents)),
        *pipe_parts(layout, foundation),
        *_beds(layout, foundation),
        *_ground(foundation),
    )


def _prismatic(body: Body) -> Part:
    label = body.label
    gross = sum(p.volume for p in body.prisms)
    floor = label.area if label.role in LAYERS else ""
    return Part(
        label.part, label.name, label, kind_of(label.role), body.prisms, body.volume, gross,
        bores=body.bores, floor=floor,
    )  # fmt: skip


def _beds(layout: Layout, foundation: Foundation) -> Iterator[Part]:
    """Yield stone and wrap: what the round pipes leave of them has no closed profile."""
    for drain, bed in zip(layout.drains, layout.drain_beds, strict=True):
        for body in bed:
            mesh = _mesh(foundation, body.label.part)
            label, kind = body.label, kind_of(body.label.role)
            gross = sum(p.volume for p in body.prisms)
            yield Part(
                label.part, label.name, label, kind, (mesh,), body.volume, gross, system=drain.key
            )


def _ground(foundation: Foundation) -> Iterator[Part]:
    for solid in foundation.solids:
        label = solid.label
        if label.part.startswith("ground/"):
            mesh = _mesh(foundation, label.part)
            kind = kind_of(label.role)
            yield Part(label.part, label.name, label, kind, (mesh,), mesh.volume, mesh.volume)


def _mesh(foundation: Foundation, part: str) -> Mesh:
    solid = foundation.named(part)
    return Mesh(solid.vertices, solid.faces)
