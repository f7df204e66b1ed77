"""Rain over time: the four 24-hour storms of the SCS, steady rain, rain given block by block.

A storm is a depth that has fallen against time, with straight lines between its points, so that
intensity is constant in every block. Depths in metres of water, times in seconds.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.formulas.given import not_negative, positive
from geometry.formulas.scs_tables import TABLES, Kind

DAY = 86400.0
HOUR = 3600.0


@dataclass(frozen=True)
class Storm:
    """Times from 0, s, rising; depth fallen by each, m, never falling. Same number of both."""

    times_s: tuple[float, ...]
    depths_m: tuple[float, ...]

    def __post_init__(self) -> None:
        """Raise ValueError when the two do not make a storm."""
        times, depths = np.array(self.times_s), np.array(self.depths_m)
        if len(times) != len(depths) or len(times) < 2:
            raise ValueError("a storm needs as many depths as times, two at least")
        if times[0] != 0 or depths[0] != 0:
            raise ValueError("a storm starts at time 0 with depth 0")
        if not (np.all(np.diff(times) > 0) and np.all(np.diff(depths) >= 0)):
            raise ValueError("times must rise and depths must not fall")
        if not (np.isfinite(times[-1]) and np.isfinite(depths[-1])):
            raise ValueError("times and depths must be finite")

    @property
    def depth_m(self) -> float:
        """Depth of the whole storm, m."""
        return self.depths_m[-1]

    @property
    def duration_s(self) -> float:
        """Length of the storm, s."""
        return self.times_s[-1]

    def fallen(self, time_s: NDArray[np.float64]) -> NDArray[np.float64]:
        """Depth fallen by each time, m; nothing before the storm, all of it after."""
        return np.interp(time_s, self.times_s, self.depths_m)

    def intensities(self) -> NDArray[np.float64]:
        """Intensity of every block between two points, m/s: one fewer than points."""
        return np.diff(self.depths_m) / np.diff(self.times_s)

    def in_steps(self, step_s: float) -> "Storm":
        """Return the same storm in even steps: each has its mean intensity, no water is lost."""
        positive(step_s=step_s)
        times = np.append(np.arange(0.0, self.duration_s, step_s), self.duration_s)
        return Storm(tuple(times.tolist()), tuple(self.fallen(times).tolist()))

    def most_in(self, window_s: float) -> float:
        """Return the greatest depth that falls within any window of a length, m."""
        positive(window_s=window_s)
        corners = np.array(self.times_s)
        starts = np.concatenate([corners, corners - window_s])
        return float(np.max(self.fallen(starts + window_s) - self.fallen(starts)))


def scs_storm(kind: Kind, depth_m: float, duration_s: float = DAY) -> Storm:
    """Return an SCS storm of type "I", "IA", "II" or "III" with a depth, m.

    Shorter than a day it is the middle of the day's storm about its peak, scaled to the depth
    (Haan, Barfield and Hayes, Design Hydrology and Sedimentology, 1994, eq. 3.7). Raises
    ValueError when the middle would pass the ends of the day.
    """
    not_negative(depth_m=depth_m)
    positive(duration_s=duration_s)
    table = TABLES[kind]
    hours, shares = np.array(table.hours), np.array(table.shares)
    first = 0.0 if duration_s == DAY else table.peak_h - duration_s / HOUR / 2
    last = first + duration_s / HOUR
    if first < 0 or last > 24:
        raise ValueError("a part of the storm must lie within its day, even about its peak")
    inner = hours[(hours > first) & (hours < last)]
    at = np.concatenate([[first], inner, [last]])
    fallen = np.interp(at, hours, shares)
    share = (fallen - fallen[0]) / (fallen[-1] - fallen[0])
    return Storm(tuple(((at - first) * HOUR).tolist()), tuple((share * depth_m).tolist()))


def steady_storm(depth_m: float, duration_s: float) -> Storm:
    """Return rain that falls evenly."""
    not_negative(depth_m=depth_m)
    positive(duration_s=duration_s)
    return Storm((0.0, duration_s), (0.0, depth_m))


def block_storm(blocks: Sequence[tuple[float, float]]) -> Storm:
    """Return rain given as blocks of (duration s, depth m) one after the other."""
    for duration, depth in blocks:
        positive(duration=duration)
        not_negative(depth=depth)
    times = np.cumsum([0.0, *(duration for duration, _ in blocks)])
    depths = np.cumsum([0.0, *(depth for _, depth in blocks)])
    return Storm(tuple(times.tolist()), tuple(depths.tolist()))
