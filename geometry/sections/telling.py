"""Cuts that show the most of a house: across it, through a pier, through the sump."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.sections.face import CutLine
from geometry.units import INCH

# The cut across keeps this clear of piers, the pit and cleanouts.
CLEAR_M = 6 * INCH
# Places looked at along the middle half of the longest side.
TRIES = 41

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class NamedCut:
    """A cut with the word it is asked by: "across", "pier" or "sump"."""

    name: str
    line: CutLine


def telling_cuts(layout: Layout) -> tuple[NamedCut, ...]:
    """Return the cuts worth drawing for this house, the most telling first."""
    return tuple(_cuts(layout))


def _cuts(layout: Layout) -> Iterator[NamedCut]:
    start, end = _longest_side(layout.areas[0])
    through = np.array((start[1] - end[1], end[0] - start[0]))
    yield NamedCut("across", _clear_cut(layout, start, end, through))
    for pier in [p for a in layout.areas for p in a.area.piers][:1]:
        yield NamedCut("pier", _whole(layout, pier.at, through))
    if layout.sump:
        lead = layout.sump.lead
        toward = np.array(lead.along) if lead else through
        yield NamedCut("sump", _whole(layout, layout.sump.sump.at, toward))


def _longest_side(area: AreaLayout) -> tuple[Floats, Floats]:
    """Return the ends of an outline's longest side."""
    sides = pairwise(np.asarray(area.outline.exterior.coords))
    return max(sides, key=lambda side: float(np.linalg.norm(side[1] - side[0])))


def _clear_cut(layout: Layout, start: Floats, end: Floats, through: Floats) -> CutLine:
    """Return the cut nearest the middle of a side that misses piers, pit and cleanouts."""
    shares = sorted(np.linspace(0.25, 0.75, TRIES), key=lambda share: abs(share - 0.5))
    cuts = [_whole(layout, start + share * (end - start), through) for share in shares]
    shy_of = shapely.union_all(_in_the_way(layout)).buffer(CLEAR_M)
    clear = [c for c in cuts if not shapely.LineString((c.start, c.end)).intersects(shy_of)]
    return (clear or cuts)[0]


def _in_the_way(layout: Layout) -> list[BaseGeometry]:
    """Return the plan of what would hide the floor's layers from a cut."""
    piers = [b for b in layout.structure if b.label.role in ("pad", "column")]
    found = [p.region for b in piers for p in b.prisms]
    found += [riser.region for riser in layout.risers]
    return [*found, layout.sump.outer_circle] if layout.sump else found


def _whole(layout: Layout, place: Sequence[float] | Floats, through: Floats) -> CutLine:
    """Return a cut through a place, from one end of the work to the other."""
    spot, way = np.asarray(place), through / float(np.linalg.norm(through))
    reach = (_ends(layout) - spot) @ way
    first, last = spot + reach.min() * way, spot + reach.max() * way
    return CutLine((float(first[0]), float(first[1])), (float(last[0]), float(last[1])))


def _ends(layout: Layout) -> Floats:
    """Return the (n, 2) corners of footings, holes at the ground and the finished grade."""
    found = [shapely.get_coordinates(a.footing_outer) for a in layout.areas]
    found += [hole.high for a in layout.areas if (hole := layout.ground.hole(a))]
    grade = layout.ground.grading()
    return np.concatenate([*found, *([grade.low] if grade else [])])
