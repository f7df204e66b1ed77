"""Labels beside a picture: columns without overlap, leaders that cross nothing."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

Side = Literal["left", "right"]
Spot = tuple[float, float]
STEPS = (0, -1, 1, -2, 2, -3, 3)  # a label moves so far for its leader to clear other dots


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

    callouts: not placed yet, their tops 0.
    """
    left, placed, cursor = sorted(callouts, key=lambda item: item.spot[1]), [], top
    while left:
        lowest = max(cursor, bottom - sum(item.tall for item in left))
        wished = _spread(left, cursor, bottom)
        step = left[0].drop / 3
        tries = (min(max(wished + n * step, cursor), lowest) for n in STEPS)
        options = [_first(left, edge) for edge in tries]
        clear = (item for item in options if _clearance(item, callouts) >= step)
        chosen = next(clear, options[0])
        left.remove(replace(chosen, top=0.0))
        placed.append(chosen)
        cursor = chosen.top + chosen.tall
    return placed


def _first(left: Sequence[Callout], top: float) -> Callout:
    """The callout whose leader passes above all the other spots, with its upper edge there."""
    return replace(min(left, key=lambda item: _fall(item, top + item.drop)), top=top)


def _fall(item: Callout, port: float) -> tuple[float, float]:
    """How steeply the leader would fall from a port, then how far it goes."""
    away = max(abs(item.spot[0] - item.bend), 1e-9)
    return (item.spot[1] - port) / away, away


def _clearance(item: Callout, others: Sequence[Callout]) -> float:
    """How far above or below its leader the nearest of the other dots it passes lies, pixels."""
    slope, reach = _fall(item, item.port[1])
    passed = [o.spot for o in others if o.spot != item.spot and abs(o.spot[0] - o.bend) <= reach]
    lines = ((item.port[1] + slope * abs(x - item.bend), y) for x, y in passed)
    return min((abs(line - y) for line, y in lines), default=float("inf"))


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
