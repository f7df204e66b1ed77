"""Trees through the cells of a loop: a comb for a serpentine, a spiral for a double spiral."""

from collections.abc import Iterator
from itertools import pairwise

from geometry.layout.tubing.grid import Cell, Grid

Edge = frozenset[Cell]
Tree = frozenset[Edge]


def combs(grid: Grid, zone: set[Cell], entry: Cell, inward: Cell) -> Iterator[Tree]:
    """Yield trees with all of a zone's cells, their teeth along one axis, the other, or the longer.

    The teeth hang together at the side of the start.
    """
    both = [_runs(grid, zone, axis) for axis in (0, 1)]
    longer = {cell: int(len(both[0][cell]) < len(both[1][cell])) for cell in zone}
    for runs, axis in ((both[0], 0), (both[1], 1), (_mixed(both, longer), longer[entry])):
        yield frozenset(_teeth(runs) | _spine(grid, runs, entry, (axis, inward)))


def _mixed(
    both: list[dict[Cell, tuple[Cell, ...]]], axis: dict[Cell, int]
) -> dict[Cell, tuple[Cell, ...]]:
    """Return runs along the axis that is the longer at each cell, parted where that changes."""
    found: dict[Cell, tuple[Cell, ...]] = {}
    for cell in sorted(axis):
        if cell in found:
            continue
        run = both[axis[cell]][cell]
        first = last = run.index(cell)
        while first > 0 and axis[run[first - 1]] == axis[cell]:
            first -= 1
        while last + 1 < len(run) and axis[run[last + 1]] == axis[cell]:
            last += 1
        found |= dict.fromkeys(run[first : last + 1], run[first : last + 1])
    return found


def _runs(grid: Grid, zone: set[Cell], axis: int) -> dict[Cell, tuple[Cell, ...]]:
    """Return for each cell the whole straight run along the axis that it lies in."""
    step = (1, 0) if axis == 0 else (0, 1)
    found: dict[Cell, tuple[Cell, ...]] = {}
    for cell in sorted(zone):
        before = (cell[0] - step[0], cell[1] - step[1])
        if before in zone and grid.linked(before, step):
            continue
        run = [cell]
        while True:
            x, y = run[-1]
            after = (x + step[0], y + step[1])
            if after not in zone or not grid.linked((x, y), step):
                break
            run.append(after)
        found |= dict.fromkeys(run, tuple(run))
    return found


def _teeth(runs: dict[Cell, tuple[Cell, ...]]) -> set[Edge]:
    return {frozenset(pair) for run in set(runs.values()) for pair in pairwise(run)}


def _spine(
    grid: Grid, runs: dict[Cell, tuple[Cell, ...]], entry: Cell, how: tuple[int, Cell]
) -> set[Edge]:
    """Return one edge from each run to the next, nearest to the start's own line."""
    axis, inward = how
    side = inward[axis]
    done, todo, edges = {runs[entry]}, [runs[entry]], set()
    while todo:
        run = todo.pop(0)
        # Deepest last: the spine keeps to the side where the loop starts.
        for cell in sorted(run, key=lambda c: (_depth(c, entry, axis, side), c)):
            for other in grid.neighbours(cell, runs):
                if runs[other] not in done:
                    done.add(runs[other])
                    todo.append(runs[other])
                    edges.add(frozenset((cell, other)))
    return edges


def _depth(cell: Cell, entry: Cell, axis: int, side: int) -> int:
    return side * cell[axis] if side else abs(cell[axis] - entry[axis])


def spirals(grid: Grid, zone: set[Cell], entry: Cell, inward: Cell) -> Iterator[Tree]:
    """Yield trees that run inward along the zone's edge, it at the right hand and at the left."""
    for hand in (1, -1):
        yield frozenset(_along_the_wall(grid, zone, entry, inward, hand))


def _along_the_wall(
    grid: Grid, zone: set[Cell], entry: Cell, inward: Cell, hand: int
) -> Iterator[Edge]:
    """Yield the edges of a walk that turns to the hand first; it turns back where it is shut in."""
    done = {entry}
    path = [(entry, inward)]
    while path:
        cell, ahead = path[-1]
        step = _next(grid, zone - done, cell, ahead, hand)
        if step is None:
            path.pop()
            continue
        other = (cell[0] + step[0], cell[1] + step[1])
        done.add(other)
        path.append((other, step))
        yield frozenset((cell, other))


def _next(grid: Grid, free: set[Cell], cell: Cell, ahead: Cell, hand: int) -> Cell | None:
    dx, dy = ahead
    for step in ((hand * dy, -hand * dx), (dx, dy), (-hand * dy, hand * dx), (-dx, -dy)):
        if (cell[0] + step[0], cell[1] + step[1]) in free and grid.linked(cell, step):
            return step
    return None
