"""Pressure on the wall: properties, and sums against brute integration."""

from math import radians, tan
from random import Random

import numpy as np
import pytest

from geometry.formulas.earth_pressure import (
    at_rest,
    at_rest_elastic,
    coefficient_of_fluid,
    equivalent_fluid,
    rankine_active,
)
from geometry.formulas.wall_pressure import (
    PressureDiagram,
    flooded_ratio,
    pressure_diagram,
    thrust,
    water_thrust,
)
from tests.rolls import seeds

FOOT, PCF, PLF = 0.3048, 157.0875, 14.593903
WATER = 62.4 * PCF


def flooded(feet: float, coefficient: float) -> PressureDiagram:
    return pressure_diagram(
        feet * FOOT, coefficient, 120 * PCF, 125 * PCF, 0.0, water_weight_n_m3=WATER
    )


def drained(feet: float, coefficient: float) -> PressureDiagram:
    return pressure_diagram(feet * FOOT, coefficient, 120 * PCF)


# Worked by hand at 120 and 125 pcf: K, height ft: drained, flooded, lb/ft.
BY_HAND = {
    (0.50, 8): (1920, 2998.4), (0.33, 8): (1267.2, 2657.9), (0.30, 8): (1152, 2597.8),
    (0.50, 9): (2430, 3794.9), (0.33, 9): (1603.8, 3363.8), (0.30, 9): (1458, 3287.8),
}  # fmt: skip


@pytest.mark.parametrize(("case", "pounds"), BY_HAND.items())
def test_by_hand(case: tuple[float, float], pounds: tuple[float, float]) -> None:
    coefficient, feet = case
    dry, wet = drained(feet, coefficient), flooded(feet, coefficient)
    assert thrust(dry).force_n_m / PLF == pytest.approx(pounds[0], rel=1e-4)
    assert thrust(wet).force_n_m / PLF == pytest.approx(pounds[1], rel=1e-4)
    assert flooded_ratio(dry, wet) == pytest.approx(pounds[1] / pounds[0], rel=1e-4)


def test_ratio_does_not_depend_on_the_height() -> None:
    ratios = [flooded_ratio(drained(feet, 0.5), flooded(feet, 0.5)) for feet in (4, 8, 12)]
    assert ratios == pytest.approx([1.562] * 3, abs=5e-4)


def test_ratio_of_moments_counts_the_arm() -> None:
    dry = pressure_diagram(2.5, 0.5, 19e3)
    wet = pressure_diagram(2.5, 0.5, 19e3, 20e3, 1.5)
    by_force = flooded_ratio(dry, wet)
    by_moment = flooded_ratio(dry, wet, lambda found: found.moment_n)
    assert 1 < by_moment < by_force, "water low down pushes with a short arm"


@pytest.mark.parametrize("seed", seeds(10))
def test_sums_against_brute_integration(seed: int) -> None:
    dice = Random(seed)  # noqa: S311
    height = dice.uniform(0.5, 5)
    wall = pressure_diagram(
        height,
        dice.uniform(0.2, 1),
        dice.uniform(15e3, 20e3),
        dice.uniform(18e3, 22e3),
        dice.uniform(0, 1.3 * height),
        dice.uniform(0, 20e3),
    )
    step = height / 20_000
    depths = np.arange(step / 2, height, step)
    force = float(np.sum(wall.at(depths)) * step)
    moment = float(np.sum(wall.at(depths) * (height - depths)) * step)
    found = thrust(wall)
    assert found.force_n_m == pytest.approx(force, rel=1e-6)
    assert found.moment_n == pytest.approx(moment, rel=1e-6)
    assert found.height_m == pytest.approx(moment / force, rel=1e-6)
    assert 0 < found.height_m <= height / 2 + 1e-9


