"""Placing of labels in a column: in order of level, apart, and moved as little as can be."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from geometry.errors import BedcourseError


class NoRoomError(BedcourseError):
    """More labels than a column can hold."""


@dataclass(frozen=True)
class Item:
    """Something to place in a column: where its middle would like to be, and its height, mm.

    weight: how dearly it keeps its place against its neighbours.
    """

    wanted: float
    height: float
    weight: float = 1.0


def spread(items: Sequence[Item], low: float, high: float, gap: float) -> tuple[float, ...]:
    """Return the middles of the items, given from the lowest up, between `low` and `high`.

    Keeps their order and at least `gap` between them, with the least sum of weighted squared
    movements: an isotonic regression on the positions less the heights stacked beneath.
    Raises NoRoomError.
    """
    if not items:
        return ()
    stacked = _stacked(items, gap)
    least = low + items[0].height / 2
    most = high - items[-1].height / 2 - stacked[-1]
    if least > most + 1e-9:
        raise NoRoomError("the labels do not fit the height of this paper; choose a larger paper")
    free = _isotonic([(i.wanted - s, i.weight) for i, s in zip(items, stacked, strict=True)])
    return tuple(
        min(max(value, least), max(most, least)) + offset
        for value, offset in zip(free, stacked, strict=True)
    )


def _stacked(items: Sequence[Item], gap: float) -> list[float]:
    offsets = [0.0]
    for below, above in pairwise(items):
        offsets.append(offsets[-1] + (below.height + above.height) / 2 + gap)
    return offsets


def _isotonic(wanted: Sequence[tuple[float, float]]) -> list[float]:
    """Return the nearest rising values, by pooling neighbours that are out of order."""
    pools: list[tuple[float, float, int]] = []
    for value, weight in wanted:
        pool = (value, weight, 1)
        while pools and pools[-1][0] > pool[0]:
            before = pools.pop()
            total = before[1] + pool[1]
            mean = (before[0] * before[1] + pool[0] * pool[1]) / total
            pool = (mean, total, before[2] + pool[2])
        pools.append(pool)
    return [value for value, _, count in pools for _ in range(count)]
