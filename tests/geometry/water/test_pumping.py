"""The design's pump as it is marched: by its curve, its given flow, or not at all."""

import pytest
from wet_box import FOOT, GPM, INCH, STEADY, wet

from geometry.layout.sump import SumpLayout
from geometry.water.inflow import inflow
from geometry.water.pit import PitStorm, pit_storm
from geometry.water.pumping import flow_at, marching_pump, middle_flow

FLOATS = 'off = "2 in", on = "10 in"'
# So steep that it throws within a hundredth of 20 gpm wherever the water stands.
STEEP = f'pump = {{ {FLOATS}, lift = "9 ft", curve = ["300 ft, 0 gpm", "8 ft, 20 gpm"] }}'
LINE = f'pump = {{ {FLOATS}, lift = "9 ft", curve = ["20 ft, 0 gpm", "5 ft, 30 gpm"] }}'
BARE = f"pump = {{ {FLOATS} }}"


def pit_of(pump: str | None) -> SumpLayout:
    found = wet(pump=pump).sump
    assert found is not None
    return found


def storm(pump: str) -> PitStorm:
    layout = wet(STEADY, pump=pump)
    found = pit_storm(layout, inflow(layout))
    assert found is not None
    return found


def test_a_steep_curve_is_marched_like_a_pump_of_one_flow() -> None:
    curve, plain = storm(STEEP), storm(f'pump = {{ {FLOATS}, flow = "20 gpm" }}')
    assert curve.pumped is not None
    assert plain.pumped is not None
    assert curve.pumped.highest_m == pytest.approx(plain.pumped.highest_m, abs=1e-6)
    assert curve.most_starts == plain.most_starts
    assert curve.worst_starts == pytest.approx(plain.worst_starts or 0, rel=0.01)
    times = [[r.after_s for r in found.reached if r.after_s] for found in (curve, plain)]
    assert times[0] == pytest.approx(times[1], rel=0.01)
    assert len(times[0]) >= 3


def test_higher_water_is_less_to_lift() -> None:
    """With 9 ft from the pit's bottom to the highest point of the pipe and 2 gpm a foot."""
    pit = pit_of(LINE)
    for inches in (0, 6, 12):
        wanted = 2 * (20 - 9 + inches / 12) * GPM
        assert flow_at(pit, pit.floor + inches * INCH) == pytest.approx(wanted)
    # Midway between the floats 6 in stand in the pit.
    assert middle_flow(pit) == pytest.approx(2 * 11.5 * GPM)
    # Over the top of the pipe there is nothing to lift.
    assert flow_at(pit, pit.floor + 10 * FOOT) == flow_at(pit, pit.floor + 9 * FOOT)


def test_bands_of_level_throw_more_the_higher_they_lie() -> None:
    """Between off at 2 in and the rim at 30 in, 2 gpm a foot."""
    pit = pit_of(LINE)
    pump = marching_pump(pit)
    assert pump is not None
    assert (pump.on_m, pump.off_m) == pytest.approx((pit.floor + 10 * INCH, pit.floor + 2 * INCH))
    low, high = (2 * (11 + inches / 12) * GPM for inches in (2, 30))
    assert list(pump.flows_m3s) == sorted(pump.flows_m3s)
    assert low <= pump.flows_m3s[0] < pump.flows_m3s[-1] <= high
    assert pump.flows_m3s[-1] - pump.flows_m3s[0] > 0.7 * (high - low)
    assert all(pit.pump_off < z < pit.rim for z in pump.bands_m if pit.pump_off is not None)


@pytest.mark.parametrize("pump", [None, BARE])
def test_without_a_flow_nothing_is_marched(pump: str | None) -> None:
    pit = pit_of(pump)
    assert middle_flow(pit) is None
    assert flow_at(pit, pit.floor) is None
    assert marching_pump(pit) is None
