"""Water through holes: an orifice, and rows of round holes in a pipe's wall.

Q = C A sqrt(2 g h), the orifice equation of any hydraulics text. C of a sharp edge is 0.60 to
0.62 (textbooks, from memory); stone lying in the holes lowers it, by how much is not known here.
Heights in a pipe are measured from its inside invert and taken on the inside radius.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, pi, radians, sin, sqrt

import numpy as np

from geometry.formulas.constants import GRAVITY
from geometry.formulas.given import not_negative, positive, where_it_rises_to, within

SHARP_EDGE = 0.60
"""Discharge coefficient of a sharp-edged hole, the low end of the textbooks' range."""

# Gauss points on a quarter turn: the hole's chord vanishes as a square root at its ends, and the
# step t = sin2 takes both roots out, so that few points are exact to a float.
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(32)
_TURN = (_NODES + 1) * pi / 4
_SINE2, _STEP = np.sin(_TURN) ** 2, np.sin(2 * _TURN) * _WEIGHTS * pi / 4


@dataclass(frozen=True)
class HoleRow:
    """Round holes along a pipe at one angle from straight down, degrees; lengths in metres."""

    angle_deg: float
    hole_m: float
    spacing_m: float

    def __post_init__(self) -> None:
        """Raise ValueError for holes without size or spacing."""
        positive(hole_m=self.hole_m, spacing_m=self.spacing_m)

    @property
    def rise_m(self) -> float:
        """Height of one hole from its lowest to its highest point; none at the very bottom."""
        return self.hole_m * abs(sin(radians(self.angle_deg)))

    def sill(self, inside_m: float) -> float:
        """Height of the hole's lowest point over the inside invert, m, not below it."""
        centre = inside_m / 2 * (1 - cos(radians(self.angle_deg)))
        return max(0.0, centre - self.rise_m / 2)


def free_orifice(area_m2: float, head_m: float, coefficient: float = SHARP_EDGE) -> float:
    """Flow into air, m3/s, under a head over the hole's centre that is large beside the hole."""
    not_negative(area_m2=area_m2, head_m=head_m)
    within(0.0, 1.0, coefficient=coefficient)
    return coefficient * area_m2 * sqrt(2 * GRAVITY * head_m)


def submerged_orifice(
    area_m2: float, above_m: float, below_m: float, coefficient: float = SHARP_EDGE
) -> float:
    """Flow between two waters over the hole, m3/s; negative when it runs back."""
    drop = above_m - below_m
    run = free_orifice(area_m2, abs(drop), coefficient)
    return run if drop >= 0 else -run


def _strips(low: float, high: float, outside_m: float, rise_m: float) -> float:
    """Integral of chord x sqrt(head) between two shares of a hole of diameter 1."""
    share = low + (high - low) * _SINE2
    chord = 2 * np.sqrt(np.clip(share * (1 - share), 0, None))
    head = np.clip(outside_m - rise_m * share, 0, None)
    return float((high - low) * np.sum(chord * np.sqrt(head) * _STEP))


def hole_inflow(
    hole_m: float,
    rise_m: float,
    outside_m: float,
    inside_m: float = 0.0,
    coefficient: float = SHARP_EDGE,
) -> float:
    """Flow through one flat round hole, m3/s, full or part under water.

    Adds the orifice equation over level strips of the hole: strips above the inside water run
    free, those below it under the difference. `rise_m` is the hole's height (its diameter when it
    stands upright, 0 when it lies flat); waters are measured from its lowest point, m, below it
    counts as none; the outside water is the higher, else ValueError.
    """
    positive(hole_m=hole_m)
    within(0.0, hole_m, rise_m=rise_m)
    outside, inside = max(0.0, outside_m), max(0.0, inside_m)
    if inside > outside:
        raise ValueError("water stands higher inside than outside")
    wet = min(1.0, outside / rise_m) if rise_m else float(outside > 0)
    drowned = min(1.0, inside / rise_m) if rise_m else float(inside > 0)
    free = _strips(drowned, wet, outside, rise_m)
    under = sqrt(outside - inside) * _strips(0.0, drowned, 1.0, 0.0)
    return coefficient * sqrt(2 * GRAVITY) * hole_m**2 * (free + under)


def inlet_area(rows: Sequence[HoleRow]) -> float:
    """Open area per metre of pipe, m2/m."""
    return sum(pi * row.hole_m**2 / 4 / row.spacing_m for row in rows)


def level_of_first_water(rows: Sequence[HoleRow], inside_m: float) -> float:
    """Height of outside water over the inside invert at which the first hole takes water, m."""
    if not rows:
        raise ValueError("a pipe without holes takes no water")
    positive(inside_m=inside_m)
    return min(row.sill(inside_m) for row in rows)


def inflow_per_metre(
    rows: Sequence[HoleRow],
    inside_m: float,
    outside_level_m: float,
    inside_level_m: float = 0.0,
    coefficient: float = SHARP_EDGE,
) -> float:
    """Flow through the holes of a metre of pipe, m3/s per m; levels over the inside invert."""
    positive(inside_m=inside_m)
    flows = (
        hole_inflow(row.hole_m, row.rise_m, outside_level_m - sill, inside_level_m - sill,
                    coefficient) / row.spacing_m
        for row in rows
        for sill in [row.sill(inside_m)]
    )  # fmt: skip
    return sum(flows)


def level_for_inflow(
    rows: Sequence[HoleRow],
    inside_m: float,
    inflow_m2s: float,
    coefficient: float = SHARP_EDGE,
) -> float:
    """Height of outside water over the inside invert that drives an inflow per metre, m.

    The pipe drains freely. The height stands over the level of first water for any inflow.
    """
    not_negative(inflow_m2s=inflow_m2s)
    first = level_of_first_water(rows, inside_m)
    return where_it_rises_to(
        inflow_m2s,
        lambda level: inflow_per_metre(rows, inside_m, level, 0.0, coefficient),
        first,
    )
