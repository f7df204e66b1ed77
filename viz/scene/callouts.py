"""Labels beside a picture: columns without overlap, leaders that cross nothing."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

Side = Literal["left", "right"]
Spot = tuple[float, float]


@dataclass(frozen=True)
class Callout:
    """A label of one column and what it points at; all lengths in pixels, down and rightwards.

    rows: its lines, bold or not. spot: what it points at.
    bend: across, where its leader turns from level to slanted; the same for a whole column,
    clear of its words and not beyond any of its spots.
    tall: the height it takes. drop: from its upper edge to its leader; the same for a column.
    top: its upper edge.
    """

    rows: tuple[tuple[str, bool], ...]
    side: Side
    spot: Spot
    bend: float
    tall: float
    drop: float
    top: float = 0.0

    @property
    def port(self) -> Spot:
        """Where the leader turns."""
        return self.bend, self.top + self.drop


def stacked(callouts: Sequence[Callout], top: float, bottom: float) -> list[Callout]:
    """One column's callouts between two heights, from above; none overlaps, no leaders cross.

    Each label in turn takes the spot that its leader passes above all the others left: they and
    their labels then lie below that leader's line, and so do their leaders.
    """
    left, placed, cursor = sorted(callouts, key=lambda item: item.spot[1]), [], top
    while left:
        first = _spread(left, cursor, bottom)
        port = first + left[0].drop
        chosen = min(left, key=lambda item: _fall(item, port))
        left.remove(chosen)
        placed.append(replace(chosen, top=first))
        cursor = first + chosen.tall
    return placed


def _fall(item: Callout, port: float) -> tuple[float, float]:
    """How steeply the leader would fall from a port, then how far it goes."""
    away = max(abs(item.spot[0] - item.bend), 1e-9)
    return (item.spot[1] - port) / away, away


def _spread(ordered: Sequence[Callout], top: float, bottom: float) -> float:
    """The first label's upper edge, if all stand as near to level with their spots as can be.

    Pooled least squares: labels that would overlap form blocks, and each block its mean wish.
    """
    blocks: list[tuple[float, int]] = []  # sum of the wishes for the first edge, and their count
    before = 0.0
    for item in ordered:
        block = (item.spot[1] - item.drop - before, 1)
        before += item.tall
        while blocks and blocks[-1][0] / blocks[-1][1] > block[0] / block[1]:
            total, count = blocks.pop()
            block = (block[0] + total, block[1] + count)
        blocks.append(block)
    total, count = blocks[0]
    return max(top, min(total / count, bottom - before))
