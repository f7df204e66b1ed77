"""Outlines: corners to a sound polygon, offsets with mitred corners, regions between offsets."""

from collections.abc import Callable, Iterable, Sequence

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import GeometryCollection, MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

Point = tuple[float, float]

# Convex corners sharper than about 23 degrees are bevelled instead of mitred.
MITRE_LIMIT = 5.0
# Nearer than this, two corners are one and the same on site (1 mm).
SAME_POINT_M = 1e-3
# Regions that will not be cut soundly as they are lie on this grid, a nanometre.
GRID_M = 1e-9
# Areas that differ by less are one and the same (1 mm2).
SAME_AREA_M2 = 1e-6
EMPTY = Polygon()


def polygon(corners: Sequence[Point]) -> Polygon:
    """Return the polygon of these corners, counter-clockwise whatever their order."""
    return shapely.orient_polygons(Polygon(corners))


def offset(shape: BaseGeometry, distance_m: float) -> BaseGeometry:
    """Grow (positive) or shrink (negative) a region, corners mitred, sharp ones bevelled."""
    if abs(distance_m) < GRID_M or shape.is_empty:
        return shape
    return shapely.buffer(shape, distance_m, join_style="mitre", mitre_limit=MITRE_LIMIT)


def circle(centre: Point, radius_m: float, sides: int = 48) -> Polygon:
    """Return a regular polygon with the AREA of the true circle, so that facets eat no volume."""
    return Polygon(centre + ring(radius_m, sides)) if radius_m > 0 else EMPTY


def ring(radius_m: float, sides: int) -> NDArray[np.float64]:
    """Return (sides, 2) float corners of the regular polygon with the circle's area, metres."""
    corner = radius_m * np.sqrt(2 * np.pi / (sides * np.sin(2 * np.pi / sides)))
    turn = np.arange(sides) * (2 * np.pi / sides)
    corners: NDArray[np.float64] = corner * np.column_stack((np.cos(turn), np.sin(turn)))
    return corners


def rectangle(centre: Point, width_m: float, depth_m: float) -> Polygon:
    """Return the rectangle of this width (x) and depth (y) about a centre."""
    x, y = centre
    return shapely.box(x - width_m / 2, y - depth_m / 2, x + width_m / 2, y + depth_m / 2)


def polygons(shape: BaseGeometry) -> list[Polygon]:
    """Return the polygons of any geometry, crumbs of no area left out."""
    parts = [shape] if isinstance(shape, Polygon) else shapely.get_parts(shape)
    flat = [p for part in parts for p in ([part] if isinstance(part, Polygon) else _inner(part))]
    return [p for p in flat if p.area > 1e-12]


def _inner(part: BaseGeometry) -> list[Polygon]:
    return polygons(part) if hasattr(part, "geoms") else []


def minus(shape: BaseGeometry, taken: Iterable[BaseGeometry]) -> BaseGeometry:
    """Return the region less others."""
    others = [t for t in taken if not t.is_empty]
    if not others:
        return shape
    other = shapely.union_all(others)
    return _soundly(shapely.difference, shape, other)


def both(one: BaseGeometry, other: BaseGeometry) -> BaseGeometry:
    """Return what two regions share."""
    return _soundly(shapely.intersection, one, other)


def _soundly(
    cut: Callable[..., BaseGeometry], one: BaseGeometry, other: BaseGeometry
) -> BaseGeometry:
    """Cut regions as they are, and on a fine grid where that comes out otherwise.

    Edges that all but coincide can come out tangled as they are, or take a whole region for the
    other's; on the grid they do not.
    """
    one, other = _regions(one), _regions(other)
    found, gridded = cut(one, other), cut(one, other, grid_size=GRID_M)
    return found if found.is_valid and abs(found.area - gridded.area) < SAME_AREA_M2 else gridded


def _regions(shape: BaseGeometry) -> BaseGeometry:
    """Return a shape without lines and points, which an overlay leaves where regions touch."""
    return multi(shape) if isinstance(shape, GeometryCollection) else shape


def multi(shape: BaseGeometry) -> MultiPolygon:
    """Return any geometry as the multipolygon of its areas."""
    return MultiPolygon(polygons(shape))


def crossing_sides(corners: Sequence[Point]) -> tuple[int, int] | None:
    """Return the numbers (from 1) of the first two sides that cross or touch, or None."""
    count = len(corners)
    points = np.asarray(corners, dtype=float)
    sides = shapely.linestrings(np.stack((points, np.roll(points, -1, axis=0)), axis=1))
    one, two = shapely.STRtree(sides).query(sides, predicate="intersects")
    apart = (two - one > 1) & (two - one < count - 1)
    if not apart.any():
        return None
    return min((int(i) + 1, int(j) + 1) for i, j in zip(one[apart], two[apart], strict=True))


def repeated_corners(corners: Sequence[Point]) -> tuple[int, int] | None:
    """Return the numbers (from 1) of the first two corners that are one point, or None."""
    points = np.asarray(corners, dtype=float)
    gaps = np.linalg.norm(points[:, None] - points[None], axis=2)
    pairs = np.argwhere(np.triu(gaps < SAME_POINT_M, 1))
    return (int(pairs[0][0]) + 1, int(pairs[0][1]) + 1) if len(pairs) else None


def signed_area(corners: Sequence[Point]) -> float:
    """Return the area enclosed, m2, negative for clockwise order (shoelace formula)."""
    x, y = np.asarray(corners, dtype=float).T
    return float(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))) / 2
