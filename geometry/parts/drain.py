"""The perimeter drains: pipe, holes, stone, wrap, cleanouts, and the sump pit."""

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field

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
from geometry.parts.outlet import Daylight
from geometry.units import FOOT, INCH

Angle = Annotated[float, Field(ge=-180, le=180)]
Line = Literal["outside", "inside"]
Outlet = Literal["pit", "daylight", "bleeders", "lower stone"]


def listed(value: Any) -> Any:
    """Return a single table as a list of one: `[drain]` means the same as `[[drain]]` once."""
    return [value] if isinstance(value, dict) else value


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


class Bleeders(Record):
    """Short pipes through the footing that join the drain outside it with the one inside.

    spacing: at most, along the footing. invert: level against the area's TOF; unless given, the
    outlet's invert of the drain that empties through them.
    """

    pipe: Name = "sch40-3"
    spacing: Annotated[float, Span("2 ft", "40 ft", "8 ft")] = 8 * FOOT
    invert: LevelValue | None = None


DaylightList = Annotated[
    tuple[Daylight, ...],
    BeforeValidator(listed, json_schema_input_type=Daylight | tuple[Daylight, ...]),
    Field(max_length=3),
]


class Drain(Record):
    """A perforated pipe along a footing, falling from a high point to its outlet or outlets.

    line: which face of the footing it runs along; inside, it lies under the floor.
    sides: "all" or numbers of the outline's sides (side 1 runs from corner 1 to corner 2).
    offset: footing's face to the pipe's centre. outlet_invert: level of the invert at the low end
    against the area's TOF; unless given, the trench bottom there is the footing's bottom.
    outlet: what the low point empties into; unless given the sump pit, if there is one, and
    daylight, if that is given as well.
    "bleeders": through the footing into the drain on its other face. "lower stone": at an open end
    into the stone of a lower area's drain. daylight: pipes to open air, each at a low point of its
    own next to where it heads. high_corner, low_corner: corner numbers; unless given, the low
    point lies next to pit or daylight and the high point is farthest from it.
    """

    name: Name = ""
    area: Name = ""
    line: Line = "outside"
    pipe: Name = "d2729-4"
    sides: Literal["all"] | tuple[int, ...] = "all"
    offset: Clear = 8 * INCH
    fall: Fall = 1 / 96
    outlet_invert: LevelValue | None = None
    outlet: Outlet | None = None
    daylight: DaylightList = ()
    bleeders: Bleeders = Bleeders()
    high_corner: int | None = None
    low_corner: int | None = None
    holes: Holes = Holes()
    stone: DrainStone = DrainStone()
    wrap: Wrap = Wrap()
    cleanouts: tuple[int, ...] = ()


DrainList = Annotated[
    tuple[Drain, ...],
    BeforeValidator(listed, json_schema_input_type=Drain | tuple[Drain, ...]),
    Field(max_length=8),
]


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
