"""What a rule on a drain's height says: which point of it, against which level, on which side."""

from dataclasses import dataclass
from typing import Literal

from geometry.sources import Source

DrainPoint = Literal[
    "trench bottom", "pipe underside", "invert", "lowest hole", "highest hole", "crown", "stone top"
]
Sense = Literal["at or below", "at or above"]
Reference = Literal["TOF", "footing bottom", "slab top", "slab underside", "base underside"]
Measure = Literal["stone beyond footing", "bedding", "stone over pipe", "stone beside pipe"]


@dataclass(frozen=True)
class HeightRule:
    """One point of the drain held to one level, wherever along the drain it is.

    reference: a `Reference` (slab top: the finished floor; base underside: the subgrade), or a
    level's name as the design file has it. margin_m: how far beyond the reference at least,
    metres; negative lets the point past it by so much. or_reference: a second level that is
    enough as well. note: what the text leaves open, and how it is read here.
    """

    key: str
    title: str
    point: DrainPoint
    reference: str
    sense: Sense
    margin_m: float
    source: Source
    note: str = ""
    or_reference: Reference | None = None


@dataclass(frozen=True)
class SizeRule:
    """A thickness or width of the drain's stone that must be there at least, metres."""

    key: str
    title: str
    measure: Measure
    least_m: float
    source: Source
    note: str = ""


@dataclass(frozen=True)
class FallRule:
    """The least fall along the drain that somebody asks for, metres per metre."""

    key: str
    title: str
    least: float
    source: Source


@dataclass(frozen=True)
class RuleSet:
    """Rules in force together. local: of one town or agency, shown to compare and not checked."""

    key: str
    title: str
    heights: tuple[HeightRule, ...]
    sizes: tuple[SizeRule, ...] = ()
    local: bool = False
