"""The drain unrolled, whole or one branch of it: its ends, its inverts, its falls."""

from dataclasses import dataclass
from itertools import pairwise

from geometry.layout.drain import DrainLayout
from geometry.layout.fittings import SAME_STATION_M


@dataclass(frozen=True)
class Stretch:
    """Pipe that falls evenly from one place to another, metres from the drain's left end."""

    high: float
    low: float
    fall: float
    drop: float

    @property
    def length(self) -> float:
        """Length on the plan, metres."""
        return abs(self.high - self.low)


@dataclass(frozen=True)
class Piece:
    """What one picture shows of the unrolled drain, metres from the whole drain's left end."""

    drain: DrainLayout
    start: float
    end: float

    @property
    def whole(self) -> bool:
        """Tell whether all of the drain is shown."""
        return self.holds(0.0) and self.holds(self.drain.route.length)

    def holds(self, run: float) -> bool:
        """Tell whether a place lies in the piece, ends included."""
        return self.start - SAME_STATION_M <= run <= self.end + SAME_STATION_M

    @property
    def cuts(self) -> tuple[float, ...]:
        """Where the pipe goes on into another piece; a loop's low point ends its picture anyway."""
        last = self.drain.route.length
        return tuple(run for run in (self.start, self.end) if _between(run, 0.0, last))

    @property
    def open_ends(self) -> tuple[float, ...]:
        """Where the stone ends in soil; a loop's has no ends."""
        if self.drain.route.closed:
            return ()
        return tuple(run for run in (0.0, self.drain.route.length) if self.holds(run))

    @property
    def pipe_ends(self) -> tuple[float, float]:
        """Where the pipe begins and ends: it stops short of open ends of the stone."""
        first, last = _pipe_ends(self.drain)
        return max(first, self.start), min(last, self.end)

    def inverts(self) -> tuple[tuple[float, float], ...]:
        """Return (run, level) of the invert from left to right: ends and every change of fall."""
        start, end = self.pipe_ends
        runs = [start, *(run for run, _ in turns(self.drain) if _between(run, start, end)), end]
        first = self.drain.low if self.drain.route.closed else 0.0
        return tuple((run, self.drain.invert(first + run)) for run in runs)

    def stretches(self) -> tuple[Stretch, ...]:
        """Return the falling lengths from left to right; a level drain is one."""
        if not self.drain.rise:
            return (Stretch(self.start, self.end, 0.0, 0.0),)
        shown = (s for s in _falling(self.drain) if s.length > SAME_STATION_M)
        return tuple(s for s in shown if self.holds(s.high) and self.holds(s.low))

    def is_end(self, run: float) -> bool:
        """Tell whether an open drain ends here."""
        return any(abs(run - end) < SAME_STATION_M for end in self.open_ends)


def all_of(drain: DrainLayout) -> Piece:
    """Return the whole drain as one piece."""
    return Piece(drain, 0.0, drain.route.length)


def branches(drain: DrainLayout) -> tuple[Piece, ...]:
    """Return the branches from left to right: a low point at an end leaves one.

    Of more than two, short ones that follow each other make one piece of half the drain at most.
    """
    stops = (0.0, *turning(drain), drain.route.length)
    found = [(a, b) for a, b in pairwise(stops) if b - a > SAME_STATION_M]
    joined: list[tuple[float, float]] = []
    for start, end in found:
        short = len(found) > 2 and joined and 2 * (end - joined[-1][0]) <= drain.route.length
        if short:
            joined[-1] = (joined[-1][0], end)
        else:
            joined.append((start, end))
    return tuple(Piece(drain, a, b) for a, b in joined)


def turning(drain: DrainLayout) -> tuple[float, ...]:
    """Return where the branches meet in the picture: a loop's high points, a run's low points.

    A loop is cut at its main low point, which stands at both ends.
    """
    closed = drain.route.closed
    runs = [run for run, is_low in turns(drain) if is_low != closed]
    return tuple(sorted(runs))


def turns(drain: DrainLayout) -> tuple[tuple[float, bool], ...]:
    """Return (run, whether it is a low point) where the fall turns, from left to right.

    Those of a loop begin and end with its main low point.
    """
    closed, length = drain.route.closed, drain.route.length
    first = drain.low if closed else 0.0
    found = [
        ((at - first) % length if closed else at, at in drain.lows) for at in drain.falls.stations
    ]
    return tuple(sorted([*found, (length, True)] if closed else found))


def lows(drain: DrainLayout) -> tuple[float, ...]:
    """Return where the low points stand in the picture; a loop's main one at both ends."""
    return tuple(run for run, is_low in turns(drain) if is_low)


def _between(run: float, first: float, last: float) -> bool:
    return first + SAME_STATION_M < run < last - SAME_STATION_M


def _pipe_ends(drain: DrainLayout) -> tuple[float, float]:
    if drain.route.closed:
        return 0.0, drain.route.length
    return drain.gaps[0][0], drain.gaps[-1][1]


def _falling(drain: DrainLayout) -> tuple[Stretch, ...]:
    """Return the lengths between turns, each from its higher end to its lower one."""
    first = drain.low if drain.route.closed else 0.0
    rises = {run: drain.falls.rise(first + run) for run, _ in turns(drain)}
    found = []
    for a, b in pairwise(rises):
        high, low = (a, b) if rises[a] > rises[b] else (b, a)
        drop = rises[high] - rises[low]
        found.append(Stretch(high, low, drop / max(b - a, SAME_STATION_M), drop))
    return tuple(found)
