"""Solids of a straight length of drain: shapes drawn out along it, drilled pipe, loose stone.

Lengths are metres; x leads away from the house, y along the pipe away from the viewer, z up.
"""

import numpy as np
import shapely
from shapely import MultiPolygon

from geometry.label import Label
from geometry.layout.drain import DrainLayout
from geometry.plan.outline import ring
from geometry.solids.drilled import Section, tiled
from geometry.solids.kernel import Mesh, joined, raised
from geometry.solids.solid import Solid

# How large a stone is drawn; between the sieves that No. 57 and its like pass.
STONE_M = 0.022
_LEAST_AREA_M2 = 1e-6
_GOLDEN = (1 + 5**0.5) / 2


def drawn_out(label: Label, shape: MultiPolygon, start: float, end: float) -> Solid | None:
    """Return a shape (x, z) as a bar from start to end along y; None of nothing."""
    if shape.area < _LEAST_AREA_M2:
        return None
    mesh = raised(shape, start, end)
    return Solid(label, mesh.vertices[:, [0, 2, 1]], mesh.faces[:, ::-1])


def pipe_length(
    label: Label, drain: DrainLayout, axis: tuple[float, float], start: float, holes: int
) -> tuple[Solid, float]:
    """Return a length of the drain's pipe with so many holes a row, and where it ends.

    A pipe without rows is as long as if it had them.
    """
    made = drain.drain.holes
    section = Section(drain.radius, drain.bore, made.rows, made.diameter / 2)
    pitch = made.spacing
    runs = [(0.0, holes, pitch)] if made.rows else [(holes * pitch, 0, pitch)]
    points, faces = tiled(section, runs)
    x, z = axis
    spots = np.column_stack([x - points[:, 0], start + points[:, 2], z + points[:, 1]])
    return Solid(label, spots, faces), start + holes * pitch


def bores(
    label: Label, drain: DrainLayout, axis: tuple[float, float], start: float, holes: int
) -> Solid | None:
    """Return the dark of every hole as a disc in the pipe's wall; None without holes."""
    made = drain.drain.holes
    flat = ring(made.diameter / 2, 16)
    radius = drain.bore + 0.35 * drain.pipe.wall_m
    discs = []
    for row in made.rows:
        angle = np.radians(row)
        out = np.array([-np.sin(angle), 0.0, -np.cos(angle)])
        across = np.array([-np.cos(angle), 0.0, np.sin(angle)])
        for number in range(holes):
            middle = np.array([axis[0], start + (number + 0.5) * made.spacing, axis[1]])
            rim = middle + radius * out + flat[:, :1] * across + flat[:, 1:] * (0.0, 1.0, 0.0)
            discs.append(_disc(rim))
    if not discs:
        return None
    mesh = joined(discs)
    return Solid(label, mesh.vertices, mesh.faces)


def _disc(rim: "np.ndarray[tuple[int, ...], np.dtype[np.float64]]") -> Mesh:
    count = len(rim)
    fan = np.column_stack([np.zeros(count - 2), np.arange(1, count - 1), np.arange(2, count)])
    return Mesh(rim, fan.astype(np.int64))


def heap(label: Label, shape: MultiPolygon, start: float, end: float, seed: int = 7) -> list[Solid]:
    """Return loose stone that fills a shape (x, z) from start to end: its skin stone by stone.

    The stones' places are rolled with a fixed seed: the same design gives the same picture.
    """
    core = drawn_out(label, _core(shape), start + 0.8 * STONE_M, end - 0.8 * STONE_M)
    mesh = _stones(shape, start, end, np.random.default_rng(seed))
    stones = Solid(label, mesh.vertices, mesh.faces)
    return [piece for piece in (core, stones) if piece and len(piece.faces)]


def _core(shape: MultiPolygon) -> MultiPolygon:
    inner = shapely.get_parts(shape.buffer(-0.8 * STONE_M, join_style="mitre"))
    return MultiPolygon([p for p in inner if isinstance(p, shapely.Polygon)])


def _stones(shape: MultiPolygon, start: float, end: float, dice: np.random.Generator) -> Mesh:
    step = 0.6 * STONE_M
    left, low, right, high = shape.bounds
    x, y, z = (np.arange(a, b, step) for a, b in ((left, right), (start, end), (low, high)))
    spots = np.stack(np.meshgrid(x, y, z, indexing="ij"), axis=-1).reshape(-1, 3)
    spots = spots + dice.uniform(-0.3, 0.3, spots.shape) * step
    flat = shapely.points(spots[:, 0], spots[:, 2])
    room = shape.buffer(-0.5 * STONE_M)
    rim = shapely.distance(flat, shape.boundary) < 1.3 * STONE_M
    ends = np.minimum(spots[:, 1] - start, end - spots[:, 1])
    kept = shapely.contains(room, flat) & (ends > 0.5 * STONE_M) & (rim | (ends < 1.3 * STONE_M))
    points, faces = _lump()
    places = spots[kept]
    count, corners = len(places), len(points)
    sizes = STONE_M / 2 * dice.uniform(0.72, 1.0, (count, 1, 3))
    rough = points * dice.uniform(0.85, 1.0, (count, corners, 1))
    turns = np.linalg.qr(dice.normal(size=(count, 3, 3)))[0]
    turns *= np.sign(np.linalg.det(turns))[:, None, None]
    lumps = places[:, None] + (rough * sizes) @ turns
    starts = corners * np.arange(count)[:, None, None]
    return Mesh(lumps.reshape(-1, 3), (faces + starts).reshape(-1, 3))


def _lump() -> tuple["np.ndarray[tuple[int, ...], np.dtype[np.float64]]",
                     "np.ndarray[tuple[int, ...], np.dtype[np.int64]]"]:  # fmt: skip
    """Corners and faces of a solid of twenty faces, a metre in radius."""
    a, b = 1.0, _GOLDEN
    points = np.array([
        (-a, b, 0), (a, b, 0), (-a, -b, 0), (a, -b, 0), (0, -a, b), (0, a, b),
        (0, -a, -b), (0, a, -b), (b, 0, -a), (b, 0, a), (-b, 0, -a), (-b, 0, a),
    ])  # fmt: skip
    faces = np.array([
        (0, 11, 5), (0, 5, 1), (0, 1, 7), (0, 7, 10), (0, 10, 11), (1, 5, 9), (5, 11, 4),
        (11, 10, 2), (10, 7, 6), (7, 1, 8), (3, 9, 4), (3, 4, 2), (3, 2, 6), (3, 6, 8),
        (3, 8, 9), (4, 9, 5), (2, 4, 11), (6, 2, 10), (8, 6, 7), (9, 8, 1),
    ], dtype=np.int64)  # fmt: skip
    return points / np.linalg.norm(points, axis=1, keepdims=True), faces
