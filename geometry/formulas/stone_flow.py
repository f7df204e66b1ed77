"""Water moving and standing in the stone around the pipe.

Darcy's law holds for slow flow only. In open stone it says too much: the sign is the grain's
Reynolds number, and Ergun's equation (Ergun, Chemical Engineering Progress 48, 1952; from memory)
adds the turbulent loss. UFC 3-220-10, 6-2.2, warns of the same.
"""

from dataclasses import dataclass
from math import sqrt
from typing import Literal

from geometry.formulas.constants import GRAVITY, WATER_VISCOSITY
from geometry.formulas.given import not_negative, positive, within
from geometry.sources import Source

Regime = Literal["slow", "doubtful", "turbulent"]

SLOW_BELOW, TURBULENT_ABOVE = 1.0, 10.0
"""Grain Reynolds numbers: Darcy holds below 1, surely not above 10 (Bear, Dynamics of Fluids in
Porous Media, 1972, 5.3; from memory)."""


@dataclass(frozen=True)
class Conductivity:
    """Hydraulic conductivity of a stone, m/s, as a range of what was measured or is said."""

    name: str
    low_ms: float
    high_ms: float
    source: Source


STONES = (
    Conductivity(
        "open-graded road base", 0.0036, 0.0036,
        Source("Richardson, Journal of Transportation Engineering", "1997", "mean of laboratory"),
    ),
    Conductivity(
        "dense-graded road base", 3.0e-6, 3.0e-6,
        Source("Richardson, Journal of Transportation Engineering", "1997", "mean of laboratory"),
    ),
    Conductivity(
        "No. 57 washed stone", 0.01, 0.20,
        Source("Cedergren, Seepage, Drainage, and Flow Nets", sure="memory"),
    ),
)  # fmt: skip


def darcy_flow(conductivity_ms: float, gradient: float, area_m2: float) -> float:
    """Flow through a section of stone, m3/s: k i A (Darcy 1856; UFC 3-220-10, eq. 6-2)."""
    positive(conductivity_ms=conductivity_ms)
    not_negative(gradient=gradient, area_m2=area_m2)
    return conductivity_ms * gradient * area_m2


def seepage_velocity(darcy_ms: float, porosity: float) -> float:
    """Speed of the water itself between the stones, m/s: flow per area over porosity."""
    not_negative(darcy_ms=darcy_ms)
    within(1e-3, 1.0, porosity=porosity)
    return darcy_ms / porosity


def grain_reynolds(
    darcy_ms: float, grain_m: float, viscosity_m2s: float = WATER_VISCOSITY
) -> float:
    """Reynolds number of flow per area past grains of a mean size (d50, or d10 to be strict)."""
    not_negative(darcy_ms=darcy_ms)
    positive(grain_m=grain_m, viscosity_m2s=viscosity_m2s)
    return darcy_ms * grain_m / viscosity_m2s


def regime(darcy_ms: float, grain_m: float) -> Regime:
    """Whether Darcy's law may be used: slow, doubtful (Reynolds 1 to 10) or turbulent."""
    reynolds = grain_reynolds(darcy_ms, grain_m)
    if reynolds < SLOW_BELOW:
        return "slow"
    return "doubtful" if reynolds <= TURBULENT_ABOVE else "turbulent"


def _ergun_terms(grain_m: float, porosity: float, viscosity_m2s: float) -> tuple[float, float]:
    """Factors of velocity (s/m) and of its square (s2/m2) in the gradient."""
    positive(grain_m=grain_m, viscosity_m2s=viscosity_m2s)
    within(1e-3, 0.999, porosity=porosity)
    solid, void = 1 - porosity, porosity**3
    slow = 150 * viscosity_m2s * solid**2 / (GRAVITY * void * grain_m**2)
    return slow, 1.75 * solid / (GRAVITY * void * grain_m)


def ergun_gradient(
    darcy_ms: float, grain_m: float, porosity: float, viscosity_m2s: float = WATER_VISCOSITY
) -> float:
    """Hydraulic gradient that drives a flow per area through one-size grains (Ergun 1952).

    Of graded, broken stone give d10: then the equation agrees with measured conductivities.
    """
    not_negative(darcy_ms=darcy_ms)
    slow, fast = _ergun_terms(grain_m, porosity, viscosity_m2s)
    return slow * darcy_ms + fast * darcy_ms**2


def ergun_velocity(
    gradient: float, grain_m: float, porosity: float, viscosity_m2s: float = WATER_VISCOSITY
) -> float:
    """Flow per area, m/s, under a gradient: the positive root of Ergun's equation."""
    not_negative(gradient=gradient)
    slow, fast = _ergun_terms(grain_m, porosity, viscosity_m2s)
    return 2 * gradient / (slow + sqrt(slow**2 + 4 * fast * gradient))


def water_held(stone_m3: float, porosity: float) -> float:
    """Water a body of stone holds when drowned, m3."""
    not_negative(stone_m3=stone_m3)
    within(0.0, 1.0, porosity=porosity)
    return stone_m3 * porosity


def rise_in_stone(water_m3: float, plan_m2: float, porosity: float) -> float:
    """Rise of water in stone of a plan area, m: three feet of stone at 1/3 hold one of water."""
    not_negative(water_m3=water_m3)
    positive(plan_m2=plan_m2, porosity=porosity)
    within(0.0, 1.0, porosity=porosity)
    return water_m3 / (plan_m2 * porosity)
