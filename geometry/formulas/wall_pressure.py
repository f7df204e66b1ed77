"""Pressure on a basement wall against depth, dry or under water, and what it adds up to.

Everything is per metre of wall. The diagram is exact straight lines between a few depths; the
resultant and its moment are integrated in closed form. It informs: the wall's design belongs to
code tables or an engineer.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import ArrayLike, NDArray

from geometry.formulas.constants import GRAVITY, WATER_DENSITY
from geometry.formulas.given import not_negative, positive

WATER_WEIGHT = WATER_DENSITY * GRAVITY
"""Weight of fresh water, N/m3 (62.43 lb/ft3)."""


@dataclass(frozen=True)
class PressureDiagram:
    """Corners of the diagram, downward from the ground's surface to the wall's base.

    `soil_pa` holds soil and surcharge, `water_pa` the water; straight lines between.
    """

    depths_m: tuple[float, ...]
    soil_pa: tuple[float, ...]
    water_pa: tuple[float, ...]

    @property
    def total_pa(self) -> tuple[float, ...]:
        """Soil and water together at the corners, Pa."""
        return tuple(soil + water for soil, water in zip(self.soil_pa, self.water_pa, strict=True))

    @property
    def height_m(self) -> float:
        """Height of the ground over the wall's base."""
        return self.depths_m[-1]

    def at(self, depths_m: ArrayLike) -> NDArray[np.float64]:
        """Total pressure at any depths, Pa; zero above the ground and below the base."""
        found: NDArray[np.float64] = np.interp(
            np.asarray(depths_m, dtype=float), self.depths_m, self.total_pa, left=0.0, right=0.0
        )
        return found


@dataclass(frozen=True)
class Thrust:
    """Resultant on a metre of wall: N/m, its height over the base, and N m/m about the base."""

    force_n_m: float
    height_m: float
    moment_n: float


def pressure_diagram(
    height_m: float,
    coefficient: float,
    moist_weight_n_m3: float,
    saturated_weight_n_m3: float | None = None,
    water_depth_m: float | None = None,
    surcharge_pa: float = 0.0,
    water_weight_n_m3: float = WATER_WEIGHT,
) -> PressureDiagram:
    """Diagram of K (gamma z + q), with buoyant soil and water below a water table (Rankine).

    Level ground `height_m` over the base; `water_depth_m` below the ground, None or below the
    base when drained; `surcharge_pa` an even load on the ground, far along and far back.
    Saturated weight, asked for when there is water, must be above water's.
    """
    positive(height_m=height_m, coefficient=coefficient, moist_weight_n_m3=moist_weight_n_m3)
    not_negative(surcharge_pa=surcharge_pa)
    top = coefficient * surcharge_pa
    if water_depth_m is None or water_depth_m >= height_m:
        base = top + coefficient * moist_weight_n_m3 * height_m
        return PressureDiagram((0.0, height_m), (top, base), (0.0, 0.0))
    not_negative(water_depth_m=water_depth_m)
    if saturated_weight_n_m3 is None:
        raise ValueError("soil under water needs its saturated weight")
    buoyant = saturated_weight_n_m3 - water_weight_n_m3
    positive(buoyant_weight_n_m3=buoyant)
    wet = height_m - water_depth_m
    middle = top + coefficient * moist_weight_n_m3 * water_depth_m
    base = middle + coefficient * buoyant * wet
    water = water_weight_n_m3 * wet
    if water_depth_m == 0:
        return PressureDiagram((0.0, height_m), (top, base), (0.0, water))
    return PressureDiagram((0.0, water_depth_m, height_m), (top, middle, base), (0.0, 0.0, water))


def thrust(diagram: PressureDiagram) -> Thrust:
    """Resultant of soil and water on a metre of wall, exact for straight lines."""
    return _resultant(diagram, diagram.total_pa)


def water_thrust(diagram: PressureDiagram) -> Thrust:
    """Resultant of the water alone; at the base where there is none."""
    return _resultant(diagram, diagram.water_pa)


def _resultant(diagram: PressureDiagram, pressures: tuple[float, ...]) -> Thrust:
    corners = tuple(zip(diagram.depths_m, pressures, strict=True))
    force = moment = 0.0
    for (top, upper), (bottom, lower) in pairwise(corners):
        step, arm, next_arm = bottom - top, diagram.height_m - top, diagram.height_m - bottom
        force += (upper + lower) / 2 * step
        moment += step / 6 * (upper * (2 * arm + next_arm) + lower * (arm + 2 * next_arm))
    return Thrust(force, moment / force if force else 0.0, moment)


def flooded_ratio(
    drained: PressureDiagram,
    flooded: PressureDiagram,
    of: Callable[[Thrust], float] = lambda thrust: thrust.force_n_m,
) -> float:
    """Flooded over drained: the force, or what `of` picks of the thrust."""
    return of(thrust(flooded)) / of(thrust(drained))
