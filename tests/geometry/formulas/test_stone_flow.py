"""Stone: Darcy, Ergun and the water held."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.formulas import stone_flow

GRAINS, POROSITIES = st.floats(1e-4, 0.04), st.floats(0.3, 0.5)


@given(st.floats(1e-8, 1.0), GRAINS, POROSITIES)
def test_ergun_runs_both_ways(gradient: float, grain: float, porosity: float) -> None:
    speed = stone_flow.ergun_velocity(gradient, grain, porosity)
    assert stone_flow.ergun_gradient(speed, grain, porosity) == pytest.approx(gradient)


@given(st.floats(1e-6, 0.5), GRAINS, POROSITIES)
def test_open_stone_carries_less_than_in_proportion(
    gradient: float, grain: float, porosity: float
) -> None:
    once = stone_flow.ergun_velocity(gradient, grain, porosity)
    assert stone_flow.ergun_velocity(2 * gradient, grain, porosity) <= 2 * once * (1 + 1e-9)


def test_slow_flow_is_in_proportion_and_fast_flow_is_not() -> None:
    sand, stone = 0.0003, 0.013
    slow = stone_flow.ergun_velocity(0.01, sand, 0.4)
    assert stone_flow.regime(slow, sand) == "slow"
    assert stone_flow.ergun_velocity(0.02, sand, 0.4) == pytest.approx(2 * slow, rel=0.01)
    fast = stone_flow.ergun_velocity(0.01, stone, 0.4)
    assert stone_flow.regime(fast, stone) == "turbulent"
    assert stone_flow.ergun_velocity(0.02, stone, 0.4) < 1.7 * fast
    assert stone_flow.regime(5 * 1.307e-6 / stone, stone) == "doubtful"


def test_ergun_puts_washed_stone_in_its_published_range() -> None:
    # Cedergren (from memory): No. 57, 1 to 20 cm/s; its d10 is about 5 mm (ASTM C33 band).
    row = next(row for row in stone_flow.STONES if "57" in row.name)
    for gradient in (0.01, 0.1, 1.0):
        k = stone_flow.ergun_velocity(gradient, 0.005, 0.40) / gradient
        assert row.low_ms < k < row.high_ms


@given(st.floats(0.0, 10.0), st.floats(0.1, 100.0), st.floats(0.05, 1.0))
def test_water_put_in_is_water_held(water: float, plan: float, porosity: float) -> None:
    rise = stone_flow.rise_in_stone(water, plan, porosity)
    assert stone_flow.water_held(rise * plan, porosity) == pytest.approx(water)


def test_darcy_and_the_water_s_own_speed() -> None:
    flow = stone_flow.darcy_flow(0.02, 0.01, 0.5)
    assert flow == pytest.approx(1e-4)
    assert stone_flow.seepage_velocity(flow / 0.5, 0.4) == pytest.approx(5e-4)
    with pytest.raises(ValueError, match="above zero"):
        stone_flow.darcy_flow(0.0, 0.01, 0.5)
    with pytest.raises(ValueError, match="between"):
        stone_flow.water_held(1.0, 1.2)
    with pytest.raises(ValueError, match="above zero"):
        stone_flow.rise_in_stone(1.0, 0.0, 0.4)
