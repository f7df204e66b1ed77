"""A straight of perforated pipe: one module is drilled, and tiled along the run.

The pipe is a regular polygon of the true circle's area, inside and out; a hole is a regular
polygon of the true hole's area. A module is unrolled facet by facet, the holes are cut out of
the flat facets, the rest is triangulated, and the walls of the holes join outside to inside, so
the surface stays exactly on the facets and the stone around it touches without overlapping.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

import manifold3d
import numpy as np
import shapely
from numpy.typing import NDArray

from geometry.layout.fittings import PIPE_SIDES
from geometry.plan.outline import ring
from geometry.solids.kernel import Floats, Ints, skin_faces

HOLE_SIDES = 8
# Plain pipe shorter than this between modules is left out.
SHORTEST_M = 1e-7


@dataclass(frozen=True)
class Section:
    """A pipe's round section and its rows of holes: radii in metres, rows in degrees from down."""

    outer: float
    inner: float
    rows: tuple[float, ...] = ()
    hole: float = 0.0


@dataclass(frozen=True, eq=False)
class Module:
    """One length of pipe in (left, up, along): start ring, inner points; faces reach the next ring.

    points: (2n + k, 3) without the end ring. faces: indices into points and the end ring after.
    """

    points: Floats
    faces: Ints
    length: float


def pipe_ring(radius: float) -> NDArray[np.float64]:
    """Return (n, 2) corners (left, up) of the faceted circle."""
    return ring(radius, PIPE_SIDES)


@lru_cache(maxsize=64)
def module(section: Section, length: float, drilled: bool) -> Module:
    """Return a module of a length, with one ring of holes in its middle if drilled."""
    if not drilled:
        return _plain(section, length)
    builder = _ModuleBuilder(section, length)
    for row in section.rows:
        builder.drill(np.radians(row))
    return builder.finish()


def _plain(section: Section, length: float) -> Module:
    """Return a module without holes: its start rings, and the skins to the next ones."""
    rings = np.vstack((pipe_ring(section.outer), pipe_ring(section.inner)))
    skin = skin_faces(2, PIPE_SIDES)
    outside = skin + skin // PIPE_SIDES * PIPE_SIDES
    faces = np.vstack((outside, outside[:, ::-1] + PIPE_SIDES))
    return Module(np.column_stack((rings, np.zeros(len(rings)))), faces, length)


class _ModuleBuilder:
    """Collects the points and faces of one module."""

    def __init__(self, section: Section, length: float) -> None:
        self.section, self.length = section, length
        self.rings = {1: pipe_ring(section.outer), -1: pipe_ring(section.inner)}
        self.n = PIPE_SIDES
        self.points: list[tuple[float, float, float]] = []
        self.index: dict[tuple[int, int, int, int], int] = {}
        self.cut: dict[tuple[int, int], dict[float, list[tuple[float, float]]]] = {}
        self.faces: list[tuple[int, int, int]] = []
        for side in (1, -1):
            self.points += [(u, v, 0.0) for u, v in self.rings[side]]
        for side in (1, -1):
            for k in range(self.n):
                self.index[self._key(side, k, 0.0, 0.0)] = (0 if side == 1 else self.n) + k

    def _key(self, side: int, facet: int, t: float, s: float) -> tuple[int, int, int, int]:
        """Name a point on a facet; the end of one facet is the start of the next."""
        if t > 1 - 1e-9:
            facet, t = facet + 1, 0.0
        return side, facet % self.n, round(t * 1e9), round(s * 1e9)

    def _point(self, side: int, facet: int, t: float, s: float) -> int:
        key = self._key(side, facet, t, s)
        if key not in self.index:
            a, b = self.rings[side][facet % self.n], self.rings[side][(facet + 1) % self.n]
            u, v = a + t * (b - a)
            self.points.append((float(u), float(v), s))
            self.index[key] = len(self.points) - 1
        return self.index[key]

    def drill(self, angle: float) -> None:
        """Cut one hole whose axis points at an angle from straight down."""
        axis = np.array((np.sin(angle), -np.cos(angle)))
        across = np.array((np.cos(angle), np.sin(angle)))
        loop = self._hole_loop(axis, across)
        walls = {
            side: [self._place(side, axis, across, angle, y, s) for y, s in loop]
            for side in (1, -1)
        }
        for i in range(len(loop)):
            j = (i + 1) % len(loop)
            a, b, c, d = walls[1][i], walls[1][j], walls[-1][j], walls[-1][i]
            self.faces += [(a, b, c), (a, c, d)]

    def _hole_loop(self, axis: Floats, across: Floats) -> list[tuple[float, float]]:
        """Return the hole's corners (across, along), one more where it crosses a facet's edge."""
        corners = ring(self.section.hole, HOLE_SIDES)
        reach = corners[:, 0].max()
        edges = np.concatenate([r[r @ axis > 0] @ across for r in self.rings.values()])
        half = corners[corners[:, 1] > -1e-12]
        order = np.argsort(half[:, 0])
        known, heights = half[order, 0], np.abs(half[order, 1])
        ys = np.unique(np.concatenate((known, edges[np.abs(edges) < reach])).round(12))
        s = np.interp(ys, known, heights)
        s[0] = s[-1] = 0.0
        middle = self.length / 2
        lower = [(float(y), middle - float(h)) for y, h in zip(ys, s, strict=True)]
        upper = [
            (float(y), middle + float(h)) for y, h in zip(ys[-2:0:-1], s[-2:0:-1], strict=True)
        ]
        return lower + upper

    def _place(
        self, side: int, axis: Floats, across: Floats, hole: float, y: float, s: float
    ) -> int:
        corners = self.rings[side]
        ahead = np.roll(corners, -1, axis=0)
        ya, yb = corners @ across, ahead @ across
        facing = (corners + ahead) @ axis > 0
        facet = int(np.flatnonzero(facing & (ya - 1e-11 <= y) & (y < yb - 1e-11))[0])
        t = float((y - ya[facet]) / (yb[facet] - ya[facet]))
        t = 0.0 if t < 1e-8 else t
        self._note(side, facet, hole, t, s)
        return self._point(side, facet, t, s)

    def _note(self, side: int, facet: int, hole: float, t: float, s: float) -> None:
        places = [(facet, t)] if t else [(facet, 0.0), ((facet - 1) % self.n, 1.0)]
        for place, share in places:
            self.cut.setdefault((side, place), {}).setdefault(hole, []).append((share, s))

    def finish(self) -> Module:
        """Triangulate every facet, facing out or in, and return the module."""
        for side in (1, -1):
            for facet in range(self.n):
                self._facet(side, facet)
        kept = len(self.points)
        ends = {}
        for side, start in ((1, 0), (-1, self.n)):
            for k in range(self.n):
                ends[self._key(side, k, 0.0, self.length)] = kept + start + k
        return self._resolved(ends)

    def _resolved(self, ends: dict[tuple[int, int, int, int], int]) -> Module:
        swap = {self.index[key]: number for key, number in ends.items() if key in self.index}
        order = [i for i in range(len(self.points)) if i not in swap]
        renumber = {old: new for new, old in enumerate(order)}
        shift = len(order) - len(self.points)
        renumber |= {old: number + shift for old, number in swap.items()}
        faces = np.array([[renumber[i] for i in face] for face in self.faces], dtype=np.int64)
        return Module(np.array([self.points[i] for i in order]), faces, self.length)

    def _facet(self, side: int, facet: int) -> None:
        holes = self._holes_on(side, facet)
        if not holes:
            whole = ((0.0, 0.0), (1.0, 0.0), (1.0, self.length), (0.0, self.length))
            self._triangles(side, facet, whole, ((0, 1, 2), (0, 2, 3)))
            return
        flat = shapely.box(0.0, 0.0, 1.0, self.length).difference(shapely.union_all(holes))
        for piece in shapely.get_parts(flat):
            rings = [np.asarray(r.coords)[:-1] for r in _oriented(piece)]
            places = np.vstack(rings).tolist()
            self._triangles(side, facet, places, manifold3d.triangulate(rings).tolist())

    def _triangles(
        self, side: int, facet: int,
        places: Sequence[Sequence[float]], triangles: Iterable[Sequence[int]],
    ) -> None:  # fmt: skip
        """Add triangles between places (share across, along) on a facet, facing out or in."""
        ids = [self._point(side, facet, t, s) for t, s in places]
        for a, b, c in triangles:
            self.faces.append((ids[a], ids[b], ids[c]) if side == 1 else (ids[a], ids[c], ids[b]))

    def _holes_on(self, side: int, facet: int) -> list[shapely.Polygon]:
        """Return the pieces of holes on a facet, every noted point kept as a corner."""
        pieces = [_convex(np.array(noted)) for noted in self.cut.get((side, facet), {}).values()]
        return [piece for piece in pieces if piece.area > 1e-15]


