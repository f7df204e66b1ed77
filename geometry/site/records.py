"""What a crew needs to know of one stage: keys and figures, no words."""

from dataclasses import dataclass
from typing import Literal

from geometry.parts.order import Unit
from geometry.sources import Source
from geometry.takeoff.row import Measured

StageKey = Literal[
    "subgrade", "bedding", "pipe", "inverts", "drain_stone", "backfill", "pit", "fill",
    "base", "blinding", "retarder", "insulation", "edge_board", "slab",
]  # fmt: skip
Portion = Literal["whole", "under pipe", "over pipe"]
Watcher = Literal["builder", "inspector"]


@dataclass(frozen=True)
class Place:
    """Where a level is shot: a key such as "corner", and its number where it has one."""

    key: str
    number: int | None = None


@dataclass(frozen=True)
class Shot:
    """A level of a stage, metres.

    key: what is shot: "top", "subgrade", "invert", "rim" and so on. area, drain: whose, empty
    where it says nothing. level: against the project's TOF. above_tof: against the area's own, as
    it is marked on a story pole. rod: None without a laser.
    """

    key: str
    area: str
    level: float
    above_tof: float
    elevation: float
    rod: float | None
    drain: str = ""
    places: tuple[Place, ...] = ()


@dataclass(frozen=True)
class Amount:
    """What is bought for a stage, off the order.

    key: what it is. in_place: in `unit`. to_buy: the same with every allowance of the order.
    count: in the unit it is sold in. shared: to_buy and count are for other stages as well, which
    take it from the same rolls or sticks. mass_kg: least and most.
    """

    key: str
    material: str
    area: str
    in_place: float
    unit: Measured
    to_buy: float
    sold: Unit
    count: float
    shared: bool = False
    mass_kg: tuple[float, float] | None = None


@dataclass(frozen=True)
class Figure:
    """A figure in a sentence: the name of its place there, a length in metres or a number."""

    name: str
    value: float
    kind: Literal["length", "count", "share", "fall"] = "length"


@dataclass(frozen=True)
class Hold:
    """What must be seen, and by whom, before the stage is covered."""

    key: str
    by: tuple[Watcher, ...]
    source: Source
    figures: tuple[Figure, ...] = ()


@dataclass(frozen=True)
class Caution:
    """A danger of the stage, in the words of a key."""

    key: str
    source: Source
    figures: tuple[Figure, ...] = ()


@dataclass(frozen=True)
class Stage:
    """One step of the build, ready to be put on a card.

    step: as in `geometry.label.STAGE`. areas: it is done in, lowest first. drain: key of the drain
    it belongs to; empty for others. parts: ids of the parts laid in it. portion: of the drain's
    stone and wrap. thickness: least and most, metres. fall: of the pipe. instructions: keys of
    sentences that say how it is laid, with figures.
    """

    key: StageKey
    step: int
    areas: tuple[str, ...]
    parts: tuple[str, ...]
    drain: str = ""
    portion: Portion = "whole"
    materials: tuple[str, ...] = ()
    thickness: tuple[float, float] | None = None
    fall: float | None = None
    shots: tuple[Shot, ...] = ()
    amounts: tuple[Amount, ...] = ()
    instructions: tuple[str, ...] = ()
    figures: tuple[Figure, ...] = ()
    holds: tuple[Hold, ...] = ()
    cautions: tuple[Caution, ...] = ()
