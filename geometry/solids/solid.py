"""A part as a closed triangle mesh that knows what it is."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.label import Label


@dataclass(frozen=True, eq=False)
class Solid:
    """A labelled closed mesh.

    vertices: (n, 3) float64, metres, z against the project's top of footing.
    faces: (m, 3) int64, counter-clockwise seen from outside.
    """

    label: Label
    vertices: NDArray[np.float64]
    faces: NDArray[np.int64]
