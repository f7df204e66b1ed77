"""Closed loops of a cut as areas with holes."""

from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import MultiPolygon

from geometry.plan.outline import multi

# Cut polygons keep their corners on this grid, so that they stay sound when drawn to scale.
GRID_M = 1e-9
# Loops of less area are rounding errors.
CRUMB_M2 = 1e-12

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]
# Arrays of shapely's shapes.
Shapes = NDArray[Any]
Flags = NDArray[np.bool_]


def areas_of(corners: Floats, starts: Ints, owners: Ints) -> dict[int, MultiPolygon]:
    """Return every owner's loops as areas: inside an odd number of them is material.

    corners: (n, 2), loop after loop, metres. starts, owners: (k,) where each loop starts, and
    whose it is. Loops run clockwise round material and the other way round holes, as cut meshes
    leave them. Where loops of one owner touch or cross, its areas are found by overlay, which
    takes longer.
    """
    rings, sizes, owners = _rings(np.round(corners / GRID_M) * GRID_M, starts, owners)
    order = np.lexsort((-np.abs(sizes), owners))
    rings, owners, solid = rings[order], owners[order], sizes[order] < 0
    # An owner whose loops all run the wrong way has no shell to put them in.
    whole = np.isin(owners, owners[solid])
    found = _nested(rings[whole], owners[whole], solid[whole]) if whole.any() else {}
    sound = {n: shape for n, shape in found.items() if shape is not None}
    return {
        n: sound[n] if n in sound else _even_odd(rings[owners == n])
        for n in np.unique(owners).tolist()
    }


def _rings(corners: Floats, starts: Ints, owners: Ints) -> tuple[Shapes, Floats, Ints]:
    """Return the loops that enclose anything as rings, their signed areas and owners."""
    ends = np.append(starts[1:], len(corners))
    after = np.arange(1, len(corners) + 1)
    after[ends - 1] = starts
    x, y = (corners - np.repeat(corners[starts], ends - starts, axis=0)).T
    areas = np.add.reduceat(x * y[after] - x[after] * y, starts) / 2
    apart = (corners != corners[after]).any(axis=1)
    wide = (np.add.reduceat(apart, starts, dtype=np.int64) > 2) & (np.abs(areas) > CRUMB_M2)
    kept = apart & np.repeat(wide, ends - starts)
    number = np.repeat(np.cumsum(wide) - 1, ends - starts)
    rings = shapely.linearrings(corners[kept], indices=number[kept])
    return rings, areas[wide], owners[wide]


def _nested(
    rings: Shapes, owners: Ints, solid: NDArray[np.bool_]
) -> dict[int, MultiPolygon | None]:
    """Return each owner's shells with the holes that lie in them, or None where loops touch.

    rings: each owner's together, largest first. solid: which of them are shells.
    """
    shells, of = rings[solid], owners[solid]
    around = _around(shells, of, rings[~solid], owners[~solid])
    number = np.concatenate((np.arange(len(shells)), around))
    turn = np.argsort(number, kind="stable")
    # Of rings with one number shapely takes the first as the shell.
    holed = shapely.polygons(np.concatenate((shells, rings[~solid]))[turn], indices=number[turn])
    names, number = np.unique(of, return_inverse=True)
    shapes = shapely.multipolygons(holed, indices=number)
    shapes = shapely.set_precision(shapes, GRID_M, mode="pointwise")
    valid = shapely.is_valid(shapes)
    return {
        n: shape if fine else None
        for n, shape, fine in zip(names.tolist(), shapes, valid, strict=True)
    }


def _around(shells: Shapes, of: Ints, holes: Shapes, owners: Ints) -> Ints:
    """Return for each hole the number of the smallest shell of its owner that holds it."""
    first, last = np.searchsorted(of, owners), np.searchsorted(of, owners, side="right")
    found = first.copy()
    for number in np.flatnonzero(last - first > 1):
        mine = shapely.polygons(shells[first[number] : last[number]])
        holding = np.flatnonzero(shapely.contains(mine, holes[number]))
        # In no shell: put into the largest it is not valid, and left to the overlay.
        found[number] += holding[-1] if len(holding) else 0
    return found


def _even_odd(rings: Shapes) -> MultiPolygon:
    """Return the areas inside an odd number of loops, largest first."""
    shape: shapely.geometry.base.BaseGeometry = MultiPolygon()
    for polygon in shapely.polygons(rings):
        sound = polygon if polygon.is_valid else polygon.buffer(0)
        shape = shape.symmetric_difference(sound)
    return multi(shapely.set_precision(shape, GRID_M))
