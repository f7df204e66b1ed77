"""Deflection and loads of buried pipe: properties, and what must be refused."""

from itertools import pairwise

import pytest

from geometry.formulas.buried_pipe import (
    bedding_constant,
    deflection,
    dimension_ratio,
    pipe_stiffness,
    soil_modulus_for,
    stiffness_of_ring,
)
from geometry.formulas.pipe_loads import (
    corner_pressure,
    impact_factor,
    middle_pressure,
    prism_load,
    wheel_pressure,
)

PSI, PCF, FOOT = 6894.757, 157.0875, 0.3048


def share(feet: float, modulus_psi: float, stiffness_psi: float = 46, lag: float = 1.0) -> float:
    load = prism_load(feet * FOOT, 120 * PCF)
    return deflection(load, 0, stiffness_psi * PSI, modulus_psi * PSI, lag=lag)


# Worked by hand from 0.1 gamma H / (0.149 PS + 0.061 E'), percent.
BY_HAND = {(8, 200): 3.499, (8, 1000): 0.983, (8, 3000): 0.351, (10, 400): 2.666, (10, 1000): 1.228}


@pytest.mark.parametrize(("case", "percent"), BY_HAND.items())
def test_by_hand(case: tuple[float, float], percent: float) -> None:
    assert 100 * share(*case) == pytest.approx(percent, abs=6e-4)


def test_soft_pipe_leans_on_the_soil() -> None:
    # By hand, 11 psi pipe at 8 ft: 4.817 % in dumped soil, 0.361 % in compacted stone.
    assert 100 * share(8, 200, 11) == pytest.approx(4.817, abs=6e-4)
    assert 100 * share(8, 3000, 11) == pytest.approx(0.361, abs=6e-4)


def test_soil_without_help_leaves_the_pipe_alone() -> None:
    assert 100 * share(8, 0) == pytest.approx(9.73, abs=5e-3)


def test_lag_multiplies_the_soil_s_part_only() -> None:
    assert share(8, 1000, lag=1.5) == pytest.approx(1.5 * share(8, 1000))
    live = deflection(0, 5000, 46 * PSI, 1000 * PSI, lag=1.5)
    assert live == pytest.approx(deflection(0, 5000, 46 * PSI, 1000 * PSI))


@pytest.mark.parametrize("limit", [0.01, 0.03, 0.05])
def test_soil_modulus_that_meets_a_limit(limit: float) -> None:
    load, stiffness = prism_load(8 * FOOT, 120 * PCF), 46 * PSI
    modulus = soil_modulus_for(limit, load, 0, stiffness)
    assert deflection(load, 0, stiffness, modulus) == pytest.approx(limit)


def test_stiff_pipe_needs_no_soil() -> None:
    assert soil_modulus_for(0.05, 1000.0, 0.0, 46 * PSI) == 0


def test_stiffness_of_both_kinds_is_one_thing() -> None:
    # SN = E/12/(DR - 1)^3, so a solid wall has the same stiffness either way.
    assert stiffness_of_ring(3e9 / 12 / 40**3) == pytest.approx(pipe_stiffness(3e9, 41))
    assert dimension_ratio(0.110, 0.0032) == pytest.approx(34.375)


def test_bedding_falls_with_the_angle() -> None:
    found = [bedding_constant(angle) for angle in range(0, 181, 5)]
    assert all(a > b for a, b in pairwise(found))


def test_prism_under_water_weighs_less_its_buoyancy() -> None:
    dry = prism_load(3.0, 19e3)
    assert prism_load(3.0, 19e3, 3.0, 20e3) == dry
    wet = prism_load(3.0, 19e3, 1.25, 20e3)
    assert wet == pytest.approx(1.25 * 19e3 + 1.75 * (20e3 - 9806.65))


def test_impact_takes_the_greater_factor_on_an_edge() -> None:
    assert impact_factor(FOOT) == 1.50
    assert impact_factor(FOOT * 1.001) == 1.35
    assert impact_factor(0.0) == 1.50
    assert impact_factor(FOOT * 3) == 1.15
    assert impact_factor(FOOT * 3.001) == 1.00


def test_wheel_spreads_and_fades() -> None:
    under = wheel_pressure(70e3, 1.0)
    assert wheel_pressure(70e3, 2.0) == pytest.approx(under / 4)
    assert wheel_pressure(70e3, 1.0, 1.0) < under / 5
    assert wheel_pressure(70e3, 1.0, impact=1.35) == pytest.approx(1.35 * under)


def test_rectangle_tends_to_a_point_and_to_a_corner() -> None:
    tiny = middle_pressure(1e6, 0.01, 0.01, 1.0)
    assert tiny == pytest.approx(wheel_pressure(1e6 * 1e-4, 1.0), rel=1e-3)
    assert corner_pressure(1000.0, 2.0, 3.0, 1e-6) == pytest.approx(250.0)
    assert corner_pressure(1000.0, 2.0, 3.0, 1.0) == pytest.approx(
        corner_pressure(1000.0, 3.0, 2.0, 1.0)
    )


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: bedding_constant(181),
        lambda: pipe_stiffness(3e9, 2),
        lambda: dimension_ratio(0.1, 0.05),
        lambda: deflection(-1, 0, 1, 1),
        lambda: deflection(1, 0, 0, 1),
        lambda: deflection(1, 0, 1, 1, lag=0.9),
        lambda: deflection(1, 0, 1, 1, bedding=0.5),
        lambda: wheel_pressure(1, 0),
        lambda: prism_load(3.0, 19e3, 1.0, 9e3),
        lambda: impact_factor(-0.1),
        lambda: corner_pressure(1, 0, 1, 1),
    ],
)
def test_nonsense_is_refused(wrong: object) -> None:
    assert callable(wrong)
    with pytest.raises(ValueError, match="must"):
        wrong()
