"""The usual figures of an order, each with its source, for either system of units."""

from dataclasses import dataclass
from typing import Literal

from geometry.parts.order import Ordering
from geometry.sources import PRACTICE, Source
from geometry.units import FOOT, INCH, to_unit

FactorUnit = Literal["share", "m", "m3", "kg", "kg/m3", "diameters", "count"]

GIVEN = "given in the design file"

_ARMY_SAND = Source(
    "US Army and Navy earthmoving manuals", clause="sand 1.11 loose, 0.95 compacted",
    sure="second-hand",
)  # fmt: skip
_ARMY_EARTH = Source(
    "US Army and Navy earthmoving manuals", clause="earth 1.25 loose, 0.90 compacted", sure="memory"
)
_SETTLES = Source("common practice, no source: clean stone settles 0 to 5 %", sure="practice")
_FIVE_TEN = Source("common practice, no source: 5 to 10 % over", sure="practice")
_TRIAXLE = Source(
    "common practice, no source: three-axle bodies hold 10 to 18 yd3 and carry 15 to 25 short tons",
    sure="practice",
)
_MIXER = Source("NRMCA", clause="mixers hold 9 to 11 yd3; 8 to 10 in practice")
_MIXER_M = Source("common practice, no source: mixers of 7 to 9 m3", sure="practice")
_QUARTER = Source("a supplier's order page", clause="rounds up to 1/4 yd3")
_EIGHTH = Source(
    "NRMCA", clause="1/8 in on a 4 in slab is 3 %; allow 4 to 10 %", sure="second-hand"
)
_EARTH_FORMED = Source(
    "common practice, no source: 5 to 15 % where earth is the form", sure="practice"
)
_LAP = Source("soil-gas rules ask 12 in", clause="IRC R506, ASTM E1643: 6 in", sure="second-hand")
_TURN_UP = Source("780 CMR", clause="AF103.5.2, turned up 6 in and sealed")
_ROLL = Source("sellers' lists", clause="rolls of 20 x 100 ft; also 14 x 140 ft")
_FABRIC_LAP = Source(
    "common practice, no source: 12 in, 6 in under a trickle of water", sure="practice"
)
_FABRIC_ROLL = Source("makers' rolls of 500 yd2", sure="memory")
_BAR_LAP = Source(
    "common practice, no source: 40 diameters; a permit set seen asks 30", sure="practice"
)


@dataclass(frozen=True)
class Factor:
    """A figure between in place and to buy: what it is, SI value and unit, where it comes from."""

    name: str
    value: float
    unit: FactorUnit
    source: str


@dataclass(frozen=True)
class Usual:
    """A usual figure, SI, for feet and inches and for metric, with the source of each."""

    name: str
    unit: FactorUnit
    feet: float
    metric: float
    source: Source = PRACTICE
    metric_source: Source = PRACTICE

    def factor(self, metric: bool) -> Factor:
        """Return the figure of a system of units."""
        value, source = (self.metric, self.metric_source) if metric else (self.feet, self.source)
        return Factor(self.name, value, self.unit, str(source))


def _share(name: str, value: float, source: Source = PRACTICE) -> Usual:
    return Usual(name, "share", value, value, source, source)


_YARD = to_unit(1.0, "yd**3", "m**3")
_TON = to_unit(1.0, "short_ton", "kg")

USUAL: dict[str, Usual] = {
    "stone.compaction": _share("compaction", 0.05, _SETTLES),
    "stone.waste": _share("waste", 0.05, _FIVE_TEN),
    "base.compaction": _share("compaction", 0.20),
    "base.waste": _share("waste", 0.05, _FIVE_TEN),
    "sand.compaction": _share("compaction", 0.17, _ARMY_SAND),
    "sand.waste": _share("waste", 0.10),
    "soil.compaction": _share("compaction", 0.39, _ARMY_EARTH),
    "soil.waste": _share("waste", 0.05),
    "truck.volume": Usual("truck holds", "m3", 14 * _YARD, 10.0, _TRIAXLE),
    "truck.weight": Usual("truck carries", "kg", 20 * _TON, 18_000.0, _TRIAXLE),
    "concrete.loss": _share("loss", 0.03, _EIGHTH),
    "concrete.slab_variation": Usual("slab thicker by", "m", INCH / 4, 0.006, _EIGHTH, _EIGHTH),
    "concrete.footing_variation": _share("footings wider by", 0.05, _EARTH_FORMED),
    "concrete.wall_variation": _share("wall forms give", 0.02),
    "concrete.step": Usual("rounded up to", "m3", _YARD / 4, 0.25, _QUARTER),
    "concrete.truck": Usual("truck holds", "m3", 9 * _YARD, 8.0, _MIXER, _MIXER_M),
    "concrete.least": Usual("least last load", "m3", 2 * _YARD, 1.5),
    "board.spare": _share("spare for breakage", 0.02),
    "board.tape": Usual("roll of tape", "m", 180 * FOOT, 50.0),
    "sheet.lap": Usual("lap", "m", 12 * INCH, 0.30, _LAP, _LAP),
    "sheet.turn_up": Usual("turn-up", "m", 6 * INCH, 0.15, _TURN_UP, _TURN_UP),
    "sheet.roll_width": Usual("roll width", "m", 20 * FOOT, 4.0, _ROLL),
    "sheet.roll_length": Usual("roll length", "m", 100 * FOOT, 25.0, _ROLL),
    "sheet.tape": Usual("roll of tape", "m", 180 * FOOT, 50.0),
    "fabric.lap": Usual("fabric lap at bends", "m", 12 * INCH, 0.30, _FABRIC_LAP, _FABRIC_LAP),
    "fabric.roll_width": Usual("fabric roll width", "m", 12.5 * FOOT, 5.0, _FABRIC_ROLL),
    "fabric.roll_length": Usual("fabric roll length", "m", 360 * FOOT, 100.0, _FABRIC_ROLL),
    "pipe.stick": Usual("pipe stick", "m", 10 * FOOT, 5.0),
    "pipe.coil": Usual("pipe coil", "m", 100 * FOOT, 50.0),
    "pipe.joints": Usual("joints to a can", "count", 25, 25),
    "tube.coil": Usual("coil", "m", 300 * FOOT, 100.0),
    "bars.stick": Usual("bar stick", "m", 20 * FOOT, 6.0),
    "bars.lap": Usual("lap", "diameters", 40, 40, _BAR_LAP, _BAR_LAP),
    "bars.ties": Usual("ties at a lap", "count", 3, 3),
    "bars.wire": Usual("roll of wire", "m", 330 * FOOT, 100.0),
}


def ordering_factor(order: Ordering, metric: bool, key: str) -> Factor:
    """Return the figure of a key such as `stone.waste`: the order's own, or the usual one."""
    usual, (group, name) = USUAL[key], key.split(".")
    given = getattr(getattr(order, group), name)
    if given is None:
        return usual.factor(metric)
    return Factor(usual.name, float(given), usual.unit, GIVEN)
