"""Groundwater equations against each other and at their limits."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.formulas import inflow

K = st.floats(1e-9, 1e-2)
METRES = st.floats(0.1, 5.0)


@given(K, METRES, METRES, st.floats(1.0, 100.0))
def test_without_recharge_the_two_dupuits_agree(
    k: float, one: float, other: float, length: float
) -> None:
    high, low = max(one, other), min(one, other)
    trench = inflow.dupuit_to_trench(k, high, low, length)
    assert inflow.dupuit_with_recharge(k, (high, low), length, 0.0, 0.3 * length) == trench
    # The water table between carries just that flow: K h dh/dx, by differences.
    at, step = length / 2, length * 1e-4
    heights = [
        inflow.dupuit_height(k, (high, low), length, 0.0, at + side) for side in (-step, step)
    ]
    slope = (heights[0] ** 2 - heights[1] ** 2) / (4 * step)
    assert k * slope == pytest.approx(trench, rel=1e-6, abs=k * 1e-9)


@given(K, st.floats(0.0, 1e-7), st.floats(1.0, 50.0))
def test_recharge_leaves_at_both_ends(k: float, recharge: float, length: float) -> None:
    ends = [inflow.dupuit_with_recharge(k, (2.0, 1.0), length, recharge, x) for x in (0, length)]
    assert ends[1] - ends[0] == pytest.approx(recharge * length, rel=1e-6, abs=1e-16)


@given(st.floats(1e-9, 1e-6), st.floats(0.0, 5.0), st.floats(2.0, 40.0), K, K)
def test_rise_over_drains_drains_the_recharge(
    recharge: float, depth: float, spacing: float, below: float, above: float
) -> None:
    rise = inflow.hooghoudt_rise(recharge, depth, spacing, below, above)
    drained = inflow.hooghoudt(rise, depth, spacing, below, above)
    assert drained == pytest.approx(recharge, rel=1e-4)


def test_drains_on_the_base_are_dupuit_with_recharge_between_two_trenches() -> None:
    k, recharge, spacing = 1e-5, 3e-8, 20.0
    rise = inflow.hooghoudt_rise(recharge, 0.0, spacing, k, k)
    middle = inflow.dupuit_height(k, (0.0, 0.0), spacing, recharge, spacing / 2)
    assert rise == pytest.approx(middle)


@given(st.floats(0.5, 20.0), st.floats(2.0, 60.0), st.floats(0.02, 0.15))
def test_equivalent_depth_grows_with_depth_and_never_passes_it(
    below: float, spacing: float, radius: float
) -> None:
    found = inflow.equivalent_depth(below, spacing, radius)
    assert 0 < found <= below
    assert found <= inflow.equivalent_depth(1.2 * below, spacing, radius) * (1 + 1e-3)


def test_the_two_series_of_the_equivalent_depth_meet() -> None:
    # They change over at x = 2 pi D / L = 0.5.
    spacing = 10.0
    change = 0.5 * spacing / 6.283185307
    sides = [inflow.equivalent_depth(change * f, spacing, 0.05) for f in (0.9999, 1.0001)]
    assert sides[0] == pytest.approx(sides[1], rel=1e-3)
    assert inflow.equivalent_depth(0.04, spacing, 0.05) == 0.04


@given(st.floats(1e-8, 2e-7), st.floats(0.2, 1.5), st.floats(0.2, 5.0))
def test_spacing_holds_the_water_table(recharge: float, rise: float, below: float) -> None:
    k, radius = 1e-5, 0.05
    spacing = inflow.hooghoudt_spacing(recharge, rise, below, radius, k)
    depth = inflow.equivalent_depth(below, spacing, radius)
    assert inflow.hooghoudt_rise(recharge, depth, spacing, k, k) == pytest.approx(rise, rel=1e-4)


def test_rain_and_reach() -> None:
    assert inflow.share_soaking_in(10.0, 1e-5, 0.3) == pytest.approx(3e-5)
    assert inflow.roof_water(1e-5, 100.0) == pytest.approx(1e-3)
    # Sichardt (from memory): 2 m of drawdown in clean sand of 1e-4 m/s reaches 60 m.
    assert inflow.sichardt_reach(2.0, 1e-4) == pytest.approx(60.0)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="coefficient"):
        inflow.rational(1.1, 1e-5, 10.0)
    with pytest.raises(ValueError, match="far_m"):
        inflow.dupuit_to_trench(1e-5, 1.0, 2.0, 10.0)
    with pytest.raises(ValueError, match="at_m"):
        inflow.dupuit_height(1e-5, (1.0, 1.0), 10.0, 0.0, 11.0)
    with pytest.raises(ValueError, match="spacing_m"):
        inflow.hooghoudt(1.0, 1.0, 0.0, 1e-5, 1e-5)


def test_without_recharge_the_water_table_lies_flat_over_the_drains() -> None:
    assert inflow.hooghoudt_rise(0.0, 0.5, 10.0, 1e-5, 1e-5) == 0.0
    assert inflow.hooghoudt_rise(0.0, 0.0, 10.0, 1e-5, 1e-5) == 0.0
