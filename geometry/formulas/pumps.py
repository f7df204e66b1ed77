"""A pump in a pit: its curve against the discharge pipe, how often it starts, the pit it needs."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import log10, pi, sqrt

import numpy as np

from geometry.formulas.constants import GRAVITY, WATER_VISCOSITY
from geometry.formulas.given import not_negative, positive, where_it_rises_to, within

PLASTIC_C = 150.0
"""Hazen-Williams C of plastic pipe (77 Illinois Adm. Code 906, exhibit I: Schedule 40)."""

SMOOTH_WALL = 1.5e-6
"""Absolute roughness of drawn or plastic tube, m (Moody 1944, from memory)."""

LAMINAR_BELOW = 2000.0
"""Reynolds number under which flow in a pipe is taken as laminar (textbooks, from memory)."""


@dataclass(frozen=True)
class PumpCurve:
    """Points of a maker's curve: flows rising from 0, m3/s; heads falling, m. Lines between.

    Straight lines never rise between falling points, and the curve can be read either way.
    """

    flows_m3s: tuple[float, ...]
    heads_m: tuple[float, ...]

    def __post_init__(self) -> None:
        """Raise ValueError when the points are no curve of a pump."""
        if len(self.flows_m3s) != len(self.heads_m) or len(self.flows_m3s) < 2:
            raise ValueError("a curve needs as many heads as flows, two at least")
        if self.flows_m3s[0] != 0:
            raise ValueError("the first point is the shut-off head, at no flow")
        if not (np.all(np.diff(self.flows_m3s) > 0) and np.all(np.diff(self.heads_m) < 0)):
            raise ValueError("flows must rise and heads fall")
        not_negative(last_head=self.heads_m[-1])

    @property
    def shut_off_m(self) -> float:
        """Head the pump holds without any flow, m."""
        return self.heads_m[0]

    @property
    def most_m3s(self) -> float:
        """Flow of the last point, m3/s: the curve is not read beyond it."""
        return self.flows_m3s[-1]

    def head(self, flow_m3s: float) -> float:
        """Head at a flow on the curve, m."""
        within(0.0, self.most_m3s, flow_m3s=flow_m3s)
        return float(np.interp(flow_m3s, self.flows_m3s, self.heads_m))

    def flow(self, head_m: float) -> float:
        """Flow against a head, m3/s: none above shut-off, the last point's below its head."""
        not_negative(head_m=head_m)
        return float(np.interp(head_m, self.heads_m[::-1], self.flows_m3s[::-1]))


@dataclass(frozen=True)
class Discharge:
    """The pipe from the pump: length with fittings as equivalent length, m; inside, m."""

    length_m: float
    inside_m: float
    hazen_c: float = PLASTIC_C

    def __post_init__(self) -> None:
        """Raise ValueError for a pipe without bore or C."""
        not_negative(length_m=self.length_m)
        positive(inside_m=self.inside_m, hazen_c=self.hazen_c)

    def friction(self, flow_m3s: float) -> float:
        """Head lost at a flow, m, by Hazen-Williams."""
        return hazen_williams(flow_m3s, self.length_m, self.inside_m, self.hazen_c)


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


def system_head(flow_m3s: float, static_m: float, pipe: Discharge) -> float:
    """Head a pump must give to push a flow, m: lift from water to outfall, plus friction."""
    return static_m + pipe.friction(flow_m3s)


def operating_flow(curve: PumpCurve, static_m: float, pipe: Discharge) -> float:
    """Flow at which the pump's curve meets the pipe's, m3/s.

    None when the lift is the shut-off head or more; the curve's last flow when the pipe asks for
    less than the last head even there.
    """
    not_negative(static_m=static_m)
    if static_m >= curve.shut_off_m:
        return 0.0
    if system_head(curve.most_m3s, static_m, pipe) <= curve.heads_m[-1]:
        return curve.most_m3s
    return where_it_rises_to(
        0.0,
        lambda flow: system_head(flow, static_m, pipe) - curve.head(flow),
        0.0,
        curve.most_m3s,
    )


def cycle_time(wet_m3: float, pump_m3s: float, inflow_m3s: float) -> float:
    """Seconds from one start to the next: (V/D) [1/(1 - Q/D) + 1/(Q/D)].

    MIL-HDBK-1005/9A, equation 1: volume between on and off levels, pump's flow D, steady inflow Q
    above 0 and below D.
    """
    positive(wet_m3=wet_m3, pump_m3s=pump_m3s, inflow_m3s=inflow_m3s)
    if inflow_m3s >= pump_m3s:
        raise ValueError("an inflow of the pump's flow or more never lets it stop")
    share = inflow_m3s / pump_m3s
    return wet_m3 / pump_m3s * (1 / (1 - share) + 1 / share)


def starts_per_hour(wet_m3: float, pump_m3s: float, inflow_m3s: float) -> float:
    """Starts an hour at steady inflow: none without inflow, nor when the pump never stops."""
    if inflow_m3s == 0 or inflow_m3s >= pump_m3s:
        positive(wet_m3=wet_m3, pump_m3s=pump_m3s)
        return 0.0
    return 3600 / cycle_time(wet_m3, pump_m3s, inflow_m3s)


def most_starts_per_hour(wet_m3: float, pump_m3s: float) -> float:
    """Starts an hour at the worst inflow, half the pump's flow: 3600 D / 4V."""
    return starts_per_hour(wet_m3, pump_m3s, pump_m3s / 2)


def least_wet_volume(cycle_s: float, pump_m3s: float) -> float:
    """Volume between on and off levels so that no cycle is shorter, m3: t q / 4.

    UFC 3-240-04A, paragraph 7: one pump, or the one that runs; half of it when two equal pumps
    take turns.
    """
    positive(cycle_s=cycle_s, pump_m3s=pump_m3s)
    return cycle_s * pump_m3s / 4


def round_pit_area(inside_m: float) -> float:
    """Plan area of a round pit, m2."""
    positive(inside_m=inside_m)
    return pi * inside_m**2 / 4


def flows_by_level(
    curve: PumpCurve, outfall_m: float, pipe: Discharge, levels_m: Sequence[float]
) -> tuple[float, ...]:
    """Pump's flow, m3/s, in each band between rising water levels, m: that of the band's middle.

    `outfall_m` is the level the water is lifted to: the highest point of the discharge.
    """
    middles = (np.array(levels_m[:-1]) + np.array(levels_m[1:])) / 2
    lifts = np.clip(outfall_m - middles, 0.0, None)
    return tuple(operating_flow(curve, float(lift), pipe) for lift in lifts)


def equivalent_inside(area_m2: float) -> float:
    """Inside of the round pit with a plan area, m."""
    positive(area_m2=area_m2)
    return sqrt(4 * area_m2 / pi)
