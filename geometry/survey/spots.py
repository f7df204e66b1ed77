"""High and low spots: patches of the surface farther from the planned subgrade than allowed."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

import numpy as np
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components

from geometry.survey.corners import highest
from geometry.survey.pieces import Pieces
from geometry.survey.prisms import covered, space
from geometry.survey.shots import Floats, Ints, Marks
from geometry.survey.surface import Surface

# Patches smaller than a hand are no spots, m2.
_LEAST_M2 = 0.01


@dataclass(frozen=True)
class Spot:
    """A patch of ground beyond the tolerance. x, y: its worst place, metres.

    off_m: there, above the planned subgrade (below: negative). volume_m3: between the ground of
    the patch and the planned subgrade.
    """

    kind: Literal["high", "low"]
    x: float
    y: float
    off_m: float
    area_m2: float
    volume_m3: float


@dataclass(frozen=True)
class Spots:
    """The worst spots, the worst first, and how many there are in all."""

    worst: tuple[Spot, ...]
    count: int


def spots(
    pieces: Pieces, subgrade: float, tolerance: float, kind: Literal["high", "low"], most: int
) -> Spots:
    """Return the patches above (high) or below (low) the subgrade by more than a tolerance, m."""
    way = 1.0 if kind == "high" else -1.0
    worst = pieces.highest if kind == "high" else -pieces.lowest
    met = np.flatnonzero(worst - way * subgrade > tolerance)
    if not len(met):
        return Spots((), 0)
    over = way * (pieces.level[met] - subgrade)
    flags = way * (pieces.surface.level - subgrade) > tolerance
    patch = over_triangles(pieces.surface, point_patches(pieces.surface, flags))[pieces.source[met]]
    patch = np.where(pieces.source[met] >= 0, patch, -1)
    found = list(_measured(pieces, met, patch, over, tolerance, way, kind))
    found.sort(key=lambda spot: -abs(spot.off_m))
    return Spots(tuple(found[:most]), len(found))


def _measured(
    pieces: Pieces, met: Ints, patch: Ints, over: Floats, tolerance: float, way: float,
    kind: Literal["high", "low"],
) -> Iterator[Spot]:  # fmt: skip
    kept = patch >= 0
    met, patch, over = met[kept], patch[kept], over[kept]
    if not len(met):
        return
    area = pieces.area[met]
    wide = np.bincount(patch, covered(area, over - tolerance))
    volume = np.bincount(patch, space(area, over - tolerance)) + tolerance * wide
    for number, place in _peaks(patch, over):
        if wide[number] > _LEAST_M2:
            x, y = pieces.corner(int(met[place // 3]) * 3 + place % 3)
            yield Spot(kind, x, y, way * float(over.flat[place]), float(wide[number]),
                       float(volume[number]))  # fmt: skip


def _peaks(patch: Ints, over: Floats) -> Iterator[tuple[int, int]]:
    """Yield each patch with the flat index of its greatest corner."""
    corner = over.argmax(axis=1)
    greatest = highest(over)
    order = np.lexsort((greatest, patch))
    last = np.flatnonzero(np.append(patch[order][1:] != patch[order][:-1], True))
    for piece in order[last].tolist():
        yield int(patch[piece]), piece * 3 + int(corner[piece])


def over_triangles(surface: Surface, patch: Ints) -> Ints:
    """Return the patch each triangle touches, (m,), or -1; patch: (n,) that of each point.

    Marked points joined by sides are one patch, so no triangle touches two.
    """
    corners = surface.triangles
    out: Ints = np.maximum(np.maximum(patch[corners[:, 0]], patch[corners[:, 1]]),
                           patch[corners[:, 2]])  # fmt: skip
    return out


def point_patches(surface: Surface, flags: Marks) -> Ints:
    """Return the patch each marked point belongs to, (n,), -1 for the others."""
    begin, end = surface.edges
    joined = flags[begin] & flags[end]
    number = np.cumsum(flags) - 1
    count = int(np.count_nonzero(flags))
    a, b = number[begin[joined]], number[end[joined]]
    graph = coo_array((np.ones(len(a), np.int8), (a, b)), shape=(count, count))
    _, found = connected_components(graph.tocsr(), directed=False)
    patch = np.full(len(flags), -1, np.int64)
    patch[flags] = found
    return patch
