"""Corners and grid lines listed in the key, where strings of dimensions would crowd the plan."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np

from geometry.layout.lay import Layout
from geometry.plan.outline import Point
from geometry.units import show_length
from viz.drawing.fonts import text_width
from viz.figures.plan.grid import GridLine, letters
from viz.figures.plan.key import Entry
from viz.figures.plan.onpaper import OnPaper, unit
from viz.figures.plan.signs import Sign
from viz.figures.plan.strings import BOTTOM, LEFT, Corners, Look

# More figures than this that find no place in their gap, or lengths no string tells, are too many.
_MANY = 4
_AIR = 0.8

Rows = dict[Look, list[tuple[float, ...]]]


@dataclass(frozen=True, eq=False)
class Listed:
    """Corners and grid of a design, to be told by distances from the left and the low end."""

    layout: Layout
    corners: Corners
    grid: tuple[Sequence[GridLine], Sequence[GridLine]]
    paper: OnPaper

    @property
    def rows(self) -> Rows:
        """The strings that are left: the whole house both ways."""
        left, low, right, high = self.corners.bounds
        return {BOTTOM: [(left, right)], LEFT: [(low, high)]}

    @cached_property
    def named(self) -> tuple[tuple[str, Point], ...]:
        """Every corner with its letters, metres: round from the left."""
        points = sorted((float(x), float(y)) for x, y in self.corners.points)
        return tuple((letters(n).lower(), point) for n, point in enumerate(points))

    def signs(self) -> Iterator[Sign]:
        """Yield a sign for every corner."""
        middle = self.corners.house.centroid
        for name, point in self.named:
            way = unit((point[0] - middle.x, point[1] - middle.y))
            yield Sign(name, self.paper.point(point), (float(way[0]), float(way[1])), away=1.2)

    def groups(self) -> Iterator[tuple[Entry, ...]]:
        """Yield the entries of the corners, and those of the grid."""
        left, low, _, _ = self.corners.bounds
        about = "Corners: x from the left, y from the low end of the overall dimensions"
        rows = [
            Entry(name, cells=(f"x {self._size(x - left)}", f"y {self._size(y - low)}"))
            for name, (x, y) in self.named
        ]
        yield (Entry(lines=(about,)), *rows)
        lines = [
            f"{axis}: " + ", ".join(f"{g.name} at {self._size(g.place - start)}" for g in family)
            for axis, start, family in zip("xy", (left, low), self.grid, strict=True)
            if family
        ]
        if lines:
            yield (Entry(lines=("Grid lines from the same ends", *lines)),)

    def _size(self, metres: float) -> str:
        return show_length(metres, self.layout.design.project.units)

    def crowded(self, rows: Rows, text: float) -> bool:
        """Tell whether strings of these rows would have too many figures beside their gaps."""
        beside = len(self.corners.untold())
        for look, chains in rows.items():
            for a, b in (gap for places in chains for gap in pairwise(places)):
                needed = text if look.axis else text_width(self._size(b - a), text)
                beside += bool(self.paper.size(float(np.subtract(b, a))) < needed + 2 * _AIR)
        return beside > _MANY
