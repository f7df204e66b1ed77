"""Dupuit's groundwater flow against textbook examples."""

import pytest

from geometry.formulas.inflow import dupuit_height, dupuit_to_trench, dupuit_with_recharge

DAY = 86400.0
# Bedient, Rifai and Newell, Ground Water Contamination, chapter 2, as in lecture slides on
# slideplayer.com (6112628): two rivers 1000 m apart, K 0.5 m/day, 15 cm/yr of rain less 10 of
# evaporation, water at 20 and 18 m. The answers -0.05 and 0.087 m2/day are from memory.
K, LENGTH, HEIGHTS = 0.5 / DAY, 1000.0, (20.0, 18.0)
RECHARGE = 1.369e-4 / DAY


@pytest.mark.parametrize(("at", "per_day"), [(0.0, -0.05), (1000.0, 0.087)])
def test_flow_into_the_two_rivers(at: float, per_day: float) -> None:
    flow = dupuit_with_recharge(K, HEIGHTS, LENGTH, RECHARGE, at)
    assert flow * DAY == pytest.approx(per_day, abs=1e-3)


def test_divide_is_where_nothing_flows_and_the_table_is_highest() -> None:
    # Same slides: x = L/2 - K/w (h1^2 - h2^2) / 2L, 361 m from the higher river (computed).
    divide = LENGTH / 2 - K / RECHARGE * (20**2 - 18**2) / (2 * LENGTH)
    assert divide == pytest.approx(361.2, abs=0.1)
    assert dupuit_with_recharge(K, HEIGHTS, LENGTH, RECHARGE, divide) == pytest.approx(0, abs=1e-15)
    top = dupuit_height(K, HEIGHTS, LENGTH, RECHARGE, divide)
    assert top > dupuit_height(K, HEIGHTS, LENGTH, RECHARGE, divide + 5)
    assert top > dupuit_height(K, HEIGHTS, LENGTH, RECHARGE, divide - 5)


def test_flow_without_recharge() -> None:
    # Fetter, Applied Hydrogeology, example (from memory): K 0.0020 cm/s, 10.0 and 7.5 m of water
    # 175 m apart: about 0.22 m2/day.
    flow = dupuit_to_trench(0.0020e-2, 10.0, 7.5, 175.0)
    assert flow * DAY == pytest.approx(0.216, abs=5e-4)
