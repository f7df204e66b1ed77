"""The perimeter drain laid out: route, inverts, fittings, stone and wrap, cleanout risers."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.bodies import Prism, without
from geometry.layout.falls import Falls, open_falls, round_falls
from geometry.layout.fittings import (
    END_GAP_M,
    FITTING_REACH_M,
    SAME_STATION_M,
    Fitting,
    Straight,
    corner_station,
    turn_at,
)
from geometry.materials.kinds import Pipe
from geometry.parts.drain import Drain
from geometry.plan.outline import EMPTY, both, minus
from geometry.plan.route import Route, corners_of, parallel
from geometry.units import INCH


@dataclass(frozen=True, eq=False)
class DrainLayout:
    """A drain beside one area's footing; levels against the project's TOF, metres.

    key: leads its parts' ids. base: the footing's face it runs along. lows: stations of its
    outlets, the main one first. tees: those with a solid pipe of their own. given_high: station of
    the high point, if one was asked for. beside: plan of what else ends its trench.
    ceiling: level its wrap's lap must stay under, inside a house.
    """

    key: str
    drain: Drain
    area: AreaLayout
    pipe: Pipe
    wrap_m: float
    base: Polygon
    corners: tuple[int, ...]
    route: Route
    lows: tuple[float, ...]
    given_high: float | None
    outlet_invert: float
    tees: tuple[float, ...]
    ceiling: float
    beside: BaseGeometry = EMPTY

    @property
    def inside(self) -> bool:
        """Whether it runs along the footing's inner face, under the floor."""
        return self.drain.line == "inside"

    @property
    def title(self) -> str:
        """Words that tell it from the house's other drains."""
        return self.drain.name or f"{self.drain.line} drain, {self.area.name}"

    @property
    def radius(self) -> float:
        """Outer radius of the pipe."""
        return self.pipe.outside_diameter_m / 2

    @property
    def bore(self) -> float:
        """Inner radius of the pipe."""
        return self.pipe.inside_diameter_m / 2

    @property
    def low(self) -> float:
        """Station of the main outlet."""
        return self.lows[0]

    @cached_property
    def falls(self) -> Falls:
        """The pipe's fall from its high points to its low points."""
        length, fall = self.route.length, self.drain.fall
        if self.route.closed:
            return round_falls(self.lows, length, fall, self.given_high)
        return open_falls(self.lows, length, fall)

    @cached_property
    def high(self) -> float:
        """Station of the high point; the one asked for on an open run, else the highest."""
        if self.given_high is not None and not self.route.closed:
            return self.given_high
        return self.falls.top[0]

    def branches(self) -> tuple[float, float]:
        """Lengths from the main outlet up each way to the next high point or end, metres."""
        return self.falls.branches(self.low)

    @property
    def longest(self) -> float:
        """Longest way water runs in the pipe from a high point to an outlet, metres."""
        return max(length for low in self.lows for length in self.falls.branches(low))

    @property
    def rise(self) -> float:
        """Height from the outlet to the highest point: the stated fall along the longest way."""
        return self.falls.top[1]

    def invert(self, station: float) -> float:
        """Level of the inside bottom of the pipe at a distance along the route."""
        return self.outlet_invert + self.falls.rise(station)

    def centre(self, station: float) -> float:
        """Level of the pipe's centre at a distance along the route."""
        return self.invert(station) + self.bore

    @property
    def high_invert(self) -> float:
        """Level of the invert at the high point."""
        return self.outlet_invert + self.rise

    @property
    def stone_bottom(self) -> float:
        """Level of the underside of the wrap: flat, the least bedding under the low point."""
        return self.outlet_invert - self.pipe.wall_m - self.drain.stone.bedding - self.wrap_m

    @property
    def crown(self) -> float:
        """Level of the top of the pipe at its high point."""
        return self.high_invert + self.bore + self.radius

    @property
    def stone_top(self) -> float:
        """Level of the top of the wrap without its lap: the least cover over pipe and footing.

        Inside, over the pipe only, and no higher than the floor's base leaves room for.
        """
        cover = self.drain.stone.cover + self.wrap_m
        if self.inside:
            return min(self.crown + cover, self.ceiling - self.wrap_m)
        return max(self.crown, self.area.tof) + cover

    def line_at(self, distance: float) -> NDArray[np.float64]:
        """Return (n, 2) corners of the line at a distance from the footing's face."""
        return parallel(self.base, -distance if self.inside else distance)

    def band(self, near: float, far: float) -> BaseGeometry:
        """Return the strip of plan between two distances from the footing's face."""
        inner, outer = self.line_at(near), self.line_at(far)
        if self.inside:
            inner, outer = outer, inner
        if self.route.closed:
            return Polygon(outer).difference(Polygon(inner))
        run = list(self.corners)
        return Polygon(np.vstack((inner[run], outer[run][::-1])))

    @property
    def shelf(self) -> float:
        """How far the footing stands out under the wrapped stone; inside, the stone ends at it."""
        return 0.0 if self.inside else self.area.projection_out

    @cached_property
    def low_space(self) -> BaseGeometry:
        """Plan of the trench beside the footing, wrap included."""
        return minus(self.band(0.0, self.drain.stone.width), [self.beside])

    @cached_property
    def high_space(self) -> BaseGeometry:
        """Plan of the wrapped stone above the footing: out from the wall's face."""
        width, standing = self.drain.stone.width, [self.area.outline, *self.area.earlier]
        if self.inside:
            return self.low_space
        if self.route.closed:
            return minus(Polygon(self.line_at(width)), standing)
        return minus(self.band(-self.shelf, width), standing)

    @property
    def lap_top(self) -> float:
        """Level of the highest of the wrap: its lap over the stone."""
        return self.stone_top + self.wrap_m

    @cached_property
    def band_plan(self) -> BaseGeometry:
        """Plan of all its stone, low and high."""
        return self.low_space.union(self.high_space)

    @cached_property
    def lap(self) -> BaseGeometry:
        """Plan of the wrap's second thickness on top."""
        width, overlap = self.drain.stone.width, self.drain.wrap.overlap
        start = max(-self.shelf, (width - overlap) / 2)
        end = min(width, start + overlap)
        return both(self.band(start, end), self.high_space) if end > start else EMPTY

    def space(self, standing: Sequence[Prism] = ()) -> tuple[Prism, ...]:
        """Return all that stone and wrap fill, pipe included; `standing` as in `stone_bodies`."""
        tof = min(max(self.area.tof, self.stone_bottom), self.stone_top)
        whole = (
            Prism(self.low_space, self.stone_bottom, tof),
            Prism(self.high_space, tof, self.stone_top),
            Prism(self.lap, self.stone_top, self.lap_top),
        )
        return without(whole, standing)

    @cached_property
    def fittings(self) -> tuple[Fitting, ...]:
        """Bends at the corners, the tee at the outlet, caps at open ends, in order of station."""
        found = [self._bend(i) for i in self._bends()]
        found += [Fitting("tee", station, FITTING_REACH_M) for station in self.tees]
        return tuple(sorted(found, key=lambda f: f.station))

    def bend_at(self, station: float) -> Fitting | None:
        """Return the bend at a station, if one is there."""
        bends = (f for f in self.fittings if f.kind == "bend")
        return next((f for f in bends if abs(f.station - station) < SAME_STATION_M), None)

    def outline_corner(self, number: int) -> int:
        """Return the outline's corner (from 1, in the file's order) nearest to a route corner."""
        gaps = np.linalg.norm(
            np.subtract(self.area.area.corners, self.route.points[number]), axis=1
        )
        return int(np.argmin(gaps)) + 1

    def _bends(self) -> range:
        return (
            range(len(self.route.points))
            if self.route.closed
            else range(1, len(self.route.points) - 1)
        )

    def _bend(self, number: int) -> Fitting:
        turn = self.turn(number)
        reach = max(FITTING_REACH_M, self.radius * np.tan(turn / 2) + 2 * INCH)
        return Fitting("bend", float(self.route.stations[number]), float(reach), number)

    def turn(self, number: int) -> float:
        """Return the bend's angle at a route corner, radians."""
        return turn_at(np.asarray(self.route.points), number)

    @cached_property
    def gaps(self) -> tuple[tuple[float, float], ...]:
        """Stations between which perforated pipe lies, from fitting to fitting."""
        ends = [(f.station - f.reach, f.station + f.reach) for f in self.fittings]
        length = self.route.length
        if not self.route.closed:
            first, last = self._end_gap(0), self._end_gap(-1)
            stops = [first, *(s for end in ends for s in end), length - last]
            return tuple((a, b) for a, b in zip(stops[::2], stops[1::2], strict=True))
        if not ends:
            return ((0.0, length),)
        ahead = [*ends[1:], (ends[0][0] + length, 0.0)]
        return tuple((a[1], b[0]) for a, b in zip(ends, ahead, strict=True))

    def _end_gap(self, end: int) -> float:
        """How far short of an open end the pipe stops: the stone there ends along the mitre."""
        turn = turn_at(corners_of(self.base), self.corners[end] % len(corners_of(self.base)))
        return END_GAP_M + self.radius * float(np.tan(turn / 2))

    @cached_property
    def sticks(self) -> tuple[tuple[Straight, ...], ...]:
        """Perforated pipe between fittings, split where the fall turns at the high point."""
        return tuple(self._split(a, b) for a, b in self.gaps)

    def _split(self, start: float, end: float) -> tuple[Straight, ...]:
        turns = self.falls.turns(start, end)
        stops = [start, *(t for t in turns if start + 0.01 < t < end - 0.01), end]
        return tuple(self._straight(a, b) for a, b in pairwise(stops))

    def _straight(self, start: float, end: float) -> Straight:
        spacing = self.drain.holes.spacing
        count = int((end - start) / spacing + 1e-9) if self.drain.holes.rows else 0
        return Straight(start, end, (end - start - count * spacing) / 2, count)

    @property
    def hole_count(self) -> int:
        """Number of drilled holes."""
        return sum(s.holes for stick in self.sticks for s in stick) * len(self.drain.holes.rows)

    @property
    def run_length(self) -> float:
        """Length of pipe and fittings along the fall, metres."""
        return self.falls.slant

    @property
    def capped(self) -> tuple[bool, bool]:
        """Whether each end of an open run is closed; it stays open where it empties into stone."""
        if self.route.closed:
            return False, False
        empties = self.drain.outlet == "lower stone"
        ends = (0.0, self.route.length)
        open_ends = [empties and abs(self.low - end) < SAME_STATION_M for end in ends]
        return not open_ends[0], not open_ends[1]

    def corner_station(self, corner: int) -> float:
        """Return the station nearest to an outline corner (numbered from 1)."""
        return corner_station(self.route, self.area, corner)
