"""What an outlet's picture is made from, and how far it reaches in the job and on paper."""

from dataclasses import dataclass
from functools import cached_property

from geometry.formulas.broken_line import BrokenLine
from geometry.layout.drain import DrainLayout
from geometry.project import Datum
from geometry.units import FOOT, System
from geometry.water.daylight import DaylightRun
from viz.figures.profile.view import View

# Ground shown beyond the open end: a share of the run, and no less than this many metres.
_BEYOND, _LEAST_BEYOND_M = 0.12, 2.0
# Distance from station to station along the run, m, and how many of them there may be.
_STEPS: dict[System, float] = {"ft-in": 10 * FOOT, "metric": 3.0}
_MOST_STATIONS = 40


@dataclass(frozen=True)
class Stage:
    """The run beside its drain's footing. Distances from the pipe's centre at the low point, m.

    text: height of capitals, mm. compact: fewer labels. most: stations with figures.
    """

    run: DaylightRun
    drain: DrainLayout
    datum: Datum
    system: System
    view: View
    text: float
    compact: bool = False
    most: int = _MOST_STATIONS

    @property
    def face(self) -> float:
        """Distance of the footing's outer face: negative, for the house lies to the left."""
        return -self.drain.drain.offset

    @property
    def back(self) -> float:
        """Distance of the footing's inner face."""
        return self.face - self.drain.area.footing.width

    @property
    def wall_face(self) -> float:
        """Distance of the wall's outer face."""
        return self.face - self.drain.area.projection_out

    @property
    def right(self) -> float:
        """Distance up to which the ground is shown: all of it where the pipe stays in it."""
        run = self.run
        if run.end_at_m is None:
            return run.ground.end
        beyond = max(_LEAST_BEYOND_M, _BEYOND * run.reach_m)
        return min(max(run.ground.end, run.reach_m), run.reach_m + beyond)

    @cached_property
    def ground(self) -> BrokenLine:
        """The ground from the wall outward; between wall and drain it is taken to lie level."""
        run = self.run
        inside = [p for p in run.asked.ground if 0 < p[0] < self.right]
        first, last = run.ground.at(0.0), run.ground.at(self.right)
        return BrokenLine(((self.wall_face, first), (0.0, first), *inside, (self.right, last)))

    @cached_property
    def stations(self) -> tuple[float, ...]:
        """The distances that get figures: the drain, every step, the end."""
        step = _STEPS[self.system]
        while self.run.reach_m / step > self.most:
            step *= 2
        return tuple(self.run.stations(step))

    @property
    def span(self) -> tuple[float, float]:
        """Lowest and highest level of the picture, m."""
        return levels_of(self.run, self.drain, self.ground)

    def at(self, distance: float, level: float) -> tuple[float, float]:
        """Return a place of the job on paper, mm."""
        return self.view.x(distance), self.view.y(level)


def levels_of(run: DaylightRun, drain: DrainLayout, ground: BrokenLine) -> tuple[float, float]:
    """Return the lowest and the highest level to be shown, m."""
    under = run.end_invert_m - run.pipe.wall_m
    shown = [z for _, z in ground.points]
    low = min(under, drain.stone_bottom, drain.area.footing_bottom, *shown)
    return low, max(drain.area.tof, drain.stone_top, *shown)