def _convex(points: Floats) -> shapely.Polygon:
    """Return the convex polygon through all points, those along its edges included."""
    points = np.unique(points, axis=0)
    if len(points) < 3:
        return shapely.Polygon()
    away = points - points.mean(axis=0)
    return shapely.Polygon(points[np.argsort(np.arctan2(away[:, 1], away[:, 0]))])


def _oriented(piece: shapely.Polygon) -> list[shapely.LinearRing]:
    sound = shapely.orient_polygons(piece)
    return [sound.exterior, *sound.interiors]


def tiled(section: Section, runs: list[tuple[float, int, float]]) -> tuple[Floats, Ints]:
    """Return points (left, up, along) and faces of a straight pipe, open ends closed by rings.

    runs: in order (length of plain pipe, number of drilled modules after it, module length);
    the pipe ends with the last run's modules.
    """
    blocks = []
    for plain, count, pitch in runs:
        if plain > SHORTEST_M:
            blocks.append((module(section, plain, False), 1))
        if count:
            blocks.append((module(section, pitch, True), count))
    return _assembled(section, blocks)


def _assembled(section: Section, blocks: list[tuple[Module, int]]) -> tuple[Floats, Ints]:
    points, faces, at, number = [], [], 0.0, 0
    for block, count in blocks:
        size = len(block.points)
        steps = np.arange(count)
        moved = np.repeat(block.points[None], count, axis=0)
        moved[:, :, 2] += (at + steps * block.length)[:, None]
        points.append(moved.reshape(-1, 3))
        faces.append((block.faces[None] + (number + steps * size)[:, None, None]).reshape(-1, 3))
        number += count * size
        at += count * block.length
    end = np.vstack([pipe_ring(section.outer), pipe_ring(section.inner)])
    points.append(np.column_stack((end, np.full(len(end), at))))
    faces += [ring_cap(0, False), ring_cap(number, True)]
    return np.vstack(points), np.vstack(faces)


def ring_cap(start: int, ahead: bool) -> Ints:
    """Return the faces of an annulus: outer ring from index `start`, inner ring after it."""
    here = np.arange(PIPE_SIDES)
    then = (here + 1) % PIPE_SIDES
    inner, inner_then = here + PIPE_SIDES, then + PIPE_SIDES
    quads = np.vstack(
        (np.column_stack((here, inner, then)), np.column_stack((then, inner, inner_then)))
    )
    return (quads if not ahead else quads[:, ::-1]) + start
