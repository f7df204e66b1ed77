"""Where a stage is cut to show it best: at the floor's edge, across its drain, through the pit."""

from itertools import pairwise

import numpy as np
from shapely import Point as Spot

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.plan.outline import Point
from geometry.sections.face import CutLine
from geometry.sections.telling import edge_cut, telling_cuts
from geometry.site.records import Stage

# Beyond hole and floor nothing more is told, metres.
_BEYOND_M = 1.5
_PIT_BEYOND_M = 3.0
# A hair to either side of the drain, to tell the house's side from the other.
_HAIR_M = 0.02


def stage_cut(layout: Layout, stage: Stage) -> CutLine:
    """Return the cut that tells a stage, outside at its left; through the pit, the drain there."""
    if stage.key == "pit" and layout.sump:
        return _pit_cut(layout)
    drain = next((d for d in layout.drains if d.key == stage.drain), None)
    if drain is None and stage.key in ("subgrade", "backfill") and layout.drains:
        drain = next((d for d in layout.drains if not d.inside), layout.drains[0])
    if drain is not None:
        return across(layout, drain)
    area = layout.area(stage.areas[0])
    return edge_cut(area) or telling_cuts(layout)[0].line


def across(layout: Layout, drain: DrainLayout) -> CutLine:
    """Return a cut square to the middle of a drain's longest straight, from outside into the house.

    It is as long as the hole is wide, and reaches well into the floor.
    """
    route = drain.route
    ends = max(pairwise(route.line.coords), key=lambda leg: np.hypot(*np.subtract(*leg)))
    start, end = (np.array(p[:2]) for p in ends)
    way = np.array((start[1] - end[1], end[0] - start[0]))
    way /= np.hypot(*way)
    middle = start + _share(drain, start, end) * (end - start)
    walls = drain.area.walls
    gaps = [walls.distance(Spot(middle + side * _HAIR_M * way)) for side in (-1, 1)]
    nearer = way if gaps[1] < gaps[0] else -way
    inward = -nearer if drain.inside else nearer
    dug = layout.ground.hole(drain.area)
    reach = _BEYOND_M + drain.area.footing.width + drain.drain.stone.width
    wide = 0.0 if dug is None else float(np.abs(dug.high - dug.low).max())
    out = reach + wide + layout.design.excavation.working_space
    return CutLine(_point(middle - out * inward), _point(middle + reach * inward))


def _share(drain: DrainLayout, start: np.ndarray, end: np.ndarray) -> float:
    """Return where along a straight to cut: in the middle, or clear of a tee there."""
    tees = [np.array(drain.route.at(tee)) for tee in drain.tees]
    for share in (0.5, 0.35, 0.65):
        spot = start + share * (end - start)
        if all(np.hypot(*(spot - tee)) > 1.0 for tee in tees):
            return share
    return 0.5


def _pit_cut(layout: Layout) -> CutLine:
    pit = layout.sump
    if pit is None:
        raise ValueError("there is no pit")
    way = np.array(pit.lead.along if pit.lead else (1.0, 0.0))
    at = np.array(pit.sump.at)
    return CutLine(_point(at - _PIT_BEYOND_M * way), _point(at + _PIT_BEYOND_M * way))


def _point(spot: np.ndarray) -> Point:
    return float(spot[0]), float(spot[1])
