"""The perimeter drain laid out: route, inverts, fittings, stone and wrap, cleanout risers."""

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.bodies import Prism, merged
from geometry.materials.kinds import Pipe
from geometry.parts.drain import Drain
from geometry.plan.outline import EMPTY, minus
from geometry.plan.route import Route, corners_of, parallel
from geometry.units import INCH

# A fitting reaches this far along each leg, or more where a sharp bend needs it.
FITTING_REACH_M = 6 * INCH
# The pipe stops this far short of the stone at an open end.
END_GAP_M = 4 * INCH
CAP_M = 0.5 * INCH
SAME_STATION_M = 1e-6
# Every pipe is drawn and cut as a regular polygon of this many sides.
PIPE_SIDES = 24


@dataclass(frozen=True)
class Fitting:
    """A place along the pipe that is not drilled: a bend, a tee or a capped end."""

    kind: str
    station: float
    reach: float
    corner: int | None = None


@dataclass(frozen=True)
class Straight:
    """A length of perforated pipe between fittings, falling evenly.

    start, end: stations. holes: rings of holes; plain: undrilled length at its start.
    """

    start: float
    end: float
    plain: float
    holes: int


@dataclass(frozen=True, eq=False)
class DrainLayout:
    """The drain beside one area's footing; levels against the project's TOF, metres.

    beside: plan of other areas' footings that stand in the trench.
    """

    drain: Drain
    area: AreaLayout
    pipe: Pipe
    wrap_m: float
    base: Polygon
    corners: tuple[int, ...]
    route: Route
    low: float
    high: float
    outlet_invert: float
    has_tee: bool
    beside: BaseGeometry = EMPTY

    @property
    def radius(self) -> float:
        """Outer radius of the pipe."""
        return self.pipe.outside_diameter_m / 2

    @property
    def bore(self) -> float:
        """Inner radius of the pipe."""
        return self.pipe.inside_diameter_m / 2

    def branches(self) -> tuple[float, float]:
        """Lengths from the low point up each way to the high ends, metres."""
        if self.route.closed:
            ahead = (self.high - self.low) % self.route.length
            return ahead, self.route.length - ahead
        return self.route.length - self.low, self.low

    @property
    def rise(self) -> float:
        """Height from the low to the high point: the stated fall along the longer way."""
        return self.drain.fall * max(self.branches())

    def invert(self, station: float) -> float:
        """Level of the inside bottom of the pipe at a distance along the route."""
        ahead, behind = self.branches()
        if self.route.closed:
            run = (station - self.low) % self.route.length
            share = run / ahead if run <= ahead else (self.route.length - run) / behind
            return self.outlet_invert + self.rise * share
        return self.outlet_invert + self.drain.fall * abs(station - self.low)

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
    def stone_top(self) -> float:
        """Level of the top of the wrap without its lap: the least cover over pipe and footing."""
        crown = self.high_invert + self.bore + self.radius
        return max(crown, self.area.tof) + self.drain.stone.cover + self.wrap_m

    def band(self, near: float, far: float) -> BaseGeometry:
        """Return the strip of plan between two distances outward of the footing's face."""
        inner, outer = parallel(self.base, near), parallel(self.base, far)
        if self.route.closed:
            return Polygon(outer).difference(Polygon(inner))
        run = list(self.corners)
        return Polygon(np.vstack((inner[run], outer[run][::-1])))

    @cached_property
    def low_space(self) -> BaseGeometry:
        """Plan of the trench beside the footing, wrap included."""
        return minus(self.band(0.0, self.drain.stone.width), [self.beside])

    @cached_property
    def high_space(self) -> BaseGeometry:
        """Plan of the wrapped stone above the footing: out from the wall's face."""
        if self.route.closed:
            outer = Polygon(parallel(self.base, self.drain.stone.width))
            return minus(outer, [self.area.outline])
        over = self.band(-self.area.projection_out, self.drain.stone.width)
        return minus(over, [self.area.outline])

    @cached_property
    def lap(self) -> BaseGeometry:
        """Plan of the wrap's second thickness on top."""
        width, overlap = self.drain.stone.width, self.drain.wrap.overlap
        start = max(-self.area.projection_out, (width - overlap) / 2)
        end = min(width, start + overlap)
        return self.band(start, end).intersection(self.high_space) if end > start else EMPTY

    def space(self, steps: BaseGeometry) -> tuple[Prism, ...]:
        """Return all that stone and wrap fill, pipe included; `steps` as in `stone_bodies`."""
        tof = min(max(self.area.tof, self.stone_bottom), self.stone_top)
        return merged(
            (
                Prism(self.low_space, self.stone_bottom, tof),
                Prism(minus(self.high_space, [steps]), tof, self.stone_top),
                Prism(minus(self.lap, [steps]), self.stone_top, self.stone_top + self.wrap_m),
            )
        )

    @cached_property
    def fittings(self) -> tuple[Fitting, ...]:
        """Bends at the corners, the tee at the outlet, caps at open ends, in order of station."""
        found = [self._bend(i) for i in self._bends()]
        if self.has_tee:
            found.append(Fitting("tee", self.low, FITTING_REACH_M))
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
        return _turn(np.asarray(self.route.points), number)

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
        turn = _turn(corners_of(self.base), self.corners[end] % len(corners_of(self.base)))
        return END_GAP_M + self.radius * float(np.tan(turn / 2))

    @cached_property
    def sticks(self) -> tuple[tuple[Straight, ...], ...]:
        """Perforated pipe between fittings, split where the fall turns at the high point."""
        return tuple(self._split(a, b) for a, b in self.gaps)

    def _split(self, start: float, end: float) -> tuple[Straight, ...]:
        length = self.route.length
        turns = [self.high + k * length for k in (0, 1)] if self.route.closed else [self.low]
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
        if self.route.closed:
            return sum(float(np.hypot(b, self.rise)) for b in self.branches())
        return self.route.length * float(np.hypot(1, self.drain.fall))

    def corner_station(self, corner: int) -> float:
        """Return the station nearest to an outline corner (numbered from 1)."""
        return corner_station(self.route, self.area, corner)


def _turn(points: NDArray[np.float64], number: int) -> float:
    """Return how far a closed outline turns at one of its corners, radians."""
    before = points[number] - points[number - 1]
    after = points[(number + 1) % len(points)] - points[number]
    cosine = before @ after / (np.linalg.norm(before) * np.linalg.norm(after))
    return float(np.arccos(np.clip(cosine, -1, 1)))


def corner_station(route: Route, area: AreaLayout, corner: int) -> float:
    """Return the station of the route's corner nearest to an outline corner (numbered from 1)."""
    gaps = np.linalg.norm(np.subtract(route.points, area.area.corners[corner - 1]), axis=1)
    return float(route.stations[int(np.argmin(gaps))])
