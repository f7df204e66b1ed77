"""How the drain can be got into: risers, what lies between them, and what they leave out."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from geometry.layout.drain import DrainLayout
from geometry.layout.fittings import SAME_STATION_M
from geometry.layout.lay import Layout
from geometry.sources import PRACTICE, Source
from geometry.units import FOOT, System

USUAL_REACH_M: dict[System, float] = {"ft-in": 50 * FOOT, "metric": 15.0}
"""Greatest length between two places to enter, for a household snake or hose."""
REACH_SOURCE = PRACTICE
BENDS_DEG = 135.0
"""Sum of bends beyond which one more cleanout is asked."""
BENDS_SOURCE = Source(
    "UPC", "2012", "707.4 (sewers and drains in buildings; a foundation drain by likeness)",
    sure="second-hand",
)  # fmt: skip
AT_END_M = 2 * FOOT
"""A cleanout no farther than this from a closed end stands at it: common practice, no source."""
PIT, HIGH, CLOSED = "sump pit", "high point", "closed end"
_TEE_DEG = 90.0


@dataclass(frozen=True)
class Access:
    """A place to enter: "cleanout at corner 2" or "sump pit"; its riser's height, or None.

    riser_m: from the pipe's centre to top_m, the level of its plug against the project's TOF.
    ends_at: what it is brought up to, "finished grade" or "finished floor".
    """

    name: str
    station_m: float
    riser_m: float | None
    top_m: float | None = None
    ends_at: str | None = None


@dataclass(frozen=True)
class Run:
    """Pipe between two places to enter, or from one to a closed end.

    start, end: their names; None is a closed end. length_m: along the pipe. farthest_m: from the
    nearer place to enter; the whole length where only one end opens; None where neither does.
    bends, bends_deg: corners passed on the way, with the tee where a run begins in the pit.
    hose_m: to reach all of it from the tops of its risers; None where nothing can be put in.
    """

    start: str | None
    end: str | None
    length_m: float
    farthest_m: float | None
    bends: int
    bends_deg: float
    hose_m: float | None


@dataclass(frozen=True)
class HighEnd:
    """A high point of the drain, or a closed end of it: water for flushing starts there.

    name: "high point" or "closed end"; with a number where there are several. nearest: of the
    cleanouts with the fewest bends between the nearest; None without any; a pit is none, for it
    lies low. away_m: along the pipe. bends: between the two.
    """

    name: str
    station_m: float
    nearest: str | None
    away_m: float | None
    bends: int

    @property
    def served(self) -> bool:
        """Whether one can flush from it: at a closed end itself, else from the same straight."""
        if self.away_m is None:
            return False
        return self.away_m <= AT_END_M or (self.name.startswith(HIGH) and self.bends == 0)


@dataclass(frozen=True)
class Cleaning:
    """Places to enter in order along the drain, the runs between them, and their limits.

    high_ends: in order along the drain; none where a level pipe goes round.
    """

    access: tuple[Access, ...]
    runs: tuple[Run, ...]
    high_ends: tuple[HighEnd, ...]
    reach_m: float
    bends_limit_deg: float

    def too_far(self, run: Run) -> bool:
        """Tell whether a run is longer than the reach, or cannot be entered."""
        return run.farthest_m is None or run.length_m > self.reach_m + 1e-9

    def too_bent(self, run: Run) -> bool:
        """Tell whether a run's bends add up to more than the limit."""
        return run.bends_deg > self.bends_limit_deg + 1e-6


@lru_cache(maxsize=16)
def cleaning(
    layout: Layout, reach_m: float | None = None, bends_limit_deg: float = BENDS_DEG
) -> Cleaning | None:
    """Return the drain's runs between places to enter; None without a drain.

    reach_m: greatest length between them; the usual 50 ft or 15 m unless given. The outlet counts
    as a place to enter where it is a pit, nowhere else.
    """
    drain = layout.drain
    if drain is None:
        return None
    reach = USUAL_REACH_M[layout.design.project.units] if reach_m is None else reach_m
    places = _access(layout, drain)
    if drain.route.closed:
        runs = _round(layout, drain, places)
    else:
        ends = [Access("", 0.0, None), *places, Access("", drain.route.length, None)]
        pairs = [p for p in pairwise(ends) if p[1].station_m - p[0].station_m > SAME_STATION_M]
        runs = [_run(layout, drain, *pair) for pair in pairs]
    highs = tuple(_high_ends(drain, places))
    return Cleaning(tuple(places), tuple(runs), highs, reach, bends_limit_deg)


