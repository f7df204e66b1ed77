"""Head lost by friction in a pipe that runs full under pressure, by two laws."""

from math import log10, pi

from geometry.formulas.constants import GRAVITY, WATER_VISCOSITY
from geometry.formulas.given import not_negative, positive, within

PLASTIC_C = 150.0
"""Hazen-Williams C of plastic pipe (77 Illinois Adm. Code 906, exhibit I: Schedule 40)."""

SMOOTH_WALL = 1.5e-6
"""Absolute roughness of drawn or plastic tube, m (Moody 1944, from memory)."""

LAMINAR_BELOW = 2000.0
"""Reynolds number under which flow in a pipe is taken as laminar (textbooks, from memory)."""


def hazen_williams(flow_m3s: float, length_m: float, inside_m: float, c: float) -> float:
    """Head lost in a full pipe, m: 10.67 L Q^1.852 / (C^1.852 D^4.8704).

    Hazen and Williams 1905, in SI as in any water supply text. For water near 15 C in turbulent
    flow, pipes of 1 in and more; in slow flow (Reynolds number under 10,000) a fifth too low.
    """
    not_negative(flow_m3s=flow_m3s, length_m=length_m)
    positive(inside_m=inside_m, c=c)
    return float(10.67 * length_m * (flow_m3s / c) ** 1.852 / inside_m**4.8704)


def friction_factor(reynolds: float, relative_roughness: float) -> float:
    """Darcy's friction factor: 64/Re when laminar, else Colebrook and White (1939), iterated."""
    positive(reynolds=reynolds)
    within(0.0, 0.05, relative_roughness=relative_roughness)
    if reynolds < LAMINAR_BELOW:
        return 64 / reynolds
    root = 7.0
    for _ in range(40):
        root = -2 * log10(relative_roughness / 3.7 + 2.51 * root / reynolds)
    return float(1 / root**2)


def darcy_weisbach(
    flow_m3s: float, length_m: float, inside_m: float, roughness_m: float = SMOOTH_WALL
) -> float:
    """Head lost in a full pipe, m: f L/D v2/2g, for water at 10 C; the second witness."""
    not_negative(flow_m3s=flow_m3s, length_m=length_m)
    positive(inside_m=inside_m)
    speed = flow_m3s / (pi * inside_m**2 / 4)
    if speed == 0:
        return 0.0
    factor = friction_factor(speed * inside_m / WATER_VISCOSITY, roughness_m / inside_m)
    return factor * length_m / inside_m * speed**2 / (2 * GRAVITY)
