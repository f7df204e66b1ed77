"""What a pit's march through time gave: straight lines between events, and what is read off."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.formulas.given import positive, within
from geometry.formulas.storage import Storage

Floats = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Samples:
    """Even samples, arrays of one length: time s, level m, and m3 come, pumped, spilled so far."""

    times_s: Floats
    levels_m: Floats
    came_m3: Floats
    pumped_m3: Floats
    spilled_m3: Floats


@dataclass(frozen=True, eq=False)
class March:
    """Events (n x 4: time s, volume m3, pumped m3, spilled m3 so far), and starts of the pump, s.

    `block_s` and `came_m3` are the edges of the inflow's blocks and the water come by each.
    """

    storage: Storage
    events: Floats
    starts_s: Floats
    block_s: Floats
    came_m3: Floats

    @property
    def duration_s(self) -> float:
        """Length of the march, s."""
        return float(self.block_s[-1])

    @property
    def pumped_m3(self) -> float:
        """Water the pump threw out."""
        return float(self.events[-1, 2])

    @property
    def spilled_m3(self) -> float:
        """Water that ran over the spill level."""
        return float(self.events[-1, 3])

    @property
    def highest_m(self) -> float:
        """Highest level reached, m."""
        return self.storage.level(float(np.max(self.events[:, 1])))

    def lost_m3(self) -> float:
        """Water that came and is neither held, pumped nor spilled: rounding alone."""
        held = self.events[-1, 1] - self.events[0, 1]
        return float(self.came_m3[-1] - held - self.pumped_m3 - self.spilled_m3)

    def sampled(self, step_s: float = 1.0) -> Samples:
        """Return even samples from the start to the last whole step; levels are exact at each."""
        positive(step_s=step_s)
        at = np.arange(0.0, self.duration_s + step_s * 1e-9, step_s)
        time, volume, pumped, spilled = self.events.T
        levels = np.interp(
            np.interp(at, time, volume), self.storage.volumes_m3, self.storage.levels_m
        )
        came = np.interp(at, self.block_s, self.came_m3)
        return Samples(at, levels, came, np.interp(at, time, pumped), np.interp(at, time, spilled))

    def passed(self, level_m: float) -> Floats:
        """Times at which the water comes up to a level from below, s; 0 when it starts there."""
        within(self.storage.bottom_m, self.storage.spill_m, level_m=level_m)
        time, volume = self.events[:, 0], self.events[:, 1]
        mark = self.storage.volume(level_m)
        ups = np.flatnonzero((volume[:-1] < mark) & (volume[1:] >= mark))
        share = (mark - volume[ups]) / (volume[ups + 1] - volume[ups])
        times = time[ups] + share * (time[ups + 1] - time[ups])
        return np.concatenate([[0.0], times]) if volume[0] >= mark else times

    def first_passed(self, level_m: float, after_s: float = 0.0) -> float | None:
        """First time at or after another at which the water stands at a level or above, s.

        None when it never does: of an alarm, whether and when it sounds.
        """
        within(0.0, self.duration_s, after_s=after_s)
        time, volume = self.events[:, 0], self.events[:, 1]
        if np.interp(after_s, time, volume) >= self.storage.volume(level_m):
            return after_s
        later = self.passed(level_m)
        later = later[later >= after_s]
        return float(later[0]) if len(later) else None

    def time_above(self, level_m: float) -> float:
        """Seconds during which the water stands above a level."""
        within(self.storage.bottom_m, self.storage.spill_m, level_m=level_m)
        mark = self.storage.volume(level_m)
        over = self.events[:, 1] - mark
        first, last = over[:-1], over[1:]
        top, low = np.maximum(first, last), np.minimum(first, last)
        span = np.where(top > low, top - low, 1.0)
        share = np.where(top > low, np.clip(top, 0, None) - np.clip(low, 0, None), top > 0) / span
        return float(np.sum(share * np.diff(self.events[:, 0])))

    def most_starts_in(self, window_s: float = 3600.0) -> int:
        """Most starts of the pump within any window of a length."""
        positive(window_s=window_s)
        ends = np.searchsorted(self.starts_s, self.starts_s + window_s, side="left")
        return int(np.max(ends - np.arange(len(ends)), initial=0))
