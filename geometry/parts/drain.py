"""The perimeter drain: pipe, holes, stone, wrap, cleanouts, and the sump pit it empties into."""

from typing import Annotated, Literal

from pydantic import Field

from geometry.parts.fields import (
    Clear,
    Fall,
    FloatHeight,
    HoleSize,
    HoleSpacing,
    LevelValue,
    Name,
    PitDepth,
    PitDiameter,
    PlanPoint,
    Record,
    Small,
    Span,
)
from geometry.parts.measured import CurvePoint, Flow
from geometry.units import INCH

Angle = Annotated[float, Field(ge=-180, le=180)]


class Holes(Record):
    """Rows of drilled holes as degrees from straight down; diameter; spacing along the pipe."""

    rows: tuple[Angle, ...] = (-60.0, 60.0)
    diameter: HoleSize = 0.5 * INCH
    spacing: HoleSpacing = 5 * INCH


class DrainStone(Record):
    """Washed stone round the pipe inside the wrap.

    width: from the footing's face outward. bedding: least under the pipe.
    cover: least over the pipe's crown and over the top of the footing.
    """

    material: Name = "stone-57"
    width: Annotated[float, Span("8 in", "6 ft", "16 in")] = 16 * INCH
    bedding: Small = 2 * INCH
    cover: Annotated[float, Span("1 in", "10 ft", "6 in")] = 6 * INCH


class Wrap(Record):
    """Non-woven fabric round the stone, lapped over the top."""

    material: Name = "nonwoven-6oz"
    overlap: Small = 12 * INCH


class Drain(Record):
    """A perforated pipe along the outside of the footing, falling from a high point to an outlet.

    sides: "all" or numbers of the outline's sides (side 1 runs from corner 1 to corner 2).
    offset: footing's face to the pipe's centre. outlet_invert: level of the invert at the low end
    against the area's TOF; unless given, the trench bottom there is the footing's bottom.
    high_corner, low_corner: corner numbers; unless given, the low point lies next to the sump pit
    and the high point is farthest from it.
    """

    area: Name = ""
    pipe: Name = "d2729-4"
    sides: Literal["all"] | tuple[int, ...] = "all"
    offset: Clear = 8 * INCH
    fall: Fall = 1 / 96
    outlet_invert: LevelValue | None = None
    high_corner: int | None = None
    low_corner: int | None = None
    holes: Holes = Holes()
    stone: DrainStone = DrainStone()
    wrap: Wrap = Wrap()
    cleanouts: tuple[int, ...] = ()


class Discharge(Record):
    """The pipe from the pump: length, fittings counted as more length, and its inside."""

    length: Annotated[float, Span("0", "1000 ft", "40 ft")]
    inside: Annotated[float, Span("1/2 in", "6 in", "1.6 in")]


class Pump(Record):
    """A pump's float switch: heights of the water above the pit's inside bottom.

    off: the pump stops. on: it starts. alarm: the high-water alarm sounds, if there is one.
    flow: what it throws in this pit, once it is known. Or curve: the maker's points of head and
    flow, the first at no flow, with lift, the height from the pit's inside bottom to the highest
    point of the discharge pipe, and discharge, that pipe; its friction is left out unless given.
    """

    off: FloatHeight
    on: FloatHeight
    alarm: FloatHeight | None = None
    flow: Flow | None = None
    curve: Annotated[tuple[CurvePoint, ...], Field(max_length=40)] = ()
    lift: Annotated[float, Span("0", "100 ft", "9 ft")] | None = None
    discharge: Discharge | None = None


class Sump(Record):
    """A round pit in the floor, and the solid pipe that brings the drain's water to it.

    at: centre. diameter: inside. depth: inside, below the finished floor. pipe: the drain's kind
    unless given. sleeve: pipe cast into the footing that the solid pipe passes through.
    pump: its float levels, if a pump stands in the pit.
    """

    at: PlanPoint
    area: Name = ""
    diameter: PitDiameter = 18 * INCH
    depth: PitDepth = 30 * INCH
    wall: Annotated[float, Span("1/16 in", "8 in", "1/4 in")] = 0.25 * INCH
    stone_beside: Small = 6 * INCH
    stone_below: Small = 4 * INCH
    stone: Name = "stone-57"
    material: Name = "plastic"
    lid: Annotated[float, Span("1/8 in", "4 in", "1/2 in")] = 0.5 * INCH
    pipe: Name = ""
    fall: Fall = 1 / 48
    sleeve: Name = "sch40-6"
    pump: Pump | None = None
