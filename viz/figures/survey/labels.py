"""Words on the map, each in a free place near its thing, or left out where there is none."""

from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from viz.drawing.fonts import text_width
from viz.drawing.marks import Point, Text
from viz.drawing.page import Box
from viz.style.text import DESCENT

# Ways to step aside from a dot, and how far, mm.
_TURNS = np.arange(16) * np.pi / 8
_GAP = 0.5


class Free:
    """What is taken on the map so far, as boxes, and the ground words stay on, mm."""

    def __init__(self, taken: Sequence[Box], ground: BaseGeometry, lines: BaseGeometry) -> None:
        """Begin with what no words may cover, where they stay, and lines they rather keep off."""
        self._boxes = [(b.left, b.low, b.right, b.high) for b in taken]
        self._ground, self._lines = ground, lines
        shapely.prepare(ground)
        shapely.prepare(lines)

    def take(self, box: Box) -> None:
        """Keep a box free of words from now on."""
        self._boxes.append((box.left, box.low, box.right, box.high))

    def label(
        self, at: Point, words: str, height: float, reach: Sequence[float], bold: bool = False
    ) -> Text | None:
        """Return words in the nearest free place beside a point; None where all are taken.

        reach: distances from the point to the edge of the words that are tried, mm.
        """
        wide, high = text_width(words, height, bold), height * (1 + DESCENT)
        for box in self._in_order(at, wide, high, reach):
            if not self._met(box):
                self.take(box)
                middle = (box.left + box.right) / 2
                return Text((middle, box.low + DESCENT * height), words, height, bold, "middle",
                            layer="labels")  # fmt: skip
        return None

    def _in_order(
        self, at: Point, wide: float, high: float, reach: Sequence[float]
    ) -> Iterator[Box]:
        """Yield boxes on the ground, those off the lines first."""
        places = list(_places(at, wide, high, reach))
        shapes = shapely.box(*np.array([(b.left, b.low, b.right, b.high) for b in places]).T)
        on = shapely.contains(self._ground, shapes)
        crossed = shapely.intersects(self._lines, shapes)
        for flags in (on & ~crossed, on & crossed):
            yield from (places[n] for n in np.flatnonzero(flags))

    def _met(self, box: Box) -> bool:
        if not self._boxes:
            return False
        held = np.array(self._boxes)
        apart = (
            (held[:, 0] >= box.right + _GAP)
            | (held[:, 2] <= box.left - _GAP)
            | (held[:, 1] >= box.high + _GAP)
            | (held[:, 3] <= box.low - _GAP)
        )
        return not bool(apart.all())


def _places(at: Point, wide: float, high: float, reach: Sequence[float]) -> Iterator[Box]:
    """Yield boxes round a point, the nearest first, each ring beginning at the right."""
    for far in reach:
        for turn in _TURNS:
            across, up = float(np.cos(turn)), float(np.sin(turn))
            x = at[0] + across * (far + wide / 2)
            y = at[1] + up * (far + high / 2)
            yield Box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)


def around(at: Point, radius: float) -> Box:
    """Return the box about a round thing."""
    return Box(at[0] - radius, at[1] - radius, at[0] + radius, at[1] + radius)
