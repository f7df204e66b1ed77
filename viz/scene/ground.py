"""The undisturbed ground around the excavation, as a flat face in the cut."""

from collections.abc import Sequence

import numpy as np
import shapely
from shapely import MultiPolygon

from geometry.sections.face import CutFace

REACH = 3.0  # metres of ground drawn beside and below the hole
NEAR = 0.35  # the same where the hole itself is the picture


def undisturbed(holes: Sequence[CutFace], reach: float = REACH) -> CutFace | None:
    """The ground beside and below the hole, up to the level of its rim on either side.

    reach: how much of it, metres.
    """
    if not holes:
        return None
    hole = shapely.union_all([face.shape for face in holes])
    spots = shapely.get_coordinates(hole)
    low, high = spots.min(axis=0), spots.max(axis=0)
    left, right = _rim(spots, low[0]), _rim(spots, high[0])
    bottom = low[1] - reach
    block = shapely.Polygon([
        (low[0] - reach, bottom), (high[0] + reach, bottom), (high[0] + reach, right),
        (high[0], right), (low[0], left), (low[0] - reach, left),
    ])  # fmt: skip
    parts = shapely.get_parts(shapely.difference(block, hole))
    polygons = [part for part in parts if isinstance(part, shapely.Polygon)]
    return CutFace(holes[0].label, MultiPolygon(polygons))


def _rim(spots: "np.ndarray[tuple[int, int], np.dtype[np.float64]]", edge: float) -> float:
    """The highest level of the hole at one end of the cut, metres."""
    return float(spots[np.abs(spots[:, 0] - edge) < 1e-6, 1].max())
