"""What presses on a buried pipe: the soil over it, wheels and stacks on the ground.

Pressures in Pa at the crown, depths of cover in metres. Boussinesq (1885): an even elastic
half-space, no stiffness of pipe or pavement counted.
"""

from math import atan2, hypot, pi

from geometry.formulas.constants import GRAVITY, WATER_DENSITY
from geometry.formulas.given import not_negative, positive
from geometry.sources import Source

_FOOT = 0.3048

IMPACT_SOURCE = Source("Moser, Buried Pipe Design", clause="Table 2.5, highways (after Uni-Bell)")
_IMPACT = ((1 * _FOOT, 1.50), (2 * _FOOT, 1.35), (3 * _FOOT, 1.15))


def prism_load(
    cover_m: float,
    unit_weight_n_m3: float,
    water_depth_m: float | None = None,
    saturated_weight_n_m3: float | None = None,
) -> float:
    """Pressure of the soil straight above the pipe, Pa: gamma H (Moser, chapter 2).

    The greatest load a flexible pipe sees in time. Below a water table at `water_depth_m` the
    soil weighs less its buoyancy; water presses all round and flattens nothing.
    """
    not_negative(cover_m=cover_m)
    positive(unit_weight_n_m3=unit_weight_n_m3)
    if water_depth_m is None or water_depth_m >= cover_m:
        return unit_weight_n_m3 * cover_m
    not_negative(water_depth_m=water_depth_m)
    saturated = unit_weight_n_m3 if saturated_weight_n_m3 is None else saturated_weight_n_m3
    buoyant = saturated - WATER_DENSITY * GRAVITY
    positive(buoyant_weight_n_m3=buoyant)
    return unit_weight_n_m3 * water_depth_m + buoyant * (cover_m - water_depth_m)


def impact_factor(cover_m: float) -> float:
    """Impact factor of highway wheels by cover: 1.50, 1.35, 1.15 to 1, 2, 3 ft, then 1.00.

    Moser, Table 2.5; on an edge of the table the greater factor.
    """
    not_negative(cover_m=cover_m)
    return next((factor for edge, factor in _IMPACT if cover_m <= edge), 1.0)


def wheel_pressure(
    wheel_n: float, cover_m: float, offset_m: float = 0.0, impact: float = 1.0
) -> float:
    """Pressure of one wheel as a point load, Pa: 3 I W z3 / (2 pi R5), R the slant to the wheel.

    Boussinesq. `offset_m` is the level distance from the wheel. Good from a cover of about the
    tyre's print up (some 0.6 m); below that it says too much.
    """
    not_negative(wheel_n=wheel_n, offset_m=offset_m)
    positive(cover_m=cover_m, impact=impact)
    slant = hypot(offset_m, cover_m)
    return impact * 3 * wheel_n * cover_m**3 / (2 * pi * slant**5)


def corner_pressure(pressure_pa: float, length_m: float, width_m: float, cover_m: float) -> float:
    """Pressure under one corner of an evenly loaded rectangle on the ground, Pa.

    Boussinesq integrated (Newmark 1935; Holl 1940 for this form). Under the middle of a stack:
    four rectangles of half its sides. A quarter of the load at no cover, the corner's share.
    """
    not_negative(pressure_pa=pressure_pa)
    positive(length_m=length_m, width_m=width_m, cover_m=cover_m)
    to_length, to_width = hypot(length_m, cover_m), hypot(width_m, cover_m)
    to_corner = hypot(length_m, width_m, cover_m)
    angle = atan2(length_m * width_m, cover_m * to_corner)
    sides = 1 / to_length**2 + 1 / to_width**2
    return pressure_pa / (2 * pi) * (angle + length_m * width_m * cover_m / to_corner * sides)


def middle_pressure(pressure_pa: float, length_m: float, width_m: float, cover_m: float) -> float:
    """Pressure under the middle of an evenly loaded rectangle, Pa: four corners of a quarter."""
    return 4 * corner_pressure(pressure_pa, length_m / 2, width_m / 2, cover_m)
