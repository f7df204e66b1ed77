"""Cold concrete: where slab, piers and footing touch ground or each other without insulation.

Read from the bodies' shared faces: a face of the slab is followed down through whatever lies
under it until insulation, concrete in the ground, or the ground itself is met.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

import shapely
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.bodies import SAME_LEVEL_M, Body, Prism
from geometry.layout.lay import Layout

Contact = Literal[
    "slab on ground", "slab on footing", "slab on pier", "pier through foam", "slab edge at wall"
]

_THROUGH = {"retarder", "base", "blinding", "fill"}
_IN_GROUND = {"footing", "pad", "column", "wall"}


@dataclass(frozen=True)
class ColdFace:
    """One kind of uninsulated contact in an area, m2; edges are told but not in the share."""

    area: str
    contact: Contact
    area_m2: float
    in_share: bool = True


@dataclass(frozen=True, eq=False)
class ColdConcrete:
    """All cold faces of one area, and its floor area, m2."""

    area: str
    faces: tuple[ColdFace, ...]
    floor_m2: float

    @cached_property
    def cold_m2(self) -> float:
        """Area of the faces that count in the share."""
        return sum(f.area_m2 for f in self.faces if f.in_share)

    @property
    def share(self) -> float:
        """Cold area against floor area, 0 to 1."""
        return self.cold_m2 / self.floor_m2

    def of(self, contact: Contact) -> float:
        """Area of one kind of contact."""
        return sum(f.area_m2 for f in self.faces if f.contact == contact)


def cold_concrete(layout: Layout, area: AreaLayout) -> ColdConcrete:
    """Return the cold faces of an area's floor and piers."""
    mine = [b for b in (*layout.structure, *layout.floors) if b.label.area in {area.name, ""}]
    slabs = [b for b in mine if b.label.role == "slab"]
    under: dict[Contact, float] = {
        "slab on ground": 0.0,
        "slab on footing": 0.0,
        "slab on pier": 0.0,
    }
    for slab in slabs:
        for face in _undersides(slab):
            _follow(
                face.region, face.bottom, [b for b in mine if b is not slab], under, ground=False
            )
    faces = [ColdFace(area.name, kind, value) for kind, value in under.items()]
    faces.append(ColdFace(area.name, "pier through foam", _through_foam(mine)))
    faces.append(ColdFace(area.name, "slab edge at wall", _edges(slabs, mine), in_share=False))
    kept = tuple(f for f in faces if f.area_m2 > 1e-6)
    return ColdConcrete(area.name, kept, float(area.room.area))


def _undersides(body: Body) -> list[Prism]:
    """Return the parts of a body's prisms whose underside is not on another prism of the body."""
    faces = []
    for p in body.prisms:
        on = [q.region for q in body.prisms if abs(q.top - p.bottom) < SAME_LEVEL_M]
        region = p.region.difference(shapely.union_all(on)) if on else p.region
        if region.area > 1e-9:
            faces.append(Prism(region, p.bottom, p.top))
    return faces


def _follow(
    region: BaseGeometry,
    level: float,
    bodies: Sequence[Body],
    into: dict[Contact, float],
    ground: bool,
) -> None:
    """Add the cold part of a face at a level to the sums; `ground`: stone or sand lies above."""
    left = region
    for body in bodies:
        for p in body.prisms:
            if abs(p.top - level) > SAME_LEVEL_M:
                continue
            shared = region.intersection(p.region)
            if shared.area < 1e-9:
                continue
            left = left.difference(p.region)
            role = body.label.role
            if role in _THROUGH:
                _follow(shared, p.bottom, bodies, into, ground or role != "retarder")
            elif role in _IN_GROUND:
                into[_contact(role, ground)] += float(shared.area)
    into["slab on ground"] += float(left.area)


def _contact(role: str, ground: bool) -> Contact:
    if ground:
        return "slab on ground"
    return "slab on pier" if role in {"pad", "column"} else "slab on footing"


def _through_foam(bodies: Sequence[Body]) -> float:
    """Section of columns and pads that stand right through the insulation."""
    foam = [p for b in bodies if b.label.role == "insulation" for p in b.prisms]
    total = 0.0
    for body in bodies:
        if body.label.role in {"column", "pad"}:
            for p in body.prisms:
                through = any(
                    p.bottom < f.top - SAME_LEVEL_M and p.top > f.bottom + SAME_LEVEL_M
                    and f.region.distance(p.region) < 1e-6
                    for f in foam
                )  # fmt: skip
                total += float(p.region.area) if through else 0.0
    return total


def _edges(slabs: Sequence[Body], bodies: Sequence[Body]) -> float:
    walls = [p for b in bodies if b.label.role == "wall" for p in b.prisms]
    total = 0.0
    for slab in (p for s in slabs for p in s.prisms):
        for wall in walls:
            height = min(slab.top, wall.top) - max(slab.bottom, wall.bottom)
            if height > 0:
                line = slab.region.boundary.intersection(wall.region.boundary)
                total += float(line.length) * height
    return total
