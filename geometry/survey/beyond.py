"""The floor beyond the outermost shots: the level at the nearest place of the surface's rim.

Straight out from each side of the rim the level is that of the side, round each corner that of
the corner; so this part too is made of planes and its volume is exact for that assumption.
"""

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from geometry.survey.pieces import NO_CUT, Pieces, cut_planes, loose_pieces
from geometry.survey.shots import Floats
from geometry.survey.surface import Surface

# Parts of a corner's fan.
_FAN = 4
_CRUMB = 1e-12


def not_covered(surface: Surface, region: BaseGeometry) -> BaseGeometry:
    """Return the part of a region beyond the surface's rim."""
    return region.difference(Polygon(surface.points[surface.rim[:, 0]]))


def carried_on(surface: Surface, beyond: BaseGeometry) -> Pieces:
    """Return the planes beyond the rim, clipped to that part of the region."""
    if beyond.area < _CRUMB:
        return loose_pieces(surface, NO_CUT)
    start, end = (surface.points[surface.rim[:, n]] for n in (0, 1))
    along = end - start
    outward = np.column_stack((along[:, 1], -along[:, 0])) / np.hypot(*along.T)[:, None]
    reach = _reach(surface, beyond)
    strips, fans = _strips(start, end, outward, reach), _fans(end, outward, reach)
    levels = surface.level[surface.rim]
    low, high = levels[:, :1], levels[:, 1:]
    corners = np.concatenate((np.stack((start, end, start + outward), axis=1), fans[:, :3]))
    level = np.concatenate((np.hstack((low, high, low)), np.repeat(high, 3, axis=1)))
    shapes = np.concatenate((shapely.polygons(strips), shapely.polygons(fans)))
    shapely.prepare(beyond)
    met = shapely.intersects(beyond, shapes) & (shapely.area(shapes) > _CRUMB)
    return loose_pieces(surface, cut_planes(corners[met], level[met], beyond, shapes[met]))


def _reach(surface: Surface, beyond: BaseGeometry) -> float:
    """Return a distance no place of the region lies farther off than."""
    left, low, right, high = shapely.union(shapely.MultiPoint(surface.points[surface.rim[:, 0]]),
                                           beyond).bounds  # fmt: skip
    return 2 * float(np.hypot(right - left, high - low))


def _strips(start: Floats, end: Floats, outward: Floats, reach: float) -> Floats:
    far = outward * reach
    return np.stack((start, start + far, end + far, end), axis=1)


def _fans(at: Floats, outward: Floats, reach: float) -> Floats:
    """Return (k, 2 + _FAN, 2) corners of the space between two strips at the end of each side."""
    begin = np.arctan2(outward[:, 1], outward[:, 0])
    turn = (np.roll(begin, -1) - begin + np.pi) % (2 * np.pi) - np.pi
    share = np.linspace(0, 1, _FAN + 1)
    angle = begin[:, None] + np.maximum(turn, 0.0)[:, None] * share
    rays = at[:, None] + reach * np.stack((np.cos(angle), np.sin(angle)), axis=-1)
    fans: Floats = np.concatenate((at[:, None], rays), axis=1)
    return fans
