"""Solid pipes that leave a drain's tees: to the sump pit, and out to daylight."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from geometry.layout.bodies import Bore, Point3
from geometry.layout.drain import DrainLayout
from geometry.materials.catalogue import PIPES
from geometry.materials.kinds import Pipe
from geometry.parts.drain import Sump
from geometry.parts.ground import Excavation
from geometry.parts.outlet import Daylight
from geometry.plan.outline import Point
from geometry.units import INCH

# The solid pipe reaches this far into the basin.
ENTRY_M = 1 * INCH


@dataclass(frozen=True, eq=False)
class LeadLayout:
    """A solid pipe from a tee, straight across.

    station: of the tee. tee: the drain's centre line on the plan; begin, end: ends of the solid
    pipe, plan distances from there. face: where it leaves the drain's wrap; face to back: in its
    sleeve through the footing, the same without one.
    """

    station: float
    pipe: Pipe
    sleeve: Pipe | None
    tee: Point
    along: Point
    invert: float
    fall: float
    begin: float
    end: float
    face: float
    back: float

    def at(self, distance: float) -> Point3:
        """Return the pipe's centre at a distance from the drain's centre line."""
        (x, y), (dx, dy) = self.tee, self.along
        level = self.invert - self.fall * distance + self.inner
        return x + dx * distance, y + dy * distance, level

    def bore(self, start: float, end: float, radius: float) -> Bore:
        """Return the round hole about the pipe's axis between two distances."""
        return Bore(self.at(start), self.at(end), radius)

    @property
    def outer(self) -> float:
        """Outer radius of the pipe."""
        return self.pipe.outside_diameter_m / 2

    @property
    def inner(self) -> float:
        """Inner radius of the pipe."""
        return self.pipe.inside_diameter_m / 2

    @property
    def stretch(self) -> float:
        """How much longer the pipe is than its plan, and taller a vertical cut of it than round."""
        return float(np.hypot(1, self.fall))

    @property
    def outside(self) -> Bore:
        """The pipe's own outside, tee leg included."""
        return self.bore(0.0, self.end, self.outer)

    @property
    def sleeve_bore(self) -> Bore | None:
        """The sleeve's outside; None without a sleeve."""
        if self.sleeve is None:
            return None
        return self.bore(self.face, self.back, self.sleeve.outside_diameter_m / 2)

    @property
    def end_invert(self) -> float:
        """Level of the invert at the pipe's end, as far as it is drawn."""
        return self.invert - self.fall * self.end


def pit_lead(sump: Sump, drain: DrainLayout) -> LeadLayout:
    """Return the pipe to the pit: through a sleeve in the footing, or straight from inside it."""
    pipe = PIPES[sump.pipe or drain.drain.pipe]
    tee, along, far = _toward(drain, drain.low, sump.at)
    end = far - sump.diameter / 2 + ENTRY_M
    stone = drain.drain.stone.width - drain.drain.offset
    face = stone if drain.inside else drain.drain.offset
    back = face if drain.inside else face + drain.area.footing.width
    sleeve = None if drain.inside else PIPES[sump.sleeve]
    begin = (drain.radius + face - drain.wrap_m) / 2
    invert = drain.outlet_invert
    return LeadLayout(
        drain.low, pipe, sleeve, tee, along, invert, sump.fall, begin, end, face, back
    )


def daylight_leads(drain: DrainLayout, dig: Excavation) -> list[LeadLayout]:
    """Return the pipes to daylight, each as far as the open hole beside the footing reaches.

    The rest lies in a trench of its own: see `geometry.water.daylight`.
    """
    outlets = drain.drain.daylight
    stations = drain.lows[len(drain.lows) - len(outlets) :] if outlets else ()
    return [_daylight(drain, o, s, dig) for o, s in zip(outlets, stations, strict=True)]


def _daylight(drain: DrainLayout, outlet: Daylight, station: float, dig: Excavation) -> LeadLayout:
    pipe = PIPES[outlet.pipe or drain.drain.pipe]
    tee, along, _ = _toward(drain, station, outlet.toward)
    face = drain.drain.stone.width - drain.drain.offset
    begin = (drain.radius + face - drain.wrap_m) / 2
    end = max(face, min(_hole_edge(drain, outlet.fall, pipe, dig), _to_bench(drain, outlet, pipe)))
    invert = drain.outlet_invert
    return LeadLayout(station, pipe, None, tee, along, invert, outlet.fall, begin, end, face, face)


def _hole_edge(drain: DrainLayout, fall: float, pipe: Pipe, dig: Excavation) -> float:
    """Distance at which the pipe's underside meets the side of the hole, sloped back as it is."""
    over = drain.outlet_invert - pipe.wall_m - drain.area.footing_bottom
    reach = dig.working_space - drain.drain.offset
    return (reach + dig.slope * over) / (1 + dig.slope * fall)


def _to_bench(drain: DrainLayout, outlet: Daylight, pipe: Pipe) -> float:
    """Distance at which the pipe's underside meets the bottom of the hole."""
    over = drain.outlet_invert - pipe.wall_m - drain.area.footing_bottom
    return over / outlet.fall if outlet.fall else float("inf")


def _toward(drain: DrainLayout, station: float, place: Point) -> tuple[Point, Point, float]:
    """Return a tee's place, the way from it to a place on the plan, and how far that is."""
    tee = drain.route.at(station)
    gap = np.subtract(place, tee)
    far = float(np.hypot(*gap))
    return tee, (float(gap[0] / far), float(gap[1] / far)), far


def lead_at(leads: Sequence[LeadLayout], station: float) -> LeadLayout | None:
    """Return the solid pipe that leaves the tee at a station."""
    return next((lead for lead in leads if lead.station == station), None)
