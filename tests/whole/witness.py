"""Second witnesses for solids: manifold3d and trimesh on the finished meshes, and plain sums."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations
from math import hypot, pi

import numpy as np
import trimesh
from manifold3d import Manifold, Mesh64
from numpy.typing import NDArray
from scipy.integrate import dblquad, quad

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout, lay_out
from geometry.layout.leads import LeadLayout
from geometry.project import Design
from geometry.solids.foundation import Foundation, build
from geometry.solids.solid import Solid

Floats = NDArray[np.float64]

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
    def volumes(self) -> dict[str, float]:
        """Volume of every mesh and of the hole, m3."""
        return {s.label.part: volume(s) for s in (*self.solids, self.foundation.excavation)}


def body(solid: Solid) -> Manifold:
    """Return a solid as a manifold3d body, straight from its own mesh."""
    return Manifold(
        Mesh64(
            np.array(solid.vertices, order="C"),
            np.ascontiguousarray(solid.faces.astype(np.uint64)),
        )
    )


def volume(solid: Solid) -> float:
    """Volume by the divergence theorem, about the solid's own middle to keep digits, m3."""
    corners = (solid.vertices - solid.vertices.mean(axis=0))[solid.faces]
    return float(np.linalg.det(corners).sum() / 6)


def mesh(solid: Solid) -> trimesh.Trimesh:
    """Return a solid as a trimesh, equal vertices merged."""
    return trimesh.Trimesh(solid.vertices, solid.faces, process=True)


def overlaps(whole: Whole) -> Iterator[tuple[str, str, float]]:
    """Yield every pair of solids whose shared volume is more than rounding.

    Where faces nearly coincide manifold3d may report a sliver that is none, so each piece it
    reports must hold a point that lies in both solids by its winding number.
    """
    for (one, a), (two, b) in combinations(whole.bodies.items(), 2):
        if _apart(a, b):
            continue
        shared = a ^ b
        least = NOTHING_M3 + NOTHING_SHARE * min(a.volume(), b.volume())
        if shared.volume() > least:
            pair = [whole.foundation.named(part) for part in (one, two)]
            real = [c.volume() for c in shared.decompose() if c.volume() > least and _in(c, pair)]
            if real:
                yield one, two, sum(real)


def _in(piece: Manifold, solids: Sequence[Solid]) -> bool:
    """Say whether any point close under the piece's largest faces lies in all the solids."""
    raw = piece.to_mesh64()
    corners = np.asarray(raw.vert_properties)[:, :3][np.asarray(raw.tri_verts)]
    normal = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    size = np.linalg.norm(normal, axis=1)
    kept = np.argsort(-size)[:30]
    kept = kept[size[kept] > 1e-14]
    centres, inward = corners[kept].mean(axis=1), -normal[kept] / size[kept, None]
    points = np.vstack([centres + inward * depth for depth in (1e-3, 1e-5, 1e-7)])
    return any(all(winding(s, p) > 0.5 for s in solids) for p in points)


def winding(solid: Solid, point: Floats) -> float:
    """How often a solid's faces wind round a point: 1 inside, 0 outside.

    Solid angle of each triangle by van Oosterom and Strackee (IEEE Trans. Biomed. Eng. 1983).
    """
    a, b, c = (solid.vertices[solid.faces[:, i]] - point for i in range(3))
    la, lb, lc = (np.linalg.norm(v, axis=1) for v in (a, b, c))
    top = np.einsum("ij,ij->i", a, np.cross(b, c))
    low = la * lb * lc
    for u, v, w in ((a, b, lc), (b, c, la), (c, a, lb)):
        low = low + np.einsum("ij,ij->i", u, v) * w
    return float(np.arctan2(top, low).sum() / (2 * pi))


def _apart(a: Manifold, b: Manifold) -> bool:
    one, two = np.array(a.bounding_box()), np.array(b.bounding_box())
    return bool((one[:3] >= two[3:] - 1e-12).any() or (two[:3] >= one[3:] - 1e-12).any())


