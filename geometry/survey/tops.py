"""Tops of footing and pads as built, against the design."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from geometry.layout.areas import AreaLayout
from geometry.layout.footings import pad_prism, pier_name
from geometry.layout.lay import Layout
from geometry.plan.outline import offset
from geometry.survey.shots import Ints, ShotFault, Shots, some
from geometry.survey.tolerances import FOOTING_TOP, Tolerance, footing_tolerance
from geometry.units import INCH

# A rod stands this near to the concrete's edge, or the shot is no shot of it, metres.
BESIDE_M = 6 * INCH


@dataclass(frozen=True)
class Top:
    """One shot on concrete. level_m, planned_m: against the project's TOF; off_m: above the plan.

    on: `footing` or `pad P1`. area: whose footing or pad it is. within: the tolerance holds.
    """

    shot: str
    row: int
    on: str
    area: str
    x: float
    y: float
    level_m: float
    planned_m: float
    tolerance: Tolerance

    @property
    def off_m(self) -> float:
        """How far above the plan it came out, metres."""
        return self.level_m - self.planned_m

    @property
    def within(self) -> bool:
        """Whether the tolerance holds."""
        return self.tolerance.holds(self.off_m)


def tops(layout: Layout, shots: Shots) -> tuple[tuple[Top, ...], list[ShotFault]]:
    """Return the shots on footings and pads against the design, and those that stand beside."""
    found = [*_footings(layout, shots), *_pads(layout, shots)]
    found.sort(key=lambda row: row[0].row)
    beside = [
        ShotFault(f"it is marked {top.on}, but lies beside it on the plan", top.row, "doubt")
        for top, on in found
        if not on
    ]
    return tuple(top for top, _ in found), some(beside, "lie beside what they are marked")


def _footings(layout: Layout, shots: Shots) -> Iterator[tuple[Top, bool]]:
    picked = shots.of("footing")
    if not len(picked):
        return
    owner, away = _nearest([a.footings for a in layout.areas], shots, picked)
    for index, area_number, far in zip(picked, owner, away, strict=True):
        area = layout.areas[area_number]
        tolerance = footing_tolerance(area.wall)
        yield _top(shots, int(index), "footing", area, area.tof, tolerance), far <= BESIDE_M


def _nearest(regions: Sequence[shapely.Geometry], shots: Shots, picked: Ints) -> tuple[Ints, Ints]:
    """Return the region nearest to each shot, and how far off it is, metres."""
    spots = shapely.points(shots.x[picked], shots.y[picked])
    away = np.stack([shapely.distance(region, spots) for region in regions])
    owner = away.argmin(axis=0)
    return owner, away[owner, np.arange(len(picked))]


def _pads(layout: Layout, shots: Shots) -> Iterator[tuple[Top, bool]]:
    for index in shots.of("pad"):
        what = shots.whats[shots.code[index]]
        spot = shapely.Point(shots.x[index], shots.y[index])
        piers = [
            (pad_prism(area, pier), area)
            for area in layout.areas
            for number, pier in enumerate(area.area.piers)
            if pier_name(area, number) == what.pad
        ]
        pad, area = min(piers, key=lambda row: row[0].region.distance(spot))
        on = bool(offset(pad.region, BESIDE_M).intersects(spot))
        yield _top(shots, int(index), str(what), area, pad.top, FOOTING_TOP), on


def _top(
    shots: Shots, index: int, on: str, area: AreaLayout, planned: float, tolerance: Tolerance
) -> Top:
    x, y, level = (float(values[index]) for values in (shots.x, shots.y, shots.level))
    row = int(shots.row[index])
    return Top(shots.name(index), row, on, area.name, x, y, level, planned, tolerance)
