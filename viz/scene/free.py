"""The corners of a picture that are free for a lens."""

from dataclasses import dataclass

import numpy as np

from viz.scene.anchors import Mask
from viz.scene.camera import Margins
from viz.scene.view import Size

ASPECTS = (1.3, 1.0, 0.8)  # width to height of the lens
LARGEST, LEAST = 1.0, 0.24  # its width, as a share of the free width; no lens below the least
CLEAR = 12  # pixels between the lens and the picture
APART = 0.03  # of the picture's width between the lens and the columns of labels
Box = tuple[int, int, int, int]  # left, top, right, bottom, pixels


@dataclass(frozen=True)
class Free:
    """The part of the picture that labels leave free, pixels."""

    size: Size
    margins: Margins

    def corners(self, wide: int, aspect: float = ASPECTS[0]) -> list[Box]:
        """A lens so wide in each corner, the lower ones first."""
        high, m, apart = round(wide / aspect), self.margins, APART * self.size[0]
        lefts = (round(self.size[0] - m.right - apart - wide), round(m.left + apart))
        tops = (round(self.size[1] - m.bottom - high), round(m.top))
        return [(x, y, x + wide, y + high) for y in tops for x in lefts]

    def largest(self, taken: Mask) -> Box | None:
        """The largest lens that covers none of the pixels taken."""
        found = [box for aspect in ASPECTS if (box := self._widest(taken, aspect))]
        return max(found, key=lambda b: (b[2] - b[0]) * (b[3] - b[1]), default=None)

    def _widest(self, taken: Mask, aspect: float) -> Box | None:
        room = self.size[0] * (1 - 2 * APART) - self.margins.left - self.margins.right
        high = self.size[1] - self.margins.top - self.margins.bottom
        for share in np.linspace(LARGEST, LEAST, 39):
            if share * room / aspect > high:
                continue
            for left, top, right, bottom in self.corners(round(share * room), aspect):
                rows = slice(max(top - CLEAR, 0), bottom + CLEAR)
                if not taken[rows, max(left - CLEAR, 0) : right + CLEAR].any():
                    return left, top, right, bottom
        return None
