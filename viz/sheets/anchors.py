"""Where a leader starts in a part, and at which side of the picture it leaves."""

from collections.abc import Mapping, Sequence
from typing import Literal

import shapely
from shapely import LineString, MultiPolygon, Polygon

from viz.drawing.marks import Point

Side = Literal["left", "right"]
SIDES: tuple[Side, Side] = ("left", "right")

_INSET = 4.0
_APART = 1.3
_CLEAR = 8.0
_SHARES = (0.5, 0.35, 0.65, 0.2, 0.8, 0.42, 0.58, 0.1, 0.9)
# Costs of both sides nearer than this share of the picture's width count as even.
_EVEN = 0.02


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


def sides(
    shapes: Mapping[str, MultiPolygon],
    edges: tuple[float, float],
    heights: Mapping[str, float],
    room: float,
) -> dict[str, Side]:
    """Choose for each wording the side where its leader crosses least of the work.

    edges: left and right end of the picture, in the unit of the shapes. heights: of the labels,
    room: of a column, both mm. The clearest cases are settled first; even ones fill up evenly.
    """
    leans = {w: _lean(shapes, w, edges) for w in shapes}
    load: dict[Side, float] = {"left": 0.0, "right": 0.0}
    chosen: dict[str, Side] = {}
    for wording in sorted(shapes, key=lambda w: (-abs(leans[w]), w)):
        wish: Side = "left" if leans[wording] < 0 else "right"
        if abs(leans[wording]) < _EVEN * (edges[1] - edges[0]):
            wish = "left" if load["left"] < load["right"] else "right"
        if load[wish] + heights[wording] > room:
            wish = "right" if wish == "left" else "left"
        chosen[wording] = wish
        load[wish] += heights[wording]
    return chosen


def _lean(shapes: Mapping[str, MultiPolygon], wording: str, edges: tuple[float, float]) -> float:
    """Return how much more a leader to the left costs than one to the right: below 0 is left."""
    left, right = _runs(shapes[wording], edges)
    lengths = float(left.length - right.length)
    return 0.3 * lengths + _met(shapes, left) - _met(shapes, right)


def shut_in(shapes: Mapping[str, MultiPolygon], wording: str, edges: tuple[float, float]) -> bool:
    """Tell whether a leader would have to cross much other work on either side."""
    others = {w: shape for w, shape in shapes.items() if w != wording}
    least = min(_met(others, run) for run in _runs(shapes[wording], edges))
    return least > _EVEN * (edges[1] - edges[0])


def _met(shapes: Mapping[str, MultiPolygon], run: LineString) -> float:
    return float(sum(run.intersection(shape).length for shape in shapes.values()))


def _runs(shape: MultiPolygon, edges: tuple[float, float]) -> tuple[LineString, LineString]:
    """Return the level lines from the shape to the left and the right end of the picture."""
    starts = [anchor(shape, side, (), inset=0.0) for side in SIDES]
    left, right = (LineString((s, (e, s[1]))) for s, e in zip(starts, edges, strict=True))
    return left, right


def anchor(shape: MultiPolygon, side: Side, taken: Sequence[float], inset: float = _INSET) -> Point:
    """Return a point inside the shape, near its side, at a height away from those taken.

    The first height with room for a label is taken, else the one farthest from its neighbours.
    """
    if side == "left":
        polygon = min(shape.geoms, key=lambda p: p.bounds[0])
    else:
        polygon = max(shape.geoms, key=lambda p: p.bounds[2])
    spots = [_spot(polygon, side, share, inset) for share in _SHARES]
    far = [(min((abs(y - other) for other in taken), default=99.0), (x, y)) for x, y in spots]
    for wide in (_CLEAR, _APART):
        for distance, spot in far:
            if distance >= wide:
                return spot
    return max(far)[1]


def _spot(polygon: Polygon, side: Side, share: float, most: float) -> Point:
    """Return a point a little inside the side's end: across a flat layer, or along a tall part."""
    left, low, right, high = polygon.bounds
    inset = min(most, (right - left) / 2)
    if right - left > 2 * (high - low):
        x = left + inset if side == "left" else right - inset
        bottom, top = _longest(polygon, ((x, low - 1), (x, high + 1)), 1)
        return (x, bottom + share * (top - bottom))
    y = low + share * (high - low)
    start, end = _longest(polygon, ((left - 1, y), (right + 1, y)), 0)
    inset = min(most, (end - start) / 2)
    return (start + inset if side == "left" else end - inset, y)


def _longest(polygon: Polygon, line: tuple[Point, Point], axis: int) -> tuple[float, float]:
    """Return where the line's longest run within the polygon starts and ends, along an axis."""
    runs = shapely.get_parts(polygon.intersection(LineString(line)))
    best = max(runs, key=lambda run: run.length, default=polygon.representative_point())
    return (best.bounds[axis], best.bounds[axis + 2])
