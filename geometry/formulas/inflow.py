"""How much water comes to a drain: rain on a surface, and groundwater from the side.

The groundwater equations are steady and rest on Dupuit: flow nearly level, water table gently
sloped, one soil on a level tight base. Near the trench the real water table stands higher than
they say (a seepage face); the flow they give is right all the same.
"""

from math import exp, inf, log, pi, sqrt

from geometry.formulas.given import not_negative, positive, where_it_rises_to, within

IPC_ROOF = 1.0
"""Share of rain taken from a roof by plumbing codes: all of it (IPC 1106: 0.0104 gpm per ft2
and inch an hour)."""


def rational(coefficient: float, intensity_ms: float, area_m2: float) -> float:
    """Peak runoff, m3/s: C i A (Kuichling 1889).

    Coefficient 0 to 1, intensity in m/s (1 mm/h is 2.78e-7). For small areas, and an intensity
    that lasts at least until water from everywhere has arrived.
    """
    within(0.0, 1.0, coefficient=coefficient)
    not_negative(intensity_ms=intensity_ms, area_m2=area_m2)
    return coefficient * intensity_ms * area_m2


def roof_water(intensity_ms: float, plan_m2: float, coefficient: float = IPC_ROOF) -> float:
    """Water of downspouts, m3/s, from the roof's plan area (not its slope)."""
    return rational(coefficient, intensity_ms, plan_m2)


def share_soaking_in(strip_m2: float, intensity_ms: float, share: float) -> float:
    """Rain that enters a backfilled strip, m3/s: a stated share of what falls on it."""
    return rational(share, intensity_ms, strip_m2)


def dupuit_to_trench(conductivity_ms: float, far_m: float, drain_m: float, reach_m: float) -> float:
    """Groundwater into one side of a trench, m3/s per m: K (H2 - h2) / 2L (Dupuit 1863).

    Heights of water over the tight base far off (at `reach_m` from the trench) and in the
    trench, m; the far one is the higher.
    """
    positive(conductivity_ms=conductivity_ms, reach_m=reach_m)
    not_negative(drain_m=drain_m)
    within(drain_m, inf, far_m=far_m)
    return conductivity_ms * (far_m**2 - drain_m**2) / (2 * reach_m)


def dupuit_with_recharge(
    conductivity_ms: float,
    heights_m: tuple[float, float],
    length_m: float,
    recharge_ms: float,
    at_m: float,
) -> float:
    """Flow per metre of width towards the second water at a distance from the first, m3/s per m.

    q(x) = K (h1^2 - h2^2) / 2L + w (x - L/2), heights of two waters `length_m` apart over the
    tight base, recharge w from above, m/s. Negative: towards the first. (Bedient, Rifai and
    Newell, Ground Water Contamination, chapter 2.)
    """
    positive(conductivity_ms=conductivity_ms, length_m=length_m)
    not_negative(recharge_ms=recharge_ms, first=heights_m[0], second=heights_m[1])
    within(0.0, length_m, at_m=at_m)
    squares = heights_m[0] ** 2 - heights_m[1] ** 2
    across = conductivity_ms * squares / (2 * length_m)
    return across + recharge_ms * (at_m - length_m / 2)


def dupuit_height(
    conductivity_ms: float,
    heights_m: tuple[float, float],
    length_m: float,
    recharge_ms: float,
    at_m: float,
) -> float:
    """Height of the water table over the tight base between the same two waters, m."""
    positive(conductivity_ms=conductivity_ms, length_m=length_m)
    not_negative(recharge_ms=recharge_ms, first=heights_m[0], second=heights_m[1])
    within(0.0, length_m, at_m=at_m)
    square = heights_m[0] ** 2 + (heights_m[1] ** 2 - heights_m[0] ** 2) * at_m / length_m
    return sqrt(square + recharge_ms / conductivity_ms * at_m * (length_m - at_m))


def sichardt_reach(drawdown_m: float, conductivity_ms: float) -> float:
    """How far a drawdown reaches, m: 3000 s sqrt(K) (Sichardt 1928; an empirical rule for wells,
    from memory, commonly borrowed for trenches; not for design alone)."""
    not_negative(drawdown_m=drawdown_m)
    positive(conductivity_ms=conductivity_ms)
    return 3000 * drawdown_m * sqrt(conductivity_ms)


def equivalent_depth(below_m: float, spacing_m: float, radius_m: float) -> float:
    """Hooghoudt's equivalent depth d of soil below parallel drains, m.

    Van der Molen and Wesseling, Agricultural Water Management 19 (1991), 1-16 (year and page from
    memory): closed form with a fast series, up to 6 % below Hooghoudt's own table. `below_m` is
    the depth of the tight base below the drain; d is never more.
    """
    positive(spacing_m=spacing_m, radius_m=radius_m)
    not_negative(below_m=below_m)
    if below_m <= radius_m:
        return below_m
    x = 2 * pi * below_m / spacing_m
    if x > 0.5:
        series = sum(4 * exp(-2 * n * x) / (n * (1 - exp(-2 * n * x))) for n in range(1, 60, 2))
    else:
        series = pi**2 / (4 * x) + log(x / (2 * pi))
    depth = pi * spacing_m / (8 * (log(spacing_m / (pi * radius_m)) + series))
    return min(depth, below_m)


def hooghoudt(
    rise_m: float, depth_m: float, spacing_m: float, below_ms: float, above_ms: float
) -> float:
    """Water drained per plan area by parallel drains, m/s: (8 Kb d h + 4 Ka h2) / L2.

    Hooghoudt 1940. Rise of the water table midway over the drains, equivalent depth, spacing, m;
    conductivity below and above the drains, m/s. Times the spacing: flow per metre of drain.
    """
    not_negative(rise_m=rise_m, depth_m=depth_m)
    positive(spacing_m=spacing_m, below_ms=below_ms, above_ms=above_ms)
    return (8 * below_ms * depth_m * rise_m + 4 * above_ms * rise_m**2) / spacing_m**2


def hooghoudt_rise(
    recharge_ms: float, depth_m: float, spacing_m: float, below_ms: float, above_ms: float
) -> float:
    """Height of the water table midway over parallel drains, m, under steady recharge."""
    not_negative(recharge_ms=recharge_ms, depth_m=depth_m)
    positive(spacing_m=spacing_m, below_ms=below_ms, above_ms=above_ms)
    half = below_ms * depth_m / above_ms
    square = recharge_ms * spacing_m**2 / (4 * above_ms)
    # The root in the form that does not take two large numbers from each other.
    return square / (half + sqrt(half**2 + square)) if square else 0.0


def hooghoudt_spacing(
    recharge_ms: float, rise_m: float, below_m: float, radius_m: float, conductivity_ms: float
) -> float:
    """Spacing of drains that holds the water table midway at a rise, m, in one soil.

    Solves Hooghoudt's equation with the equivalent depth of that very spacing.
    """
    positive(recharge_ms=recharge_ms, rise_m=rise_m, conductivity_ms=conductivity_ms)

    def recharge_kept(spacing: float) -> float:
        depth = equivalent_depth(below_m, spacing, radius_m)
        return -hooghoudt(rise_m, depth, spacing, conductivity_ms, conductivity_ms)

    return where_it_rises_to(-recharge_ms, recharge_kept, 4 * radius_m)
