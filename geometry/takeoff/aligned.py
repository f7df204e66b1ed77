"""A region turned so that its longest side lies level, and back."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from geometry.plan.outline import polygons

_LEVEL = 1e-9


@dataclass(frozen=True, eq=False)
class Aligned:
    """A region of the plan and the frame in which its longest side is level.

    across: the frame is turned a quarter more, so that the longest side stands upright.
    """

    region: BaseGeometry
    across: bool = False

    @cached_property
    def turned(self) -> BaseGeometry:
        """The region in the frame."""
        turn = self._turn
        return shapely.transform(self.region, lambda xy: xy @ turn)

    def back(self, shapes: NDArray[np.object_]) -> NDArray[np.object_]:
        """Return shapes of the frame on the plan."""
        turn = self._turn
        moved: NDArray[np.object_] = shapely.transform(shapes, lambda xy: xy @ turn.T)
        return moved

    @cached_property
    def _turn(self) -> NDArray[np.float64]:
        """The matrix that turns the frame's axes onto the plan; exact for level houses."""
        x, y = self._along
        x, y = (-y, x) if self.across else (x, y)
        return np.array(((x, -y), (y, x)))

    @property
    def _along(self) -> tuple[float, float]:
        largest = max(polygons(self.region), key=lambda p: p.area)
        steps = np.diff(np.asarray(largest.exterior.coords), axis=0)
        lengths = np.hypot(*steps.T)
        x, y = steps[int(np.argmax(lengths > lengths.max() - 1e-6))] / lengths.max()
        x, y = (-x, -y) if x < -_LEVEL or (abs(x) <= _LEVEL and y < 0) else (x, y)
        x, y = (0.0 if abs(v) < _LEVEL else v for v in (x, y))
        size = float(np.hypot(x, y))
        return float(x) / size, float(y) / size
