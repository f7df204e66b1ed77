"""How far a place lies from an outline whose slopes meet in hips and valleys, as grade does."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from geometry.plan.route import corners_of

Floats = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Sides:
    """The sides of an outline that runs counter-clockwise without straight-on corners."""

    outline: Polygon

    @cached_property
    def _starts(self) -> Floats:
        return corners_of(self.outline)

    @cached_property
    def _runs(self) -> Floats:
        return np.roll(self._starts, -1, axis=0) - self._starts

    def away(self, x: float, y: float) -> float:
        """Distance square to the side that slopes down over a place, metres; 0 inside.

        At an outer corner two slopes meet in a hip: there the farther of its two sides counts.
        """
        if self.outline.contains(shapely.Point(x, y)):
            return 0.0
        lengths = np.linalg.norm(self._runs, axis=1)
        ahead = self._runs / lengths[:, None]
        gap = np.array((x, y)) - self._starts
        along = np.einsum("ij,ij->i", gap, ahead)
        square = gap[:, 0] * ahead[:, 1] - gap[:, 1] * ahead[:, 0]
        over = np.clip(along, 0.0, lengths)
        nearest = int(np.argmin(np.hypot(along - over, square)))
        if 0.0 < along[nearest] < lengths[nearest]:
            return float(abs(square[nearest]))
        corner = nearest if along[nearest] <= 0.0 else (nearest + 1) % len(lengths)
        return float(max(square[corner - 1], square[corner], 0.0))
