"""Prisms between a plane and triangles of ground, in closed form.

For a triangle of area A whose corners lie a >= b >= c below the plane, the space below the plane
is A (a + b + c) / 3 where all are positive. Where a alone is positive it is the pyramid
A a^3 / (3 (a - b) (a - c)) over the corner cut off by the zero line; where c alone is negative it
is the whole less that of c. Cut and fill are exact for the triangulated ground.
"""

import numpy as np

from geometry.survey.corners import highest, lowest, mean
from geometry.survey.shots import Floats


def space(area: Floats, depth: Floats) -> Floats:
    """Return the integral of the positive depth over each triangle, m3, (k,).

    area: (k,) m2, negative for one to be taken off. depth: (k, 3) metres at the corners.
    """
    return _either(area, area * mean(depth), depth, 3)


def covered(area: Floats, depth: Floats) -> Floats:
    """Return the part of each triangle's area where the depth is positive, m2, (k,)."""
    return _either(area, area, depth, 2)


def _either(area: Floats, whole: Floats, depth: Floats, power: int) -> Floats:
    """Return `whole` where all corners are positive, 0 where none is, and else its share."""
    low, high = lowest(depth), highest(depth)
    out: Floats = np.where((low >= 0) & (high > 0), whole, 0.0)
    crossed = np.flatnonzero((low < 0) & (high > 0))
    if len(crossed):
        out[crossed] = _crossed(area[crossed], whole[crossed], depth[crossed], power)
    return out


def _crossed(area: Floats, whole: Floats, depth: Floats, power: int) -> Floats:
    """Return the same for triangles the zero line crosses; power: 3 for space, 2 for area."""
    c, b, a = np.sort(depth, axis=1).T
    above = b <= 0
    lone = np.where(above, a, c)
    one, other = np.where(above, b, a), np.where(above, c, b)
    corner = lone**power / ((power if power == 3 else 1) * (lone - one) * (lone - other)) * area
    out: Floats = np.where(above, corner, whole - corner)
    return out
