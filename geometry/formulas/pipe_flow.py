"""Flow in a round pipe, full or part full, by Manning with n the same at every depth.

Chow, Open-Channel Hydraulics (1959), section 2-5 and Table 2-1 (the circle), equation 5-6
(Manning; from memory). Steady uniform flow: a long straight run with a free outlet, not under
pressure. Depths are measured from the inside invert. Printed charts that let n vary with depth
(Camp) give less flow part full.
"""

from math import acos, pi, sin, sqrt

from geometry.formulas.given import not_negative, positive, where_it_rises_to, within

MOST_FLOW_DEPTH = 0.93818
"""Depth over diameter at which a pipe carries most: root of 3a - 5a cos(a) + 2 sin(a) = 0."""

MOST_VELOCITY_DEPTH = 0.81280
"""Depth over diameter at which water runs fastest: root of tan(a) = a."""


def wetted_angle(depth_m: float, diameter_m: float) -> float:
    """Angle at the centre over the wetted arc, rad, 0 to 2 pi; depth from 0 to the diameter."""
    positive(diameter_m=diameter_m)
    within(0.0, diameter_m, depth_m=depth_m)
    return 2 * acos(1 - 2 * depth_m / diameter_m)


def flow_area(depth_m: float, diameter_m: float) -> float:
    """Area of the water, m2: D2/8 (a - sin a)."""
    angle = wetted_angle(depth_m, diameter_m)
    return diameter_m**2 / 8 * (angle - sin(angle))


def wetted_perimeter(depth_m: float, diameter_m: float) -> float:
    """Length of wall under water, m: D a / 2."""
    return diameter_m * wetted_angle(depth_m, diameter_m) / 2


def surface_width(depth_m: float, diameter_m: float) -> float:
    """Width of the water's surface, m: 2 sqrt(y (D - y))."""
    positive(diameter_m=diameter_m)
    within(0.0, diameter_m, depth_m=depth_m)
    return 2 * sqrt(depth_m * (diameter_m - depth_m))


def hydraulic_radius(depth_m: float, diameter_m: float) -> float:
    """Area over wetted perimeter, m; zero in a dry pipe."""
    wetted = wetted_perimeter(depth_m, diameter_m)
    return flow_area(depth_m, diameter_m) / wetted if wetted else 0.0


def velocity(depth_m: float, diameter_m: float, slope: float, n: float) -> float:
    """Mean velocity, m/s, by Manning: R^(2/3) S^(1/2) / n; slope as a share, n in s/m^(1/3)."""
    positive(n=n)
    not_negative(slope=slope)
    return float(hydraulic_radius(depth_m, diameter_m) ** (2 / 3) * sqrt(slope) / n)


def flow(depth_m: float, diameter_m: float, slope: float, n: float) -> float:
    """Flow at a depth, m3/s: area x velocity."""
    return flow_area(depth_m, diameter_m) * velocity(depth_m, diameter_m, slope, n)


def capacity(diameter_m: float, slope: float, n: float) -> float:
    """Flow just full, m3/s, not under pressure: the figure printed in capacity tables."""
    return flow(diameter_m, diameter_m, slope, n)


def greatest_flow(diameter_m: float, slope: float, n: float) -> float:
    """Most the pipe carries with a free surface, m3/s: at 0.938 D, 7.6 % above just full."""
    return flow(MOST_FLOW_DEPTH * diameter_m, diameter_m, slope, n)


def depth_for_flow(flow_m3s: float, diameter_m: float, slope: float, n: float) -> float:
    """Depth at which the pipe carries the flow, m: the lower of the two where there are two.

    Raises ValueError when the flow is more than the pipe's greatest.
    """
    not_negative(flow_m3s=flow_m3s)
    deepest = MOST_FLOW_DEPTH * diameter_m
    return where_it_rises_to(
        flow_m3s, lambda depth: flow(depth, diameter_m, slope, n), 0.0, deepest
    )


def slope_for_flow(flow_m3s: float, diameter_m: float, n: float) -> float:
    """Slope, as a share, at which the pipe runs just full with the flow."""
    not_negative(flow_m3s=flow_m3s)
    return (flow_m3s / capacity(diameter_m, 1.0, n)) ** 2


def slope_for_velocity(velocity_ms: float, diameter_m: float, n: float) -> float:
    """Slope, as a share, at which the full (or half full) pipe runs at the velocity."""
    not_negative(velocity_ms=velocity_ms)
    return (velocity_ms / velocity(diameter_m, diameter_m, 1.0, n)) ** 2


def full_area(diameter_m: float) -> float:
    """Area of the bore, m2."""
    positive(diameter_m=diameter_m)
    return pi * diameter_m**2 / 4
