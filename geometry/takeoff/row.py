"""The order as rows: in place, each factor, to buy, units sold; and the cuts behind them."""

from dataclasses import dataclass
from typing import Literal

from geometry.parts.order import Unit
from geometry.parts.usual import Factor

Group = Literal[
    "stone and sand", "concrete", "foam", "sheet", "drain", "bars", "pit", "wall", "heating"
]
Measured = Literal["m3", "m2", "m", "pieces"]


@dataclass(frozen=True)
class Part:
    """One place a material goes to, and how much of it lies there, in the row's unit."""

    name: str
    in_place: float


@dataclass(frozen=True)
class Row:
    """One line of the order.

    in_place, to_buy: in `unit`. sold, count: the unit it is sold in and how many; for stone, sand
    and concrete the volume. mass_kg: least and most, where it is sold by weight as well. trucks:
    loads, at the most. cost: least and most, where a price was entered.
    """

    group: Group
    item: str
    material: str
    area: str
    in_place: float
    unit: Measured
    factors: tuple[Factor, ...]
    to_buy: float
    sold: Unit
    count: float
    parts: tuple[Part, ...] = ()
    mass_kg: tuple[float, float] | None = None
    trucks: int | None = None
    cost: tuple[float, float] | None = None
    note: str = ""


@dataclass(frozen=True)
class Cut:
    """A piece to cut: what it is for, and its length in metres."""

    what: str
    length_m: float


@dataclass(frozen=True)
class Stock:
    """One stick or roll, the pieces cut from it, and what is left, metres."""

    cuts: tuple[Cut, ...]
    left_m: float


@dataclass(frozen=True)
class CutList:
    """How the sticks or rolls of one row are cut. joints: where a run goes on in another piece."""

    item: str
    material: str
    stock_m: float
    stocks: tuple[Stock, ...]
    joints: int


@dataclass(frozen=True)
class Pour:
    """One pour of concrete, m3; loads as the trucks bring them.

    step_m, step_m3, step_share: what so much more thickness of a slab takes; None for others.
    """

    name: str
    area: str
    material: str
    neat_m3: float
    variation_m3: float
    loss_m3: float
    ordered_m3: float
    loads_m3: tuple[float, ...]
    step_m: float | None = None
    step_m3: float | None = None
    step_share: float | None = None


@dataclass(frozen=True)
class Order:
    """The whole order. left_out: what a design needs that is not counted here, in sentences."""

    rows: tuple[Row, ...]
    pours: tuple[Pour, ...]
    cuts: tuple[CutList, ...]
    left_out: tuple[str, ...]
    currency: str
    cost: tuple[float, float] | None
