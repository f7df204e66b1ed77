"""The water: a day at one second, a storm's blocks beside scipy's solver, a plain loop beside both.

The peers march the same balance of the same pit: scipy's `solve_ivp` from block to block with the
float's switch and the rim as events, and a loop of even steps.
"""

from collections.abc import Callable
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from scipy.integrate import solve_ivp

from geometry.designfile import read_design
from geometry.formulas.storage import Storage
from geometry.formulas.storms import scs_storm
from geometry.formulas.sump import Pump, march
from geometry.layout.lay import lay_out
from geometry.water.inflow import inflow
from geometry.water.pumping import marching_pump
from geometry.water.store import storage
from geometry.water.study import study
from tests.bench.row import Beside, Row
from tests.bench.suites import EXAMPLE
from tests.bench.timing import beside, timed, told

DAY_S = 86400
RAIN_M = 0.1
Floats = NDArray[np.float64]


class Case(NamedTuple):
    """One pit in one storm: edges of the blocks, s, and the inflow of each, m3/s."""

    store: Storage
    pump: Pump
    times: Floats
    flows: Floats


class Told(NamedTuple):
    """What came of it: m3 pumped, starts of the pump."""

    pumped: float
    starts: int


def rows(quick: bool) -> list[Row | Beside]:
    """Return all lines."""
    repeats = 5 if quick else 15
    layout = lay_out(read_design(EXAMPLE.read_text(encoding="utf-8")))
    pit, water = layout.sump, inflow(layout)
    assert pit is not None
    assert water is not None
    pump, store = marching_pump(pit), storage(layout, pit)
    assert pump is not None
    steady, surface = water.ground_m3s or 0.0, water.surface_m2

    def day(step: float, ripple: float) -> Case:
        storm = scs_storm("II", RAIN_M).in_steps(step)
        shake = 1 + ripple * np.sin(np.arange(round(DAY_S / step)))
        rain = np.asarray(storm.intensities())
        return Case(store, pump, np.asarray(storm.times_s), rain * shake * surface + steady)

    def sampled() -> None:
        """Another inflow every second (so none are joined), levels read off every second."""
        case = day(1.0, 0.1)
        marched = march(*case, store.bottom_m)
        assert len(marched.sampled(1.0).levels_m) == DAY_S + 1

    def whole() -> None:
        study.cache_clear()
        study(layout)

    return [
        told("24 h of rain at 1 s, marched and sampled at 1 s", timed(sampled, repeats), 200),
        told("all of an example's water, its storm by blocks", timed(whole, repeats)),
        *_beside("24 h in blocks of 6 min", day(360.0, 0.0), {"scipy, solve_ivp": solved}, repeats),
        *_beside("24 h in blocks of 1 s", day(1.0, 0.1),
                 {"loop of 1 s steps": stepped, "loop of 0.1 s steps": finer}, repeats),
    ]  # fmt: skip


def _beside(
    what: str, case: Case, peers: dict[str, Callable[[Case], Told]], repeats: int
) -> list[Beside]:
    marched = march(*case, case.store.bottom_m)
    own = Told(marched.pumped_m3, len(marched.starts_s))
    found = {
        name: (lambda work=work: work(case), _result(own, work(case)))
        for name, work in peers.items()
    }
    return beside(what, lambda: march(*case, case.store.bottom_m), found, repeats)


def _result(own: Told, theirs: Told) -> str:
    off = abs(theirs.pumped / own.pumped - 1)
    return f"water pumped differs by {off:.0e}, {theirs.starts:,} starts for {own.starts:,}"


def flow_at(pump: Pump, level: float) -> float:
    """Return what a working pump throws at a level, m3/s."""
    return pump.flows_m3s[int(np.searchsorted(pump.bands_m, level, side="right"))]


def solved(case: Case) -> Told:
    """March by scipy's solver: a new start at every block's edge and every switch."""
    on, off = case.store.volume(case.pump.on_m), case.store.volume(case.pump.off_m)
    at, state, running, starts = 0.0, [0.0, 0.0], False, 0
    for end, coming in zip(case.times[1:].tolist(), case.flows.tolist(), strict=True):
        while at < end:
            mark = off if running else on
            at, state, switched = _until(case, (at, end), state, coming, running, mark)
            if switched:
                running, state = not running, [mark, state[1]]
                starts += running
    return Told(state[1], starts)


def _until(
    case: Case, span: tuple[float, float], state: list[float], coming: float, running: bool,
    mark: float,
) -> tuple[float, list[float], bool]:  # fmt: skip
    """Go on to a block's end, or to where the water held passes the float's mark.

    state: m3 held and pumped so far. Return the time, the state, whether the mark was met.
    """
    full = case.store.full_m3

    def rate(_: float, y: Floats) -> tuple[float, float]:
        thrown = flow_at(case.pump, case.store.level(y[0])) if running else 0.0
        return (coming - thrown if y[0] < full or thrown > coming else 0.0, thrown)

    def switch(_: float, y: Floats) -> float:
        return y[0] - mark

    switch.terminal = True  # type: ignore[attr-defined]
    switch.direction = -1 if running else 1  # type: ignore[attr-defined]
    found = solve_ivp(rate, span, state, events=switch, rtol=1e-8, atol=1e-10)
    return float(found.t[-1]), found.y[:, -1].tolist(), found.status == 1


def stepped(case: Case, parts: int = 1) -> Told:
    """March in even steps, so many to a block, the float looked at before each."""
    store, pump = case.store, case.pump
    on, off, full = store.volume(pump.on_m), store.volume(pump.off_m), store.full_m3
    edges = [store.volume(level) for level in pump.bands_m]
    held, running, pumped, starts = 0.0, False, 0.0, 0
    spans, flows = np.diff(case.times) / parts, case.flows
    for span, coming in zip(spans.tolist(), flows.tolist(), strict=True):
        for _ in range(parts):
            if running and held <= off:
                running = False
            elif not running and held >= on:
                running, starts = True, starts + 1
            thrown = pump.flows_m3s[sum(edge <= held for edge in edges)] if running else 0.0
            held = min(full, max(0.0, held + (coming - thrown) * span))
            pumped += thrown * span
    return Told(pumped, starts)


def finer(case: Case) -> Told:
    """March in tenths of a block."""
    return stepped(case, 10)
