"""The walk round a tree of cells, from the loop's one end to the other, and fingers made longer."""

from collections.abc import Sequence

from geometry.layout.tubing.grid import STEPS, Cell
from geometry.layout.tubing.trees import Tree


def walk(zone: set[Cell], tree: Tree, entry: Cell, inward: Cell, along: Cell) -> list[Cell]:
    """Return the places round a tree in order, open at the start's side that looks to the manifold.

    The first and the last place are the two of that side, in their order along the manifold.
    """
    near: dict[Cell, list[Cell]] = {}
    for one, other in _segments(zone, tree):
        near.setdefault(one, []).append(other)
        near.setdefault(other, []).append(one)
    first, last = sorted(
        side(entry, (-inward[0], -inward[1])), key=lambda p: p[0] * along[0] + p[1] * along[1]
    )
    # From `first` away from `last`.
    path = [first]
    before = last
    while path[-1] != last:
        here = path[-1]
        ahead = near[here][1] if near[here][0] == before else near[here][0]
        before = here
        path.append(ahead)
    return path


def side(cell: Cell, step: Cell) -> tuple[Cell, Cell]:
    """Return the two places of a cell's side that lies towards a step, the lower one first."""
    (i, j), (dx, dy) = cell, step
    x, y = 2 * i + max(dx, 0), 2 * j + max(dy, 0)
    return ((x, y), (x, y + 1)) if dx else ((x, y), (x + 1, y))


def _segments(zone: set[Cell], tree: Tree) -> list[tuple[Cell, Cell]]:
    found = []
    for cell in zone:
        for step in STEPS:
            other = (cell[0] + step[0], cell[1] + step[1])
            one, two = side(cell, step)
            if frozenset((cell, other)) not in tree:
                found.append((one, two))
            elif step in ((1, 0), (0, 1)):
                dx, dy = step
                found += [(p, (p[0] + dx, p[1] + dy)) for p in (one, two)]
    return found


def lengthened(paths: Sequence[list[Cell]], clear: frozenset[Cell], taken: set[Cell]) -> None:
    """Lengthen the fingers of loops by a place where that is free, again and again.

    clear: unit boxes in the region. taken: places that are used; those of the loops are added.
    """
    taken |= {place for path in paths for place in path}
    growing = list(paths)
    while growing:
        growing = [path for path in growing if _lengthened(path, clear, taken)]


def _lengthened(path: list[Cell], clear: frozenset[Cell], taken: set[Cell]) -> bool:
    """Lengthen every finger of a loop that can be, by one place; say whether any was."""
    grown, number = False, 1
    while number < len(path) - 2:
        before, one, two, after = path[number - 1 : number + 3]
        step = (one[0] - before[0], one[1] - before[1])
        if step == (two[0] - after[0], two[1] - after[1]):
            new = [(p[0] + step[0], p[1] + step[1]) for p in (one, two)]
            box = (min(p[0] for p in (one, *new, two)), min(p[1] for p in (one, *new, two)))
            if box in clear and not taken & set(new):
                path[number + 1 : number + 1] = new
                taken |= set(new)
                grown, number = True, number + 2
        number += 1
    return grown
