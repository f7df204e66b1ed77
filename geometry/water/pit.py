"""The pit over the storm: with its pump, and with the pump dead from the storm's peak on.

After the storm a dry day follows in which the ground's water alone comes.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from geometry.formulas.march import March, Samples
from geometry.formulas.storage import Storage
from geometry.formulas.storms import DAY, HOUR, Storm
from geometry.formulas.sump import march
from geometry.formulas.wet_well import most_starts_per_hour
from geometry.layout.lay import Layout
from geometry.layout.sump import SumpLayout
from geometry.water.feeding import share_of
from geometry.water.heights import slab_underside
from geometry.water.inflow import Inflow
from geometry.water.pumping import marching_pump, middle_flow
from geometry.water.store import storage


@dataclass(frozen=True)
class Series:
    """Edges of the blocks from 0, s, one more than inflows, m3/s."""

    times_s: tuple[float, ...]
    inflows_m3s: tuple[float, ...]

    @cached_property
    def peak_s(self) -> float:
        """Begin of the first block with the most inflow."""
        return self.times_s[int(np.argmax(self.inflows_m3s))]


@dataclass(frozen=True)
class Mark:
    """A level that matters when water rises: its name and level against the project's TOF, m."""

    name: str
    level_m: float


@dataclass(frozen=True)
class Reached:
    """Seconds from the pump's death until the water stands at a mark; None: not in the time."""

    mark: Mark
    after_s: float | None


@dataclass(frozen=True, eq=False)
class PitStorm:
    """The pit over the storm; levels against the project's TOF.

    pumped: with the pump; None where it has none or its flow is not given. dead: without it from
    the series' peak on; its own time 0 is `dead_from_s` of the series. reached: the marks from
    the lowest up.
    """

    pit: SumpLayout
    store: Storage
    storm: Storm | None
    series: Series
    pumped: March | None
    dead: March
    dead_from_s: float
    reached: tuple[Reached, ...]

    @property
    def most_starts(self) -> int | None:
        """Most starts of the pump in any hour of the storm."""
        return self.pumped.most_starts_in(HOUR) if self.pumped else None

    @property
    def wet_m3(self) -> float | None:
        """Water held between the pump's levels."""
        on, off = self.pit.pump_on, self.pit.pump_off
        return None if on is None or off is None else self.store.volume(on) - self.store.volume(off)

    @property
    def worst_starts(self) -> float | None:
        """Starts an hour at the worst steady inflow, half the pump's flow."""
        flow, wet = middle_flow(self.pit), self.wet_m3
        return most_starts_per_hour(wet, flow) if flow and wet else None

    @property
    def first_on_floor_s(self) -> float | None:
        """Seconds until water first stands at floor foam, slab or floor; None: not in the time."""
        times = [r.after_s for r in self.reached if r.mark.name in ON_FLOOR]
        return min((t for t in times if t is not None), default=None)

    def sampled(self, step_s: float = 60.0) -> tuple[Samples | None, Samples]:
        """Return even samples for drawing: with the pump, and with it dead from the peak on."""
        return self.pumped.sampled(step_s) if self.pumped else None, self.dead.sampled(step_s)


INVERT, FOAM, SLAB, FLOOR = "drain invert", "foam bottom", "slab underside", "finished floor"
TOF = "top of footing"
ON_FLOOR = (FOAM, SLAB, FLOOR)


def pit_storm(layout: Layout, coming: Inflow | None) -> PitStorm | None:
    """Return the pit's march; None without a drain that leads to a pit, or no inflow known."""
    pit, drain = layout.sump, layout.drain
    if pit is None or drain is None or layout.lead is None or coming is None or not coming.known:
        return None
    series = series_of(coming, share_of(drain, layout.lead.station))
    store, fails = storage(layout, pit), series.peak_s
    pump, dying = marching_pump(pit), marching_pump(pit, fails)
    start = pit.pump_off if pump and pit.pump_off is not None else _start(pit)
    pumped = march(store, pump, series.times_s, series.inflows_m3s, start) if pump else None
    # A pump that cannot be marched leaves open how the water stood at the peak: begin there.
    begins = 0.0 if dying else fails
    rest = _from(series, begins)
    dead = march(store, dying, rest.times_s, rest.inflows_m3s, start)
    reached = tuple(Reached(m, _after(dead, m.level_m, fails - begins)) for m in marks(layout, pit))
    return PitStorm(pit, store, coming.storm, series, pumped, dead, begins, reached)


def series_of(coming: Inflow, share: float = 1.0) -> Series:
    """Return the storm's inflow by its blocks, and a day of the ground's water after it.

    share: how much of it comes to the pit, where the drain has other outlets as well.
    """
    steady = (coming.ground_m3s or 0.0) * share
    if coming.storm is None:
        return Series((0.0, DAY), (steady,))
    surface = coming.surface_m2 * share
    flows = coming.storm.intensities() * surface + steady
    times = coming.storm.times_s
    return Series((*times, times[-1] + DAY), (*flows.tolist(), steady))


def marks(layout: Layout, pit: SumpLayout) -> tuple[Mark, ...]:
    """Return the levels that matter in the pit's area, from the lowest up."""
    area, drain = pit.area, layout.drain
    foams = [n for n, layer in enumerate(area.floor.layers) if layer.role == "insulation"]
    named = {
        INVERT: drain.outlet_invert if drain and drain.area is area else None,
        FOAM: area.stack.levels[foams[0]] if foams else None,
        SLAB: slab_underside(area),
        TOF: area.tof,
        FLOOR: area.finished_floor,
    }
    found = [Mark(name, level) for name, level in named.items() if level is not None]
    return tuple(sorted(found, key=lambda mark: mark.level_m))


def _start(pit: SumpLayout) -> float:
    """Return the water's level at the start where no pump can be marched: worst before a pump."""
    return pit.floor if pit.pump_on is None else pit.pump_on


def _from(series: Series, start_s: float) -> Series:
    """Return the series from a time on, its clock set to 0."""
    first = series.times_s.index(start_s)
    times = tuple(t - start_s for t in series.times_s[first:])
    return Series(times, series.inflows_m3s[first:])


def _after(dead: March, level_m: float, fails_at_s: float) -> float | None:
    """Return the seconds from the pump's death to a level; a level below the pit is passed."""
    store = dead.storage
    if level_m > store.spill_m:
        return None
    reached = dead.first_passed(max(level_m, store.bottom_m), fails_at_s)
    return None if reached is None else reached - fails_at_s