def test_triangle_and_rectangle() -> None:
    soil = thrust(pressure_diagram(3.0, 0.5, 18e3))
    assert soil.height_m == pytest.approx(1.0)
    both = thrust(pressure_diagram(3.0, 0.5, 18e3, surcharge_pa=10e3))
    assert both.force_n_m - soil.force_n_m == pytest.approx(0.5 * 10e3 * 3)
    assert both.moment_n - soil.moment_n == pytest.approx(0.5 * 10e3 * 4.5)


def test_water_table_moves_from_drained_to_flooded() -> None:
    force = [
        thrust(pressure_diagram(3.0, 0.5, 18e3, 20e3, depth)).force_n_m
        for depth in (3.5, 3.0, 2.0, 1.0, 0.0)
    ]
    assert force[0] == force[1] == thrust(pressure_diagram(3.0, 0.5, 18e3)).force_n_m
    assert force == sorted(force)


def test_corners_only_where_the_line_bends() -> None:
    assert pressure_diagram(3.0, 0.5, 18e3).depths_m == (0.0, 3.0)
    assert pressure_diagram(3.0, 0.5, 18e3, 20e3, 1.0).depths_m == (0.0, 1.0, 3.0)
    assert pressure_diagram(3.0, 0.5, 18e3, 20e3, 0.0).depths_m == (0.0, 3.0)


def test_nothing_above_the_ground_nor_below_the_base() -> None:
    wall = pressure_diagram(3.0, 0.5, 18e3, surcharge_pa=10e3)
    assert wall.at([-0.1, 0.0, 3.0, 3.1]).tolist() == [0.0, 5e3, 5e3 + 27e3, 0.0]


def test_dry_wall_has_no_water() -> None:
    found = water_thrust(pressure_diagram(3.0, 0.5, 18e3))
    assert (found.force_n_m, found.height_m, found.moment_n) == (0.0, 0.0, 0.0)


@pytest.mark.parametrize("angle", [0, 15, 30, 45])
def test_coefficients(angle: float) -> None:
    # Rankine's other form, tan2(45 - phi/2); a held wall is pushed at least as hard.
    assert rankine_active(angle) == pytest.approx(tan(radians(45 - angle / 2)) ** 2)
    assert at_rest(angle) >= rankine_active(angle)
    assert at_rest(angle, 2.0) >= at_rest(angle)


def test_water_is_its_own_extreme() -> None:
    assert rankine_active(0) == at_rest(0) == at_rest_elastic(0.5) == 1


def test_fluid_and_coefficient_undo_each_other() -> None:
    assert coefficient_of_fluid(equivalent_fluid(0.4, 18e3), 18e3) == pytest.approx(0.4)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        (lambda: pressure_diagram(0, 0.5, 18e3), "height_m"),
        (lambda: pressure_diagram(3, 0.5, 18e3, None, 1.0), "saturated weight"),
        (lambda: pressure_diagram(3, 0.5, 18e3, 9e3, 1.0), "buoyant_weight"),
        (lambda: pressure_diagram(3, 0.5, 18e3, 20e3, -1.0), "water_depth_m"),
        (lambda: pressure_diagram(3, 0.5, 18e3, surcharge_pa=-1), "surcharge_pa"),
        (lambda: rankine_active(-1), "friction_angle_deg"),
        (lambda: at_rest(30, 0.5), "overconsolidation"),
        (lambda: at_rest_elastic(0.6), "poisson"),
    ],
)
def test_nonsense_is_refused(wrong: object, said: str) -> None:
    assert callable(wrong)
    with pytest.raises(ValueError, match=said):
        wrong()


def test_water_up_to_the_ground_presses_from_there_down() -> None:
    """Half of buoyant 10 kN/m3 over 2 m with 3 kPa beside it, and 9.81 kN/m3 of water."""
    found = pressure_diagram(2.0, 0.5, 18e3, 19.81e3, 0.0, 3e3, 9.81e3)
    assert found.depths_m == (0.0, 2.0)
    assert found.soil_pa == pytest.approx((1.5e3, 1.5e3 + 0.5 * 10e3 * 2))
    assert found.water_pa == (0.0, pytest.approx(19.62e3))
