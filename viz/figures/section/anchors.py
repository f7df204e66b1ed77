"""Where a leader starts in a part, and at which side of the picture it leaves."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, MultiPolygon, Polygon

from viz.drawing.marks import Point

Side = Literal["left", "right"]
SIDES: tuple[Side, Side] = ("left", "right")

_INSET = 4.0
_APART = 1.3
_CLEAR = 8.0
_BESIDE = 0.9
_SHARES = (0.5, 0.35, 0.65, 0.2, 0.8, 0.42, 0.58, 0.1, 0.9)
# Costs of both sides nearer than this share of the picture's width count as even.
_EVEN = 0.02
# A clearer case than this keeps its side even where the column is full.
_CLEARLY = 0.25


def by_wording(
    shapes: Sequence[tuple[str, MultiPolygon]], words: Mapping[str, str]
) -> dict[str, MultiPolygon]:
    """Gather the shapes, given with their part ids, under the wording of their labels."""
    grouped: dict[str, list[Polygon]] = {}
    for part, shape in shapes:
        wording = words.get(part, "").strip()
        if wording and not shape.is_empty:
            grouped.setdefault(wording, []).extend(shape.geoms)
    return {wording: MultiPolygon(parts) for wording, parts in grouped.items()}


@dataclass(frozen=True)
class Reach:
    """What level leaders from one wording's shape to the left and the right end would cost, mm.

    far: their lengths. met: what they cross of all shapes, others: of those of other wordings.
    """

    far: tuple[float, float]
    met: tuple[float, float]
    others: tuple[float, float]

    @property
    def lean(self) -> float:
        """How much more a leader to the left costs than one to the right: below 0 is left."""
        return 0.3 * (self.far[0] - self.far[1]) + self.met[0] - self.met[1]


def reaches(shapes: Mapping[str, MultiPolygon], edges: tuple[float, float]) -> dict[str, Reach]:
    """Return the cost of leaders to both ends of the picture, by wording."""
    every = np.array(list(shapes.values()), dtype=object)
    shapely.prepare(every)
    found = {}
    for number, (wording, shape) in enumerate(shapes.items()):
        starts = [_spots(_outermost(shape, side), side, _SHARES[:1], 0.0)[0] for side in SIDES]
        runs = [LineString((s, (e, s[1]))) for s, e in zip(starts, edges, strict=True)]
        lengths = [_met(run, every) for run in runs]
        found[wording] = Reach(
            (runs[0].length, runs[1].length),
            (float(lengths[0].sum()), float(lengths[1].sum())),
            (
                float(lengths[0].sum() - lengths[0][number]),
                float(lengths[1].sum() - lengths[1][number]),
            ),
        )
    return found


def _met(run: LineString, every: NDArray[np.object_]) -> NDArray[np.float64]:
    """Return how much of a leader lies in each shape."""
    met = np.zeros(len(every))
    crossed = shapely.intersects(every, run)
    met[crossed] = shapely.length(shapely.intersection(every[crossed], run))
    return met


def sides(
    reached: Mapping[str, Reach],
    width: float,
    heights: Mapping[str, float],
    room: float,
) -> dict[str, Side]:
    """Choose for each wording the side where its leader crosses least of the work.

    width: of the picture. heights: of the labels, room: of a column, all mm. The clearest cases
    are settled first; even ones fill up evenly, and only less clear ones yield to a full column.
    """
    load: dict[Side, float] = {"left": 0.0, "right": 0.0}
    chosen: dict[str, Side] = {}
    for wording in sorted(reached, key=lambda w: (-abs(reached[w].lean), w)):
        lean = reached[wording].lean
        wish: Side = "left" if lean < 0 else "right"
        if abs(lean) < _EVEN * width:
            wish = "left" if load["left"] < load["right"] else "right"
        if load[wish] + heights[wording] > room and abs(lean) < _CLEARLY * width:
            wish = "right" if wish == "left" else "left"
        chosen[wording] = wish
        load[wish] += heights[wording]
    return chosen


def shut_in(reach: Reach, width: float) -> bool:
    """Tell whether a leader would have to cross much other work on either side."""
    return min(reach.others) > _EVEN * width


def anchor(
    shape: MultiPolygon,
    side: Side,
    taken: Sequence[float],
    kept: Sequence[float] = (),
    inset: float = _INSET,
) -> Point:
    """Return a point inside the shape, near its side, at a height away from those taken.

    The first height with room for a label is taken, else the one farthest from its neighbours.
    kept: heights of lines that a leader must not run along; it may pass close beside them.
    """
    polygon = _outermost(shape, side)
    spots = _spots(polygon, side, _SHARES, inset)
    clear = [s for s in spots if all(abs(s[1] - y) >= _BESIDE for y in kept)] or spots
    far = [(min((abs(y - other) for other in taken), default=99.0), (x, y)) for x, y in clear]
    for wide in (_CLEAR, _APART):
        for distance, spot in far:
            if distance >= wide:
                return spot
    return max(far)[1]


def _outermost(shape: MultiPolygon, side: Side) -> Polygon:
    """Return the polygon nearest to a side."""
    if side == "left":
        return min(shape.geoms, key=lambda p: p.bounds[0])
    return max(shape.geoms, key=lambda p: p.bounds[2])


def _spots(polygon: Polygon, side: Side, shares: Sequence[float], most: float) -> list[Point]:
    """Return points a little inside the side's end: across a flat layer, or along a tall part."""
    left, low, right, high = polygon.bounds
    inset = min(most, (right - left) / 2)
    if right - left > 2 * (high - low):
        x = left + inset if side == "left" else right - inset
        bottom, top = _longest(polygon, [((x, low - 1), (x, high + 1))], 1)[0]
        return [(x, bottom + share * (top - bottom)) for share in shares]
    heights = [low + share * (high - low) for share in shares]
    levels = [((left - 1, y), (right + 1, y)) for y in heights]
    spots = []
    for y, (start, end) in zip(heights, _longest(polygon, levels, 0), strict=True):
        inset = min(most, (end - start) / 2)
        spots.append((start + inset if side == "left" else end - inset, y))
    return spots


def _longest(
    polygon: Polygon, lines: Sequence[tuple[Point, Point]], axis: int
) -> list[tuple[float, float]]:
    """Return where each line's longest run within the polygon starts and ends, along an axis."""
    met = shapely.intersection(shapely.linestrings(lines), polygon)
    runs, owner = shapely.get_parts(met, return_index=True)
    lengths, bounds = shapely.length(runs), shapely.bounds(runs)
    found = []
    for number in range(len(lines)):
        own = np.flatnonzero(owner == number)
        if len(own) and not np.isnan(bounds[own, axis]).all():
            best = own[int(np.argmax(lengths[own]))]
            found.append((float(bounds[best, axis]), float(bounds[best, axis + 2])))
        else:
            within = polygon.representative_point().bounds
            found.append((within[axis], within[axis + 2]))
    return found
