"""A floor's cells shared among its loops: each hangs together from its start, all of one length."""

from collections.abc import Sequence

from geometry.layout.tubing.grid import STEPS, Cell, Grid, reached

# A wall counts as half a neighbour: fronts between zones move along walls first and stay straight.
_WALL = 0.5
# So many times are needed to even out two zones: fewer would make their border ragged.
_AT_ONCE = 12


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
        # Not all at once: the others' borders move meanwhile.
        given = _give(grid, found, owner, (a, b), (entries[a], more))
        if given:
            stuck = {pair for pair in stuck if not {a, b} & set(pair)}
        else:
            stuck.add((a, b))


def _give(
    grid: Grid,
    found: list[set[Cell]],
    owner: dict[Cell, int],
    pair: tuple[int, int],
    start: tuple[Cell, float],
) -> int:
    """Pass cells of zone a along its border to zone b, those it can best spare first.

    start: of zone a, and how much longer it is. Return how many cells it gave.
    """
    (a, b), (entry, more) = pair, start
    most = max(1, int(more // _AT_ONCE))
    given = 0
    for cell in _spare(grid, found, owner, entry, pair):
        if given >= most:
            break
        going = _cut_off(grid, found[a], entry, cell) if owner[cell] == a else set()
        if 0 < len(going) <= max(1, int((more - 1) // 2) - given):
            found[a] -= going
            found[b] |= going
            owner |= dict.fromkeys(going, b)
            given += len(going)
    return given


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


def _spare(
    grid: Grid, found: list[set[Cell]], owner: dict[Cell, int], entry: Cell, pair: tuple[int, int]
) -> list[Cell]:
    """Return the cells of zone a that touch zone b, those that touch it and walls most first."""
    a, b = pair
    rated = []
    for cell in found[a]:
        touching = 0
        for other in grid.near[cell]:
            touching += owner.get(other) == b
        if touching and cell != entry:
            rated.append((-_contact(cell, owner, a, touching), cell))
    return [cell for _, cell in sorted(rated)]


def _cut_off(grid: Grid, zone: set[Cell], entry: Cell, cell: Cell) -> set[Cell]:
    """Return a cell with those that hang together with the zone's start through it alone."""
    if sum(other in zone for other in grid.near[cell]) == 1:
        return {cell}
    return zone - reached(entry, zone - {cell}, grid)


def _contact(cell: Cell, owner: dict[Cell, int], own: int, touching: int) -> float:
    """Return how much more a cell touches the other zone and walls than its own zone."""
    around = [owner.get((cell[0] + dx, cell[1] + dy)) for dx, dy in STEPS]
    walls = sum(number is None for number in around)
    return touching + _WALL * walls - 0.25 * sum(number == own for number in around)
