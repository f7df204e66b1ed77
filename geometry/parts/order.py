"""What turns a thing in place into an order: allowances, laps, the sizes it is sold in, prices.

A value that is not given is the usual one of the design's own units; `takeoff.usual` holds them,
each with its source.
"""

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, WithJsonSchema
from pydantic_core import PydanticCustomError

from geometry.parts.fields import Name, Record, Span
from geometry.parts.measured import Measure

Unit = Literal[
    "ton", "t", "yd3", "m3", "board", "roll", "stick", "coil", "piece", "can", "m2", "ft2"
]

_SHARE_FORM = "write it like 5 % or 0.05"


def _share(value: Any) -> float:
    text = str(value).strip()
    per_cent = text.endswith("%")
    try:
        number = float(text.removesuffix("%"))
    except ValueError:
        number = float("nan")
    share = number / 100 if per_cent else number
    if isinstance(value, bool) or not 0 <= share <= 1:
        sentence = f"{text[:40]} is no share from 0 to 100 %; {_SHARE_FORM}"
        raise PydanticCustomError("design", "{sentence}", {"sentence": sentence})
    return share


_SHARE_SCHEMA = {"type": ["string", "number"], "description": "a share: 5 % or 0.05"}
Share = Annotated[float, BeforeValidator(_share), WithJsonSchema(_SHARE_SCHEMA)]
LooseDensity = Annotated[float, Measure("density", "40 lb/ft3", "200 lb/ft3")]
LoadVolume = Annotated[float, Measure("volume", "0.25 yd3", "100 yd3")]
LoadWeight = Annotated[float, Measure("mass", "500 lb", "60 tons")]
SmallVolume = Annotated[float, Measure("volume", "0.01 yd3", "20 yd3")]
Lap = Annotated[float, Span("1 in", "4 ft", "6 in")]
Upturn = Annotated[float, Span("0", "4 ft", "6 in")]
Extra = Annotated[float, Span("0", "3 in", "1/4 in")]
RollWidth = Annotated[float, Span("1 ft", "60 ft", "12 ft")]
RollLength = Annotated[float, Span("5 ft", "2000 ft", "100 ft")]
BoardSide = Annotated[float, Span("1 ft", "20 ft", "4 ft")]
StickLength = Annotated[float, Span("2 ft", "60 ft", "10 ft")]
Apart = Annotated[float, Span("6 in", "20 ft", "4 ft")]


class Bulk(Record):
    """Stone, base, sand or soil. compaction: loose over compacted volume, less one.

    waste: lost and left over, on top of that. density: the supplier's figure, loose.
    """

    compaction: Share | None = None
    waste: Share | None = None
    density: LooseDensity | None = None


class Truck(Record):
    """A load of stone or sand: what the body holds and what it may weigh; the lesser decides."""

    volume: LoadVolume | None = None
    weight: LoadWeight | None = None


class ConcreteOrder(Record):
    """Ready-mixed concrete. loss: spilt, left in drum and pump, shrunk.

    slab_variation: how much thicker than drawn a slab comes out, on the mean. footing_variation,
    wall_variation: shares by which trench and forms give. step: the supplier rounds up to it.
    truck: a full load. least: the least the last truck is sent with.
    """

    loss: Share | None = None
    slab_variation: Extra | None = None
    footing_variation: Share | None = None
    wall_variation: Share | None = None
    step: SmallVolume | None = None
    truck: LoadVolume | None = None
    least: SmallVolume | None = None


class BoardOrder(Record):
    """Foam boards. width, length: the catalogue's unless given. reuse: offcuts are laid too.

    spare: boards more, for breakage. tape: length of a roll for the joints.
    """

    width: BoardSide | None = None
    length: BoardSide | None = None
    reuse: bool = True
    spare: Share | None = None
    tape: RollLength | None = None


class SheetOrder(Record):
    """The vapor retarder: lap of a strip on the next, turn-up at walls, rolls of sheet and tape."""

    lap: Lap | None = None
    turn_up: Upturn | None = None
    roll_width: RollWidth | None = None
    roll_length: RollLength | None = None
    tape: RollLength | None = None


class FabricOrder(Record):
    """The drain's wrap: lap of a piece on the next, and the roll."""

    lap: Lap | None = None
    roll_width: RollWidth | None = None
    roll_length: RollLength | None = None


class PipeOrder(Record):
    """Pipe: length of a stick, or of a coil for corrugated pipe; glued joints to a can."""

    stick: StickLength | None = None
    coil: RollLength | None = None
    joints: Annotated[int, Field(ge=1, le=500)] | None = None


class TubeOrder(Record):
    """Heating tubes: length of a coil; loops are cut from it whole, none is jointed in the slab."""

    coil: RollLength | None = None


class BarOrder(Record):
    """Bars: length of a stick; lap in bar diameters; supports only where their distance is given.

    ties: at each lap. wire: length of a roll of tie wire.
    """

    stick: StickLength | None = None
    lap: Annotated[float, Field(ge=10, le=100)] | None = None
    ties: Annotated[int, Field(ge=0, le=20)] | None = None
    wire: RollLength | None = None
    chairs: Apart | None = None


class Price(Record):
    """A price that was told. of: a material's key or an item of the order; per: a unit sold."""

    of: Name
    each: Annotated[float, Field(ge=0, le=1e6)]
    per: Unit


class Ordering(Record):
    """How this job's materials are bought; currency: the word printed behind prices."""

    stone: Bulk = Bulk()
    base: Bulk = Bulk()
    sand: Bulk = Bulk()
    soil: Bulk = Bulk()
    truck: Truck = Truck()
    concrete: ConcreteOrder = ConcreteOrder()
    board: BoardOrder = BoardOrder()
    sheet: SheetOrder = SheetOrder()
    fabric: FabricOrder = FabricOrder()
    pipe: PipeOrder = PipeOrder()
    tube: TubeOrder = TubeOrder()
    bars: BarOrder = BarOrder()
    prices: Annotated[tuple[Price, ...], Field(max_length=100)] = Field((), alias="price")
    currency: Name = ""
