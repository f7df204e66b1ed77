"""Water on parts of the ground alone: the same as a flood of each part from where it ends."""

import heapq
from collections import defaultdict

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components

from geometry.survey.flow import fill_levels
from geometry.survey.shots import Floats, Ints, Marks
from geometry.survey.surface import triangulate
from tests.rolls import rolls


def flooded(level: Floats, sides: list[tuple[int, int]], outlets: list[int]) -> Floats:
    """Flood from the outlets inward, always from the lowest point reached."""
    near = defaultdict(list)
    for one, other in sides:
        near[one].append(other)
        near[other].append(one)
    filled = {n: float(level[n]) for n in outlets}
    waiting = [(filled[n], n) for n in outlets]
    heapq.heapify(waiting)
    while waiting:
        water, point = heapq.heappop(waiting)
        for other in near[point]:
            if other not in filled:
                filled[other] = max(water, float(level[other]))
                heapq.heappush(waiting, (filled[other], other))
    return np.array([filled.get(n, level[n]) for n in range(len(level))])


def outlets(level: Floats, wet: Marks, begin: Ints, end: Ints, outlet: int) -> list[int]:
    """The outlet, and the lowest point of each part that it is not in."""
    joined = coo_array((np.ones(len(begin)), (begin, end)), shape=(len(wet), len(wet)))
    part = connected_components(joined, directed=False)[1]
    others = {int(p) for p in part[wet]} - {int(part[outlet])}
    lowest = [min(np.flatnonzero(part == p), key=lambda n: level[n]) for p in others]
    return [outlet, *map(int, lowest)]


@settings(max_examples=rolls(15), deadline=None)
@given(st.integers(0, 10**6), st.integers(8, 200), st.floats(0.2, 0.9), st.sampled_from([4, 10**6]))
def test_each_part_of_a_floor_ends_at_its_own_lowest_place(
    seed: int, count: int, share: float, steps: int
) -> None:
    dice = np.random.default_rng(seed)
    x, y = dice.uniform(0, 10, (2, count))
    level = np.round(dice.uniform(0, 1, count) * steps) / steps
    wet = dice.uniform(0, 1, count) < share
    outlet = int(dice.integers(count))
    wet[outlet] = True
    edges = triangulate(x, y, level).edges
    begin, end = (e[wet[edges[0]] & wet[edges[1]]] for e in edges)
    ends = outlets(level, wet, begin, end, outlet)
    wanted = flooded(level, list(zip(begin.tolist(), end.tolist(), strict=True)), ends)
    np.testing.assert_array_equal(fill_levels(level, edges, wet, outlet), wanted)


def test_two_hollows_that_no_side_joins_to_the_outlet() -> None:
    """A row of shots at 5, 2, 4, 1, 6 apart from the outlet: the 2 fills to 4 and runs to the 1."""
    level = np.array([3.0, 5.0, 2.0, 4.0, 1.0, 6.0])
    row = np.array([1, 2, 3, 4]), np.array([2, 3, 4, 5])
    filled = fill_levels(level, row, np.ones(6, bool), outlet=0)
    assert filled.tolist() == [3, 5, 4, 4, 1, 6]
