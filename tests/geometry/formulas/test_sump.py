"""A pit through time: no water is lost, events are exact, slow stepping agrees."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.formulas.march import March
from geometry.formulas.storage import StoneBed, Storage, pit_and_stone
from geometry.formulas.sump import Pump, march
from geometry.formulas.wet_well import cycle_time
from tests.rolls import rolls

STORE = pit_and_stone(-0.9, 0.3, 0.164, (StoneBed(-0.3, 0.1, 24.0, 0.4),))
PUMP = Pump(on_m=-0.5, off_m=-0.75, flows_m3s=(0.0025,))
BANDS = (-0.7, -0.6, -0.3, 0.0)
BANDED = Pump(-0.4, -0.75, (0.0020, 0.0022, 0.0024, 0.0027, 0.0030), BANDS)

SERIES = st.lists(st.tuples(st.floats(1.0, 4000.0), st.floats(0.0, 0.006)), min_size=1, max_size=40)
LEVELS = st.floats(-0.9, 0.3)


def through(
    series: list[tuple[float, float]], pump: Pump | None, start: float = -0.8
) -> tuple[np.ndarray, np.ndarray, March]:
    times = np.cumsum([0.0, *(span for span, _ in series)])
    inflows = np.array([inflow for _, inflow in series])
    return times, inflows, march(STORE, pump, times, inflows, start)


def by_small_steps(
    times: np.ndarray, inflows: np.ndarray, pump: Pump, start: float, step: float
) -> np.ndarray:
    """The same pit by plain explicit steps: levels at every step."""
    volume, running, levels = STORE.volume(start), False, [start]
    for now in np.arange(0.0, times[-1] - step / 2, step):
        level = STORE.level(volume)
        running = level >= pump.on_m or (running and level > pump.off_m)
        flow = pump.flows_m3s[int(np.searchsorted(pump.bands_m, level, side="right"))]
        inflow = inflows[min(np.searchsorted(times, now, side="right") - 1, len(inflows) - 1)]
        working = running and now < pump.fails_at_s
        volume = min(volume + (inflow - flow * working) * step, STORE.full_m3)
        levels.append(STORE.level(volume))
    return np.array(levels)


@given(SERIES, LEVELS, st.sampled_from([PUMP, BANDED, None]), st.floats(0.0, 1e5))
@settings(max_examples=rolls(60))
def test_no_water_is_lost(
    series: list[tuple[float, float]], start: float, pump: Pump | None, fails: float
) -> None:
    if pump is not None:
        pump = Pump(pump.on_m, pump.off_m, pump.flows_m3s, pump.bands_m, fails)
    times, inflows, gone = through(series, pump, start)
    came = float(np.sum(inflows * np.diff(times)))
    scale = came + STORE.full_m3
    assert abs(gone.lost_m3()) <= 1e-9 * scale
    assert gone.came_m3[-1] == pytest.approx(came)
    time, volume, pumped, spilled = gone.events.T
    assert np.all(np.diff(time) >= 0)
    assert (time[0], time[-1]) == (0.0, times[-1])
    assert np.all((volume >= 0) & (volume <= STORE.full_m3))
    assert np.all(np.diff(pumped) >= 0)
    assert np.all(np.diff(spilled) >= 0)
    most = max(pump.flows_m3s) if pump else 0.0
    assert np.all(np.diff(pumped) <= most * np.diff(time) * (1 + 1e-9) + 1e-15)
    held = np.interp(times, time, volume + pumped + spilled) - volume[0]
    assert held == pytest.approx(gone.came_m3, abs=1e-9 * scale)


@given(SERIES, LEVELS)
def test_below_on_nothing_is_pumped_and_above_off_a_running_pump_goes_on(
    series: list[tuple[float, float]], start: float
) -> None:
    _, _, gone = through(series, PUMP, start)
    time, volume, pumped, _ = gone.events.T
    works = np.diff(pumped) > 0
    on, off = STORE.volume(PUMP.on_m), STORE.volume(PUMP.off_m)
    low, high = np.minimum(volume[:-1], volume[1:]), np.maximum(volume[:-1], volume[1:])
    assert np.all(low[works] >= off - 1e-12)
    assert np.all(high[~works] <= on + 1e-12)
    assert np.all(np.interp(gone.starts_s, time, volume) >= on - 1e-12)


@pytest.mark.parametrize("pump", [PUMP, BANDED, Pump(-0.4, -0.75, (0.0025,), (), 500.0)])
def test_small_steps_come_to_the_same(pump: Pump) -> None:
    series = [(300.0, 0.0004), (250.0, 0.0016), (700.0, 0.0029), (250.0, 0.0002)]
    times, inflows, gone = through(series, pump)
    slow = by_small_steps(times, inflows, pump, -0.8, 0.05)[::20]
    samples = gone.sampled(1.0)
    assert len(samples.levels_m) == len(slow) == 1501
    # A switch met a step late moves what follows by a little of a cycle.
    assert np.quantile(np.abs(samples.levels_m - slow), 0.95) < 0.02
    assert np.mean(samples.levels_m) == pytest.approx(np.mean(slow), abs=0.005)


@pytest.mark.parametrize("share", [0.1, 0.5, 0.8])
def test_steady_inflow_cycles_as_the_formula_says(share: float) -> None:
    _, _, gone = through([(86400.0, share * 0.0025)], PUMP, -0.75)
    wet = STORE.volume(-0.5) - STORE.volume(-0.75)
    cycle = cycle_time(wet, 0.0025, share * 0.0025)
    assert np.diff(gone.starts_s) == pytest.approx(cycle)
    assert abs(gone.most_starts_in() - 3600 / cycle) <= 1
    assert gone.highest_m == pytest.approx(-0.5)


def test_with_the_pump_off_levels_are_passed_when_the_store_is_full_to_them() -> None:
    inflow = 0.0005
    _, _, gone = through([(86400.0, inflow)], None)
    for level in (-0.6, -0.3, -0.1, 0.1, 0.2, 0.3):
        first = gone.first_passed(level)
        assert first == pytest.approx((STORE.volume(level) - STORE.volume(-0.8)) / inflow)
    assert gone.pumped_m3 == 0
    assert gone.starts_s.size == 0
    spilled = 86400 * inflow - (STORE.full_m3 - STORE.volume(-0.8))
    assert gone.spilled_m3 == pytest.approx(spilled)
    assert gone.time_above(-0.3) == pytest.approx(86400 - gone.passed(-0.3)[0])


def test_a_failure_is_felt_from_its_moment() -> None:
    steady = [(7200.0, 0.001)]
    _, _, whole = through(steady, PUMP)
    failing = Pump(PUMP.on_m, PUMP.off_m, PUMP.flows_m3s, (), 3600.0)
    _, _, broken = through(steady, failing)
    before, after = whole.sampled(), broken.sampled()
    assert after.levels_m[:3601] == pytest.approx(before.levels_m[:3601])
    assert after.pumped_m3[3600] == pytest.approx(broken.pumped_m3)
    held = STORE.volume(after.levels_m[3600]) + 3600 * 0.001
    assert broken.events[-1, 1] == pytest.approx(min(held, STORE.full_m3))
    top = broken.first_passed(0.0, after_s=3600.0)
    assert top is None or top > 3600


def test_a_failure_between_short_blocks_stops_the_pump_at_once() -> None:
    inflows = 0.001 + 0.0005 * np.sin(np.arange(400.0))
    failing = Pump(PUMP.on_m, PUMP.off_m, PUMP.flows_m3s, (), 20.0)
    gone = march(STORE, failing, np.arange(401.0), inflows, -0.5)
    pumped = gone.sampled().pumped_m3
    assert pumped[20] > pumped[19], "it was running"
    assert np.all(pumped[20:] == pumped[20])


def test_starts_and_alarms_are_counted_from_a_moment() -> None:
    # One cycle is just an hour: inflow fills the band in most of it.
    wet = STORE.volume(-0.5) - STORE.volume(-0.75)
    slow = wet / 3000
    pump = Pump(-0.5, -0.75, (slow + wet / 600,))
    _, _, gone = through([(20000.0, slow)], pump, -0.75)
    assert gone.starts_s == pytest.approx([3000, 6600, 10200, 13800, 17400])
    assert gone.most_starts_in(3599.0) == 1
    assert gone.most_starts_in(3601.0) == 2
    assert gone.first_passed(-0.55) == pytest.approx(2400)
    assert gone.first_passed(-0.55, after_s=3600.0) == pytest.approx(3600 + 2400)
    assert gone.time_above(-0.55) == pytest.approx(5 * (600 + 120), rel=1e-6)


def test_more_inflow_than_the_pump_runs_over() -> None:
    _, _, gone = through([(50000.0, 0.004)], PUMP)
    assert len(gone.starts_s) == 1
    assert gone.highest_m == pytest.approx(0.3)
    first = gone.first_passed(0.3)
    assert first is not None
    assert gone.spilled_m3 == pytest.approx(0.0015 * (50000 - first))
    assert gone.time_above(0.2) > 50000 - first


def test_water_rests_where_a_weaker_band_lifts_and_a_stronger_lowers_it() -> None:
    _, _, gone = through([(60000.0, 0.0023)], BANDED, -0.8)
    assert gone.events[-1, 1] == pytest.approx(STORE.volume(-0.6)), "2.2 below, 2.4 L/s above"
    late = gone.sampled().pumped_m3
    assert late[50000] - late[40000] == pytest.approx(23.0)
    _, _, rising = through([(60000.0, 0.0029)], BANDED, -0.8)
    assert rising.events[-1, 1] == pytest.approx(STORE.volume(0.0)), "2.7 below, 3.0 L/s above"


def test_a_day_of_changing_seconds() -> None:
    inflows = np.random.default_rng(5).random(86400) * 0.003
    gone = march(STORE, PUMP, np.arange(86401.0), inflows, -0.8)
    assert abs(gone.lost_m3()) < 1e-9 * gone.came_m3[-1]
    samples = gone.sampled()
    assert len(samples.times_s) == 86401
    assert samples.came_m3[-1] == pytest.approx(np.sum(inflows))
    held = [STORE.volume(level) for level in samples.levels_m[::5000]]
    put = samples.came_m3[::5000] - samples.pumped_m3[::5000] - samples.spilled_m3[::5000]
    assert np.array(held) - held[0] == pytest.approx(put, abs=1e-9)


def test_an_alarm_that_never_sounds_and_a_dry_pit() -> None:
    _, _, gone = through([(3600.0, 0.0)], PUMP, -0.9)
    assert gone.first_passed(-0.2) is None
    assert gone.first_passed(-0.9) == 0
    assert gone.most_starts_in() == 0
    assert gone.time_above(-0.9) == 0
    _, _, starts_high = through([(10.0, 0.0)], PUMP, 0.0)
    assert list(starts_high.starts_s) == [0.0]
    assert starts_high.first_passed(0.0, after_s=5.0) is None


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="start above"):
        Pump(-0.8, -0.7, (0.002,))
    with pytest.raises(ValueError, match="one more flow"):
        Pump(-0.5, -0.7, (0.002,), (-0.6,))
    with pytest.raises(ValueError, match="bands must rise"):
        Pump(-0.5, -0.7, (0.002, 0.002, 0.002), (-0.6, -0.6))
    for times, inflows in [((0.0, 1.0), (1.0, 1.0)), ((1.0, 2.0), (1.0,)), ((0.0, 0.0), (1.0,)),
                           ((0.0, 1.0), (-1.0,)), ((0.0,), ())]:  # fmt: skip
        with pytest.raises(ValueError, match=r"times|inflows"):
            march(STORE, PUMP, times, inflows, -0.8)
    with pytest.raises(ValueError, match="start_m"):
        march(STORE, PUMP, (0.0, 1.0), (0.0,), 1.0)
    with pytest.raises(ValueError, match="on_m"):
        march(Storage((-0.9, -0.6), (0.0, 1.0)), PUMP, (0.0, 1.0), (0.0,), -0.8)


def test_time_above_a_level_counts_what_rises_on_beyond_it() -> None:
    """0.164 m2 of pit: -0.6 m after 65.6 of the first 100 s, -0.45 m in the second 100 s."""
    _, _, gone = through([(100.0, 0.0005), (100.0, 0.0002)], None)
    assert gone.time_above(-0.6) == pytest.approx(200 - 65.6)
    assert gone.time_above(-0.45) == pytest.approx(200 - 100 - (0.35 * 0.164 - 0.05) / 0.0002)


def test_a_level_is_passed_again_when_the_pit_fills_anew() -> None:
    """From -0.5 m it is pumped to -0.75 m in 20.5 s; -0.6 m is met 0.15 m up, 49.2 s later."""
    _, _, gone = through([(100.0, 0.0005)], PUMP, -0.5)
    assert gone.passed(-0.6) == pytest.approx([0, 20.5 + 49.2])
    assert gone.passed(-0.74) == pytest.approx([0, 20.5 + 3.28])
    assert gone.first_passed(-0.6, after_s=10.0) == pytest.approx(69.7)
    assert gone.first_passed(-0.6, after_s=80.0) == 80.0
