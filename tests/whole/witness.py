"""Second witnesses for solids: manifold3d and trimesh on the finished meshes, and plain sums."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations
from math import hypot, pi

import manifold3d
import numpy as np
import trimesh
from manifold3d import CrossSection, Manifold, Mesh64
from scipy.integrate import quad
from shapely.geometry.base import BaseGeometry

from geometry.layout.lay import Layout, lay_out
from geometry.plan.outline import polygons
from geometry.project import Design
from geometry.solids.foundation import Foundation, build
from geometry.solids.solid import Solid

# A shared volume below this is rounding (1 mm3), as is a share of the smaller part.
NOTHING_M3 = 1e-9
NOTHING_SHARE = 1e-9


@dataclass(frozen=True, eq=False)
class Whole:
    """A design laid out and built, with its witnesses."""

    design: Design

    @cached_property
    def layout(self) -> Layout:
        return lay_out(self.design)

    @cached_property
    def foundation(self) -> Foundation:
        return build(self.layout)

    @cached_property
    def solids(self) -> tuple[Solid, ...]:
        return self.foundation.solids

    @cached_property
    def bodies(self) -> dict[str, Manifold]:
        return {s.label.part: body(s) for s in self.solids}

    @cached_property
    def hole(self) -> Manifold:
        return body(self.foundation.excavation)


def body(solid: Solid) -> Manifold:
    """Return a solid as a manifold3d body, straight from its own mesh."""
    return Manifold(
        Mesh64(
            np.ascontiguousarray(solid.vertices),
            np.ascontiguousarray(solid.faces.astype(np.uint64)),
        )
    )


def mesh(solid: Solid) -> trimesh.Trimesh:
    """Return a solid as a trimesh, equal vertices merged."""
    return trimesh.Trimesh(solid.vertices, solid.faces, process=True)


def raise_region(region: BaseGeometry, bottom: float, top: float) -> Manifold:
    """Return a prism by manifold3d's own extrusion."""
    if top <= bottom or region.is_empty:
        return Manifold()
    rings = [
        np.asarray(ring.coords)[:-1]
        for p in polygons(region)
        for ring in (p.exterior, *p.interiors)
    ]
    flat = CrossSection(rings, manifold3d.FillRule.EvenOdd)
    return flat.extrude(top - bottom).translate((0, 0, bottom))


def overlaps(bodies: dict[str, Manifold]) -> Iterator[tuple[str, str, float]]:
    """Yield every pair of parts whose shared volume is more than rounding."""
    for (one, a), (two, b) in combinations(bodies.items(), 2):
        if _apart(a, b):
            continue
        shared = (a ^ b).volume()
        if shared > NOTHING_M3 + NOTHING_SHARE * min(a.volume(), b.volume()):
            yield one, two, shared


def _apart(a: Manifold, b: Manifold) -> bool:
    one, two = np.array(a.bounding_box()), np.array(b.bounding_box())
    return bool((one[:3] >= two[3:] - 1e-12).any() or (two[:3] >= one[3:] - 1e-12).any())


def union(bodies: Iterable[Manifold]) -> Manifold:
    return Manifold.batch_boolean([Manifold(), *bodies], manifold3d.OpType.Add)


def saddle(disc: float, radius: float, shift: float = 0.0) -> float:
    """Volume over a disc up to a round pipe's surface across it, by adaptive quadrature."""

    def strip(y: float) -> float:
        height = max(0.0, radius**2 - (y + shift) ** 2) ** 0.5
        return 2 * (disc**2 - y**2) ** 0.5 * height

    return float(quad(strip, -disc, disc, epsabs=1e-14, limit=400)[0])


def mitred_saddle(disc: float, radius: float, turn: float) -> float:
    """The same over a disc on a bend of two pipes mitred at half the turn, in polar strips."""
    from scipy.integrate import dblquad

    def height(r: float, angle: float) -> float:
        return r * max(0.0, radius**2 - (r * np.sin(angle)) ** 2) ** 0.5

    low = pi / 2 - turn / 2
    return float(2 * dblquad(height, low, low + pi, 0, disc, epsabs=1e-13)[0])


def pipework_void(layout: Layout) -> float:
    """Air inside pipes, holes, risers below the ground, sleeve and pit, from formulas alone, m3."""
    pit = layout.sump
    void = _drain_void(layout) if layout.drain else 0.0
    if pit:
        void += pi * pit.inner**2 * (pit.sump.depth - pit.sump.lid)
        void += _lead_void(layout) if pit.lead else 0.0
    return void


def _drain_void(layout: Layout) -> float:
    drain = layout.drain
    assert drain is not None
    bore, outer = drain.bore, drain.radius
    void = pi * bore**2 * (drain.run_length - _plain_ends(layout))
    hole = drain.drain.holes.diameter / 2
    void += drain.hole_count * (saddle(hole, outer) - saddle(hole, bore))
    for corner in drain.drain.cleanouts:
        station = drain.corner_station(corner)
        turn = next(
            drain.turn(f.corner or 0) for f in drain.fittings if abs(f.station - station) < 1e-6
        )
        top = min(layout.ground.existing, layout.ground.finished(*drain.route.at(station)))
        height = top - drain.centre(station)
        void += pi * bore**2 * height - mitred_saddle(bore, bore, turn)
    return void


def _plain_ends(layout: Layout) -> float:
    """Length along the fall beyond an open run's ends, where no pipe lies."""
    drain = layout.drain
    assert drain is not None
    if drain.route.closed:
        return 0.0
    first, last = drain.sticks[0][0].start, drain.sticks[-1][-1].end
    return (first + drain.route.length - last) * hypot(1, drain.drain.fall)


def _lead_void(layout: Layout) -> float:
    """Bore of the tee's leg and the solid pipe, less the pipe's end in the pit, and the sleeve's gap."""
    pit, drain = layout.sump, layout.drain
    assert pit is not None
    assert drain is not None
    lead = pit.lead
    assert lead is not None
    outer, inner = lead.pipe.outside_diameter_m / 2, lead.pipe.inside_diameter_m / 2
    stretch = hypot(1, lead.fall)
    void = pi * inner**2 * lead.end * stretch - saddle(inner, drain.bore, inner - drain.bore)
    far = hypot(pit.sump.at[0] - lead.tee[0], pit.sump.at[1] - lead.tee[1])

    def entered(y: float) -> float:
        wall = far - (pit.inner**2 - y**2) ** 0.5
        return 2 * (outer**2 - y**2) ** 0.5 * stretch * max(0.0, lead.end - wall)

    void -= float(quad(entered, -outer, outer, epsabs=1e-14)[0])
    gap = (lead.sleeve.inside_diameter_m / 2) ** 2 - outer**2
    return void + pi * gap * (lead.back - lead.face) * stretch


def room_air(layout: Layout) -> Manifold:
    """Return the air over the floors inside walls and footings, up to the ground."""
    top = layout.ground.existing
    found = []
    for area in layout.areas:
        floor = area.finished_floor
        found.append(raise_region(area.room, max(area.tof, floor), top))
        found.append(raise_region(area.core, floor, min(area.tof, top)))
    return union(found)


def open_ground(layout: Layout) -> Manifold:
    """Return the hole's part above the finished grade, where the grade lies below the ground."""
    ground = layout.ground
    if ground.fill_top >= ground.existing:
        return Manifold()
    size = 400.0
    block = Manifold.cube((2 * size, 2 * size, ground.existing - ground.fill_top))
    block = block.translate((-size, -size, ground.fill_top))
    return block - raise_region(ground.house, ground.fill_top - 1, ground.existing + 1)
