"""Shots far off their neighbours: looked at by the plane through those."""

import numpy as np

from geometry.survey.shots import Floats, Ints, ShotFault, Shots, some
from geometry.survey.surface import Surface
from geometry.units import INCH, System, show_length

# A shot this far above or below all its neighbours is looked at, at least, and this many times
# the usual distance from them (both common practice, no source).
LEAST_M = 6 * INCH
TIMES = 8.0


def outliers(surface: Surface, shots: Shots, index: Ints, system: System) -> list[ShotFault]:
    """Return the shots that look wrong; index: (n,) the shots the surface's points are."""
    level = _untilted(surface)
    high, low = _neighbours(surface, level)
    over = np.maximum(level - high, low - level)
    usual = float(np.median(np.abs(level - (high + low) / 2)))
    limit = max(LEAST_M, TIMES * usual)
    faults = []
    for point in np.flatnonzero(over > limit).tolist():
        off = _off_plane(surface, point)
        if abs(off) > limit:
            faults.append(_said(off, int(shots.row[index[point]]), system))
    return some(faults, "lie far off their neighbours")


def _said(off: float, row: int, system: System) -> ShotFault:
    return ShotFault(
        f"it lies {show_length(abs(off), system)} {'above' if off > 0 else 'below'} the ground its "
        "neighbours make; it is used, take the row out if it is wrong",
        row,
        "doubt",
    )


def _untilted(surface: Surface) -> Floats:
    """Return the levels less the slope of the plane that fits them best, (n,): it is no error."""
    shifted = surface.points - surface.points.mean(axis=0)
    slope = np.linalg.solve(shifted.T @ shifted, shifted.T @ surface.level)
    out: Floats = surface.level - shifted @ slope
    return out


def _neighbours(surface: Surface, level: Floats) -> tuple[Floats, Floats]:
    """Return the highest and lowest level among each point's neighbours, (n,) each."""
    begin, end = surface.edges
    high, low = np.full(len(level), -np.inf), np.full(len(level), np.inf)
    for one, other in ((begin, end), (end, begin)):
        np.maximum.at(high, one, level[other])
        np.minimum.at(low, one, level[other])
    lone = ~np.isfinite(high)
    high[lone], low[lone] = level[lone], level[lone]
    return high, low


def _off_plane(surface: Surface, point: int) -> float:
    """Return how far a point lies above the plane through its neighbours, least squares, metres."""
    begin, end = surface.edges
    near = np.concatenate((end[begin == point], begin[end == point]))
    away = surface.points[near] - surface.points[point]
    plane = np.column_stack((np.ones(len(near)), away))
    fitted = np.linalg.lstsq(plane, surface.level[near], rcond=None)[0]
    # Three neighbours or fewer fit any plane; the nearest levels then say more.
    expected = fitted[0] if len(near) > 3 else float(np.mean(surface.level[near]))
    return float(surface.level[point] - expected)
