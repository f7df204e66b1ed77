"""Cuts that show the most of a house: across it, over a step, through pier, sump and drains."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.bleeders import Bleeder
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.plan.outline import SAME_POINT_M, Point
from geometry.sections.face import CutLine
from geometry.units import FOOT, INCH

# The cut across keeps this clear of piers, the pit, cleanouts, bleeders and pipes to daylight.
CLEAR_M = 6 * INCH
# Places looked at along a side, and the share of it left out at each end.
TRIES = 41
ENDS = 0.15
# A cut that stays this many times its width in a footing runs along it, not through it.
ALONG = 2.0
# How far a cut at an area's edge reaches out from the footing, and in.
EDGE_OUTSIDE_M = 2 * FOOT
EDGE_INSIDE_M = 3 * FOOT
# A shorter stretch between two areas is a corner, not a step worth a cut.
SHORTEST_STEP_M = 1 * FOOT

Floats = NDArray[np.float64]
Side = tuple[Floats, Floats]


@dataclass(frozen=True)
class NamedCut:
    """A cut with the word it is asked by: "across", "step", "pier", "sump", "drain", "bleeder"."""

    name: str
    line: CutLine


def telling_cuts(layout: Layout) -> tuple[NamedCut, ...]:
    """Return the cuts worth drawing for this house, the most telling first.

    "across" goes through the lowest area from side to side, over the step to another area if one
    lies there; else "step" does. "pier" goes through the first pier, "sump" along the pipe from
    the drain to the pit, "drain" through a drain that no other meets, "bleeder" along one.
    """
    cuts = tuple(_cuts(layout))
    return (*cuts, *_drain_cuts(layout, [cut.line for cut in cuts]))


def _cuts(layout: Layout) -> Iterator[NamedCut]:
    look = _Look(layout)
    side = _longest(_sides(layout.areas[0]))
    through = _square(side)
    across = look.best(_along(look, side, through))
    yield NamedCut("across", across)
    if look.steps and not look.over_a_step(across):
        step = _longest(look.steps)
        yield NamedCut("step", look.best(_along(look, step, _square(step))))
    for pier in [p for a in layout.areas for p in a.area.piers][:1]:
        ways = (through, np.array((-through[1], through[0])))
        cuts = [look.whole(pier.at, way) for way in ways]
        yield NamedCut("pier", min(cuts, key=lambda cut: look.flaws(cut, look.works)))
    if layout.sump:
        lead = layout.sump.lead
        toward = np.array(lead.along) if lead else through
        yield NamedCut("sump", look.whole(layout.sump.sump.at, toward))


def _drain_cuts(layout: Layout, cuts: Sequence[CutLine]) -> Iterator[NamedCut]:
    """Yield the cut through the first drain that no other cut meets, and the one at a bleeder."""
    look = _Look(layout)
    missed = [d for d in layout.drains if not any(_meets(d, cut) for cut in cuts)]
    for drain in missed[:1]:
        side = _longest(pairwise(np.asarray(drain.route.line.coords)))
        yield NamedCut("drain", look.best(_along(look, side, _square(side))))
    if layout.bleeders:
        yield NamedCut("bleeder", min(map(look.through, layout.bleeders), key=look.bleeder_flaws))


def _meets(drain: DrainLayout, cut: CutLine) -> bool:
    return bool(drain.route.line.intersects(cut.track()))


def edge_cut(area: AreaLayout) -> CutLine | None:
    """Return a short cut from outside into an area, square to its longest side of its own.

    None where every side is a lower neighbour's.
    """
    shared = [outline.buffer(SAME_POINT_M) for outline in area.earlier]
    own = [s for s in _sides(area) if not any(o.contains(LineString(s)) for o in shared)]
    if not own:
        return None
    start, end = _longest(own)
    way = _square((start, end)) / float(np.linalg.norm(end - start))
    middle = (start + end) / 2
    reach = area.wall.thickness + area.projection_in + EDGE_INSIDE_M
    outside = middle - (area.projection_out + EDGE_OUTSIDE_M) * way
    return CutLine(_point(outside), _point(middle + reach * way))


class _Look:
    """What a cut should meet and what it should miss in one house."""

    def __init__(self, layout: Layout) -> None:
        self.layout = layout
        self.steps = list(_steps(layout.areas))
        self.ends = _ends(layout)
        hiding = [p.region for d in layout.drains for p in layout.risers(d)]
        hiding += [layout.sump.outer_circle] if layout.sump else []
        piers = [b for b in layout.structure if b.label.role in ("pad", "column")]
        pads = [p.region for b in piers for p in b.prisms]
        self.works = shapely.union_all(hiding).buffer(CLEAR_M)
        self.built = shapely.union_all([*hiding, *pads]).buffer(CLEAR_M)
        self.shy_of = shapely.union_all([*hiding, *pads, *_pipes_across(layout)]).buffer(CLEAR_M)

    def whole(self, place: Sequence[float] | Floats, way: Floats) -> CutLine:
        """Return a cut through a place, from one end of the work to the other."""
        spot, way = np.asarray(place), way / float(np.linalg.norm(way))
        reach = (self.ends - spot) @ way
        return CutLine(_point(spot + reach.min() * way), _point(spot + reach.max() * way))

    def through(self, bleeder: Bleeder) -> CutLine:
        """Return the cut along a bleeder, from outside the house inward."""
        start, end = (np.asarray(e[:2]) for e in (bleeder.outer_end, bleeder.inner_end))
        return self.whole((start + end) / 2, end - start)

    def bleeder_flaws(self, cut: CutLine) -> tuple[bool, bool, int, bool]:
        """Return a cut's flaws, and whether the first footing it goes through has no bleeder."""
        footings = shapely.union_all([area.footings for area in self.layout.areas])
        first = min(start for start, _ in cut.spans(footings))
        near = shapely.Point(cut.place(first)).buffer(CLEAR_M)
        pierced = any(near.contains(shapely.Point(b.outer_end[:2])) for b in self.layout.bleeders)
        return (*self.flaws(cut, self.built), not pierced)

    def best(self, cuts: Iterable[CutLine]) -> CutLine:
        """Return the cut that hides least and meets most; of equal ones the first."""
        return min(cuts, key=lambda cut: (*self.flaws(cut, self.shy_of), not self._stepping(cut)))

    def flaws(self, cut: CutLine, shy_of: BaseGeometry) -> tuple[bool, bool, int]:
        """Return whether a cut meets what hides or runs along a footing, and the drains missed."""
        track = cut.track()
        along = any(
            part.length > ALONG * area.footing.width
            for area in self.layout.areas
            for part in shapely.get_parts(area.footings.intersection(track))
        )
        missed = sum(not _meets(drain, cut) for drain in self.layout.drains)
        return bool(shy_of.intersects(track)), along, missed

    def over_a_step(self, cut: CutLine) -> bool:
        """Whether a cut goes over the step between two areas."""
        track = cut.track()
        return any(LineString(step).intersects(track) for step in self.steps)

    def _stepping(self, cut: CutLine) -> bool:
        return not self.steps or self.over_a_step(cut)


