"""Where water stands on a triangulated surface: the level each point fills to.

Every point runs to its lowest neighbour, down to a hollow's bottom. Two hollows meet at the lowest
side between them. The level a hollow fills to is the lowest way out over all such sides, which is
the way along a least spanning tree. This gives what a flood from the outlet inward, always from
the lowest point reached, gives (Barnes et al. 2014, Priority-flood; from memory), without a loop.
"""

from typing import NamedTuple

import numpy as np
from scipy.sparse import coo_array
from scipy.sparse.csgraph import (
    breadth_first_order,
    connected_components,
    minimum_spanning_tree,
)

from geometry.survey.shots import Floats, Ints, Marks


class Passes(NamedTuple):
    """Sides between two hollows, and the rank of the higher end of the lowest of them."""

    one: Ints
    other: Ints
    rank: Ints


def fill_levels(level: Floats, edges: tuple[Ints, Ints], wet: Marks, outlet: int) -> Floats:
    """Return the level water rises to at each point before it runs off, (n,) metres.

    wet: the points that hold water; the others have their own level. outlet: the point at which
    it leaves, once it stands as high; one of the wet. edges: sides of triangles.
    """
    begin, end = (e[wet[edges[0]] & wet[edges[1]]] for e in edges)
    order = np.argsort(level, kind="stable")
    rank = np.empty(len(order), np.int64)
    rank[order] = np.arange(len(order))
    down = _down(rank, order, begin, end)
    down[outlet] = outlet
    hollow, count = _hollows(down, wet, order)
    out = _ways_out(_passes(hollow, rank, begin, end, count), count, int(hollow[outlet]))
    filled = level.copy()
    spill = out[hollow[wet]]
    filled[wet] = np.where(spill < 0, level[wet], np.maximum(level[wet], level[order[spill]]))
    return filled


def _down(rank: Ints, order: Ints, begin: Ints, end: Ints) -> Ints:
    """Return the lowest neighbour of each point, or itself where none is lower, (n,)."""
    lowest = rank.copy()
    np.minimum.at(lowest, begin, rank[end])
    np.minimum.at(lowest, end, rank[begin])
    down: Ints = order[lowest]
    return down


def _hollows(down: Ints, wet: Marks, order: Ints) -> tuple[Ints, int]:
    """Return the hollow each wet point runs down to, (n,), the lowest first; and their count."""
    while True:
        farther = down[down]
        if np.array_equal(farther, down):
            break
        down = farther
    bottoms = order[(wet & (down == np.arange(len(down))))[order]]
    number = np.full(len(down), -1, np.int64)
    number[bottoms] = np.arange(len(bottoms))
    return number[down], len(bottoms)


def _passes(hollow: Ints, rank: Ints, begin: Ints, end: Ints, count: int) -> Passes:
    one, other = hollow[begin], hollow[end]
    between = one != other
    one, other = one[between], other[between]
    height = np.maximum(rank[begin[between]], rank[end[between]])
    pair = np.minimum(one, other) * count + np.maximum(one, other)
    sort = np.lexsort((height, pair))
    pair, height = pair[sort], height[sort]
    first = np.flatnonzero(np.concatenate(([True], pair[1:] != pair[:-1]))) if len(pair) else sort
    return Passes(pair[first] // count, pair[first] % count, height[first])


def _ways_out(passes: Passes, count: int, root: int) -> Ints:
    """Return the rank each hollow fills to; -1 where water leaves or ends."""
    weights = coo_array((passes.rank + 1.0, (passes.one, passes.other)), shape=(count, count))
    tree = minimum_spanning_tree(weights.tocsr()).tocoo()
    _, part = connected_components(tree, directed=False)
    out = np.full(count, -1, np.int64)
    # Parts of the floor that no side joins to the rest end in their own lowest hollow.
    for start in [root, *_own_ends(part, root)]:
        _climb(tree, start, out)
    return out


def _own_ends(part: Ints, root: int) -> list[int]:
    """Return the first hollow, which is the lowest, of each part but the root's."""
    _, firsts = np.unique(part, return_index=True)
    return [int(f) for f in firsts if part[f] != part[root]]


def _climb(tree: coo_array, root: int, out: Ints) -> None:
    walk, before = breadth_first_order(tree.tocsr(), root, directed=False)
    one, other = tree.coords
    child = np.where(before[one] == other, one, other)
    climb = np.zeros(len(out), np.int64)
    climb[child] = np.rint(tree.data).astype(np.int64) - 1
    parents, heights, filled = before.tolist(), climb.tolist(), out.tolist()
    for hollow in walk.tolist()[1:]:
        filled[hollow] = max(filled[parents[hollow]], heights[hollow])
    out[:] = filled
