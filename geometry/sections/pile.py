"""Many solids as one pile of triangles, sorted so that a plane finds those it meets quickly."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from geometry.plan.outline import Point
from geometry.solids.solid import Solid

# Triangles in one block: the drain's pipe has a hundred thousand, of which a plane meets a few.
BLOCK = 128

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]


@dataclass(frozen=True, eq=False)
class Pile:
    """All solids' triangles: corners' x, y, z (n,), metres, and (m, 3) numbers of corners.

    owner: (m,) number of the solid. first: (b + 1,) where each block of triangles starts.
    boxes: (b, 4) its box on the plan: centre x, y, half width, half depth.
    """

    x: Floats
    y: Floats
    z: Floats
    faces: Ints
    owner: Ints
    first: Ints
    boxes: Floats

    def near(self, start: Point, along: Point, within: float) -> Ints:
        """Return the numbers of all triangles within so many metres of an upright plane, and some.

        start, along: a place in the plane, and its direction on the plan, of length one.
        """
        boxes, (dx, dy) = self.boxes, along
        away = np.abs((boxes[:, 1] - start[1]) * dx - (boxes[:, 0] - start[0]) * dy)
        met = np.flatnonzero(away <= boxes[:, 2] * abs(dy) + boxes[:, 3] * abs(dx) + within)
        begin, count = self.first[met], self.first[met + 1] - self.first[met]
        total = np.cumsum(count)
        numbers: Ints = np.arange(count.sum()) + np.repeat(begin - (total - count), count)
        return numbers


@lru_cache(maxsize=4)
def pile(solids: tuple[Solid, ...]) -> Pile:
    """Return solids, none of them empty, as one pile."""
    points = np.concatenate([s.vertices for s in solids])
    before = np.cumsum([0, *(len(s.vertices) for s in solids)])
    faces = np.concatenate([s.faces + n for s, n in zip(solids, before, strict=False)])
    sizes = [len(s.faces) for s in solids]
    ends = np.cumsum([0, *sizes])
    starts = [np.arange(n, n + size, BLOCK) for n, size in zip(ends, sizes, strict=False)]
    first = np.concatenate(starts)
    corners = points[:, :2][faces]
    low = np.minimum.reduceat(corners.min(axis=1), first)
    high = np.maximum.reduceat(corners.max(axis=1), first)
    boxes = np.column_stack(((low + high) / 2, (high - low) / 2))
    x, y, z = (np.ascontiguousarray(column) for column in points.T)
    owner = np.repeat(np.arange(len(solids)), sizes)
    return Pile(x, y, z, faces, owner, np.append(first, len(faces)), boxes)
