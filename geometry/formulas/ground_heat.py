"""Heat that a floor and a basement's walls lose through the ground: ISO 13370 (2007), steady part.

SI throughout: metres, W/mK, m2K/W, W/m2K. The equations are from memory; the tables of the UK's
Approved Document L (2002), Appendix C, which were made with them, are met to their two decimals.
They hold for the mean over a year; the ground is slow, so a cold day asks less than this.
"""

from math import log, pi

from geometry.formulas.given import not_negative, positive

INSIDE_DOWN, INSIDE_ACROSS, OUTSIDE = 0.17, 0.13, 0.04
"""Surface resistances, m2K/W: inside for heat down, inside across, outside (ISO 6946)."""


def characteristic_dimension(area_m2: float, perimeter_m: float) -> float:
    """B', the floor's area over half its exposed edge, m."""
    positive(area_m2=area_m2, perimeter_m=perimeter_m)
    return area_m2 / (0.5 * perimeter_m)


def floor_thickness(wall_m: float, conductivity: float, resistance: float) -> float:
    """Thickness of ground that insulates as wall and floor do, m; the floor's own resistance."""
    positive(conductivity=conductivity)
    not_negative(wall_m=wall_m, resistance=resistance)
    return wall_m + conductivity * (INSIDE_DOWN + resistance + OUTSIDE)


def wall_thickness(conductivity: float, resistance: float) -> float:
    """Thickness of ground that insulates as a basement's wall does, m; the wall's own resistance.

    Raises ValueError for no ground or less than nothing in the wall.
    """
    positive(conductivity=conductivity)
    not_negative(resistance=resistance)
    return conductivity * (INSIDE_ACROSS + resistance + OUTSIDE)


def floor_transmittance(
    dimension_m: float, thickness_m: float, conductivity: float, depth_m: float = 0.0
) -> float:
    """U of a floor whose top lies a depth under the ground outside, W/m2K.

    dimension_m: B'. thickness_m: of `floor_thickness`. depth_m: 0 for a slab on the ground.
    """
    positive(dimension_m=dimension_m, thickness_m=thickness_m, conductivity=conductivity)
    not_negative(depth_m=depth_m)
    deep = thickness_m + depth_m / 2
    if deep < dimension_m:
        wide = pi * dimension_m
        return 2 * conductivity / (wide + deep) * log(wide / deep + 1)
    return conductivity / (0.457 * dimension_m + deep)


def wall_transmittance(
    depth_m: float, wall_thickness_m: float, floor_thickness_m: float, conductivity: float
) -> float:
    """Mean U of a basement's wall over its depth in the ground, W/m2K.

    The thicknesses are those of `wall_thickness` and `floor_thickness`.
    """
    positive(
        depth_m=depth_m, wall_thickness_m=wall_thickness_m, floor_thickness_m=floor_thickness_m,
        conductivity=conductivity,
    )  # fmt: skip
    under = min(floor_thickness_m, wall_thickness_m)
    foot = 1 + 0.5 * under / (under + depth_m)
    return 2 * conductivity / (pi * depth_m) * foot * log(depth_m / wall_thickness_m + 1)
