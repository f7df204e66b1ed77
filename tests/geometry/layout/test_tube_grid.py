"""The grid tubes run on, shares of it, trees through it and the walk round them."""

from collections.abc import Callable, Iterator
from itertools import pairwise, product
from math import cos, pi, sin

import pytest
from shapely import LinearRing, Point, Polygon, box

from geometry.layout.tubing.field import turn_of
from geometry.layout.tubing.gate import TAP_M, gates, taps
from geometry.layout.tubing.grid import STEPS, Cell, Grid, lay_grid, reached
from geometry.layout.tubing.trees import Tree, combs, spirals
from geometry.layout.tubing.walk import lengthened, side, walk
from geometry.layout.tubing.zones import zones

APART = 0.3


def rows(*lines: str) -> Grid:
    """A grid of the cells marked x, the lowest row last, with passages wherever two touch."""
    cells = {(x, len(lines) - 1 - y) for y, line in enumerate(lines)
             for x, mark in enumerate(line) if mark == "x"}  # fmt: skip
    clear = {(2 * i, 2 * j) for i, j in cells}
    for (i, j), (dx, dy) in product(cells, ((1, 0), (0, 1))):
        if (i + dx, j + dy) in cells:
            clear.add((2 * i + dx, 2 * j + dy))
    return Grid((10.0, 20.0), APART, frozenset(clear))


L_SHAPE = rows("xxxx....", "xxxx....", "xxxx....", "xxxxxxxx", "xxxxxxxx")
HOLED = rows("xxxxx", "xxxxx", "xx.xx", "xxxxx")


def test_places_boxes_and_parts_of_a_grid() -> None:
    grid = rows("xx.x", ".x.x", "xx..")
    assert grid.free == {(0, 2), (1, 2), (3, 2), (1, 1), (3, 1), (0, 0), (1, 0)}
    assert grid.cells == grid.free - {(3, 2), (3, 1)}
    assert grid.linked((0, 0), (1, 0))
    assert not grid.linked((0, 0), (0, 1))
    assert set(grid.near[(1, 1)]) == {(1, 2), (1, 0)}
    assert list(grid.neighbours((1, 1), {(1, 2)})) == [(1, 2)]
    assert reached((0, 0), grid.free - {(1, 1)}, grid) == {(0, 0), (1, 0)}
    assert grid.at((2.5, 1)) == pytest.approx((10 + 2.5 * APART, 20 + APART))


@pytest.mark.parametrize(
    ("region", "cells", "first"),
    [
        # Lines 0.3 m apart: 3 x 0.3 hold two cells of 0.3 m and the way between them.
        (box(0, 0, 0.9, 0.3), 2, (0, 0)),
        # What the lines leave over lies alike on both sides: 0.2 and 0.1 m.
        (box(5, 7, 6.1, 7.4), 2, (5.1, 7.05)),
        # A cell is lost where less is there than it takes.
        (box(0, 0, 0.89, 0.3), 1, (0.295, 0)),
        (box(0, 0, 0.29, 3), 0, None),
    ],
)
def test_a_grid_has_the_most_cells_and_stands_in_the_middle(
    region: Polygon, cells: int, first: tuple[float, float] | None
) -> None:
    grid = lay_grid(region, APART)
    assert len(grid.cells) == cells
    if first:
        assert grid.at(tuple(2 * n for n in min(grid.cells))) == pytest.approx(first)  # type: ignore[arg-type]


def test_cells_of_a_grid_lie_in_the_region() -> None:
    region = Polygon([(0, 0), (4, 0), (4, 1.4), (1.7, 1.4), (1.7, 3.1), (0, 2.5)])
    grid = lay_grid(region, APART)
    # Each takes the square of two spacings; a third is lost at the edges at the most.
    assert 0.66 * region.area < len(grid.cells) * (2 * APART) ** 2
    for i, j in grid.cells:
        x, y = grid.at((2 * i, 2 * j))
        assert region.buffer(1e-4).contains(box(x, y, x + APART, y + APART))