def _pipes_across(layout: Layout) -> Iterator[LineString]:
    """Yield what a cut square to the footing would follow: pipes to daylight, and bleeders."""
    leads = [x for d in layout.drains for x in layout.leads(d) if x is not layout.pit_lead]
    bores = [*(lead.outside for lead in leads), *(b.outside for b in layout.bleeders)]
    yield from (LineString((bore.start[:2], bore.end[:2])) for bore in bores)


def _along(look: _Look, side: Side, way: Floats) -> list[CutLine]:
    """Return cuts in one direction at places along a side, the nearest to the middle first.

    Before them come the cuts at the middle of every step in reach.
    """
    start, end = side
    run = end - start
    middles = [((a + b) / 2 - start) @ run / (run @ run) for a, b in look.steps]
    shares = sorted(np.linspace(ENDS, 1 - ENDS, TRIES), key=lambda share: abs(share - 0.5))
    first = [share for share in middles if ENDS <= share <= 1 - ENDS]
    return [look.whole(start + share * run, way) for share in (*first, *shares)]


def _steps(areas: Sequence[AreaLayout]) -> Iterator[Side]:
    """Yield the stretches on the plan where two areas of different levels share a side."""
    for area in areas:
        for other in areas:
            if other.outline not in area.earlier or abs(area.tof - other.tof) < SAME_POINT_M:
                continue
            near = other.outline.buffer(SAME_POINT_M)
            for side in _sides(area):
                shared = LineString(side).intersection(near)
                if shared.length > SHORTEST_STEP_M and isinstance(shared, LineString):
                    ends = shapely.get_coordinates(shared)
                    yield ends[0], ends[-1]


def _sides(area: AreaLayout) -> list[Side]:
    return list(pairwise(np.asarray(area.outline.exterior.coords)))


def _longest(sides: Iterable[Side]) -> Side:
    return max(sides, key=lambda side: float(np.linalg.norm(side[1] - side[0])))


def _square(side: Side) -> Floats:
    """Return the direction square to a side, to its left: inward from an area's outline."""
    start, end = side
    return np.array((start[1] - end[1], end[0] - start[0]))


def _ends(layout: Layout) -> Floats:
    """Return the (n, 2) corners of footings, holes at the ground and the finished grade."""
    found = [shapely.get_coordinates(a.footing_outer) for a in layout.areas]
    found += [hole.high for a in layout.areas if (hole := layout.ground.hole(a))]
    grade = layout.ground.grading()
    return np.concatenate([*found, *([grade.low] if grade else [])])


def _point(spot: Floats) -> Point:
    return float(spot[0]), float(spot[1])
