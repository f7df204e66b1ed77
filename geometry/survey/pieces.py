"""The surface clipped to a region: whole triangles, and exact pieces of those that cross.

A piece of any shape becomes signed triangles that fan out from its first corner; as the surface
is one plane over the piece, sums over the fan are exact for every integral.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from geometry.survey.corners import highest, lowest, mean
from geometry.survey.inside import Sorted
from geometry.survey.prisms import covered, space
from geometry.survey.shots import Floats, Ints, Marks
from geometry.survey.surface import Surface

_POLYGON = 3
_NOTHING = 1e-16


@dataclass(frozen=True, eq=False)
class Pieces:
    """k signed triangles of a surface, each a plane.

    area: (k,) m2, negative for one to be taken off. level: (k, 3) metres at the corners.
    source: (k,) triangle of the surface each lies on, -1 beyond it. loose: (j, 3, 2) corners of
    the last j, metres; the first k - j are whole triangles of the surface.
    """

    surface: Surface
    area: Floats
    level: Floats
    source: Ints
    loose: Floats

    @cached_property
    def area_m2(self) -> float:
        """Area of all, m2."""
        return float(self.area.sum())

    @cached_property
    def mean(self) -> Floats:
        """Mean level of each, (k,) metres."""
        return mean(self.level)

    @cached_property
    def lowest(self) -> Floats:
        """Lowest corner of each, (k,) metres."""
        return lowest(self.level)

    @cached_property
    def highest(self) -> Floats:
        """Highest corner of each, (k,) metres."""
        return highest(self.level)

    def below(self, plane: float) -> float:
        """Return the space between the ground and a plane above it, m3."""
        under = self.highest <= plane
        whole = float(np.dot(self.area, np.where(under, plane - self.mean, 0.0)))
        cross = self._crossing(plane, under)
        return whole + float(space(self.area[cross], plane - self.level[cross]).sum())

    def above(self, plane: float) -> float:
        """Return the ground above a plane, m3."""
        over = self.lowest >= plane
        whole = float(np.dot(self.area, np.where(over, self.mean - plane, 0.0)))
        cross = self._crossing(plane, self.highest <= plane)
        return whole + float(space(self.area[cross], self.level[cross] - plane).sum())

    def area_above(self, plane: float) -> float:
        """Return the area where the ground lies above a plane, m2."""
        over = (self.lowest >= plane) & (self.highest > plane)
        cross = self._crossing(plane, self.highest <= plane)
        part = covered(self.area[cross], self.level[cross] - plane)
        return float(self.area[over].sum()) + float(part.sum())

    def _crossing(self, plane: float, under: Marks) -> Ints:
        return np.flatnonzero((self.lowest < plane) & ~under)

    def corner(self, index: int) -> tuple[float, float]:
        """Return the plan place of a corner by its index in `level` made flat."""
        piece, corner = divmod(int(index), 3)
        whole = len(self.area) - len(self.loose)
        if piece >= whole:
            x, y = self.loose[piece - whole, corner]
        else:
            x, y = self.surface.points[self.surface.triangles[self.source[piece], corner]]
        return float(x), float(y)


def clipped(surface: Surface, found: Sorted, region: BaseGeometry) -> Pieces:
    """Return the part of a surface inside a region."""
    corners = surface.points[surface.triangles[found.cut]]
    level = surface.level[surface.triangles[found.cut]]
    cut = cut_planes(corners, level, region)
    whole = surface.triangles[found.whole]
    return Pieces(
        surface,
        np.concatenate((areas(surface.points, whole), cut.area)),
        np.concatenate((surface.level[whole], cut.level)),
        np.concatenate((found.whole, found.cut[cut.source])),
        cut.loose,
    )


def joined(pieces: Pieces, others: Pieces) -> Pieces:
    """Return pieces of a surface with loose ones of the same added."""
    return Pieces(
        pieces.surface,
        np.concatenate((pieces.area, others.area)),
        np.concatenate((pieces.level, others.level)),
        np.concatenate((pieces.source, others.source)),
        np.concatenate((pieces.loose, others.loose)),
    )


def loose_pieces(surface: Surface, cut: "Cut") -> Pieces:
    """Return planes beyond a surface as its pieces."""
    return Pieces(surface, cut.area, cut.level, np.full(len(cut.area), -1), cut.loose)


def areas(points: Floats, triangles: Ints) -> Floats:
    """Return the areas of triangles by their corners' indices, m2."""
    x, y = (np.ascontiguousarray(points[:, n]) for n in (0, 1))
    a, b, c = triangles.T
    xa, ya = x[a], y[a]
    out: Floats = ((x[b] - xa) * (y[c] - ya) - (x[c] - xa) * (y[b] - ya)) / 2
    return out


@dataclass(frozen=True, eq=False)
class Cut:
    """Signed triangles cut from planes; see Pieces. source: which plane each comes from."""

    area: Floats
    level: Floats
    source: Ints
    loose: Floats


NO_CUT = Cut(np.zeros(0), np.zeros((0, 3)), np.zeros(0, np.int64), np.zeros((0, 3, 2)))


def cut_planes(
    corners: Floats, level: Floats, region: BaseGeometry, shapes: np.ndarray | None = None
) -> Cut:
    """Return planes clipped to a region.

    corners: (p, 3, 2) metres, three places of each plane. level: (p, 3) metres there. shapes:
    (p,) polygons that the planes cover; the triangles of the three corners unless given.
    """
    across = shapely.polygons(corners) if shapes is None else shapes
    parts, plane = shapely.get_parts(shapely.intersection(across, region), return_index=True)
    flat = shapely.get_type_id(parts) == _POLYGON
    parts, plane = shapely.orient_polygons(parts[flat]), plane[flat]
    rings, part = shapely.get_rings(parts, return_index=True)
    where, ring = shapely.get_coordinates(rings, return_index=True)
    if not len(where):
        return NO_CUT
    fan = _fan(ring)
    source = plane[part[ring[fan[:, 0]]]]
    loose = where[fan]
    heights = _heights(corners[source], level[source], loose)
    return Cut(_signed(loose), heights, source, loose)


def _fan(ring: Ints) -> Ints:
    """Return (k, 3) indices of the fan over each ring from its first corner."""
    starts = np.flatnonzero(np.concatenate(([True], ring[1:] != ring[:-1])))
    first = np.repeat(starts, np.diff([*starts, len(ring)]))
    index = np.arange(len(ring) - 1)
    inner = (ring[1:] == ring[:-1]) & (index > first[:-1])
    kept = index[inner]
    return np.column_stack((first[kept], kept, kept + 1))


def _signed(corners: Floats) -> Floats:
    a, b = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    out: Floats = (a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]) / 2
    return out


def _heights(corners: Floats, level: Floats, places: Floats) -> Floats:
    """Return the levels of planes at places, (k, 3); corners: (k, 3, 2), level: (k, 3)."""
    a, b = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    double = a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]
    sound = np.where(np.abs(double) > _NOTHING, double, np.inf)
    away = places - corners[:, None, 0]
    s = (away[..., 0] * b[:, None, 1] - away[..., 1] * b[:, None, 0]) / sound[:, None]
    t = (away[..., 1] * a[:, None, 0] - away[..., 0] * a[:, None, 1]) / sound[:, None]
    rise = level - level[:, :1]
    heights: Floats = level[:, :1] + s * rise[:, 1:2] + t * rise[:, 2:]
    # Rounding on a sliver must not lift a place above its corners.
    return np.clip(heights, level.min(axis=1)[:, None], level.max(axis=1)[:, None])
