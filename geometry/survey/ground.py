"""The dug ground of one area in figures: base volume, thickness, cut, fill, what is not covered."""

from dataclasses import dataclass

import numpy as np
from shapely.geometry.base import BaseGeometry

from geometry.layout.bodies import Prism
from geometry.survey.bed import Bed
from geometry.survey.beyond import carried_on, not_covered
from geometry.survey.inside import Sorted, sort_triangles
from geometry.survey.pieces import Pieces, clipped, joined
from geometry.survey.surface import Surface

# Thinner than the least by so little is rounding, metres.
_ROUNDING_M = 1e-9


@dataclass(frozen=True, eq=False)
class OnFloor:
    """A surface on a region: between its shots, and carried on beyond them.

    found: which points and triangles lie within. between, beyond: the two parts; whole: both.
    """

    found: Sorted
    between: Pieces
    beyond: Pieces
    whole: Pieces


def on_floor(surface: Surface, region: BaseGeometry) -> OnFloor:
    """Return a surface clipped to a region; beyond its rim the nearest level is carried on."""
    found = sort_triangles(surface, region)
    between = clipped(surface, found, region)
    beyond = carried_on(surface, not_covered(surface, region))
    return OnFloor(found, between, beyond, joined(between, beyond))


@dataclass(frozen=True)
class Place:
    """A figure and where it is found on the plan, metres."""

    value: float
    x: float
    y: float


@dataclass(frozen=True)
class Ground:
    """m2, m3 and metres. base: between ground and the planned top of the base, pipe taken out.

    beyond: the part of the floor outside the shots, with its share of the base. cut: ground above
    the planned subgrade; low: room below it; no_room: ground above the base's top. thin: area
    where the base comes out thinner than `least_m`; the thinnest place is `thinnest`.
    """

    area_m2: float
    covered_m2: float
    beyond_m2: float
    base_m3: float
    base_beyond_m3: float
    planned_m3: float
    mean_m: float
    thinnest: Place
    thickest: Place
    least_m: float
    thin_m2: float
    cut_m3: float
    low_m3: float
    no_room_m3: float


def measured(bed: Bed, floor: OnFloor) -> Ground:
    """Return the figures of one area's ground."""
    whole, top = floor.whole, bed.top
    base, beyond = _base(bed, floor)
    area = whole.area_m2
    thin = whole.area_above(top - bed.least + _ROUNDING_M)
    return Ground(
        area_m2=area,
        covered_m2=floor.between.area_m2,
        beyond_m2=floor.beyond.area_m2,
        base_m3=base - bed.pipe_m3,
        base_beyond_m3=beyond,
        planned_m3=bed.planned_m3,
        mean_m=whole.below(top) / area,
        thinnest=_place(whole, top, int(whole.level.argmax())),
        thickest=_place(whole, top, int(whole.level.argmin())),
        least_m=bed.least,
        thin_m2=thin,
        cut_m3=whole.above(bed.subgrade),
        low_m3=whole.below(bed.subgrade),
        no_room_m3=whole.above(top),
    )


def _place(pieces: Pieces, top: float, index: int) -> Place:
    return Place(top - float(pieces.level.flat[index]), *pieces.corner(index))


def _base(bed: Bed, floor: OnFloor) -> tuple[float, float]:
    """Return the base's volume in all, and of that beyond the shots, m3."""
    volumes = np.zeros(2)
    for number, band in enumerate(bed.bands):
        here = floor if band.region is bed.region else on_floor(floor.between.surface, band.region)
        volumes += [_within(part, band, number) for part in (here.whole, here.beyond)]
    return float(volumes[0]), float(volumes[1])


def _within(pieces: Pieces, band: Prism, number: int) -> float:
    """Return the space of one band of levels above the ground; the lowest has no end."""
    below = pieces.below(band.bottom) if number else 0.0
    return pieces.below(band.top) - below
