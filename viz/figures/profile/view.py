"""How lengths and heights of the profile lie on paper."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import log

from viz.drawing.place import Item, spread

TALL = (1, 2, 5, 10, 15, 20, 25)


@dataclass(frozen=True)
class View:
    """per_metre: millimetres of paper for a metre along the pipe; heights are `tall` times that.

    The origin is the pipe's left end at the project's top of footing.
    """

    per_metre: float
    tall: int

    def x(self, run: float) -> float:
        """Return a distance along the pipe on paper, mm."""
        return run * self.per_metre

    def run(self, x: float) -> float:
        """Return how far along the pipe a place on paper lies, metres."""
        return x / self.per_metre

    def y(self, level: float) -> float:
        """Return a level on paper, mm."""
        return level * self.per_metre * self.tall


def taller(height_mm: float, good_mm: float) -> int:
    """Return how many times to enlarge heights that are so high at the scale of the lengths.

    good_mm: the height the picture is best read at.
    """
    return min(TALL, key=lambda tall: abs(log(tall * height_mm / good_mm)))


def rank(wanted: Iterable[tuple[float, float]], gap: float) -> tuple[float, ...]:
    """Return a middle for each (wanted middle, width) in order, `gap` apart; the row grows to fit.

    It keeps between the outer edges of the first and the last where that is enough.
    """
    row = list(wanted)
    if not row:
        return ()
    items = [Item(middle, width) for middle, width in row]
    low, high = row[0][0] - row[0][1] / 2, row[-1][0] + row[-1][1] / 2
    needed = sum(width for _, width in row) + gap * (len(row) - 1)
    spare = max(0.0, needed - (high - low)) / 2
    return spread(items, low - spare, high + spare, gap)
