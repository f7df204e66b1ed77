"""A vertical plane through closed meshes: exact polygons, one set per solid."""

from collections.abc import Iterable

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import MultiPolygon, Polygon

from geometry.plan.outline import multi
from geometry.sections.face import CutFace, CutLine
from geometry.solids.solid import Solid

# Corners nearer to the plane than a rounding error lie in it.
IN_PLANE_M = 1e-9
# Cut polygons keep their corners on this grid, so that they stay sound when drawn to scale.
GRID_M = 1e-9


def cut(solids: Iterable[Solid], line: CutLine) -> tuple[CutFace, ...]:
    """Return the faces a vertical cut leaves, in the order of the solids; empty ones left out.

    A corner in the plane counts as left of it, so a plane that runs along a face shows what lies
    to its right, seen from start to end.
    """
    faces = []
    for solid in solids:
        shape = section(solid.vertices, solid.faces, line)
        if not shape.is_empty:
            faces.append(CutFace(solid.label, shape))
    return tuple(faces)


def section(vertices: NDArray[np.float64], faces: NDArray[np.int64], line: CutLine) -> MultiPolygon:
    """Return the cut of one closed mesh between the line's ends, in (distance, level), metres."""
    start, run = np.asarray(line.start), np.subtract(line.end, line.start)
    length = float(np.hypot(*run))
    along = run / length
    flat = vertices[:, :2] - start
    aside = flat[:, 0] * -along[1] + flat[:, 1] * along[0]
    front = aside >= -IN_PLANE_M
    met = front[faces]
    crossed = faces[met.any(axis=1) & ~met.all(axis=1)]
    if not len(crossed):
        return MultiPolygon()
    distance = flat @ along
    edges, crossing = _crossings(crossed, front, aside, distance, vertices[:, 2])
    loops = [Polygon(crossing[loop]) for loop in _loops(edges) if len(loop) > 2]
    return _clipped(_even_odd(loops), length)


def _crossings(
    crossed: NDArray[np.int64],
    front: NDArray[np.bool_],
    aside: NDArray[np.float64],
    distance: NDArray[np.float64],
    level: NDArray[np.float64],
) -> tuple[NDArray[np.int64], NDArray[np.float64]]:
    """Return (k, 2) links between crossing numbers, way of travel kept, and (c, 2) crossings.

    Every mesh edge through the plane is one crossing, computed once, so loops close exactly.
    """
    a, b = crossed, np.roll(crossed, -1, axis=1)
    leaving = front[a] & ~front[b]
    entering = ~front[a] & front[b]
    out = np.column_stack((a[leaving], b[leaving]))
    back = np.column_stack((b[entering], a[entering]))
    keys, numbers = np.unique(np.vstack((out, back)), axis=0, return_inverse=True)
    numbers = numbers.reshape(-1)
    i, j = keys.T
    share = aside[i] / (aside[i] - aside[j])
    where = np.column_stack(
        (
            distance[i] + share * (distance[j] - distance[i]),
            level[i] + share * (level[j] - level[i]),
        )
    )
    return np.column_stack((numbers[: len(out)], numbers[len(out) :])), where


def _loops(links: NDArray[np.int64]) -> list[list[int]]:
    """Chain links into loops; every crossing has one link in and one out."""
    ahead = dict(zip(links[:, 0].tolist(), links[:, 1].tolist(), strict=True))
    loops = []
    while ahead:
        first, here = ahead.popitem()
        loop = [first]
        while here != first:
            loop.append(here)
            here = ahead.pop(here)
        loops.append(loop)
    return loops


def _even_odd(loops: list[Polygon]) -> MultiPolygon:
    """Return loops as areas with holes: a loop inside an odd number of others is a hole."""
    sound = [p if p.is_valid else p.buffer(0) for p in loops]
    ordered = sorted((p for p in sound if p.area > 1e-12), key=lambda p: -p.area)
    shape: shapely.geometry.base.BaseGeometry = MultiPolygon()
    for polygon in ordered:
        shape = shape.symmetric_difference(polygon)
    return multi(shapely.set_precision(shape, GRID_M))


def _clipped(shape: MultiPolygon, length: float) -> MultiPolygon:
    x0, _, x1, _ = shape.bounds if not shape.is_empty else (0.0, 0.0, 0.0, 0.0)
    if x0 >= 0 and x1 <= length:
        return shape
    return multi(shapely.clip_by_rect(shape, 0.0, -1e4, length, 1e4))
