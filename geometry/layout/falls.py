"""How a drain falls: high points and low points along its route, straight between them."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Falls:
    """Stations where the fall turns, rising, and how high the pipe lies there above its outlets.

    Metres. length: of the route. closed: it goes round; else the first and last turn are its ends.
    lows: the stations of its outlets.
    """

    stations: tuple[float, ...]
    rises: tuple[float, ...]
    length: float
    closed: bool
    lows: tuple[float, ...]

    def rise(self, station: float) -> float:
        """Height above the outlets at a distance along the route."""
        at, up = self._whole
        here = (station - at[0]) % self.length + at[0] if self.closed else station
        return float(np.interp(here, at, up))

    @cached_property
    def _whole(self) -> tuple[Floats, Floats]:
        """Turns with the first repeated where the route goes round."""
        if not self.closed:
            return np.array(self.stations), np.array(self.rises)
        at = (*self.stations, self.stations[0] + self.length)
        return np.array(at), np.array((*self.rises, self.rises[0]))

    @property
    def top(self) -> tuple[float, float]:
        """Station and rise of the highest turn that is no outlet."""
        turns = zip(self.stations, self.rises, strict=True)
        return max((t for t in turns if t[0] not in self.lows), key=lambda turn: turn[1])

    def branches(self, low: float) -> tuple[float, float]:
        """Lengths from a low point ahead and back to the next turn or end; 0 where none is."""
        at = self.stations
        here = int(np.argmin(np.abs(np.array(at) - low)))
        if self.closed:
            ahead = (at[(here + 1) % len(at)] - at[here]) % self.length
            behind = (at[here] - at[here - 1]) % self.length
            return ahead, behind
        return at[min(here + 1, len(at) - 1)] - at[here], at[here] - at[max(here - 1, 0)]

    def turns(self, start: float, end: float) -> tuple[float, ...]:
        """Return the turns between two stations, rising; on a round route they may pass its end."""
        laps = (0.0, self.length) if self.closed else (0.0,)
        found = [at + lap for lap in laps for at in self.stations]
        return tuple(sorted(at for at in found if start < at < end))

    @property
    def slant(self) -> float:
        """Length along the fall, metres."""
        at, up = self._whole
        return float(np.hypot(np.diff(at), np.diff(up)).sum())


def round_falls(
    lows: Sequence[float], length: float, fall: float, high: float | None = None
) -> Falls:
    """Return the falls of a route that goes round.

    One outlet: the high point lies where it was asked for, else half way round; the stated fall
    runs along the longer branch. Several: half way between each two.
    """
    if len(lows) == 1:
        low = lows[0]
        top = (low + length / 2) % length if high is None else high
        ahead = (top - low) % length
        turns = [(low, 0.0), (top, fall * max(ahead, length - ahead))]
    else:
        turns = [(low, 0.0) for low in lows]
        ordered = sorted(lows)
        for a, b in pairwise((*ordered, ordered[0] + length)):
            turns.append(((a + b) / 2 % length, fall * (b - a) / 2))
    stations, rises = zip(*sorted(turns), strict=True)
    return Falls(stations, rises, length, True, tuple(lows))


def open_falls(lows: Sequence[float], length: float, fall: float) -> Falls:
    """Return the falls of a route with two ends: up from each outlet to the ends and between."""
    ordered = sorted(lows)
    turns = dict.fromkeys(ordered, 0.0)
    for a, b in pairwise(ordered):
        turns[(a + b) / 2] = fall * (b - a) / 2
    turns.setdefault(0.0, fall * ordered[0])
    turns.setdefault(length, fall * (length - ordered[-1]))
    stations, rises = zip(*sorted(turns.items()), strict=True)
    return Falls(stations, rises, length, False, tuple(lows))
