"""Marks on paper: millimetres, x to the right, y up from the lower left corner.

Every writer draws the simple marks alone; hatches, leaders and level symbols are made of them
in `expand.py`. `layer` groups marks that belong together.
"""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from shapely import MultiPolygon, Polygon

from viz.style.lines import INK, LEADER
from viz.style.materials import HatchName

Point: TypeAlias = tuple[float, float]
Area: TypeAlias = Polygon | MultiPolygon
Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True)
class Line:
    """One polyline. weight: mm. dash: mm on, mm off, and so on."""

    points: tuple[Point, ...]
    weight: float
    colour: str = INK
    dash: tuple[float, ...] = ()
    layer: str = ""


@dataclass(frozen=True)
class Strokes:
    """Many polylines of one weight and colour."""

    lines: tuple[tuple[Point, ...], ...]
    weight: float
    colour: str = INK
    layer: str = ""


@dataclass(frozen=True)
class Fill:
    """A plain coloured area."""

    shape: Area
    colour: str
    layer: str = ""


@dataclass(frozen=True)
class Circle:
    """A circle; without `fill` it is an outline, with weight 0 a dot."""

    centre: Point
    radius: float
    weight: float
    colour: str = INK
    fill: str | None = None
    layer: str = ""


@dataclass(frozen=True)
class Text:
    """One line of text. at: where its baseline starts, ends or has its middle. height: capitals."""

    at: Point
    words: str
    height: float
    bold: bool = False
    anchor: Anchor = "start"
    colour: str = INK
    layer: str = ""


@dataclass(frozen=True)
class Hatch:
    """An area filled with a named hatch."""

    shape: Area
    name: HatchName
    colour: str
    layer: str = ""


@dataclass(frozen=True)
class Leader:
    """A line from a dot on the thing to its label; a white edge keeps it clear of hatches."""

    points: tuple[Point, ...]
    weight: float = LEADER
    layer: str = ""


@dataclass(frozen=True)
class LevelSymbol:
    """The triangle that stands with its point on a level. filled: for the datum."""

    at: Point
    size: float
    filled: bool = False
    layer: str = ""


Simple: TypeAlias = Line | Strokes | Fill | Circle | Text
Mark: TypeAlias = Simple | Hatch | Leader | LevelSymbol
