"""A vertical plane through closed meshes: exact polygons, one set per solid."""

from collections.abc import Iterable, Sequence

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import MultiPolygon, affinity

from geometry.plan.outline import Point, multi
from geometry.sections.face import CutFace, CutLine, Leg
from geometry.sections.loops import GRID_M, areas_of
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
    to its right, seen from start to end. What consecutive legs show of one solid is one face.
    """
    whole = tuple(s for s in solids if len(s.faces))
    parts = [_straight(pile(whole), leg) for leg in line.legs] if whole else []
    found = _joined(parts)
    return tuple(CutFace(whole[n].label, found[n]) for n in sorted(found))


def _joined(parts: Sequence[dict[int, MultiPolygon]]) -> dict[int, MultiPolygon]:
    """Return what every leg shows of each solid as one shape, without the seams."""
    if len(parts) == 1:
        return parts[0]
    legs: dict[int, list[MultiPolygon]] = {}
    for part in parts:
        for number, shape in part.items():
            legs.setdefault(number, []).append(shape)
    return {
        number: multi(shapely.union_all(shapes, grid_size=GRID_M)) if len(shapes) > 1 else shapes[0]
        for number, shapes in legs.items()
    }


def _straight(solids: Pile, leg: Leg) -> dict[int, MultiPolygon]:
    """Return the cut of each solid that a leg meets, in (distance, level), metres."""
    along = (leg.run[0] / leg.length, leg.run[1] / leg.length)
    places, ahead, owner = _crossings(solids, leg.start, along)
    if not len(ahead):
        return {}
    order, starts = _loops(ahead.tolist())
    first = np.array(starts)
    found = areas_of(places[order], first, owner[np.array(order)[first]])
    clipped = {n: _clipped(shape, leg) for n, shape in found.items()}
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


def _clipped(shape: MultiPolygon, leg: Leg) -> MultiPolygon:
    """Return what lies within the leg, moved to the leg's place in the whole cut."""
    if leg.begin:
        shape = affinity.translate(shape, leg.begin)
    low, _, high, _ = shape.bounds
    if high < leg.begin or low > leg.finish:
        return MultiPolygon()
    if leg.begin or low < 0 or high > leg.finish:
        # Moved before it is clipped: so this leg ends exactly where the next one begins.
        within = shapely.box(leg.begin, -FAR_M, leg.finish, FAR_M)
        shape = multi(shapely.intersection(shape, within, grid_size=GRID_M))
    return shape
