"""Strip footing, foundation wall, and the bars in the footing."""

from typing import Literal

from pydantic import Field

from geometry.parts.fields import (
    BarSize,
    Cover,
    FootingThickness,
    FootingWidth,
    Name,
    Record,
    Shift,
    WallHeight,
    WallThickness,
)
from geometry.units import FOOT, INCH


class Bars(Record):
    """Continuous bars along the strip: count, size, clear cover at sides and bottom."""

    count: int = Field(2, ge=0, le=12)
    size: BarSize = "#4"
    cover: Cover = 3 * INCH


class Footing(Record):
    """The strip under the wall: width, thickness, its centre's shift outward from the wall's."""

    width: FootingWidth = 20 * INCH
    thickness: FootingThickness = 10 * INCH
    offset: Shift = 0.0
    material: Name = "concrete"
    bars: Bars = Bars()


class Wall(Record):
    """The foundation wall on the footing: thickness, height above the area's top of footing.

    coating: of its outside below grade, if it is known. foot: what holds its foot inward against
    the fill: the slab poured tight to it, a keyway or dowels in the footing; not known unless said.
    """

    thickness: WallThickness = 8 * INCH
    height: WallHeight = 8 * FOOT
    kind: Name = "poured concrete"
    coating: Literal["damp-proofing", "waterproofing"] | None = None
    foot: Literal["slab", "keyway", "dowels"] | None = None
    material: Name = "concrete"
