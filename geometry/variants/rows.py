"""One line of a comparison of each kind: a value for every design, in their order."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from geometry.checks.finding import Severity
from geometry.parts.order import Unit
from geometry.takeoff.row import Group

Values: TypeAlias = tuple[float | None, ...]
"""A figure of every design; None where a design has no such thing."""

Cost: TypeAlias = tuple[float, float]
HeatWhat = Literal["loss", "u", "resistance"]
DrainWhat = Literal["high invert", "low invert", "room over the fall", "fall", "longest", "length"]

_RANKS: dict[Severity | None, int] = {None: -1, "fine": 0, "look": 1, "stop": 2}
# Figures nearer than this, against the larger, are one.
_STILL = 1e-6


def moves(values: Values) -> Values:
    """Return how far each figure lies over the first; None where one of both is missing."""
    first = values[0]
    return tuple(None if v is None or first is None else v - first for v in values)


def differ(values: Values) -> bool:
    """Tell whether the figures of the designs differ, or some have none."""
    known = [v for v in values if v is not None]
    if len(known) < len(values):
        return bool(known)
    return max(known) - min(known) > _STILL * max(1.0, *map(abs, known))


def farthest(values: Values) -> float:
    """Return the greatest difference from the first, either way; of a lacking one its whole."""
    return max(abs((v or 0.0) - (values[0] or 0.0)) for v in values)


@dataclass(frozen=True)
class LevelRow:
    """A level against the project's TOF, metres. group: as in the report's level table."""

    area: str
    group: str
    interface: str
    levels_m: Values


@dataclass(frozen=True)
class VolumeRow:
    """A part's volume in place, m3; without a name all parts of a material together.

    role: of the part; "excavation", "backfill" and "grading" are moved, not bought.
    """

    area: str
    name: str
    role: str
    material: str
    volumes_m3: Values


@dataclass(frozen=True)
class OrderRow:
    """A line of the order: how many of what unit sold, and the cost where prices are given.

    to_buy: the same in SI. sold: the unit each design buys it by; None: it is not bought.
    """

    group: Group
    item: str
    material: str
    area: str
    sold: tuple[Unit | None, ...]
    counts: Values
    to_buy: Values
    costs: tuple[Cost | None, ...]

    @property
    def middles(self) -> Values:
        """The middle of each cost's range; 0 for what is not bought."""
        return tuple(
            sum(cost) / 2 if cost else None if count else 0.0
            for cost, count in zip(self.costs, self.counts, strict=True)
        )

    @property
    def share(self) -> float:
        """The greatest difference in amount from the first, against the largest amount."""
        largest = max(abs(v or 0.0) for v in self.to_buy)
        return farthest(self.to_buy) / largest if largest else 0.0


@dataclass(frozen=True)
class FindingRow:
    """A finding that comes, goes or changes its severity; None: a design has no such finding."""

    id: str
    subject: str
    severities: tuple[Severity | None, ...]
    found: tuple[str, ...]

    @property
    def gravity(self) -> tuple[int, int]:
        """How grave it is at its worst, and how far it moves: the greater, the graver."""
        ranks = [_RANKS[severity] for severity in self.severities]
        return max(ranks), max(abs(rank - ranks[0]) for rank in ranks)

    def way(self, place: int) -> Literal["comes", "goes", "worse", "better", "same"]:
        """Return what becomes of the first design's finding in another. place: of that design."""
        before, after = self.severities[0], self.severities[place]
        if before == after:
            return "same"
        if before is None or after is None:
            return "comes" if before is None else "goes"
        return "worse" if _RANKS[after] > _RANKS[before] else "better"


@dataclass(frozen=True)
class HeatRow:
    """A figure of an area's warmth: loss to the ground W/K, U W/m2K, resistance m2K/W."""

    area: str
    what: HeatWhat
    values: Values


@dataclass(frozen=True)
class DrainRow:
    """A figure of a drain: levels against the project's TOF and lengths in metres, fall m/m.

    "room over the fall": what is left of the room once the fall is taken; below 0 it lacks.
    """

    drain: str
    what: DrainWhat
    values: Values
