"""The thickness of the base as bands on the plan, and the shores of ponds, for pictures."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from geometry.plan.outline import EMPTY, polygons
from geometry.survey.asdug import AreaDug
from geometry.survey.bed import Bed
from geometry.survey.beyond import not_covered
from geometry.survey.corners import highest, lowest
from geometry.survey.ponds import Pond
from geometry.survey.shots import Floats
from geometry.survey.surface import Surface, triangulate
from geometry.survey.tolerances import FINE_GRADE

Meaning = Literal["none", "thin", "high", "rather high", "rather low", "low", "deep"]
# A picture of more shots shows the means in so many by so many cells.
_CELLS = 60
_GRID_M = 1e-7
_UNDER_M = 1e-6
# Levels nearer than this are one; parts smaller than this are rounding, and may cross themselves.
_SAME_M, _CRUMB_M2 = 1e-9, 1e-12


@dataclass(frozen=True, eq=False)
class Band:
    """Where the base is between two thicknesses, metres; None without a bound.

    meaning: none: ground over the base's top; thin: under the least; high, low: ground beyond the
    fine grade's tolerance; rather high, rather low: within it; deep: below twice of it. area_m2:
    exact. region: as drawn.
    """

    meaning: Meaning
    low: float | None
    high: float | None
    area_m2: float
    region: BaseGeometry


def band_edges(bed: Bed) -> tuple[tuple[Meaning, float], ...]:
    """Return each band but the last with its greatest thickness, metres, rising."""
    plan, tolerance = bed.top - bed.subgrade, FINE_GRADE.above
    high = max(bed.least, plan - tolerance)
    planned, low = max(high, plan), max(high, plan + tolerance)
    edges: tuple[tuple[Meaning, float], ...] = (
        ("none", 0.0), ("thin", bed.least), ("high", high), ("rather high", planned),
        ("rather low", low), ("low", low + tolerance),
    )  # fmt: skip
    return edges


def thickness_bands(dug: AreaDug) -> tuple[Band, ...]:
    """Return the bands that are there, from the thinnest base to the thickest."""
    surface, bed, whole = thinned(dug.surface), dug.bed, dug.floor.whole
    covered = bed.region.difference(not_covered(dug.surface, bed.region))
    corners = surface.points[surface.triangles]
    thick = bed.top - surface.level[surface.triangles]
    found, low, under = [], None, 0.0
    last: tuple[Meaning, float] = ("deep", float("inf"))
    for meaning, high in (*band_edges(bed), last):
        bound = None if high == float("inf") else high
        upto = whole.area_m2 if bound is None else whole.area_above(bed.top - bound + _SAME_M)
        if (low is None or high > low) and upto - under > _UNDER_M:
            drawn = between(corners, thick, low, bound).intersection(covered)
            found.append(Band(meaning, low, bound, upto - under, drawn))
        low, under = high, upto
    return tuple(found)


def not_shot(dug: AreaDug) -> BaseGeometry:
    """Return the part of the floor beyond the outermost shots."""
    return not_covered(dug.surface, dug.bed.region)


def shores(dug: AreaDug) -> tuple[BaseGeometry, ...]:
    """Return the water of each listed pond on the plan, as drawn; empty for one too small."""
    surface = thinned(dug.surface)
    corners = surface.points[surface.triangles]
    level = surface.level[surface.triangles]
    return tuple(_shore(dug, pond, corners, level) for pond in dug.ponds.deepest)


def _shore(dug: AreaDug, pond: Pond, corners: Floats, level: Floats) -> BaseGeometry:
    wet = between(corners, level, None, pond.spill_m - _UNDER_M).intersection(dug.bed.region)
    spot = shapely.Point(pond.x, pond.y)
    return next((part for part in polygons(wet) if part.distance(spot) < _UNDER_M), EMPTY)


def thinned(surface: Surface) -> Surface:
    """Return a surface of the means in square cells, as it is where it has few shots."""
    if len(surface.points) <= _CELLS**2:
        return surface
    low, size = surface.points.min(axis=0), np.ptp(surface.points, axis=0)
    cell = np.minimum((surface.points - low) / size * _CELLS, _CELLS - 1).astype(np.int64)
    _, number = np.unique(cell[:, 0] * _CELLS + cell[:, 1], return_inverse=True)
    count = np.bincount(number)
    rim = surface.rim[:, 0]
    x, y, level = (
        np.concatenate((np.bincount(number, values) / count, values[rim]))
        for values in (*surface.points.T, surface.level)
    )
    return triangulate(x, y, level)


def between(corners: Floats, value: Floats, low: float | None, high: float | None) -> BaseGeometry:
    """Return where a value that is plane over each triangle lies between two bounds.

    corners: (k, 3, 2) metres. value: (k, 3) at the corners.
    """
    bottom, top = -np.inf if low is None else low, np.inf if high is None else high
    for bound in (bottom, top):
        value = np.where(np.abs(value - bound) < _SAME_M, bound, value)
    # What is level with a bound lies above it.
    met = (highest(value) >= bottom) & (lowest(value) < top)
    if not met.any():
        return EMPTY
    order = np.argsort(value[met], axis=1)[..., None]
    corners, value = np.take_along_axis(corners[met], order, 1), np.sort(value[met], axis=1)
    shapes = shapely.polygons(np.stack(_outline(corners, value, bottom, top), axis=1))
    shapes = shapes[shapely.area(shapes) > _CRUMB_M2]
    return shapely.union_all(shapes, grid_size=_GRID_M)


def _outline(corners: Floats, value: Floats, bottom: float, top: float) -> Sequence[Floats]:
    """Return the corners of each triangle's part, (k, 2) each; its corners rise in value."""
    first, second, third = (value[:, n] for n in range(3))
    low, high = np.clip(bottom, first, third), np.clip(top, first, third)
    foot, head = (low <= first)[:, None], (high >= third)[:, None]
    below, above = (second < low)[:, None], (second > high)[:, None]
    short_low = np.where(foot, corners[:, 0], _bent(corners, value, low))
    short_high = np.where(head, corners[:, 2], _bent(corners, value, high))
    return [
        np.where(foot, corners[:, 0], _along(corners, value, 0, 2, low)),
        np.where(head, corners[:, 2], _along(corners, value, 0, 2, high)),
        short_high,
        np.where(below, short_low, np.where(above, short_high, corners[:, 1])),
        short_low,
    ]


def _along(corners: Floats, value: Floats, start: int, end: int, level: Floats) -> Floats:
    """Return the places on one side at levels, (k, 2)."""
    rise = value[:, end] - value[:, start]
    share = (level - value[:, start]) / np.where(rise > 0, rise, 1.0)
    share = np.clip(share, 0, 1)[:, None]
    # So written, a whole share is the end itself to the last digit: no ring crosses itself there.
    out: Floats = (1 - share) * corners[:, start] + share * corners[:, end]
    return out


def _bent(corners: Floats, value: Floats, level: Floats) -> Floats:
    """Return the places at levels on the way over the middle corner, (k, 2)."""
    lower = (level <= value[:, 1])[:, None]
    out: Floats = np.where(lower, _along(corners, value, 0, 1, level),
                           _along(corners, value, 1, 2, level))  # fmt: skip
    return out
