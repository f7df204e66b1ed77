"""What a hold point holds: sentences by key with this job's values, no words."""

from dataclasses import dataclass
from typing import Literal

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.sources import Source

HoldKey = Literal["subgrade", "footing", "wall", "drain", "pit", "base", "foam", "slab"]
Kind = Literal[
    "length", "level", "elevation", "fall", "count", "volume", "material", "line", "words"
]


@dataclass(frozen=True)
class Value:
    """A value in a sentence: its name there; SI, or the key or words it stands for."""

    name: str
    value: float | str
    kind: Kind = "length"


@dataclass(frozen=True)
class Line:
    """One thing to look at or to photograph: the key of its sentence, and the values in it."""

    key: str
    values: tuple[Value, ...] = ()


@dataclass(frozen=True)
class HoldPoint:
    """Stop here: what is looked at and photographed before the next thing covers it.

    area: empty for the whole house. drain: as `drains.called` says. source: who asks
    for such an inspection.
    """

    key: HoldKey
    checks: tuple[Line, ...]
    photos: tuple[Line, ...]
    source: Source
    area: str = ""
    drain: str = ""


def level_values(layout: Layout, level: float) -> tuple[Value, Value]:
    """Return a level from the project's TOF, and its elevation, as values of a sentence."""
    elevation = layout.design.datum.top_of_footing + level
    return Value("level", level, "level"), Value("elevation", elevation, "elevation")


def area_value(area: AreaLayout) -> Value:
    """Return an area's name as a value of a sentence."""
    return Value("area", area.name, "words")
