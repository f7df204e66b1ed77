"""The outlet pipe to daylight: where it comes out, what covers it, or what is lacking for it.

The pipe runs straight with its fall from the drain's low point; the ground is straight between
the points given. Levels against the project's TOF, metres.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from math import ceil, hypot

from geometry.formulas import pipe_flow
from geometry.formulas.broken_line import BrokenLine, Stretch
from geometry.layout.drain import DrainLayout
from geometry.materials.catalogue import PIPES
from geometry.materials.kinds import Pipe
from geometry.parts.outlet import Daylight
from geometry.rules.outlets import SizeFall, least_fall
from geometry.units import FOOT

STICKS_M = {"ft-in": 10 * FOOT, "metric": 3.0}
"""Lengths of a stick of pipe by how a house is measured: common practice, no source."""


@dataclass(frozen=True)
class Lacking:
    """What a run that stays in the ground lacks.

    at_last_m: ground and height of the open end over the invert at the last point of the ground.
    raise_m: how much higher the drain would have to lie to come out at `raised_end_m`, the
    profile's best place. steepest: the steepest fall that would come out, at `flat_end_m`; None
    where not even a level pipe does. longer_m: how much farther the run would have to go if the
    ground fell on as between its last two points (`ground_fall`); None where it gains nothing.
    """

    at_last_m: float
    raise_m: float
    raised_end_m: float
    steepest: float | None
    flat_end_m: float | None
    longer_m: float | None
    ground_fall: float


@dataclass(frozen=True)
class DaylightRun:
    """The solid pipe from an invert at the drain's low point toward its open end."""

    start_m: float
    pipe: Pipe
    asked: Daylight

    @cached_property
    def ground(self) -> BrokenLine:
        """The ground's level over the distance from the drain."""
        return BrokenLine(self.asked.ground)

    def invert(self, distance_m: float) -> float:
        """Return the invert's level at a distance from the drain's low point."""
        return self.start_m - self.asked.fall * distance_m

    @property
    def crown_over_invert_m(self) -> float:
        """Height of the pipe's top, outside, over its invert."""
        return self.pipe.outside_diameter_m - self.pipe.wall_m

    @property
    def trench_under_invert_m(self) -> float:
        """Depth of the trench's bottom under the invert."""
        return self.pipe.wall_m + self.asked.bedding

    @cached_property
    def end_at_m(self) -> float | None:
        """Distance at which the open end stands free over the ground; None: not in the profile."""
        over = self.ground.less_line(self.start_m, self.asked.fall).negative()
        return over.first_at_least(self.asked.above_ground)

    @property
    def reach_m(self) -> float:
        """Distance to the open end, or to the end of the ground's profile."""
        return self.ground.end if self.end_at_m is None else self.end_at_m

    @property
    def end_invert_m(self) -> float:
        """Level of the invert at the open end, or at the end of the ground's profile."""
        return self.invert(self.reach_m)

    @property
    def at_once(self) -> bool:
        """Tell whether the drain's low point itself lies free over the ground."""
        return self.end_at_m == 0.0

    @cached_property
    def covers(self) -> BrokenLine | None:
        """Ground over the pipe's top along the run; None where it has no length."""
        if self.reach_m <= 0:
            return None
        top = self.start_m + self.crown_over_invert_m
        return self.ground.less_line(top, self.asked.fall).between(0.0, self.reach_m)

    @cached_property
    def thin(self) -> tuple[Stretch, ...]:
        """Stretches with less than the wanted cover; a pipe that comes out ends in one."""
        return self.covers.below(self.asked.cover) if self.covers else ()

    @property
    def thin_end(self) -> Stretch | None:
        """The stretch before the open end on which the cover runs out; None if it stays covered."""
        last = self.thin[-1] if self.thin else None
        return last if last and self.end_at_m is not None and last.end == self.reach_m else None

    @property
    def thin_before(self) -> tuple[Stretch, ...]:
        """Stretches with less than the wanted cover before the one in which the pipe comes out."""
        return self.thin[:-1] if self.thin_end else self.thin

    @cached_property
    def least_cover(self) -> tuple[float, float] | None:
        """Place and size of the least cover ahead of the last stretch; None if that is all."""
        stop = self.thin_end.start if self.thin_end else self.reach_m
        return self.covers.between(0.0, stop).least() if self.covers and stop > 0 else None

    @property
    def length_m(self) -> float:
        """Length of pipe along its fall."""
        return self.reach_m * hypot(1.0, self.asked.fall)

    def sticks(self, stick_m: float) -> int:
        """Return the number of sticks of pipe of a length, m; the last one is cut."""
        return ceil(self.length_m / stick_m - 1e-9)

    @property
    def trench_m3(self) -> float:
        """Volume from the ground down to the trench's bottom, upright sides."""
        if self.reach_m <= 0:
            return 0.0
        bottom = self.start_m - self.trench_under_invert_m
        deep = self.ground.less_line(bottom, self.asked.fall).between(0.0, self.reach_m)
        return deep.area_above() * self.asked.trench_width

    @property
    def deepest_trench_m(self) -> float:
        """Greatest depth of the trench, zero where it comes out at once."""
        points = self.ground.between(0.0, self.reach_m).points if self.reach_m > 0 else ()
        return max(
            (z - self.invert(x) + self.trench_under_invert_m for x, z in points), default=0.0
        )

    @property
    def capacity_m3s(self) -> float | None:
        """Flow of the full pipe at its fall; None laid level, where Manning says nothing."""
        if self.asked.fall == 0:
            return None
        bore = self.pipe.inside_diameter_m
        return pipe_flow.capacity(bore, self.asked.fall, self.pipe.manning_n)

    @property
    def least_fall(self) -> SizeFall:
        """Return the least fall asked of a pipe of this size."""
        return least_fall(self.pipe.inside_diameter_m)

    @property
    def rises_beyond_m(self) -> float:
        """How far the known ground beyond the open end rises over the ground there, else zero."""
        beyond = [z for x, z in self.asked.ground if x > self.reach_m]
        return max([0.0, *(z - self.ground.at(self.reach_m) for z in beyond)])

    @property
    def water_over_end_m(self) -> float | None:
        """How far the highest water stands over the invert of the open end; None: not given."""
        high = self.asked.high_water
        return None if high is None else high - self.end_invert_m

    @property
    def water_over_start_m(self) -> float | None:
        """How far the highest water at the end stands over the drain's low point, None: unknown."""
        return None if self.asked.high_water is None else self.asked.high_water - self.start_m

    @cached_property
    def lacking(self) -> Lacking | None:
        """What is lacking for it to come out; None where it does."""
        if self.end_at_m is not None:
            return None
        above, fall = self.asked.above_ground, self.asked.fall
        points = self.asked.ground[1:]
        short = [(z + above - self.invert(x), x) for x, z in points]
        falls = [((self.start_m - above - z) / x, x) for x, z in points]
        steepest, at = max(falls)
        (x, a), (y, b) = self.asked.ground[-2:]
        ground_fall = (a - b) / (y - x)
        gains = ground_fall - fall
        raise_m, raised_end = min(short)
        last = short[-1][0]
        out = steepest >= 0
        return Lacking(
            at_last_m=last,
            raise_m=raise_m,
            raised_end_m=raised_end,
            steepest=steepest if out else None,
            flat_end_m=at if out else None,
            longer_m=last / gains if gains > 1e-9 else None,
            ground_fall=ground_fall,
        )

    def stations(self, step_m: float) -> Iterator[float]:
        """Yield the distances to set out: the start, every step, the end."""
        number, far = 0, 0.0
        # A step that all but meets the end is left to it.
        while far < self.reach_m - step_m / 10 or number == 0:
            yield far
            number += 1
            far = number * step_m
        if self.reach_m > 0:
            yield self.reach_m


def daylight_runs(drain: DrainLayout) -> tuple[DaylightRun, ...]:
    """Return a drain's outlets to daylight in the order of the file; none where it has none."""
    return tuple(
        DaylightRun(drain.outlet_invert, PIPES[asked.pipe or drain.drain.pipe], asked)
        for asked in drain.drain.daylight
    )
