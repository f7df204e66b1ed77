"""Where times and levels lie on the paper of the pit's chart."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.formulas.storms import DAY, HOUR
from geometry.water.pit import PitStorm

# Steps a clock is read by, hours.
_STEPS = (0.25, 0.5, 1.0, 2.0, 3.0, 4.0, 6.0, 12.0)
_MOST_TICKS = 9


@dataclass(frozen=True)
class View:
    """The chart's window: hours from 0, levels from low to high, m; its width and height in mm."""

    hours: float
    low_m: float
    high_m: float
    width: float
    height: float

    def x(self, hours: float) -> float:
        """Place of a time, mm from the left edge."""
        return self.width * hours / self.hours

    def y(self, level_m: float) -> float:
        """Place of a level, mm over the lower edge."""
        return self.height * (level_m - self.low_m) / (self.high_m - self.low_m)

    def line(
        self, times_s: NDArray[np.float64], levels_m: NDArray[np.float64]
    ) -> tuple[tuple[float, float], ...]:
        """Return a series as points on paper, cut to the window."""
        inside = times_s <= self.hours * HOUR + 1e-6
        pairs = zip(times_s[inside] / HOUR, levels_m[inside], strict=True)
        return tuple((self.x(float(t)), self.y(float(level))) for t, level in pairs)

    def ticks(self, apart: float = 0.0) -> list[float]:
        """Return the hours to be named on the axis. apart: what a name takes, mm."""
        most = min(_MOST_TICKS, self.width / apart) if apart else _MOST_TICKS
        step = next((s for s in _STEPS if self.hours / s <= most), 24.0)
        return [n * step for n in range(int(self.hours / step + 1e-9) + 1)]


def view_of(pit: PitStorm, width: float, height: float) -> View:
    """Return the window that shows the storm and every level reached after it."""
    end = pit.storm.duration_s if pit.storm else DAY
    reached = [r.after_s for r in pit.reached if r.after_s is not None]
    last = pit.series.peak_s + max(reached, default=0.0)
    whole = pit.series.times_s[-1]
    end = min(whole, max(end, 1.05 * last))
    return View(end / HOUR, pit.store.bottom_m, pit.store.spill_m, width, height)
