"""What a body is, in words for people and keys for tables."""

from dataclasses import dataclass
from typing import Literal

Role = Literal[
    "footing", "wall", "pad", "column",
    "base", "blinding", "retarder", "insulation", "slab", "fill", "edge board",
    "pipe", "fitting", "drain stone", "wrap", "cleanout", "lead", "sleeve", "bleeder",
    "basin", "lid", "vent", "pit stone", "wall stone", "backfill", "grading", "excavation",
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


# Steps of the build, in the order the crew works; floor layers follow from FIRST_LAYER up.
STAGE: dict[Role, int] = {
    "excavation": 0, "footing": 1, "pad": 1, "sleeve": 1, "bleeder": 1, "wall": 2, "column": 2,
    "wrap": 3, "pipe": 4, "fitting": 4, "lead": 4, "cleanout": 4, "drain stone": 5,
    "wall stone": 6, "backfill": 7, "grading": 8, "pit stone": 9, "basin": 9, "fill": 9, "vent": 10,
    "edge board": 10,
}  # fmt: skip
FIRST_LAYER = 10
