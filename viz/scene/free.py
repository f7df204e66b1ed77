"""The corners of a picture that are free for a lens."""

from dataclasses import dataclass

import numpy as np

from viz.scene.anchors import Mask
from viz.scene.camera import Margins
from viz.scene.view import Size

ASPECT = 1.3  # width to height of the lens
LARGEST, LEAST = 0.75, 0.24  # its width, as a share of the free width; no lens below the least
CLEAR = 12  # pixels between the lens and the picture
Box = tuple[int, int, int, int]  # left, top, right, bottom, pixels


@dataclass(frozen=True)
class Free:
    """The part of the picture that labels leave free, pixels."""

    size: Size
    margins: Margins

    def corners(self, wide: int) -> list[Box]:
        """A lens so wide in each corner, the lower ones first."""
        high, m = round(wide / ASPECT), self.margins
        lefts = (round(self.size[0] - m.right - wide), round(m.left))
        tops = (round(self.size[1] - m.bottom - high), round(m.top))
        return [(x, y, x + wide, y + high) for y in tops for x in lefts]

    def largest(self, taken: Mask) -> Box | None:
        """The largest lens that covers none of the pixels taken."""
        room = self.size[0] - self.margins.left - self.margins.right
        for share in np.linspace(LARGEST, LEAST, 26):
            for left, top, right, bottom in self.corners(round(share * room)):
                rows = slice(max(top - CLEAR, 0), bottom + CLEAR)
                if not taken[rows, max(left - CLEAR, 0) : right + CLEAR].any():
                    return left, top, right, bottom
        return None
