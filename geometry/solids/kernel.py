"""The kernel: raise polygons, loft outlines, sweep rings, and the few true intersections.

Everything prismatic or swept is built exactly with shapely and numpy; manifold3d serves as
triangulator and, directly in double precision, for unions and cuts of simple bodies.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

import manifold3d
import numpy as np
import shapely
from manifold3d import Manifold, Mesh64, OpType
from numpy.typing import NDArray
from shapely import LinearRing, Polygon
from shapely.geometry.base import BaseGeometry

from geometry.plan.outline import polygons

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

# Volumes that differ by a smaller share of the body are the same.
SAME_SHARE = 1e-10


@dataclass(frozen=True, eq=False)
class Mesh:
    """A closed triangle mesh: vertices (n, 3) float64 metres; faces (m, 3) int64, outward."""

    vertices: Floats
    faces: Ints

    @property
    def volume(self) -> float:
        """Enclosed volume, m3 (divergence theorem)."""
        a, b, c = (self.vertices[self.faces[:, i]] for i in range(3))
        return float(np.einsum("ij,ij->", a, np.cross(b, c)) / 6)


NOTHING = Mesh(np.empty((0, 3)), np.empty((0, 3), dtype=np.int64))


def joined(meshes: Iterable[Mesh]) -> Mesh:
    """Return several meshes as one: bodies apart from each other, or a body and its cavity."""
    some = [m for m in meshes if len(m.faces)]
    if not some:
        return NOTHING
    if len(some) == 1:
        return some[0]
    starts = np.cumsum([0] + [len(m.vertices) for m in some[:-1]])
    faces = [m.faces + start for m, start in zip(some, starts, strict=True)]
    return Mesh(np.concatenate([m.vertices for m in some]), np.concatenate(faces))


def raised(region: BaseGeometry, bottom: float, top: float) -> Mesh:
    """Return the prism of a region between two levels."""
    return joined(_raised(p, bottom, top) for p in polygons(region))


def _raised(polygon: Polygon, bottom: float, top: float) -> Mesh:
    flat, caps, ahead = _flat(polygon)
    count = len(flat)
    faces = np.concatenate(
        (caps[:, ::-1], caps + count, sides_between(np.arange(count), ahead, count))
    )
    return Mesh(_upright(flat, bottom, top), faces)


def _upright(flat: Floats, bottom: float, top: float) -> Floats:
    """Return corners (n, 2) of the plan at two levels, (2n, 3), the lower ones first."""
    count = len(flat)
    corners = np.empty((2 * count, 3))
    corners[:count, :2] = corners[count:, :2] = flat
    corners[:count, 2], corners[count:, 2] = bottom, top
    return corners


def sides_between(here: Ints, ahead: Ints, lift: int) -> Ints:
    """Return the faces of upright sides: from `here` to `ahead`, their tops `lift` indices on."""
    faces = np.empty((2, len(here), 3), dtype=np.int64)
    faces[:, :, 0] = here
    faces[0, :, 1], faces[:, :, 2] = ahead, ahead + lift
    faces[1, :, 1], faces[1, :, 2] = ahead + lift, here + lift
    return faces.reshape(-1, 3)


def _flat(polygon: Polygon) -> tuple[Floats, Ints, Ints]:
    """Return a polygon's corners (n, 2), its triangles (m, 3), and each corner's next one (n,)."""
    rings = _rings(polygon)
    triangles = np.asarray(manifold3d.triangulate(rings), dtype=np.int64)
    ahead = np.arange(sum(map(len, rings))) + 1
    start = 0
    for ring in rings:
        ahead[start + len(ring) - 1] = start
        start += len(ring)
    return np.concatenate(rings), triangles, ahead


def _rings(polygon: Polygon) -> list[Floats]:
    sound = shapely.orient_polygons(polygon)
    return [_ring(r) for r in (sound.exterior, *sound.interiors)]


def _ring(ring: LinearRing) -> Floats:
    return np.asarray(ring.coords, dtype=float)[:-1]


def terraced(steps: Sequence[tuple[BaseGeometry, float, float]]) -> Mesh | None:
    """Return regions standing on each other, (region, bottom, top) from the bottom up, as one mesh.

    Works where the outlines of neighbouring regions are the same ring or do not touch, so that
    every corner of a ledge is a corner of a side; returns None where they cross.
    """
    nothing = Polygon()
    regions = [nothing, *(step[0] for step in steps), nothing]
    # One level where two meet: a top and the bottom on it may differ by rounding.
    levels = [steps[0][1], *(step[2] for step in steps)]
    shells = [raised_sides(r, *z) for r, z in zip(regions[1:-1], pairwise(levels), strict=True)]
    ledges = []
    for below, above, level in zip(regions, regions[1:], levels, strict=False):
        if not (below.is_empty or above.is_empty or nested(below, above)):
            return None
        ledges.append(_ledge(below.difference(above), level, upward=True))
        ledges.append(_ledge(above.difference(below), level, upward=False))
    return welded(joined([*shells, *ledges]))


def raised_sides(region: BaseGeometry, bottom: float, top: float) -> Mesh:
    """Return the upright sides of a region between two levels, open above and below."""
    meshes = []
    for ring in (r for p in polygons(region) for r in _rings(p)):
        count = len(ring)
        here = np.arange(count)
        sides = sides_between(here, (here + 1) % count, count)
        meshes.append(Mesh(_upright(ring, bottom, top), sides))
    return joined(meshes)


def _ledge(region: BaseGeometry, level: float, *, upward: bool) -> Mesh:
    meshes = []
    for polygon in polygons(region):
        flat, triangles, _ = _flat(polygon)
        faces = triangles if upward else triangles[:, ::-1]
        meshes.append(Mesh(np.column_stack((flat, np.full(len(flat), level))), faces))
    return joined(meshes)


def nested(one: BaseGeometry, other: BaseGeometry) -> bool:
    """Whether every ring of one region is a ring of the other or keeps clear of all of them."""
    theirs = {_name(r): r for p in polygons(other) for r in (p.exterior, *p.interiors)}
    alone = [r for p in polygons(one) for r in (p.exterior, *p.interiors) if _name(r) not in theirs]
    return all(not r.intersects(t) for r in alone for t in theirs.values())


def _name(ring: LinearRing) -> frozenset[bytes]:
    return frozenset(row.tobytes() for row in _ring(ring))


def welded(mesh: Mesh) -> Mesh:
    """Return the mesh with corners at the same coordinates made one."""
    keys = np.ascontiguousarray(mesh.vertices + 0.0).view(np.dtype((np.void, 24))).ravel()
    _, first, number = np.unique(keys, return_index=True, return_inverse=True)
    return Mesh(mesh.vertices[first], number.reshape(-1)[mesh.faces])


def lofted(low: Floats, high: Floats, bottom: float, top: float) -> Mesh:
    """Return the body between two outlines with the same corners in the same order.

    low, high: (n, 2) counter-clockwise. Sides are planar where each side keeps its direction.
    """
    count = len(low)
    here = np.arange(count)
    sides = sides_between(here, (here + 1) % count, count)
    under = np.asarray(manifold3d.triangulate([low]), dtype=np.int64)[:, ::-1]
    over = np.asarray(manifold3d.triangulate([high]), dtype=np.int64) + count
    floor = np.column_stack((low, np.full(count, bottom)))
    vertices = np.vstack((floor, np.column_stack((high, np.full(count, top)))))
    return Mesh(vertices, np.vstack((under, over, sides)))


def swept(rings: Floats) -> Mesh:
    """Return the solid through successive rings, capped at both ends.

    rings: (k, n, 3), each counter-clockwise, its first axis to the left of the way of travel.
    """
    count, sides = rings.shape[:2]
    fan = np.column_stack(
        (np.zeros(sides - 2, np.int64), np.arange(1, sides - 1), np.arange(2, sides))
    )
    skin = skin_faces(count, sides)
    last = (count - 1) * sides
    return Mesh(rings.reshape(-1, 3), np.vstack((skin, fan[:, ::-1], fan + last)))


def swept_round(rings: Floats) -> Mesh:
    """Return the solid through successive rings that closes on itself; rings as in `swept`."""
    count, sides = rings.shape[:2]
    return Mesh(rings.reshape(-1, 3), skin_faces(count + 1, sides) % (count * sides))


def skin_faces(count: int, sides: int) -> Ints:
    """Return the faces between `count` successive rings of `sides` corners."""
    here = np.arange(sides)
    ahead = (here + 1) % sides
    low = np.vstack(
        (
            np.column_stack((here, ahead, here + sides)),
            np.column_stack((ahead, ahead + sides, here + sides)),
        )
    )
    return (low[None] + (np.arange(count - 1) * sides)[:, None, None]).reshape(-1, 3)


def manifold(mesh: Mesh) -> Manifold:
    """Return the mesh as a manifold3d body in double precision."""
    # A copy: the library takes no locked array.
    corners = np.array(mesh.vertices, order="C")
    return Manifold(Mesh64(corners, np.ascontiguousarray(mesh.faces.astype(np.uint64))))


def mesh_of(body: Manifold) -> Mesh:
    """Return a manifold3d body as a mesh."""
    raw = body.to_mesh64()
    return Mesh(
        np.asarray(raw.vert_properties)[:, :3].copy(), np.asarray(raw.tri_verts).astype(np.int64)
    )


def union(bodies: Sequence[Manifold]) -> Manifold:
    """Return the union of bodies."""
    return Manifold.batch_boolean(list(bodies), OpType.Add) if bodies else Manifold()


def cut_away(body: Manifold, tools: Sequence[Manifold]) -> Manifold:
    """Return a body less others, one after the other.

    Cut as one batch, tools that touch are joined first, and faces that nearly coincide then
    lose slivers; `status` makes each cut happen before the next.
    """
    for tool in tools:
        body -= tool
        body.status()
    return body


def cut_away_whole(body: Manifold, tools: Sequence[Manifold]) -> Manifold:
    """Return a body less many others that touch each other and its faces, nothing lost.

    Where faces nearly coincide, cuts one after the other can lose slivers of the body, one batch
    can keep some; not at the same faces. Where the two disagree the tools are taken in many other
    orders as well, and what has lost the least is the answer.
    """
    found = cut_away(body, tools)
    batch = Manifold.batch_boolean([body, *tools], OpType.Subtract)
    if abs(found.volume() - batch.volume()) <= SAME_SHARE * body.volume():
        return found
    orders = [[*way[k:], *way[:k]] for way in (tools, tools[::-1]) for k in range(len(tools))]
    return max((cut_away(body, order) for order in orders), key=Manifold.volume)
