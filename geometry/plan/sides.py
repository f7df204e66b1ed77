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

    def away(self, places: Floats) -> Floats:
        """Distances, metres, of (n, 2) places square to the side that slopes down over each.

        0 inside. At an outer corner two slopes meet in a hip: there the farther side counts.
        """
        lengths = np.linalg.norm(self._runs, axis=1)
        ahead = self._runs / lengths[:, None]
        gaps = places[:, None, :] - self._starts
        along = np.einsum("nij,ij->ni", gaps, ahead)
        square = gaps[..., 0] * ahead[:, 1] - gaps[..., 1] * ahead[:, 0]
        over = np.clip(along, 0.0, lengths)
        near = np.hypot(along - over, square).argmin(axis=1)
        rows = np.arange(len(places))
        passed = along[rows, near] >= lengths[near]
        beside = passed | (along[rows, near] <= 0.0)
        corner = np.where(passed, near + 1, near) % len(lengths)
        hip = np.maximum(square[rows, corner - 1], square[rows, corner])
        found = np.where(beside, np.maximum(hip, 0.0), np.abs(square[rows, near]))
        return np.where(shapely.contains_xy(self.outline, places), 0.0, found)
