"""A part as a closed triangle mesh that knows what it is."""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

Role = Literal[
    "footing", "wall", "pad", "column",
    "base", "blinding", "retarder", "insulation", "slab", "fill", "edge board",
    "pipe", "fitting", "drain stone", "wrap", "cleanout", "lead", "sleeve",
    "basin", "lid", "pit stone", "wall stone", "backfill", "grading", "excavation",
]  # fmt: skip


@dataclass(frozen=True)
class Label:
    """What a solid is: part id, words for people, role, material key, area, step of the build."""

    part: str
    name: str
    role: Role
    material: str
    area: str
    stage: int


@dataclass(frozen=True, eq=False)
class Solid:
    """A labelled closed mesh.

    vertices: (n, 3) float64, metres, z against the project's top of footing.
    faces: (m, 3) int64, counter-clockwise seen from outside.
    """

    label: Label
    vertices: NDArray[np.float64]
    faces: NDArray[np.int64]
