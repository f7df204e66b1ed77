"""A small invented basement, 12 m by 8 m, made of boxes and mitred loops by plain arithmetic."""

import numpy as np

from geometry.label import Label, Role
from geometry.sections.face import CutLine
from geometry.solids.solid import Solid

LONG, WIDE = 12.0, 8.0
ACROSS = CutLine((6.5, -3.0), (6.5, 11.0))
LABELS = {
    "footing": "Footing\n20 x 10 in",
    "wall": "Poured wall\n8 in",
    "stone": "Washed stone\n4 in",
    "sand": "Sand\n2 in",
    "foam": "Rigid foam\n2 in",
    "slab": "Concrete slab\n4 in",
    "pads": "Pier pad\n3 ft x 3 ft",
    "columns": "Pier\n12 in square",
    "pipe": "Drain pipe\n4 in",
    "bed": "Drain stone\n18 x 14 in",
    "soil": "Backfill",
}


def label(part: str, role: Role, material: str, stage: int) -> Label:
    return Label(part, part, role, material, "basement", stage)


def loop(profile: list[tuple[float, float]]) -> tuple[np.ndarray, np.ndarray]:
    """A closed counter-clockwise profile of (outwards from the wall's face, level) led round."""
    k = len(profile)
    corners = [(0, 0, -1, -1), (LONG, 0, 1, -1), (LONG, WIDE, 1, 1), (0, WIDE, -1, 1)]
    points = [(x + o * i, y + o * j, z) for x, y, i, j in corners for o, z in profile]
    faces = []
    for c in range(4):
        for p in range(k):
            a, b = c * k + p, c * k + (p + 1) % k
            d, e = (c + 1) % 4 * k + p, (c + 1) % 4 * k + (p + 1) % k
            faces += [(a, d, e), (a, e, b)]
    return np.array(points, float), np.array(faces, np.int64)


def rim(outer: float, inner: float, bottom: float, top: float) -> tuple[np.ndarray, np.ndarray]:
    return loop([(inner, bottom), (outer, bottom), (outer, top), (inner, top)])


def box(x: float, y: float, x2: float, y2: float, z: float, z2: float, spread: float = 0.0):
    points = [
        (a + i * s, b + j * s, c)
        for c, s in ((z, 0.0), (z2, spread))
        for a, b, i, j in ((x, y, -1, -1), (x2, y, 1, -1), (x2, y2, 1, 1), (x, y2, -1, 1))
    ]
    sides = [(0, 2, 1), (0, 3, 2), (4, 5, 6), (4, 6, 7)]
    for i in range(4):
        j = (i + 1) % 4
        sides += [(i, j, j + 4), (i, j + 4, i + 4)]
    return np.array(points, float), np.array(sides, np.int64)


def joined(*meshes) -> tuple[np.ndarray, np.ndarray]:
    starts = np.cumsum([0] + [len(v) for v, _ in meshes])
    return np.vstack([v for v, _ in meshes]), np.vstack(
        [f + s for (_, f), s in zip(meshes, starts, strict=False)]
    )


def tube(radius: float, out: float, level: float, sides: int = 24) -> tuple[np.ndarray, np.ndarray]:
    turn = 2 * np.pi * np.arange(sides) / sides
    outer = [(out + radius * np.cos(a), level + radius * np.sin(a)) for a in turn]
    inner = [(out + 0.9 * radius * np.cos(a), level + 0.9 * radius * np.sin(a)) for a in -turn]
    return joined(loop(outer), loop(inner))


def basement() -> list[Solid]:
    """Footing, wall, layers, two piers, drain and backfill; nothing overlaps but pier and floor."""
    inside = (0.2, 0.2, LONG - 0.2, WIDE - 0.2)
    ledge = (0.354, 0.354, LONG - 0.354, WIDE - 0.354)
    spots = [(4.0, 4.0), (8.0, 4.0)]
    pads = joined(*[box(x - 0.45, y - 0.45, x + 0.45, y + 0.45, -0.30, -0.152) for x, y in spots])
    piers = joined(*[box(x - 0.15, y - 0.15, x + 0.15, y + 0.15, -0.152, 2.2) for x, y in spots])
    soil = loop([(0.0, 0.15), (1.3, 0.15), (2.2, 2.0), (0.0, 2.0)])
    parts: list[tuple[str, Role, str, int, tuple[np.ndarray, np.ndarray]]] = [
        ("footing", "footing", "concrete", 1, rim(0.154, -0.354, -0.254, 0.0)),
        ("pads", "pad", "concrete", 1, pads),
        ("columns", "column", "concrete", 2, piers),
        ("wall", "wall", "concrete", 2, rim(0.0, -0.2, 0.0, 2.4)),
        (
            "bed",
            "drain stone",
            "washed stone",
            3,
            loop(
                [(0.154, -0.304), (1.1, -0.304), (1.3, 0.15), (0.0, 0.15), (0.0, 0.0), (0.154, 0.0)]
            ),
        ),
        ("pipe", "pipe", "pvc", 3, tube(0.055, 0.45, -0.16)),
        ("stone", "base", "washed stone", 4, box(*ledge, -0.152, -0.05)),
        ("sand", "blinding", "sand", 5, box(*ledge, -0.05, 0.0)),
        ("foam", "insulation", "rigid foam", 6, box(*inside, 0.0, 0.05)),
        ("slab", "slab", "concrete", 7, box(*inside, 0.05, 0.152)),
        ("soil", "backfill", "native soil", 8, soil),
        (
            "hole",
            "excavation",
            "native soil",
            0,
            box(-1.1, -1.1, LONG + 1.1, WIDE + 1.1, -0.304, 2.0, 1.1),
        ),
    ]
    return [Solid(label(p, r, m, s), v, f) for p, r, m, s, (v, f) in parts]
