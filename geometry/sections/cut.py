"""A vertical plane through closed meshes: exact polygons, one set per solid."""

from collections.abc import Iterable

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import MultiPolygon

from geometry.plan.outline import Point, multi
from geometry.sections.face import CutFace, CutLine
from geometry.sections.loops import areas_of
from geometry.sections.pile import Pile, pile
from geometry.solids.solid import Solid

# Corners nearer to the plane than a rounding error lie in it.
IN_PLANE_M = 1e-9
# Higher and deeper than any house.
FAR_M = 1e4

_NEXT = np.array((1, 2, 0))

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]


def cut(solids: Iterable[Solid], line: CutLine) -> tuple[CutFace, ...]:
    """Return the faces a vertical cut leaves, in the order of the solids; empty ones left out.

    A corner in the plane counts as left of it, so a plane that runs along a face shows what lies
    to its right, seen from start to end.
    """
    whole = tuple(s for s in solids if len(s.faces))
    found = _straight(pile(whole), line.start, line.end) if whole else {}
    return tuple(CutFace(whole[n].label, found[n]) for n in sorted(found))


def _straight(solids: Pile, start: Point, end: Point) -> dict[int, MultiPolygon]:
    """Return the cut of each solid met between two places, in (distance, level), metres."""
    run = np.subtract(end, start)
    length = float(np.hypot(*run))
    places, ahead, owner = _crossings(
        solids, start, (float(run[0]) / length, float(run[1]) / length)
    )
    if not len(ahead):
        return {}
    order, starts = _loops(ahead.tolist())
    first = np.array(starts)
    found = areas_of(places[order], first, owner[np.array(order)[first]])
    clipped = {n: _clipped(shape, length) for n, shape in found.items()}
    return {n: shape for n, shape in clipped.items() if not shape.is_empty}


def _crossings(solids: Pile, start: Point, along: Point) -> tuple[Floats, Ints, Ints]:
    """Return the (c, 2) places where edges pass the plane, each one's next, and each one's solid.

    Every triangle through the plane has one edge that leaves the front and one that enters it,
    which its neighbour leaves by. So each place is computed once, and loops close exactly.
    """
    near = solids.near(start, along, IN_PLANE_M)
    ids = solids.faces[near]
    x, y = solids.x[ids] - start[0], solids.y[ids] - start[1]
    aside = y * along[0] - x * along[1]
    front = aside >= -IN_PLANE_M
    count = np.count_nonzero(front, axis=1)
    met = np.flatnonzero((count > 0) & (count < 3))
    ids, aside, front = ids[met], aside[met], front[met]
    distance, level = (x * along[0] + y * along[1])[met], solids.z[ids]
    after, rows = front[:, _NEXT], np.arange(len(met))
    i, entering = (front & ~after).argmax(axis=1), (after & ~front).argmax(axis=1)
    j = _NEXT[i]
    left = ids[rows, i] * len(solids.x) + ids[rows, j]
    entered = ids[rows, _NEXT[entering]] * len(solids.x) + ids[rows, entering]
    order = np.argsort(left)
    ahead = order[np.searchsorted(left, entered, sorter=order)]
    share = aside[rows, i] / (aside[rows, i] - aside[rows, j])
    places = [v[rows, i] + share * (v[rows, j] - v[rows, i]) for v in (distance, level)]
    return np.column_stack(places), ahead, solids.owner[near[met]]


def _loops(ahead: list[int]) -> tuple[list[int], list[int]]:
    """Return the crossings loop after loop, and where in that order each loop starts."""
    order: list[int] = []
    starts = []
    seen = bytearray(len(ahead))
    for first in range(len(ahead)):
        if seen[first]:
            continue
        starts.append(len(order))
        here = first
        while not seen[here]:
            seen[here] = 1
            order.append(here)
            here = ahead[here]
    return order, starts


def _clipped(shape: MultiPolygon, length: float) -> MultiPolygon:
    low, _, high, _ = shape.bounds or (0.0, 0.0, 0.0, 0.0)
    if low >= 0 and high <= length:
        return shape
    return multi(shapely.clip_by_rect(shape, 0.0, -FAR_M, length, FAR_M))