def saddle(disc: float, radius: float, shift: float = 0.0) -> float:
    """Volume over a disc up to a round pipe's surface across it, by adaptive quadrature."""

    def strip(y: float) -> float:
        height = max(0.0, radius**2 - (y + shift) ** 2) ** 0.5
        return 2 * (disc**2 - y**2) ** 0.5 * height

    return float(quad(strip, -disc, disc, epsabs=1e-14, limit=400)[0])


def mitred_saddle(disc: float, radius: float, turn: float) -> float:
    """The same over a disc on a bend of two pipes mitred at half the turn, in polar strips."""

    def height(r: float, angle: float) -> float:
        return r * max(0.0, radius**2 - (r * np.sin(angle)) ** 2) ** 0.5

    low = pi / 2 - turn / 2
    return float(2 * dblquad(height, low, low + pi, 0, disc, epsabs=1e-13)[0])


def pipework_void(layout: Layout) -> float:
    """Air inside pipes, holes, risers below the ground, sleeve and pit, from formulas alone, m3."""
    pit = layout.sump
    void = sum(_drain_void(layout, drain) for drain in layout.drains)
    for bleeder in layout.bleeders:
        void += pi * (bleeder.pipe.inside_diameter_m / 2) ** 2 * bleeder.length
    if pit:
        top = min(pit.rim - pit.sump.lid, layout.ground.existing)
        void += pi * pit.inner**2 * (top - pit.floor)
    if layout.vent:
        bore = layout.vent.pipe.inside_diameter_m / 2
        top = min(layout.vent.area.finished_floor, layout.ground.existing)
        void += pi * bore**2 * max(0.0, top - layout.vent.foot)
    return void


def _drain_void(layout: Layout, drain: DrainLayout) -> float:
    bore, outer = drain.bore, drain.radius
    void = pi * bore**2 * (drain.run_length - _plain_ends(drain))
    hole = drain.drain.holes.diameter / 2
    void += drain.hole_count * (saddle(hole, outer) - saddle(hole, bore))
    for corner in drain.drain.cleanouts:
        station = drain.corner_station(corner)
        turn = next(
            drain.turn(f.corner or 0) for f in drain.fittings if abs(f.station - station) < 1e-6
        )
        ends = (
            drain.area.finished_floor
            if drain.inside
            else layout.ground.finished(*drain.route.at(station))
        )
        top = min(layout.ground.existing, ends)
        height = top - drain.centre(station)
        void += pi * bore**2 * height - mitred_saddle(bore, bore, turn)
    return void + sum(_lead_void(layout, drain, lead) for lead in layout.leads(drain))


def _plain_ends(drain: DrainLayout) -> float:
    """Length along the fall beyond an open run's ends, where no pipe lies."""
    if drain.route.closed:
        return 0.0
    first, last = drain.sticks[0][0].start, drain.sticks[-1][-1].end
    return (first + drain.route.length - last) * hypot(1, drain.drain.fall)


def _lead_void(layout: Layout, drain: DrainLayout, lead: LeadLayout) -> float:
    """Bore of tee leg and solid pipe, less the pipe's end in the pit; the sleeve's gap."""
    pit = layout.sump
    outer, inner = lead.pipe.outside_diameter_m / 2, lead.pipe.inside_diameter_m / 2
    stretch = hypot(1, lead.fall)
    void = pi * inner**2 * lead.end * stretch - saddle(inner, drain.bore, inner - drain.bore)
    if pit is None or lead is not layout.pit_lead:
        return void
    far = hypot(pit.sump.at[0] - lead.tee[0], pit.sump.at[1] - lead.tee[1])

    def entered(y: float) -> float:
        wall = far - (pit.inner**2 - y**2) ** 0.5
        return 2 * (outer**2 - y**2) ** 0.5 * stretch * max(0.0, lead.end - wall)

    void -= float(quad(entered, -outer, outer, epsabs=1e-14)[0])
    if lead.sleeve is None:
        return void
    gap = (lead.sleeve.inside_diameter_m / 2) ** 2 - outer**2
    return void + pi * gap * (lead.back - lead.face) * stretch
