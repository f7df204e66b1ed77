"""The hole, the backfill and the grade as solids."""

from collections.abc import Sequence
from typing import NamedTuple

import shapely
from manifold3d import Manifold

from geometry.layout.bodies import Body, Prism
from geometry.layout.footings import column_prism, pad_prism
from geometry.layout.ground import GroundLayout, Loft, occupied
from geometry.layout.lay import Layout
from geometry.solids.carving import carved, name_of, remembered, remembered_all
from geometry.solids.kernel import (
    NOTHING,
    Mesh,
    cut_away,
    cut_away_whole,
    lofted,
    manifold,
    mesh_of,
    raised,
    union,
)


class Dig(NamedTuple):
    """An area's hole before anything is put in it, and the ground inside it left standing."""

    hole: Mesh | None
    core: Prism | None

    @property
    def name(self) -> tuple[bytes | None, Prism | None]:
        """All that it is made from."""
        return name_of(self.hole) if self.hole else None, self.core


def prism(shape: Prism) -> Manifold:
    """Return a prism as a body to cut and join."""
    return manifold(raised(*shape))


def _loft(shape: Loft) -> Mesh:
    return lofted(shape.low, shape.high, shape.bottom, shape.top)


def digs(ground: GroundLayout) -> tuple[Dig, ...]:
    """Return every area's hole, in the order they are dug."""
    low = min(ground.bench(a) for a in ground.areas)
    holes = ((ground.hole(area), ground.core(area, low)) for area in ground.areas)
    return tuple(Dig(_loft(hole) if hole else None, core) for hole, core in holes)


def _beside(areas: Sequence[Dig]) -> Mesh:
    """Return the open hole beside all footings, undisturbed ground inside them left standing.

    A higher area's hole leaves the ground under its lower neighbours' floors as well.
    """
    return remembered(("beside", *(dig.name for dig in areas)), lambda: _dug_beside(areas))


def _dug_beside(areas: Sequence[Dig]) -> Mesh:
    found, standing = [], []
    for dig in areas:
        standing += [prism(dig.core)] if dig.core else []
        if dig.hole:
            found.append(cut_away(manifold(dig.hole), standing))
    # A mesh of its own: in a later union as one batch, nearly coincident faces lose slivers.
    return mesh_of(union(found))


def excavation(ground: GroundLayout, areas: Sequence[Dig]) -> Mesh:
    """Return everything dug: the hole, deep floors, pad pockets, pit and trenches."""
    pockets = (*ground.pockets(), *pad_pockets(ground))
    key = ("excavation", tuple(dig.name for dig in areas), pockets)

    def made() -> Mesh:
        return mesh_of(union([manifold(_beside(areas)), *(prism(p) for p in pockets)]))

    return remembered(key, made)


def pad_pockets(ground: GroundLayout) -> list[Prism]:
    """Return what piers take out of the ground below the floor's subgrade."""
    found = []
    for area in ground.areas:
        top = min(area.subgrade, ground.existing)
        for pier in area.area.piers:
            for p in (pad_prism(area, pier), column_prism(area, pier)):
                if p and p.bottom < min(p.top, top):
                    found.append(p._replace(top=min(p.top, top)))
    return found


def backfill(layout: Layout, areas: Sequence[Dig], through: Sequence[Mesh]) -> tuple[Mesh, Mesh]:
    """Return (washed stone up the wall, soil): the hole less all that stands in it.

    through: risers and solid pipes that pass through it.
    """
    ground = layout.ground
    kept = [*occupied(ground.areas, ground.existing + 1.0), *layout.footing.prisms]
    kept += [p for body in _under_higher_floors(layout) for p in body.prisms]
    outside = [d for d in layout.drains if not d.inside]
    kept += [p for d in outside for p in d.space(layout.steps(d))]
    top = ground.fill_top if ground.fill_top < ground.existing else None
    strip = ground.wall_stone()

    def made() -> tuple[Mesh, Mesh]:
        beside = manifold(_beside(areas))
        tools = [prism(p) for p in kept]
        tools += [_above(beside, top)] if top is not None else []
        left = cut_away_whole(beside, [*tools, *(manifold(mesh) for mesh in through)])
        stone, soil = left.split(prism(strip)) if strip else (Manifold(), left)
        return mesh_of(stone), mesh_of(soil)

    names = tuple(dig.name for dig in areas), tuple(map(name_of, through))
    stone, soil = remembered_all(("backfill", *names, tuple(kept), top, strip), made)
    return stone, soil


def _under_higher_floors(layout: Layout) -> list[Body]:
    """Return pads, columns and pit of areas beside lower ones, whose hole reaches under them."""
    higher = {a.name for a in layout.areas if a.earlier}
    piers = [b for b in layout.structure if b.label.role in {"pad", "column"}]
    return [b for b in (*piers, *layout.pit) if b.label.area in higher]


def _above(body: Manifold, level: float) -> Manifold:
    x0, y0, _, x1, y1, z1 = body.bounding_box()
    return prism(Prism(shapely.box(x0 - 1, y0 - 1, x1 + 1, y1 + 1), level, z1 + 1))


def grading(layout: Layout, risers: Sequence[Mesh]) -> Mesh:
    """Return the fill that makes the finished grade fall away from the house."""
    ground = layout.ground
    shape = ground.grading()
    if shape is None:
        return NOTHING
    steps = [p for p in layout.footing.prisms if p.top > ground.existing]
    house = [raised(*p) for p in (ground.house_block(), *steps)]
    return carved(_loft(shape), [*house, *risers])
