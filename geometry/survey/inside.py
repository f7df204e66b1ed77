"""Which triangles lie inside a region, and which cross its edge, without asking each one.

A fine grid over the region knows the cells its edge passes. A triangle whose cells hold no edge
lies wholly on one side; only the others are asked exactly.
"""

from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from scipy import ndimage
from shapely.geometry.base import BaseGeometry

from geometry.survey.shots import Floats, Ints, Marks
from geometry.survey.surface import Surface

_FEWEST, _MOST = 16, 1024
# A place nearer to the next cell than this share of one is taken for both.
_EDGE = 1e-9


@dataclass(frozen=True, eq=False)
class Sorted:
    """points: (n,) which lie inside. whole: triangles wholly inside. cut: those that cross."""

    points: Marks
    whole: Ints
    cut: Ints


def sort_triangles(surface: Surface, region: BaseGeometry) -> Sorted:
    """Return which points and triangles of a surface lie inside a region of the plan."""
    shapely.prepare(region)
    grid = _grid(region, len(surface.points))
    across, up = grid.cells(surface.points)
    points = _points_inside(surface.points, grid.inside[up, across], region)
    corners = surface.triangles.T
    spans = [(np.minimum(np.minimum(*c[:2]), c[2]), np.maximum(np.maximum(*c[:2]), c[2]))
             for c in (across[corners], up[corners])]  # fmt: skip
    near = grid.holds_edge(*spans[0], *spans[1])
    whole = points[corners[0]] & ~near
    asked = np.flatnonzero(near)
    inner, cut = _asked(surface.points[surface.triangles[asked]], region)
    whole[asked[inner]] = True
    return Sorted(points, np.flatnonzero(whole), asked[cut])


@dataclass(frozen=True, eq=False)
class _Grid:
    """inside: (rows, columns) 1 inside, 0 outside, -1 where the edge passes."""

    low: Floats
    cell: Floats
    inside: NDArray[np.int8]
    sums: Ints

    def cells(self, points: Floats) -> tuple[NDArray[np.int32], NDArray[np.int32]]:
        """Return column and row of each point; those off the grid get its outermost cells."""
        rows, columns = self.inside.shape
        at = np.floor((points - self.low) / self.cell)
        across = np.clip(at[:, 0], 0, columns - 1).astype(np.int32)
        return across, np.clip(at[:, 1], 0, rows - 1).astype(np.int32)

    def holds_edge(self, left: Ints, right: Ints, low: Ints, high: Ints) -> Marks:
        """Tell of each block of cells whether an edge passes it."""
        sums = self.sums
        count = (sums[high + 1, right + 1] - sums[low, right + 1]
                 - sums[high + 1, left] + sums[low, left])  # fmt: skip
        found: Marks = count > 0
        return found


def _grid(region: BaseGeometry, count: int) -> _Grid:
    left, low, right, high = region.bounds
    size = int(np.clip(np.sqrt(count), _FEWEST, _MOST))
    cell = np.array((right - left, high - low)) / size
    # Two cells round about: the outermost are outside for certain.
    corner = np.array((left, low)) - 2 * cell
    edge = np.zeros((size + 4, size + 4), bool)
    for start, end in _sides(region):
        _mark(edge, (start - corner) / cell, (end - corner) / cell)
    inside = _known(edge, corner, cell, region)
    sums = np.zeros((size + 5, size + 5), np.int64)
    sums[1:, 1:] = edge.cumsum(axis=0).cumsum(axis=1)
    return _Grid(corner, cell, inside, sums)


def _sides(region: BaseGeometry) -> Floats:
    """Return the straight pieces of a region's edge, (k, 2, 2)."""
    rings = shapely.get_rings(shapely.get_parts(region))
    corners, ring = shapely.get_coordinates(rings, return_index=True)
    same = ring[1:] == ring[:-1]
    sides: Floats = np.stack((corners[:-1][same], corners[1:][same]), axis=1)
    return sides


def _mark(edge: Marks, start: Floats, end: Floats) -> None:
    """Mark the cells a straight piece passes; it rises less than a cell in a column."""
    if abs(end[1] - start[1]) > abs(end[0] - start[0]):
        _mark(edge.T, start[::-1], end[::-1])
        return
    if start[0] > end[0]:
        start, end = end, start
    first, last = int(start[0] - _EDGE), int(end[0] + _EDGE)
    columns = np.arange(first, last + 1)
    slope = (end[1] - start[1]) / max(end[0] - start[0], _EDGE)
    for side in (0, 1):
        row = start[1] + slope * (np.clip(columns + side, start[0], end[0]) - start[0])
        for aside in (-_EDGE, _EDGE):
            edge[(row + aside).astype(int), columns] = True


def _known(edge: Marks, corner: Floats, cell: Floats, region: BaseGeometry) -> NDArray[np.int8]:
    """Return the side each cell lies on; cells joined without an edge between are asked once."""
    patch, count = ndimage.label(~edge)
    flat = patch.ravel()
    some = np.empty(count + 1, np.int64)
    some[flat] = np.arange(len(flat))
    row, column = np.divmod(some, edge.shape[1])
    x, y = (np.column_stack((column, row)) * cell + corner + cell / 2).T
    side = shapely.contains_xy(region, x, y).astype(np.int8)
    side[0] = -1
    out: NDArray[np.int8] = side[patch]
    return out


def _points_inside(points: Floats, side: NDArray[np.int8], region: BaseGeometry) -> Marks:
    inside: Marks = side == 1
    asked = np.flatnonzero(side < 0)
    inside[asked] = shapely.intersects_xy(region, points[asked, 0], points[asked, 1])
    return inside


def _asked(corners: Floats, region: BaseGeometry) -> tuple[Marks, Marks]:
    """Return which triangles, (k, 3, 2), lie inside, and which cross the edge."""
    edge = region.boundary
    shapely.prepare(edge)
    triangles = shapely.polygons(corners)
    cut = shapely.intersects(edge, triangles)
    middle = corners.mean(axis=1)
    inside = shapely.contains_xy(region, middle[:, 0], middle[:, 1])
    return inside & ~cut, cut
