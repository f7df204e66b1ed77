"""A floor's cells shared among its loops: each hangs together from its start, all of one length."""

from collections.abc import Sequence

from geometry.layout.tubing.grid import STEPS, Cell, Grid, reached

# A wall counts as half a neighbour: fronts between zones move along walls first and stay straight.
_WALL = 0.5


def zones(
    grid: Grid, cells: frozenset[Cell], entries: Sequence[Cell], leads: Sequence[float]
) -> list[set[Cell]]:
    """Return each loop's cells. leads: each loop's length outside its cells, in cells.

    Cells go to the nearest start, then over the borders to shorter loops as long as that evens
    them out and the longer loop still hangs together.
    """
    found = _nearest(grid, cells, entries)
    owner = {cell: n for n, zone in enumerate(found) for cell in zone}
    stuck: set[tuple[int, int]] = set()
    while True:
        sizes = [len(zone) + lead for zone, lead in zip(found, leads, strict=True)]
        pairs = [
            (sizes[a] - sizes[b], a, b)
            for a, b in _borders(grid, owner)
            if sizes[a] - sizes[b] > 1 + 1e-9 and (a, b) not in stuck
        ]
        if not pairs:
            return found
        more, a, b = max(pairs)
        given = 0
        # Not all at once: the others' borders move meanwhile.
        while given < max(1, more // 4) and _gives(grid, found, owner, entries[a], (a, b)):
            given += 1
        if given:
            stuck = {pair for pair in stuck if not {a, b} & set(pair)}
        else:
            stuck.add((a, b))


def _gives(
    grid: Grid, found: list[set[Cell]], owner: dict[Cell, int], entry: Cell, pair: tuple[int, int]
) -> bool:
    """Pass one cell of zone a to zone b, if there is one it can spare; say whether there was."""
    a, b = pair
    cell = _given(grid, found, owner, entry, pair)
    if cell is None:
        return False
    found[a].remove(cell)
    found[b].add(cell)
    owner[cell] = b
    return True


def _nearest(grid: Grid, cells: frozenset[Cell], entries: Sequence[Cell]) -> list[set[Cell]]:
    """Return the cells by the start they are nearest to, all growing at once."""
    owner = {entry: n for n, entry in enumerate(entries)}
    front = list(entries)
    while front:
        grown = []
        for cell in front:
            for other in grid.neighbours(cell, cells):
                if other not in owner:
                    owner[other] = owner[cell]
                    grown.append(other)
        front = grown
    found: list[set[Cell]] = [set() for _ in entries]
    for cell, number in owner.items():
        found[number].add(cell)
    return found


def _borders(grid: Grid, owner: dict[Cell, int]) -> set[tuple[int, int]]:
    """Return the pairs of zones that touch, both ways round."""
    return {
        (number, owner[other])
        for cell, number in owner.items()
        for other in grid.near[cell]
        if owner.get(other, number) != number
    }


def _given(
    grid: Grid, found: list[set[Cell]], owner: dict[Cell, int], entry: Cell, pair: tuple[int, int]
) -> Cell | None:
    """Return the cell that zone a best gives to zone b, if there is one it can spare."""
    a, b = pair
    rated = []
    for cell in found[a]:
        touching = sum(other in found[b] for other in grid.neighbours(cell, found[b]))
        if touching and cell != entry:
            rated.append((-_contact(cell, owner, a, touching), cell))
    for _, cell in sorted(rated):
        if _spared(grid, found[a], entry, cell):
            return cell
    return None


def _spared(grid: Grid, zone: set[Cell], entry: Cell, cell: Cell) -> bool:
    """Whether a zone still hangs together without a cell."""
    if sum(other in zone for other in grid.near[cell]) == 1:
        return True
    left = zone - {cell}
    return len(reached(entry, left, grid)) == len(left)


def _contact(cell: Cell, owner: dict[Cell, int], own: int, touching: int) -> float:
    """Return how much more a cell touches the other zone and walls than its own zone."""
    around = [owner.get((cell[0] + dx, cell[1] + dy)) for dx, dy in STEPS]
    walls = sum(number is None for number in around)
    return touching + _WALL * walls - 0.25 * sum(number == own for number in around)
