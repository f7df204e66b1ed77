"""Pump and pipe: curves that meet, cycles that are even."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.formulas import friction, pumps, wet_well
from geometry.formulas.pumps import Discharge, PumpCurve

# Invented: a small pump, 3.0 L/s at no head, shut off at 7 m.
CURVE = PumpCurve((0.0, 0.001, 0.002, 0.003), (7.0, 5.5, 3.0, 0.5))
PIPE = Discharge(12.0, 0.0409)


@given(st.floats(0.5, 7.0), st.floats(0.0, 0.003))
def test_the_curve_reads_either_way(head: float, flow: float) -> None:
    assert CURVE.head(CURVE.flow(head)) == pytest.approx(head)
    assert CURVE.flow(CURVE.head(flow)) == pytest.approx(flow, abs=1e-12)


@given(st.floats(0.0, 9.0), st.floats(0.0, 9.0))
def test_more_head_is_less_flow(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert CURVE.flow(low) >= CURVE.flow(high)


@given(st.floats(0.0, 6.99), st.floats(0.0, 60.0))
def test_the_pump_gives_what_the_pipe_asks(static: float, length: float) -> None:
    pipe = Discharge(length, 0.0409)
    flow = pumps.operating_flow(CURVE, static, pipe)
    asked = pumps.system_head(flow, static, pipe)
    if flow < CURVE.most_m3s:
        assert CURVE.head(flow) == pytest.approx(asked)
    else:
        assert asked <= CURVE.heads_m[-1] + 1e-9


def test_ends_of_the_curve() -> None:
    assert pumps.operating_flow(CURVE, 7.0, PIPE) == 0
    assert pumps.operating_flow(CURVE, 9.0, PIPE) == 0
    assert CURVE.flow(0.0) == CURVE.most_m3s
    short = Discharge(0.0, 0.0409)
    assert pumps.operating_flow(CURVE, 0.0, short) == CURVE.most_m3s
    assert pumps.operating_flow(CURVE, 3.0, short) == pytest.approx(0.002)


def test_bands_of_level_pump_more_when_the_water_is_high() -> None:
    levels = (-0.8, -0.5, -0.2, 0.1)
    flows = pumps.flows_by_level(CURVE, 2.5, PIPE, levels)
    assert len(flows) == 3
    assert flows[0] < flows[1] < flows[2]
    assert flows[1] == pumps.operating_flow(CURVE, 2.85, PIPE)


@given(st.floats(0.01, 0.99), st.floats(0.01, 1.0), st.floats(1e-4, 0.01))
def test_cycle_is_fill_and_empty(share: float, volume: float, flow: float) -> None:
    inflow = share * flow
    by_hand = volume / inflow + volume / (flow - inflow)
    assert wet_well.cycle_time(volume, flow, inflow) == pytest.approx(by_hand)
    most = wet_well.most_starts_per_hour(volume, flow)
    assert wet_well.starts_per_hour(volume, flow, inflow) <= most * (1 + 1e-9)
    again = wet_well.least_wet_volume(3600 / most, flow)
    assert again == pytest.approx(volume)


def test_no_starts_without_inflow_or_without_a_stop() -> None:
    assert wet_well.starts_per_hour(0.1, 0.002, 0.0) == 0
    assert wet_well.starts_per_hour(0.1, 0.002, 0.002) == 0
    with pytest.raises(ValueError, match="never lets it stop"):
        wet_well.cycle_time(0.1, 0.002, 0.003)


@given(st.floats(1e-3, 3e-3))
def test_two_laws_of_friction_agree_for_plastic_pipe(flow: float) -> None:
    # Hazen-Williams with C 150 against Colebrook at 10 C, in the range of a house's pump.
    hazen = friction.hazen_williams(flow, 10.0, 0.0409, 150.0)
    assert friction.darcy_weisbach(flow, 10.0, 0.0409) == pytest.approx(hazen, rel=0.15)


def test_slow_flow_is_laminar() -> None:
    assert friction.friction_factor(1000.0, 0.0) == pytest.approx(0.064)
    assert friction.darcy_weisbach(0.0, 10.0, 0.04) == 0
    double = friction.darcy_weisbach(4e-5, 10.0, 0.05) / friction.darcy_weisbach(2e-5, 10.0, 0.05)
    assert double == pytest.approx(2.0)


def test_a_pit_s_round() -> None:
    assert wet_well.equivalent_inside(wet_well.round_pit_area(0.457)) == pytest.approx(0.457)


@pytest.mark.parametrize(
    ("flows", "heads"),
    [((0.0,), (7.0,)), ((0.0, 1.0), (7.0,)), ((0.1, 1.0), (7.0, 1.0)), ((0.0, 0.0), (7.0, 1.0)),
     ((0.0, 1.0), (7.0, 7.0)), ((0.0, 1.0), (7.0, -1.0))],
)  # fmt: skip
def test_what_is_no_curve_is_refused(flows: tuple[float, ...], heads: tuple[float, ...]) -> None:
    with pytest.raises(ValueError, match=r"curve|shut-off|must"):
        PumpCurve(flows, heads)
