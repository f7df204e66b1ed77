"""Candidates for the place of words: boxes in rings round a thing, or all over a region."""

from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from viz.drawing.marks import Point

Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]

# Distances of the first rings, mm; candidates on each ring.
NEAR = (0.0, 1.0, 2.0, 3.5, 5.0, 7.0, 9.5, 12.5, 16.0, 20.0, 25.0, 31.0, 38.0)
_WAYS = 24
# Candidates in a region keep so far off its bounds, mm.
_EDGE = 0.01
# What it costs to stand against the wanted way, in millimetres of distance.
_TURNED = 5.0
# Words stand so far from lines and from one another, mm.
AIR = 0.8


@dataclass(frozen=True)
class Wish:
    """Something to place: where it belongs, its size on paper, the way it would like to stand.

    away: least distance from `at`. loose: farther than this beyond it, a leader leads to `at`.
    start: that leader begins so far from `at`. air: kept free on every side.
    """

    at: Point
    width: float
    height: float
    toward: Point | None = None
    away: float = 2.4
    loose: float = 0.0
    start: float = 0.0
    air: float = AIR


def around(wish: Wish, distances: Floats) -> tuple[Floats, Floats]:
    """Return candidate boxes (n, 4) in rings round a thing, and what their place costs."""
    turn = np.arange(_WAYS) * (2 * np.pi / _WAYS)
    ways = np.column_stack((np.cos(turn), np.sin(turn)))
    # A box touches its ring with the corner or the middle of the side that looks at the thing.
    lean = np.clip(ways * 1.45, -1, 1)
    half = np.array((wish.width / 2 + wish.air, wish.height / 2 + wish.air))
    ring = distances[:, None, None] + wish.away
    middles = (np.asarray(wish.at) + ways * ring + lean * half).reshape(-1, 2)
    cost = np.repeat(distances, _WAYS)
    if wish.toward is not None:
        cost = cost + np.tile(_TURNED * (1 - ways @ np.asarray(wish.toward)) / 2, len(distances))
    return np.hstack((middles - half, middles + half)), cost


def within(wish: Wish, region: BaseGeometry) -> Floats:
    """Return candidate boxes (n, 4) that lie within a region."""
    if region.is_empty:
        return np.empty((0, 4))
    left, low, right, high = region.bounds
    half = np.array((wish.width / 2 + wish.air, wish.height / 2 + wish.air))
    xs = _spread(left + half[0] + _EDGE, right - half[0] - _EDGE)
    ys = _spread(low + half[1] + _EDGE, high - half[1] - _EDGE)
    middles = np.stack(np.meshgrid(xs, ys), axis=-1).reshape(-1, 2)
    boxes = np.hstack((middles - half, middles + half))
    if not len(boxes):
        return boxes
    shapely.prepare(region)
    kept: Floats = boxes[shapely.contains_properly(region, shapely.box(*boxes.T))]
    return kept


def needs_leader(wish: Wish, boxes: Floats) -> Flags:
    """Tell which boxes stand so far from their thing that a leader is wanted."""
    gaps = np.clip(wish.at, boxes[:, :2], boxes[:, 2:]) - np.asarray(wish.at)
    far: Flags = np.hypot(gaps[:, 0], gaps[:, 1]) >= (wish.away + wish.loose if wish.loose else 0)
    return far


def _spread(first: float, last: float) -> Floats:
    """Return evenly spread places from the first to the last; none where they are past it."""
    count = min(33, int((last - first) / 3.0) + 2) if last >= first else 0
    return np.linspace(first, last, count)


def leads(wish: Wish, boxes: Floats) -> tuple[Floats, Floats]:
    """Return where the leaders of boxes start and end, (n, 2) each."""
    at = np.asarray(wish.at, dtype=np.float64)
    ends = np.clip(at, boxes[:, :2], boxes[:, 2:])
    gaps = ends - at
    far = np.hypot(*gaps.T)[:, None]
    starts = at + gaps / np.maximum(far, 1e-9) * np.minimum(wish.start, far)
    return starts, ends
