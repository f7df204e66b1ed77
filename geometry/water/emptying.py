"""How the house's drains empty: every outlet to daylight, and the pit beside it."""

from dataclasses import dataclass

from geometry.layout.lay import Layout
from geometry.layout.sump import SumpLayout
from geometry.units import System
from geometry.water.daylight import DaylightRun, daylight_runs
from geometry.water.feeding import share_of
from geometry.water.inflow import Inflow
from geometry.water.pit import PitStorm
from geometry.water.study import study


@dataclass(frozen=True, eq=False)
class Outlets:
    """What is known of two ways out; None for a way or a figure that is not given.

    coming: the water of the run's drain, or of the pit's where there is no run. share: how much of
    it comes to the run. name: the outlet's, where its drain has several, else empty.
    """

    pit: SumpLayout | None
    storm: PitStorm | None
    coming: Inflow | None
    run: DaylightRun | None
    system: System
    share: float = 1.0
    name: str = ""

    @property
    def peak_m3s(self) -> float | None:
        """The water known to come to the run at the storm's peak."""
        peak = self.coming.peak_m3s if self.coming else None
        return None if peak is None else peak * self.share

    @property
    def pit_peak_m3s(self) -> float | None:
        """The water known to come to the pit at the storm's peak."""
        return max(self.storm.series.inflows_m3s) if self.storm else None


def daylight_outlets(layout: Layout) -> tuple[Outlets, ...]:
    """Return the outlets to daylight of the drain in view, each beside the house's pit."""
    drain = layout.drain
    runs = daylight_runs(drain) if drain else ()
    if drain is None or not runs:
        return ()
    storm, coming = _storm(layout), study(layout).inflow
    system, lows = layout.design.project.units, drain.lows[-len(runs) :]
    names = ("",) if len(runs) == 1 else tuple(f" {n}" for n in range(1, len(runs) + 1))
    return tuple(
        Outlets(layout.sump, storm, coming, run, system, share_of(drain, low), name)
        for run, low, name in zip(runs, lows, names, strict=True)
    )


def pit_alone(layout: Layout) -> Outlets:
    """Return the house's pit beside an outlet to daylight that is not given."""
    storm, water = _storm(layout), study(layout)
    return Outlets(layout.sump, storm, water.inflow, None, layout.design.project.units)


def _storm(layout: Layout) -> PitStorm | None:
    """Return the pit over the storm, whichever drain is in view."""
    if layout.sump is None:
        return None
    view = next((view for view in layout.views() if view.lead), None)
    return study(view).pit if view else None
