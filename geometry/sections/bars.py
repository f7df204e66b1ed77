"""Where a cut meets the continuous bars in the strip footings."""

from dataclasses import dataclass

import numpy as np
from shapely import LineString, get_parts

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.materials.catalogue import BARS
from geometry.plan.outline import minus, offset, polygons
from geometry.sections.face import CutLine

# Where the cut runs along a bar instead of across it, no dot is drawn.
_ALONG_M = 0.05


@dataclass(frozen=True)
class BarMark:
    """One bar cut across: distance along the cut, level of its centre, diameter; metres."""

    distance: float
    level: float
    diameter: float


def bar_marks(layout: Layout, line: CutLine) -> tuple[BarMark, ...]:
    """Return the bars a cut crosses: evenly spread between covers, on the bottom cover."""
    return tuple(mark for area in layout.areas for mark in _area(area, line))


def _area(area: AreaLayout, line: CutLine) -> list[BarMark]:
    bars = area.footing.bars
    if not bars.count:
        return []
    diameter = BARS[bars.size].diameter_m
    level = area.footing_bottom + bars.cover + diameter / 2
    met = [span for bar in _lines(area, diameter) for span in line.spans(bar)]
    return [BarMark(begin, level, diameter) for begin, end in met if end - begin < _ALONG_M]


def _lines(area: AreaLayout, diameter: float) -> list[LineString]:
    """Return each bar's line on the plan, kept inside this area's own strip."""
    bars = area.footing.bars
    reach = area.projection_out - bars.cover - diameter / 2
    back = reach - (area.footing.width - 2 * bars.cover - diameter)
    places = np.linspace(reach, back, bars.count) if bars.count > 1 else [(reach + back) / 2]
    strip = minus(area.footings, area.earlier)
    rings = [p.exterior for place in places for p in polygons(offset(area.house, float(place)))]
    return [part for ring in rings for part in get_parts(ring.intersection(strip))]
