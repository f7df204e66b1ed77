"""The design's pump as one that can be marched: its flows by the water's level in the pit."""

from functools import lru_cache
from math import inf

import numpy as np

from geometry.formulas import pumps, sump
from geometry.layout.sump import SumpLayout
from geometry.parts.drain import Pump

# Bands of level between off and rim in which a curve's flow is taken as one.
BANDS = 6


def curve_of(pump: Pump) -> pumps.PumpCurve | None:
    """Return the pump's curve by rising flow; None without one."""
    if not pump.curve:
        return None
    heads, flows = zip(*sorted(pump.curve, key=lambda point: point[1]), strict=True)
    return pumps.PumpCurve(flows, heads)


def flow_at(pit: SumpLayout, level_m: float) -> float | None:
    """Return the pump's flow with the pit's water at a level, m3/s; None where it is not given."""
    pump = pit.sump.pump
    if pump is None:
        return None
    curve = curve_of(pump)
    if curve is None or pump.lift is None:
        return pump.flow
    lift = max(0.0, pit.floor + pump.lift - level_m)
    return pumps.operating_flow(curve, lift, _discharge(pump))


@lru_cache(maxsize=16)
def middle_flow(pit: SumpLayout) -> float | None:
    """Return the pump's flow with the water midway between on and off, m3/s; None if not given."""
    if pit.pump_on is None or pit.pump_off is None:
        return None
    return flow_at(pit, (pit.pump_on + pit.pump_off) / 2)


def marching_pump(pit: SumpLayout, fails_at_s: float = inf) -> sump.Pump | None:
    """Return the pump for `formulas.sump.march`; None without a pump, or when its flow is open."""
    pump, on, off = pit.sump.pump, pit.pump_on, pit.pump_off
    if pump is None or on is None or off is None or middle_flow(pit) is None:
        return None
    curve = curve_of(pump)
    if curve is None or pump.lift is None:
        return sump.Pump(on, off, (pump.flow or 0.0,), (), fails_at_s)
    edges, flows = _bands(pit, curve, pump.lift)
    return sump.Pump(on, off, flows, edges[1:-1], fails_at_s)


@lru_cache(maxsize=8)
def _bands(
    pit: SumpLayout, curve: pumps.PumpCurve, lift_m: float
) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return the water levels between off and rim, and the pump's flow between each two."""
    edges = np.linspace(pit.pump_off or pit.floor, pit.rim, BANDS + 1).tolist()
    pipe = _discharge(pit.sump.pump) if pit.sump.pump else pumps.Discharge(0.0, 1.0)
    return tuple(edges), pumps.flows_by_level(curve, pit.floor + lift_m, pipe, edges)


def _discharge(pump: Pump) -> pumps.Discharge:
    """Return the discharge pipe; without one, a pipe of no length, which takes no head."""
    pipe = pump.discharge
    return pumps.Discharge(pipe.length, pipe.inside) if pipe else pumps.Discharge(0.0, 1.0)
