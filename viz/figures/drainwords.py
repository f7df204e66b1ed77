"""What a house's drains are called beside each other, and where each one's outlets lead."""

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.layout.bleeders import Bleeder
from geometry.layout.drain import DrainLayout
from geometry.layout.fittings import SAME_STATION_M
from geometry.layout.lay import Layout
from geometry.layout.leads import LeadLayout, lead_at
from geometry.water.daylight import DaylightRun, daylight_runs


@dataclass(frozen=True, eq=False)
class ToDaylight:
    """One outlet to daylight. number: from 1; 0 where the drain has no other like it."""

    number: int
    lead: LeadLayout
    run: DaylightRun

    @property
    def name(self) -> str:
        """What it leads to: "daylight", or "daylight 2" where there are several."""
        return f"daylight {self.number}" if self.number else "daylight"


def capital(words: str) -> str:
    """Return words with their first letter a capital, the others as they are."""
    return words[:1].upper() + words[1:]


def to_daylight(layout: Layout, drain: DrainLayout) -> tuple[ToDaylight, ...]:
    """Return a drain's outlets to daylight in the file's order."""
    runs = daylight_runs(drain)
    leads = layout.leads(drain)[-len(runs) :] if runs else ()
    several = len(runs) > 1
    return tuple(
        ToDaylight(number if several else 0, lead, run)
        for number, (lead, run) in enumerate(zip(leads, runs, strict=True), 1)
    )


def tee_words(layout: Layout, drain: DrainLayout, low: float) -> str:
    """Return where the solid pipe from a low point leads; empty without one."""
    lead = lead_at(layout.leads(drain), low)
    out = next((o.name for o in to_daylight(layout, drain) if o.lead is lead), "the pit")
    return out if lead else ""


def ends_open(drain: DrainLayout, station: float) -> bool:
    """Tell whether a drain empties into the stone of a lower one at its open end here."""
    empties = drain.drain.outlet == "lower stone" and not drain.route.closed
    return empties and abs(station - drain.low) < SAME_STATION_M


def highs(drain: DrainLayout) -> Iterator[float]:
    """Yield the stations of the high points: the highest first, then others between outlets.

    A run's lower end is none, nor is any place of a pipe that lies level.
    """
    if drain.rise <= 1e-9:
        return
    yield drain.high
    ends = () if drain.route.closed else (0.0, drain.route.length)
    for station in drain.falls.stations:
        if station not in (*drain.lows, *ends, drain.high):
            yield station


def bleeder_station(drain: DrainLayout, bleeder: Bleeder) -> float:
    """Return the station of a drain at which a bleeder passes it."""
    end = bleeder.inner_end if drain.inside else bleeder.outer_end
    return float(drain.route.station_of((end[0], end[1])))
