"""Pressure on the foam under a slab: an even load, and one that stands on a small plate.

SI: newtons, pascals, metres, N/m3. Two ways for the small plate. As a plate on an elastic bed
(Timoshenko, Woinowsky-Krieger, Theory of Plates; as Structure Magazine of April 2014 works it):
the whole slab shares the load, if it is sound, far from its edges and joints. Or spread at 45
degrees through the slab: what is left when it is cracked right there.
"""

from collections.abc import Sequence
from math import sqrt

from geometry.formulas.given import positive
from geometry.sources import Source

PLATE_SOURCE = Source(
    "Structure Magazine", "April 2014",
    "plate on an elastic bed after Timoshenko and Woinowsky-Krieger; load spread at 45 degrees",
)  # fmt: skip
PSI = 6894.757
"""Pascals in a pound on a square inch, NIST SP 811."""

POISSON = 0.15
"""Poisson's ratio of concrete, source PLATE_SOURCE."""


def concrete_modulus(strength_pa: float) -> float:
    """Modulus of elasticity of concrete of a specified strength, Pa: 57,000 times root f'c, psi."""
    positive(strength_pa=strength_pa)
    return 57_000 * sqrt(strength_pa / PSI) * PSI


def layered_modulus(moduli: Sequence[float]) -> float:
    """Foundation modulus of boards lying on each other, N/m3: their reciprocals add."""
    return 1 / sum(1 / modulus for modulus in moduli)


def plate_pressure(
    load_n: float, foundation_modulus: float, concrete_pa: float, thickness_m: float
) -> float:
    """Greatest pressure under a load on a plate on an elastic bed, Pa: P/8 times root of K/D.

    foundation_modulus: of the bed, N/m3. concrete_pa: modulus of elasticity.
    """
    positive(
        foundation_modulus=foundation_modulus, concrete_pa=concrete_pa, thickness_m=thickness_m
    )
    stiffness = concrete_pa * thickness_m**3 / (12 * (1 - POISSON**2))
    return load_n / 8 * sqrt(foundation_modulus / stiffness)


def spread_pressure(load_n: float, side_m: float, other_m: float, thickness_m: float) -> float:
    """Mean pressure under a plate's load spread at 45 degrees through a slab, Pa."""
    positive(side_m=side_m, other_m=other_m, thickness_m=thickness_m)
    return load_n / ((side_m + 2 * thickness_m) * (other_m + 2 * thickness_m))
