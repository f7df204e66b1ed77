"""A field of floor laid with loops: shared among them, walked round, bent."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import hypot

import shapely
from shapely import Polygon

from geometry.layout.tubing.bends import Bent, Point, bent
from geometry.layout.tubing.gate import Gate, Place, gates, taps
from geometry.layout.tubing.grid import Cell, Grid, lay_grid
from geometry.layout.tubing.trees import Tree, combs, spirals
from geometry.layout.tubing.walk import lengthened, walk
from geometry.layout.tubing.zones import zones
from geometry.parts.floor import Pattern

_TREES: dict[Pattern, Callable[..., Iterator[Tree]]] = {
    "serpentine": combs, "counterflow": spirals,
}  # fmt: skip
_ON_EDGE_M = 1e-5
# So many loops more than the fewest are tried where the shares come out uneven.
_MORE = 8
# Loops whose shortest has this share of the longest are even enough; else other starts are tried.
_EVEN = 0.85


@dataclass(frozen=True)
class Asked:
    """What a field is laid by, metres. least: radius that the tube bends to. edge: from the
    slab's edge to the field's. loop: without its way.

    manifold: in the field's own frame.
    """

    spacing: float
    pattern: Pattern
    least: float
    edge: float
    loop: float
    manifold: Point | None


@dataclass(frozen=True, eq=False)
class Laid:
    """A field's loops in its frame; manifold: its middle, and the step into the floor."""

    grid: Grid
    manifold: Point
    inward: Cell
    loops: tuple[tuple[Bent, float], ...]

    @property
    def longest(self) -> float:
        """Length of the longest loop in the slab, m."""
        return max(way.length_m for way, _ in self.loops)

    @property
    def even(self) -> float:
        """The shortest loop's share of the longest."""
        return min(way.length_m for way, _ in self.loops) / self.longest


def lay_loops(field: Polygon, asked: Asked) -> Laid | None:
    """Return a field's loops with the length of each one's two leads; None where none fits.

    As many as keep each within its longest, and at least as many as the floor has room to start.
    """
    grid = lay_grid(field, asked.spacing)
    if not grid.cells:
        return None
    room = field.buffer(_ON_EDGE_M, join_style="mitre")
    shapely.prepare(room)
    fewest = max(1, -(-4 * len(grid.cells) * asked.spacing // asked.loop))
    best: Laid | None = None
    for count in range(int(fewest), int(fewest) + _MORE):
        short = []
        for start in gates(grid, count, room.exterior, asked.manifold):
            made = _laid(grid, start, asked, room)
            if made.longest > asked.loop:
                best = made if best is None or made.longest < best.longest else best
            elif made.even > _EVEN:
                return made
            else:
                short.append(made)
        if short:
            return max(short, key=lambda made: made.even)
    return best or _fewer(grid, int(fewest), asked, room)


def _fewer(grid: Grid, fewest: int, asked: Asked, room: Polygon) -> Laid | None:
    """Return fewer loops than are needed, where there is no room to start them all."""
    for count in range(fewest - 1, 0, -1):
        for start in gates(grid, count, room.exterior, asked.manifold):
            return _laid(grid, start, asked, room)
    return None


def _laid(grid: Grid, start: Gate, asked: Asked, room: Polygon) -> Laid:
    fan = [taps(grid, start, n) for n in range(len(start.entries))]
    leads = [_leads(grid, start, n, fan[n]) / (4 * grid.spacing) for n in range(len(fan))]
    shared = zones(grid, grid.cells - start.apron, start.entries, leads)
    paths = [
        _path(grid, zone, start, entry, asked)
        for zone, entry in zip(shared, start.entries, strict=True)
    ]
    taken = {(2 * i + a, 2 * j + b) for i, j in start.apron for a in (0, 1) for b in (0, 1)}
    lengthened(paths, grid.clear, taken)
    loops: list[tuple[Bent, float]] = []
    for path, (supply, back) in zip(paths, fan, strict=True):
        ends: tuple[list[Place], list[Place]] = ([supply], [back]) if start.depth else ([], [])
        corners = [grid.at(p) for p in (*ends[0], *path, *ends[1])]
        way = bent(corners, grid.spacing, asked.least, asked.edge, room)
        lead = 4 * grid.spacing * leads[len(loops)]
        loops.append((way, lead))
    return Laid(grid, grid.at(start.back), start.inward, tuple(loops))


def _leads(grid: Grid, start: Gate, number: int, fan: tuple[Place, Place]) -> float:
    """Return the length of a loop's two leads through the fan, m."""
    if start.depth == 0:
        return 0.0
    (dx, dy), (x, y) = start.inward, start.back
    total = 0.0
    for side, tap in enumerate(fan):
        along = 2 * number + side - len(start.entries) + 0.5
        end = (
            x + dx * 2 * start.depth + start.along[0] * along,
            y + dy * 2 * start.depth + start.along[1] * along,
        )
        total += hypot(end[0] - tap[0], end[1] - tap[1]) * grid.spacing
    return total


def _path(grid: Grid, zone: set[Cell], start: Gate, entry: Cell, asked: Asked) -> list[Cell]:
    """Return the way round a zone that has the fewest corners."""
    ways = [
        walk(zone, tree, entry, start.inward, start.along)
        for tree in _TREES[asked.pattern](grid, zone, entry, start.inward)
    ]
    return min(ways, key=_corners)


def _corners(path: list[Cell]) -> int:
    steps = [(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(path)]
    return sum(one != two for one, two in pairwise(steps))
