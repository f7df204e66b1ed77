"""The hole, the backfill and the grade as solids."""

from collections.abc import Sequence

import shapely
from manifold3d import Manifold

from geometry.layout.bodies import Body, Prism
from geometry.layout.footings import column_prism, pad_prism
from geometry.layout.ground import GroundLayout, Loft, occupied
from geometry.layout.lay import Layout
from geometry.solids.kernel import cut_away, lofted, manifold, raised, union


def prism(shape: Prism) -> Manifold:
    """Return a prism as a body to cut and join."""
    return manifold(raised(*shape))


def _loft(shape: Loft) -> Manifold:
    return manifold(lofted(shape.low, shape.high, shape.bottom, shape.top))


def holes(ground: GroundLayout) -> Manifold:
    """Return the open hole beside all footings, undisturbed ground inside them left standing.

    A higher area's hole leaves the ground under its lower neighbours' floors as well.
    """
    low = min(ground.bench(a) for a in ground.areas)
    found, standing = [], []
    for area in ground.areas:
        core, hole = ground.core(area, low), ground.hole(area)
        standing += [prism(core)] if core else []
        if hole:
            found.append(cut_away(_loft(hole), standing))
    return union(found)


def excavation(ground: GroundLayout, beside: Manifold) -> Manifold:
    """Return everything dug: the hole, deep floors, pad pockets, pit and trenches."""
    pockets = [prism(p) for p in (*ground.pockets(), *pad_pockets(ground))]
    return union([beside, *pockets])


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


def backfill(
    layout: Layout, beside: Manifold, pipes: Sequence[Manifold]
) -> tuple[Manifold, Manifold]:
    """Return (washed stone up the wall, soil): the hole less all that stands in it.

    pipes: risers and solid pipes that pass through it.
    """
    ground = layout.ground
    kept = [prism(p) for p in occupied(ground.areas, ground.existing + 1.0)]
    kept += [prism(p) for p in layout.footing.prisms]
    kept += [prism(p) for body in _under_higher_floors(layout) for p in body.prisms]
    outside = [d for d in layout.drains if not d.inside]
    kept += [prism(p) for d in outside for p in d.space(layout.steps(d))]
    if ground.fill_top < ground.existing:
        kept.append(_above(beside, ground.fill_top))
    left = cut_away(beside, [*kept, *pipes])
    strip = ground.wall_stone()
    return left.split(prism(strip)) if strip else (Manifold(), left)


def _under_higher_floors(layout: Layout) -> list[Body]:
    """Return pads, columns and pit of areas beside lower ones, whose hole reaches under them."""
    higher = {a.name for a in layout.areas if a.earlier}
    piers = [b for b in layout.structure if b.label.role in {"pad", "column"}]
    return [b for b in (*piers, *layout.pit) if b.label.area in higher]


def _above(body: Manifold, level: float) -> Manifold:
    x0, y0, _, x1, y1, z1 = body.bounding_box()
    return prism(Prism(shapely.box(x0 - 1, y0 - 1, x1 + 1, y1 + 1), level, z1 + 1))


def grading(layout: Layout, risers: Sequence[Manifold]) -> Manifold:
    """Return the fill that makes the finished grade fall away from the house."""
    ground = layout.ground
    shape = ground.grading()
    if shape is None:
        return Manifold()
    steps = [prism(p) for p in layout.footing.prisms if p.top > ground.existing]
    return cut_away(_loft(shape), [prism(ground.house_block()), *steps, *risers])
