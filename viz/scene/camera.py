"""A parallel camera, framed by plain arithmetic so that labels can be placed without it."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from viz.scene.view import Size

Array = NDArray[np.float64]
Axes = tuple[Array, Array, Array]
AWAY = 60.0  # metres from the eye to mid-picture


@dataclass(frozen=True)
class Margins:
    """Room to keep free at the picture's edges, pixels."""

    left: float
    right: float
    top: float
    bottom: float

    def divided(self, by: float) -> "Margins":
        """The same room in pixels so many times as large."""
        return Margins(self.left / by, self.right / by, self.top / by, self.bottom / by)


@dataclass(frozen=True, eq=False)
class Camera:
    """Right, up and forward are unit vectors; centre is the point in mid-picture, metres."""

    right: Array
    up: Array
    forward: Array
    centre: Array
    metres_per_pixel: float
    size: Size

    @property
    def eye(self) -> Array:
        """Where the viewer stands, metres: far enough for any house."""
        return np.asarray(self.centre - AWAY * self.forward)

    def places(self, depth: NDArray[np.float32]) -> NDArray[np.float32]:
        """The (height, width, 3) points, metres, that pixels show at their depths from the eye."""
        high, wide = depth.shape
        x = (np.arange(wide, dtype=np.float32) + 0.5 - wide / 2) * self.metres_per_pixel
        y = (high / 2 - np.arange(high, dtype=np.float32) - 0.5) * self.metres_per_pixel
        right, up, forward = (v.astype(np.float32) for v in (self.right, self.up, self.forward))
        across = x[None, :, None] * right + y[:, None, None] * up
        return np.asarray(self.eye + across + depth[..., None] * forward, dtype=np.float32)

    def pixels(self, points: Array) -> Array:
        """Where (n, 3) points in metres fall, as (n, 2) pixels from the upper left corner."""
        seen = (points - self.centre) @ np.array([self.right, -self.up]).T
        half = np.array(self.size) / 2
        return np.asarray(seen / self.metres_per_pixel + half)


def aimed(ahead: tuple[float, float], turn: float, tilt: float) -> Axes:
    """Right, up and forward of a viewer who faced `ahead` (x, y), then walked and looked down.

    turn, tilt: degrees, see View.
    """
    heading = np.arctan2(ahead[1], ahead[0]) + np.radians(turn)
    down = np.radians(tilt)
    level = np.array([np.cos(heading), np.sin(heading), 0.0])
    forward = level * np.cos(down) - np.array([0.0, 0.0, np.sin(down)])
    right = np.array([np.sin(heading), -np.cos(heading), 0.0])
    return right, np.cross(right, forward), forward


def grown(box: Array, content: Array, aspect: float) -> Array:
    """A box widened towards a width-to-height ratio, but not past the content.

    box, content: ((left, bottom), (right, top)), metres.
    """
    wide, high = box[1] - box[0]
    axis, need = (0, high * aspect - wide) if wide < high * aspect else (1, wide / aspect - high)
    before = max(0.0, box[0, axis] - content[0, axis])
    after = max(0.0, content[1, axis] - box[1, axis])
    add_after = min(max(need / 2, need - before), after)
    bigger = box.copy()
    bigger[0, axis] -= min(need - add_after, before)
    bigger[1, axis] += add_after
    return bigger


def framed(axes: Axes, points: Array, size: Size, margins: Margins, above: float = 0.5) -> Camera:
    """The camera that fills the free part of the picture with the (n, 3) points, metres.

    above: which share of the height that is left over lies above them.
    """
    right, up, forward = axes
    seen = points @ np.array([right, up, forward]).T
    low, high = seen.min(axis=0), seen.max(axis=0)
    free_wide = size[0] - margins.left - margins.right
    free_high = size[1] - margins.top - margins.bottom
    scale = max((high[0] - low[0]) / free_wide, (high[1] - low[1]) / free_high, 1e-6)
    middle = (low + high) / 2
    middle[0] -= (margins.left - margins.right) / 2 * scale
    middle[1] -= (margins.bottom - margins.top) / 2 * scale
    middle[1] -= (0.5 - above) * (free_high * scale - (high[1] - low[1]))
    centre = middle[0] * right + middle[1] * up + middle[2] * forward
    return Camera(right, up, forward, centre, float(scale), size)
