"""Where the loops of a floor start: a row of cells before the manifold, and the fan of leads."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, hypot

from shapely import LinearRing, Point

from geometry.layout.tubing.grid import STEPS, Cell, Grid, reached
from geometry.units import INCH

Place = tuple[float, float]

TAP_M = 2 * INCH
"""Between two outlets of a manifold (common practice, no source)."""

# Leads spread no farther to a side than this for each length inward, so that they keep apart.
_SPREAD = 1.7
# A manifold in the floor, or with a wall right before it, is worse by so many spacings.
_WORSE = 40.0
# No farther from the field's edge than this many spacings is at the wall.
_AT_WALL = 1.25
# So many cells may be lost behind the fan.
_LOST = 2


@dataclass(frozen=True)
class Gate:
    """The cells where loops start, in their order along the manifold.

    inward: the step from the manifold into the floor; along: the step from loop to loop. depth:
    cells between the manifold and the first tubes. apron: those cells. back: the middle of the
    manifold, as a place of the grid.
    """

    inward: Cell
    along: Cell
    depth: int
    entries: tuple[Cell, ...]
    apron: frozenset[Cell]
    back: Place


def gates(grid: Grid, count: int, wall: LinearRing, manifold: Place | None) -> Iterator[Gate]:
    """Yield gates for so many loops, the best of each way they can look, the best first.

    That is the nearest to the manifold, metres in the grid's frame; without one, the nearest to the
    middle of the floor. wall: round the field. None where the floor has no such row of cells.
    """
    if not grid.cells:
        return
    aim = manifold or _middle(grid)
    rated = [(round(_cost(grid, one, wall, aim), 6), one) for one in _gates(grid, count)]
    looks: set[Cell] = set()
    for _, one in sorted(rated, key=lambda row: (row[0], row[1].back)):
        if one.inward not in looks and _hangs_together(grid, one):
            looks.add(one.inward)
            yield one


def _middle(grid: Grid) -> Place:
    xs, ys = zip(*grid.cells, strict=True)
    return grid.at((2 * sum(xs) / len(xs) + 0.5, 2 * sum(ys) / len(ys) + 0.5))


def _gates(grid: Grid, count: int) -> Iterator[Gate]:
    """Yield every row of cells that has room for the loops and their fan."""
    spread = count * (grid.spacing - TAP_M)
    depth = ceil(spread / (2 * _SPREAD * grid.spacing)) if count > 1 else 0
    for inward in STEPS:
        along = (-inward[1], inward[0])
        for cell in sorted(grid.cells):
            made = _gate_at(grid, cell, inward, along, (count, depth))
            if made:
                yield made


def _gate_at(
    grid: Grid, cell: Cell, inward: Cell, along: Cell, size: tuple[int, int]
) -> Gate | None:
    count, depth = size
    rows = [[_moved(cell, (along, n), (inward, m)) for n in range(count)] for m in range(depth + 1)]
    all_cells = [c for row in rows for c in row]
    if not all(c in grid.cells for c in all_cells):
        return None
    if not _open(grid, rows, inward, along):
        return None
    apron = frozenset(c for row in rows[:-1] for c in row)
    if depth == 0 and _moved(cell, (inward, -1)) in grid.cells:
        return None
    # The middle of the row's edge that looks away from the floor.
    x, y = 2 * cell[0] + 0.5, 2 * cell[1] + 0.5
    back = (
        x + along[0] * (count - 1) - inward[0] * 0.5,
        y + along[1] * (count - 1) - inward[1] * 0.5,
    )
    return Gate(inward, along, depth, tuple(rows[-1]), apron, back)


def _open(grid: Grid, rows: list[list[Cell]], inward: Cell, along: Cell) -> bool:
    """Whether nothing stands between the cells of the fan."""
    for number, row in enumerate(rows[:-1]):
        if not all(grid.linked(c, along) for c in row[:-1]):
            return False
        if not all(grid.linked(c, inward) for c in rows[number]):
            return False
    return True


def _cost(grid: Grid, one: Gate, wall: LinearRing, aim: Place) -> float:
    """Return how far a gate lies from where it should be, spacings.

    In the floor instead of at a wall is worse, and so is a wall right before it.
    """
    at = grid.at(one.back)
    shut = sum(_moved(c, (one.inward, 1)) not in grid.cells for c in one.entries)
    in_floor = wall.distance(Point(at)) > _AT_WALL * grid.spacing
    worse = _WORSE * (float(in_floor) + shut / len(one.entries))
    away: float = hypot(at[0] - aim[0], at[1] - aim[1]) / grid.spacing
    return away + worse


def _hangs_together(grid: Grid, one: Gate) -> bool:
    """Whether all cells but the fan's can still be reached."""
    left = grid.cells - one.apron
    return len(reached(one.entries[0], left, grid)) >= len(left) - _LOST


def _moved(cell: Cell, *steps: tuple[Cell, int]) -> Cell:
    x, y = cell
    for (dx, dy), times in steps:
        x, y = x + dx * times, y + dy * times
    return x, y


def taps(grid: Grid, one: Gate, number: int) -> tuple[Place, Place]:
    """Return the two outlets of a loop, as places of the grid, in the order of the gate."""
    apart = TAP_M / grid.spacing if one.depth else 1.0
    first = (2 * number - len(one.entries) + 0.5) * apart
    (dx, dy), (x, y) = one.along, one.back
    return (
        (x + dx * first, y + dy * first),
        (x + dx * (first + apart), y + dy * (first + apart)),
    )
