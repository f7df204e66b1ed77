"""Interior piers: a pad on the ground and a column on the pad."""

from typing import Literal

from geometry.parts.fields import (
    ColumnSize,
    FootingThickness,
    Level,
    LevelAt,
    Name,
    PadSize,
    PlanPoint,
    Record,
)
from geometry.units import INCH


class Pier(Record):
    """A pad and its column; the tops of both are stated against a level of the area.

    at: centre. width, depth: the pad on the plan (depth follows width unless given).
    """

    at: PlanPoint
    name: Name = ""
    width: PadSize = 36 * INCH
    depth: PadSize | None = None
    thickness: FootingThickness = 12 * INCH
    pad_top: Level = LevelAt(base="TOF")
    column: Literal["round", "square", "none"] = "square"
    column_size: ColumnSize = 12 * INCH
    column_top: Level = LevelAt(base="finished floor")
    material: Name = "concrete"

    @property
    def pad_depth(self) -> float:
        """The pad's size along y, metres."""
        return self.width if self.depth is None else self.depth