def _access(layout: Layout, drain: DrainLayout) -> list[Access]:
    up_to = "finished floor" if drain.inside else "finished grade"
    found = [
        Access(
            f"cleanout at corner {corner}", drain.corner_station(corner), riser.top - riser.bottom,
            riser.top, up_to,
        )
        for corner, riser in zip(drain.drain.cleanouts, layout.risers(drain), strict=True)
    ]  # fmt: skip
    if layout.lead is not None:
        found.append(Access(PIT, drain.low, None))
    return sorted(found, key=lambda place: place.station_m)


def _high_ends(drain: DrainLayout, places: list[Access]) -> Iterator[HighEnd]:
    """Yield closed ends and high points, each with the cleanout it is flushed from."""
    ends = () if drain.route.closed else (0.0, drain.route.length)
    shut = [at for at, capped in zip(ends, drain.capped, strict=False) if capped]
    tops = [at for at in drain.falls.stations if drain.rise > 0 and at not in drain.lows]
    highs = [at for at in tops if at not in ends]
    for name, found in ((CLOSED, shut), (HIGH, highs)):
        for number, station in enumerate(found, 1):
            called = name if len(found) == 1 else f"{name} {number}"
            yield _high_end(drain, called, station, places)


def _high_end(drain: DrainLayout, name: str, station: float, places: list[Access]) -> HighEnd:
    ways = sorted(
        (len(_turns(drain, *way)), _along(drain, *way), place.name)
        for place in places
        if place.riser_m is not None
        for way in _ways(drain, station, place.station_m)
    )
    if not ways:
        return HighEnd(name, station, None, None, 0)
    bends, away, nearest = ways[0]
    return HighEnd(name, station, nearest, away, bends)


def _ways(drain: DrainLayout, one: float, other: float) -> list[tuple[float, float]]:
    """Return the ways between two stations as rising pairs; both round a closed drain."""
    low, high = sorted((one, other))
    both = [(low, high), (high, low + drain.route.length)]
    return both if drain.route.closed else both[:1]


def _round(layout: Layout, drain: DrainLayout, places: list[Access]) -> list[Run]:
    """Runs of a drain that closes on itself; without a place to enter, one run all round."""
    length = drain.route.length
    if not places:
        return [_run(layout, drain, Access("", 0.0, None), Access("", length, None))]
    first = places[0]
    again = Access(first.name, first.station_m + length, first.riser_m)
    return [_run(layout, drain, *pair) for pair in pairwise([*places, again])]


def _run(layout: Layout, drain: DrainLayout, start: Access, end: Access) -> Run:
    length = _along(drain, start.station_m, end.station_m)
    turns = _turns(drain, start.station_m, end.station_m)
    lead = layout.lead
    if lead is not None:
        pits = [place for place in (start, end) if place.name == PIT]
        length += len(pits) * lead.end * lead.stretch
        turns += [_TEE_DEG] * len(pits)
    opens = [place.name or None for place in (start, end)]
    reached = None if not any(opens) else length / 2 if all(opens) else length
    hose = _hose(start, end, length)
    return Run(opens[0], opens[1], length, reached, len(turns), float(sum(turns)), hose)


def _hose(start: Access, end: Access, length: float) -> float | None:
    """Length of hose from the tops of the risers that reaches all of the pipe between them."""
    down = [place.riser_m or 0.0 for place in (start, end) if place.name]
    if len(down) < 2:
        return length + down[0] if down else None
    return max((length + sum(down)) / 2, *down)


def _along(drain: DrainLayout, start: float, end: float) -> float:
    """Length of the pipe itself between two stations; the second may lie past the closing."""
    length = drain.route.length
    marks = sorted({start, *drain.falls.turns(start, end), end})
    inverts = [drain.invert(mark % length if drain.route.closed else mark) for mark in marks]
    return float(np.sum(np.hypot(np.diff(marks), np.diff(inverts))))


def _turns(drain: DrainLayout, start: float, end: float) -> list[float]:
    """Angles of the bends strictly between two stations, degrees."""
    route, found = drain.route, []
    points = np.asarray(route.points)
    inner = range(len(points)) if route.closed else range(1, len(points) - 1)
    for number in inner:
        station = float(route.stations[number])
        after = points[(number + 1) % len(points)] - points[number]
        before = points[number] - points[number - 1]
        laps = (0, 1) if route.closed else (0,)
        times = sum(start + 1e-6 < station + k * route.length < end - 1e-6 for k in laps)
        found += [_angle(before, after)] * times
    return found


def _angle(before: NDArray[np.float64], after: NDArray[np.float64]) -> float:
    cosine = before @ after / (np.linalg.norm(before) * np.linalg.norm(after))
    return float(np.degrees(np.arccos(np.clip(cosine, -1, 1))))
