"""The grid that tubes run on: unit boxes that lie wholly in the floor, and cells of four places.

A cell is a unit box whose both numbers are even in the cell's own count: cell (i, j) has its four
places at (2i, 2j) to (2i + 1, 2j + 1). A tree through cells, walked round, is one closed tube at
the spacing that never crosses itself: the walk round a comb is a serpentine, that round a spiral
a double spiral.
"""

from collections.abc import Container, Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import product

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

Cell = tuple[int, int]
STEPS: tuple[Cell, ...] = ((1, 0), (0, 1), (-1, 0), (0, -1))

# Tubes may lie on the very edge of their region (10 micrometres).
_ON_EDGE_M = 1e-5
# Places for the grid that are tried along each axis, at the most.
_MOST_PLACES = 6
# A grid with this share of the most cells is as good; of those, so many are looked at.
_ENOUGH = 0.98
_LOOKED_AT = 5
_ALIKE_M = 0.005


@dataclass(frozen=True, eq=False)
class Grid:
    """Places at a spacing, metres. origin: of place (0, 0). clear: unit boxes in the region."""

    origin: tuple[float, float]
    spacing: float
    clear: frozenset[Cell]

    @cached_property
    def free(self) -> frozenset[Cell]:
        """All cells that lie in the region."""
        return frozenset((a // 2, b // 2) for a, b in self.clear if a % 2 == 0 and b % 2 == 0)

    @cached_property
    def near(self) -> dict[Cell, tuple[Cell, ...]]:
        """The neighbours of every cell that a tube can pass to."""
        free = self.free
        return {
            (i, j): tuple(
                (i + dx, j + dy)
                for dx, dy in STEPS
                if (i + dx, j + dy) in free and (2 * i + dx, 2 * j + dy) in self.clear
            )
            for i, j in free
        }

    @cached_property
    def cells(self) -> frozenset[Cell]:
        """The cells in the largest part of the floor that hangs together."""
        left, found = set(self.free), set[Cell]()
        while len(left) > len(found):
            part = reached(min(left), left, self)
            left -= part
            found = max(found, part, key=len)
        return frozenset(found)

    def linked(self, cell: Cell, step: Cell) -> bool:
        """Whether a tube can pass from a cell to its neighbour."""
        return (cell[0] + step[0], cell[1] + step[1]) in self.near[cell]

    def neighbours(self, cell: Cell, among: Container[Cell]) -> Iterator[Cell]:
        """Yield the neighbours of a cell that a tube can pass to."""
        return (other for other in self.near[cell] if other in among)

    def at(self, place: tuple[float, float]) -> tuple[float, float]:
        """Return where a place lies, metres in the grid's frame."""
        return (
            self.origin[0] + place[0] * self.spacing,
            self.origin[1] + place[1] * self.spacing,
        )


def reached(start: Cell, among: Container[Cell], grid: Grid) -> set[Cell]:
    """Return the cells that hang together with one."""
    near = grid.near
    found, todo = {start}, [start]
    while todo:
        for other in near[todo.pop()]:
            if other in among and other not in found:
                found.add(other)
                todo.append(other)
    return found


def lay_grid(region: Polygon, spacing: float) -> Grid:
    """Return the grid that has the most cells in a region, in the middle of it where it can."""
    west, south, east, north = region.bounds
    coords = shapely.get_coordinates(region)
    across = _places(west, east, coords[:, 0], spacing)
    along = _places(south, north, coords[:, 1], spacing)
    wide = region.buffer(_ON_EDGE_M)
    shapely.prepare(wide)
    found = [
        (int(cells.sum()), _lopsided(cells, place, spacing, region.bounds), place, clear, (dx, dy))
        for x, y in product(across, along)
        for clear in (_clear(wide, (x, y), spacing),)
        for dx, dy in product((0, 1), (0, 1))
        for cells in (clear[dx::2, dy::2],)
        for place in ((x + dx * spacing, y + dy * spacing),)
    ]
    enough = _ENOUGH * max(row[0] for row in found)
    likely = sorted((row for row in found if row[0] >= enough), key=lambda row: row[1:3])
    grids = [
        Grid(place, spacing, _boxes(clear, *parity))
        for _, _, place, clear, parity in likely[:_LOOKED_AT]
    ]
    most = max(len(grid.cells) for grid in grids)
    return next(grid for grid in grids if len(grid.cells) >= _ENOUGH * most)


def _places(low: float, high: float, corners: NDArray[np.float64], spacing: float) -> list[float]:
    """Return where the first line may lie: against a side, or with both sides' rests alike."""
    rest = (high - low) % spacing
    wanted = [low, low + rest / 2, low + rest, low + (rest + spacing) / 2, *corners]
    found: list[float] = []
    for place in wanted:
        first = float(low + (place - low) % spacing)
        if all(abs(first - other) > _ALIKE_M for other in found):
            found.append(first)
    return found[:_MOST_PLACES]


def _clear(region: Polygon, origin: tuple[float, float], spacing: float) -> NDArray[np.bool_]:
    """Return which unit boxes from an origin on lie wholly in a prepared region."""
    _, _, east, north = region.bounds
    x = np.arange(origin[0], east, spacing)
    y = np.arange(origin[1], north, spacing)
    west, south = np.meshgrid(x, y, indexing="ij")
    boxes = shapely.box(west, south, west + spacing, south + spacing)
    inside: NDArray[np.bool_] = shapely.contains(region, boxes)
    return inside


def _lopsided(
    cells: NDArray[np.bool_],
    place: tuple[float, float],
    spacing: float,
    bounds: tuple[float, float, float, float],
) -> float:
    """Return how much farther tubes lie from one side than from the other, both ways, m.

    place: of the first cell's first place.
    """
    total = 0.0
    for axis in (0, 1):
        taken = np.flatnonzero(cells.any(axis=1 - axis))
        if len(taken):
            low = place[axis] + 2 * int(taken[0]) * spacing
            high = place[axis] + (2 * int(taken[-1]) + 1) * spacing
            total += abs((low - bounds[axis]) - (bounds[axis + 2] - high))
    return round(total, 6)


def _boxes(clear: NDArray[np.bool_], dx: int, dy: int) -> frozenset[Cell]:
    return frozenset((int(a) - dx, int(b) - dy) for a, b in np.argwhere(clear))
