"""A pit with its pump through time, from event to event.

Between two events inflow and pump are constant, so the volume held runs in a straight line and
the next event (pump on, pump off, a band of the pump's flow, full) is met exactly. No time step
is chosen and no error builds up; samples are read off afterwards.
"""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

import numpy as np
from numpy.typing import NDArray

from geometry.formulas.given import not_negative, within
from geometry.formulas.march import March
from geometry.formulas.storage import Storage


@dataclass(frozen=True)
class Pump:
    """A pump with float switch: starts at `on_m`, stops at `off_m`, levels in m.

    `flows_m3s` holds one flow, or one for each band between the rising `bands_m` (levels inside
    the store; one fewer than flows). From `fails_at_s` on it stands still.
    """

    on_m: float
    off_m: float
    flows_m3s: tuple[float, ...]
    bands_m: tuple[float, ...] = ()
    fails_at_s: float = inf

    def __post_init__(self) -> None:
        """Raise ValueError when switch levels, bands or flows cannot be."""
        if self.on_m <= self.off_m:
            raise ValueError("the pump must start above the level at which it stops")
        if len(self.flows_m3s) != len(self.bands_m) + 1:
            raise ValueError("a pump needs one more flow than levels between bands")
        if np.any(np.diff(self.bands_m) <= 0):
            raise ValueError("bands must rise")
        for flow in self.flows_m3s:
            not_negative(flow=flow)


class _Pit:
    """The state while marching: volumes only, all lines straight."""

    def __init__(self, storage: Storage, pump: Pump, volume: float) -> None:
        self.full, self.volume, self.time = storage.full_m3, volume, 0.0
        self.on, self.off = storage.volume(pump.on_m), storage.volume(pump.off_m)
        self.edges = [0.0, *map(storage.volume, pump.bands_m), self.full]
        self.flows = pump.flows_m3s
        self.working, self.running = True, False
        self.pumped, self.spilled = 0.0, 0.0
        self.starts: list[float] = []
        # One flat list of time, volume, pumped, spilled: far quicker to make an array of.
        self.events = [0.0, volume, 0.0, 0.0]
        self._settle()

    def block(self, end: float, inflow: float, working: bool) -> None:
        """March through one block of constant inflow."""
        volume = self.volume + (inflow - self.flow) * (end - self.time)
        if self.low < volume < self.high and working == self.working:
            self._go(end, volume, self.flow, 0.0)
            return
        self.working = working
        while self.time < end:
            self._settle()
            self._step(end, inflow)
        self._settle()

    def _go(self, until: float, volume: float, pump: float, spill: float) -> None:
        """Move to a time and volume with a constant pump flow and spill."""
        span = until - self.time
        self.pumped += pump * span
        self.spilled += spill * span
        self.time, self.volume = until, volume
        self.events += (until, volume, self.pumped, self.spilled)

    def _settle(self) -> None:
        """Switch the pump as its float does; find its flow, and between which volumes it stays."""
        if not self.working or self.volume <= self.off:
            self.running = False
        elif not self.running and self.volume >= self.on:
            self.running = True
            self.starts.append(self.time)
        self.band = min(bisect_right(self.edges, self.volume), len(self.flows)) - 1
        if self.running:
            self.flow, self.high = self.flows[self.band], self.edges[self.band + 1]
            self.low = max(self.edges[self.band], self.off)
        else:
            self.flow, self.low = 0.0, -1.0
            self.high = min(self.full, self.on) if self.working else self.full

    def _step(self, end: float, inflow: float) -> None:
        """Go to the next event, or to the block's end if that comes first."""
        rate = inflow - self.flow
        if rate < 0 and self.volume == self.low:
            # On an edge and falling: the pump goes by the band below, unless its smaller flow
            # would lift the water back. Then it stays there, and the pump throws what comes.
            self.flow, self.low = self.flows[self.band - 1], self.edges[self.band - 1]
            self.low, rate = max(self.low, self.off), inflow - self.flow
            if rate > 0:
                self._go(end, self.volume, inflow, 0.0)
                return
        if rate > 0 and self.volume >= self.full:
            self._go(end, self.full, self.flow, rate)
            return
        target = self.high if rate > 0 else self.low
        until = self.time + (target - self.volume) / rate if rate else inf
        if until < end:
            self._go(until, target, self.flow, 0.0)
        else:
            self._go(end, self.volume + rate * (end - self.time), self.flow, 0.0)


def _blocks(
    times: NDArray[np.float64], inflows: NDArray[np.float64], fails_at: float
) -> list[tuple[float, float, bool]]:
    """(end, inflow, pump working) of every block, equal neighbours joined, cut where it fails."""
    keep = np.append(np.diff(inflows) != 0, True)
    ends, rates = times[1:][keep], inflows[keep]
    at = int(np.searchsorted(ends, fails_at))
    if 0 < fails_at < times[-1] and ends[at] != fails_at:
        ends, rates = np.insert(ends, at, fails_at), np.insert(rates, at, rates[at])
    return list(zip(ends.tolist(), rates.tolist(), (ends <= fails_at).tolist(), strict=True))


def march(
    storage: Storage,
    pump: Pump | None,
    times_s: Sequence[float] | NDArray[np.float64],
    inflows_m3s: Sequence[float] | NDArray[np.float64],
    start_m: float,
) -> March:
    """March a pit through time.

    `times_s` are the edges of the blocks, from 0, rising; `inflows_m3s` the constant inflow of
    each, one fewer, zero or more. `start_m` is the level at the start, within the store. Without
    a pump the water only rises. The pump is off at the start unless the level is at `on_m`.
    Raises ValueError when the series do not fit or the switch levels lie outside the store.
    """
    times, inflows = np.asarray(times_s, dtype=float), np.asarray(inflows_m3s, dtype=float)
    if times.ndim != 1 or times.shape != (len(inflows) + 1,) or len(inflows) == 0:
        raise ValueError("a series needs one more time than inflows")
    if times[0] != 0 or not np.all(np.diff(times) > 0) or not np.isfinite(times[-1]):
        raise ValueError("times must start at 0 and rise")
    if not (np.all(np.isfinite(inflows)) and np.all(inflows >= 0)):
        raise ValueError("inflows must be zero or more")
    within(storage.bottom_m, storage.spill_m, start_m=start_m)
    if pump is None:
        pump = Pump(storage.spill_m, storage.bottom_m, (0.0,), fails_at_s=0.0)
    within(storage.bottom_m, storage.spill_m, on_m=pump.on_m, off_m=pump.off_m)
    for level in pump.bands_m:
        within(storage.bottom_m, storage.spill_m, band=level)
    pit = _Pit(storage, pump, storage.volume(start_m))
    for end, inflow, working in _blocks(times, inflows, pump.fails_at_s):
        pit.block(end, inflow, working)
    events = np.array(pit.events).reshape(-1, 4)
    came = np.concatenate([[0.0], np.cumsum(inflows * np.diff(times))])
    return March(storage, events, np.array(pit.starts), times, came)
