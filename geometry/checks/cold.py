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
    walk = _Walk([b for b in mine if b.label.role != "slab"], _foam_top(mine))
    for face in (f for slab in slabs for f in _undersides(slab)):
        walk.down(face.region, face.bottom, through_stone=False)
    faces = [ColdFace(area.name, kind, value) for kind, value in walk.cold.items()]
    faces.append(ColdFace(area.name, "pier through foam", _through_foam(mine)))
    faces.append(ColdFace(area.name, "slab edge at wall", _edges(slabs, mine), in_share=False))
    kept = tuple(f for f in faces if f.area_m2 > 1e-6)
    return ColdConcrete(area.name, kept, float(area.room.area))


def _foam_top(bodies: Sequence[Body]) -> float | None:
    return max((b.top for b in bodies if b.label.role == "insulation"), default=None)


def _undersides(body: Body) -> list[Prism]:
    """Return the parts of a body's prisms whose underside is not on another prism of the body."""
    faces = []
    for p in body.prisms:
        on = [q.region for q in body.prisms if abs(q.top - p.bottom) < SAME_LEVEL_M]
        region = p.region.difference(shapely.union_all(on)) if on else p.region
        if region.area > 1e-9:
            faces.append(Prism(region, p.bottom, p.top))
    return faces


class _Walk:
    """Follows faces of the slab down through bodies, and sums what ends cold."""

    def __init__(self, bodies: Sequence[Body], foam_top: float | None) -> None:
        self.bodies, self.foam_top = bodies, foam_top
        self.cold: dict[Contact, float] = {
            "slab on ground": 0.0,
            "slab on footing": 0.0,
            "slab on pier": 0.0,
        }

    def down(self, region: BaseGeometry, level: float, *, through_stone: bool) -> None:
        """Follow a face at a level; `through_stone`: stone or sand already lies above it."""
        left = region
        for body, p in ((b, p) for b in self.bodies for p in b.prisms):
            shared = region.intersection(p.region) if abs(p.top - level) < SAME_LEVEL_M else None
            if shared is None or shared.area < 1e-9:
                continue
            left = left.difference(p.region)
            role = body.label.role
            if role in _THROUGH:
                self.down(shared, p.bottom, through_stone=through_stone or role != "retarder")
            elif role in _IN_GROUND and not self._counted(role, p):
                self.cold[_contact(role, through_stone)] += float(shared.area)
        self.cold["slab on ground"] += float(left.area)

    def _counted(self, role: str, p: Prism) -> bool:
        """Whether a pier's section is already counted where it stands through the foam."""
        foam = self.foam_top
        return role in {"pad", "column"} and foam is not None and p.top > foam + SAME_LEVEL_M


def _contact(role: str, through_stone: bool) -> Contact:
    if through_stone:
        return "slab on ground"
    return "slab on pier" if role in {"pad", "column"} else "slab on footing"


def _through_foam(bodies: Sequence[Body]) -> float:
    """Section of pads and columns just above the top of the insulation."""
    top = _foam_top(bodies)
    if top is None:
        return 0.0
    piers = [p for b in bodies if b.label.role in {"pad", "column"} for p in b.prisms]
    return sum(
        float(p.region.area)
        for p in piers
        if p.bottom < top + SAME_LEVEL_M and p.top > top + SAME_LEVEL_M
    )


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
