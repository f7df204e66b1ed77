"""The pipe's inverts: at every corner, cleanout, outlet, high point, end, and at even steps."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.layout.leads import lead_at
from geometry.units import FOOT, System

# A laser is set up for so many steps along the pipe.
STEP_M: dict[System, float] = {"ft-in": 10 * FOOT, "metric": 3.0}
# Places nearer than this are one (a thumb's width).
SAME_PLACE_M = 0.02


@dataclass(frozen=True)
class InvertRow:
    """One invert, metres: along the route, level against the project's TOF.

    along: from the main outlet on a route that goes round, else from its first end.
    names: what is there; empty at an even step. rod: None without a laser.
    """

    names: tuple[str, ...]
    station: float
    along: float
    level: float
    elevation: float
    rod: float | None


def invert_rows(layout: Layout, drain: DrainLayout) -> tuple[InvertRow, ...]:
    """Return the inverts in the order one walks from the main outlet along the route."""
    step = STEP_M[layout.design.project.units]
    found = dict(_named(layout, drain))
    stations = list(found)
    for number in range(1, int(drain.route.length / step) + 1):
        station = _station(drain, number * step)
        if all(_gap(drain, station, s) > SAME_PLACE_M for s in stations):
            found[station] = ()
    rows = [_row(layout, drain, station, names) for station, names in found.items()]
    return tuple(sorted(rows, key=lambda row: row.along))


def _station(drain: DrainLayout, walked: float) -> float:
    """Return the station so far from the start: the main outlet going round, else the first end."""
    return (drain.low + walked) % drain.route.length if drain.route.closed else walked


def _gap(drain: DrainLayout, one: float, other: float) -> float:
    gap = abs(one - other)
    return min(gap, drain.route.length - gap) if drain.route.closed else gap


def _row(layout: Layout, drain: DrainLayout, station: float, names: tuple[str, ...]) -> InvertRow:
    datum, level = layout.design.datum, drain.invert(station)
    elevation = datum.top_of_footing + level
    rod = None if datum.instrument is None else datum.instrument - elevation
    along = (station - drain.low) % drain.route.length if drain.route.closed else station
    return InvertRow(names, station, along, level, elevation, rod)


def _named(layout: Layout, drain: DrainLayout) -> dict[float, tuple[str, ...]]:
    """Return the names at each station; places that are all but one share their names."""
    found: dict[float, tuple[str, ...]] = {}
    for station, name in _places(layout, drain):
        near = next((s for s in found if _gap(drain, s, station) <= SAME_PLACE_M), station)
        found[near] = (*found.get(near, ()), name)
    return found


def _places(layout: Layout, drain: DrainLayout) -> Iterator[tuple[float, str]]:
    for number, low in enumerate(drain.lows):
        yield low, outlet_words(layout, drain, number)
    for number, station in enumerate(drain.route.stations[: len(drain.route.points)].tolist()):
        yield station, f"corner {drain.outline_corner(number)}"
    for corner in drain.drain.cleanouts:
        yield drain.corner_station(corner), "cleanout"
    if drain.rise > 0:
        highs = [s for s in drain.falls.stations if s not in drain.lows]
        for station in highs:
            yield station, "high point"


def outlet_words(layout: Layout, drain: DrainLayout, number: int = 0) -> str:
    """Return what a drain's low point empties into."""
    lead = lead_at(layout.leads(drain), drain.lows[number])
    if lead and lead is layout.pit_lead:
        return "outlet to the pit"
    if lead:
        several = len(drain.drain.daylight) > 1
        count = len(drain.lows) - len(drain.drain.daylight)
        return f"outlet to daylight {number - count + 1}" if several else "outlet to daylight"
    if drain.drain.outlet == "bleeders":
        return "low point, emptied by bleeders"
    if drain.drain.outlet == "lower stone":
        return "open end over lower stone"
    return "low point"
