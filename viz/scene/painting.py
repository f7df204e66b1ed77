"""A painted picture that knows what each of its pixels shows."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

FINER = 2  # drawn at twice the size and halved, for clean edges
Pixels = NDArray[np.uint8]
Parts = NDArray[np.int64]


@dataclass(frozen=True, eq=False)
class Painting:
    """The picture, and which part each of its pixels shows.

    pixels: (height, width, 3), FINER times the size asked for.
    parts: (height, width), index into names; -1 where none. cut: (height, width), on a cut face.
    """

    pixels: Pixels
    parts: Parts
    cut: NDArray[np.bool_]
    names: tuple[str, ...]
