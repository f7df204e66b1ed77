"""A pump against its discharge pipe: the two curves and where they meet."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from geometry.formulas.friction import PLASTIC_C, hazen_williams
from geometry.formulas.given import not_negative, positive, where_it_rises_to, within


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


def system_head(flow_m3s: float, static_m: float, pipe: Discharge) -> float:
    """Head a pump must give to push a flow, m: lift from water to outfall, plus friction."""
    return static_m + pipe.friction(flow_m3s)


@lru_cache(maxsize=1024)
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


def flows_by_level(
    curve: PumpCurve, outfall_m: float, pipe: Discharge, levels_m: Sequence[float]
) -> tuple[float, ...]:
    """Pump's flow, m3/s, in each band between rising water levels, m: that of the band's middle.

    `outfall_m` is the level the water is lifted to: the highest point of the discharge.
    """
    middles = (np.array(levels_m[:-1]) + np.array(levels_m[1:])) / 2
    lifts = np.clip(outfall_m - middles, 0.0, None)
    return tuple(operating_flow(curve, float(lift), pipe) for lift in lifts)