@pytest.mark.parametrize("grid", [L_SHAPE, HOLED])
@pytest.mark.parametrize("trees", [combs, spirals])
def test_the_walk_round_a_tree_is_one_tube_through_all_places(
    grid: Grid, trees: Callable[[Grid, set[Cell], Cell, Cell], Iterator[Tree]]
) -> None:
    for entry, inward in (((0, 0), (0, 1)), ((0, 1), (1, 0)), ((1, 0), (0, 1))):
        along = (-inward[1], inward[0])
        for tree in trees(grid, set(grid.cells), entry, inward):
            assert len(tree) == len(grid.cells) - 1
            path = walk(set(grid.cells), tree, entry, inward, along)
            places = {(2 * i + a, 2 * j + b) for i, j in grid.cells for a in (0, 1) for b in (0, 1)}
            assert len(path) == len(places)
            assert set(path) == places
            assert all(abs(a[0] - b[0]) + abs(a[1] - b[1]) == 1 for a, b in pairwise(path))
            assert {path[0], path[-1]} == set(side(entry, (-inward[0], -inward[1])))
            step = (path[-1][0] - path[0][0], path[-1][1] - path[0][1])
            assert step == along


def corners(path: list[Cell]) -> int:
    steps = [(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(path)]
    return sum(one != two for one, two in pairwise(steps))


def test_a_comb_makes_runs_along_the_floor_and_a_spiral_goes_in_and_out() -> None:
    """Six cells by three from a corner: corners counted on squared paper.

    Three teeth along the floor: two at the end of each, two between one and the next, one behind
    the last; six teeth across it likewise. The double spiral goes in along the wall and comes back
    beside itself: ten; it has three more if it first turns away from its way in.
    """
    grid = rows("xxxxxx", "xxxxxx", "xxxxxx")
    cells, entry, inward, along = set(grid.cells), (0, 0), (1, 0), (0, 1)
    found = [
        corners(walk(cells, tree, entry, inward, along))
        for trees in (combs, spirals)
        for tree in trees(grid, cells, entry, inward)
    ]
    assert found == [3 * 2 + 2 * 2 + 1, 6 * 2 + 5 * 2 + 1, 3 * 2 + 2 * 2 + 1, 10, 13]


def test_zones_share_the_floor_among_its_loops() -> None:
    for grid, entries in (
        (rows("xxxxxx", "xxxxxx", "xxxxxx", "xxxxxx"), [(0, 0), (1, 0)]),
        (L_SHAPE, [(0, 0), (1, 0), (2, 0)]),
        (HOLED, [(0, 0), (0, 1)]),
    ):
        found = zones(grid, grid.cells, entries, [0.0] * len(entries))
        assert sum(map(len, found)) == len(grid.cells)
        assert set().union(*found) == grid.cells
        for zone, entry in zip(found, entries, strict=True):
            assert reached(entry, zone, grid) == zone
        sizes = sorted(map(len, found))
        assert sizes[-1] - sizes[0] <= 1


def test_a_loop_with_longer_leads_gets_fewer_cells() -> None:
    grid = rows("xxxxxx", "xxxxxx", "xxxxxx", "xxxxxx")
    one, two = zones(grid, grid.cells, [(0, 0), (1, 0)], [4.0, 0.0])
    assert abs(len(one) + 4 - len(two)) <= 1


def test_fingers_grow_into_free_places() -> None:
    """A U of three places' depth grows by the two that lie free before it, and no farther."""
    path = [(0, 0), (1, 0), (1, 1), (0, 1)]
    taken: set[Cell] = set()
    clear = frozenset({(0, 0), (1, 0), (2, 0)})
    lengthened([path], clear, taken)
    assert path == [(0, 0), (1, 0), (2, 0), (3, 0), (3, 1), (2, 1), (1, 1), (0, 1)]
    assert taken == set(path)
    other = [(0, 0), (1, 0), (1, 1), (0, 1)]
    lengthened([other], clear, {(3, 1)})
    assert other == [(0, 0), (1, 0), (2, 0), (2, 1), (1, 1), (0, 1)]


@pytest.mark.parametrize(("count", "spacing", "deep"), [(1, 0.3, 0), (3, 0.3, 1), (6, 0.2, 2)])
def test_gates_stand_at_the_wall_with_a_fan_before_them(
    count: int, spacing: float, deep: int
) -> None:
    """Outlets 2 in apart spread to two places a loop, both ways, by 1.7 for 1 deep at the most.

    Three loops at 0.3 m: 3 x 0.249 / (2 x 1.7 x 0.3) = 0.7; six at 0.2 m: 6 x 0.149 / 0.68 = 1.3.
    """
    grid = Grid((10.0, 20.0), spacing, rows(*["x" * 10] * 10).clear)
    wall = LinearRing(box(10, 20, 10 + 19 * spacing, 20 + 19 * spacing).exterior)
    found = list(gates(grid, count, wall, None))
    assert {one.inward for one in found} == set(STEPS)
    for one in found:
        assert len(one.entries) == count
        assert len(one.apron) == count * one.depth
        assert one.depth == deep
        for cell, after in pairwise(one.entries):
            assert (cell[0] + one.along[0], cell[1] + one.along[1]) == after
        assert one.apron == {
            (i - n * one.inward[0], j - n * one.inward[1])
            for i, j in one.entries
            for n in range(1, deep + 1)
        }
        at = grid.at(one.back)
        assert wall.distance(Point(at)) < 1e-9
        outlets = [grid.at(p) for n in range(count) for p in taps(grid, one, n)]
        apart = TAP_M if deep else spacing
        for a, b in pairwise(outlets):
            assert (b[0] - a[0], b[1] - a[1]) == pytest.approx(
                (apart * one.along[0], apart * one.along[1])
            )
        middle = tuple((a + b) / 2 for a, b in zip(outlets[0], outlets[-1], strict=True))
        assert middle == pytest.approx(at)


def test_no_fan_lies_across_what_stands_in_the_floor() -> None:
    """A pipe between two cells of the first row, right before the manifold."""
    free = rows(*["x" * 10] * 10)
    grid = Grid((10.0, 20.0), APART, free.clear - {(9, 0), (9, 1), (9, 2)})
    wall = LinearRing(box(10, 20, 10 + 19 * APART, 20 + 19 * APART).exterior)
    (beside,) = (
        one for one in gates(grid, 3, wall, (10 + 9.5 * APART, 20.0)) if one.inward == (0, 1)
    )
    cells = {i for i, _ in (*beside.entries, *beside.apron)}
    assert cells in ({2, 3, 4}, {5, 6, 7})


@pytest.mark.parametrize(
    ("outline", "turn"),
    [
        # Sides of 5, 4.9 and 1.1 m: the longest, not the steepest.
        ([(0, 0), (5, 0), (0.2, 1.1)], 0.0),
        # A gable: 7 m level and upright against 5.7 m at an eighth.
        ([(0, 0), (5, 0), (5, 0.5), (3, 2.5), (2, 2.5), (0, 0.5)], 0.0),
        # The same with a longer gable.
        ([(0, 0), (7, 0), (7, 0.2), (3.6, 3.6), (3.4, 3.6), (0, 0.2)], pi / 4),
        # A square on its corner, and an octagon, which has as much of both.
        ([(1, 0), (2, 1), (1, 2), (0, 1)], pi / 4),
        ([(cos(n * pi / 4 + pi / 8), sin(n * pi / 4 + pi / 8)) for n in range(8)], 0.0),
    ],
)
def test_tubes_run_along_most_of_the_outline(
    outline: list[tuple[float, float]], turn: float
) -> None:
    for way_round in (outline, outline[::-1]):
        assert turn_of(Polygon(way_round)) == pytest.approx(turn, abs=1e-5)
