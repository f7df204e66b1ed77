"""Wall pressure against single worked examples, each named where it stands."""

import pytest

from geometry.formulas.earth_pressure import at_rest, at_rest_elastic, rankine_active
from geometry.formulas.wall_pressure import WATER_WEIGHT, pressure_diagram, thrust, water_thrust

FOOT, PCF, PSF, PLF = 0.3048, 157.0875, 47.88026, 14.593903  # NIST SP 811


def test_dry_wall_of_ten_feet() -> None:
    # A published retaining wall design: 115 pcf, phi 30: Ka 0.33, 0.38 ksf at the base, 1.9 kip/ft.
    wall = pressure_diagram(10 * FOOT, rankine_active(30), 115 * PCF)
    assert rankine_active(30) == pytest.approx(0.33, abs=0.005)
    assert wall.total_pa[-1] / PSF / 1000 == pytest.approx(0.38, abs=0.005)
    assert thrust(wall).force_n_m / PLF / 1000 == pytest.approx(1.9, abs=0.05)


def test_surcharge_on_6_3_metres() -> None:
    # A geotechnical textbook, its example 13.5: surcharge gives 23.8 kPa all the way, soil 59.9 kPa
    # at the base: 149.9 + 188.7 = 338.6 kN/m, 2.56 m above the base. Soil of 18 kN/m3 and 18
    # degrees under 45 kPa gives these pressures.
    coefficient = rankine_active(18)
    wall = pressure_diagram(6.3, coefficient, 18e3, surcharge_pa=45e3)
    assert wall.soil_pa[0] / 1000 == pytest.approx(23.8, abs=0.05)
    assert (wall.soil_pa[1] - wall.soil_pa[0]) / 1000 == pytest.approx(59.9, abs=0.05)
    assert thrust(wall).force_n_m / 1000 == pytest.approx(338.6, abs=0.4)
    assert thrust(wall).height_m == pytest.approx(2.56, abs=0.005)


def test_sloping_ground_by_its_own_coefficient() -> None:
    # The same book's 7.2 m wall, 20 kN/m3, Ka 0.392 (ground at 9 degrees): 203.2 kN/m.
    assert thrust(pressure_diagram(7.2, 0.392, 20e3)).force_n_m / 1000 == pytest.approx(
        203.2, abs=0.05
    )


def test_submerged_sand() -> None:
    # Murthy, example 11.2 (result from memory): 7 m, e 0.5, Gs 2.7, phi 30. Dry 41.2 kPa and
    # 144.2 kN/m; under water soil 25.9 kPa, water 68.67 kPa and 240.35 kN/m, g 9.81.
    dry, saturated = 2.7 * 9810 / 1.5, (2.7 + 0.5) * 9810 / 1.5
    drained = pressure_diagram(7.0, rankine_active(30), dry)
    assert drained.total_pa[-1] / 1000 == pytest.approx(41.2, abs=0.05)
    assert thrust(drained).force_n_m / 1000 == pytest.approx(144.2, abs=0.1)
    wet = pressure_diagram(7.0, rankine_active(30), dry, saturated, 0.0, water_weight_n_m3=9810)
    assert wet.soil_pa[-1] / 1000 == pytest.approx(25.9, abs=0.05)
    assert wet.water_pa[-1] / 1000 == pytest.approx(68.67, abs=0.005)
    assert water_thrust(wet).force_n_m / 1000 == pytest.approx(240.35, abs=0.01)


def test_water_alone() -> None:
    # Illinois DOT 1979: 4 ft of water at 62.5 pcf: 250 psf, 500 lb/ft at a third of the height.
    wall = pressure_diagram(4 * FOOT, 1e-9, 100 * PCF, 120 * PCF, 0.0, water_weight_n_m3=62.5 * PCF)
    found = water_thrust(wall)
    assert wall.water_pa[-1] / PSF == pytest.approx(250)
    assert found.force_n_m / PLF == pytest.approx(500)
    assert found.height_m == pytest.approx(4 * FOOT / 3)
    assert pytest.approx(62.4, abs=0.05) == WATER_WEIGHT / PCF


# Engineering ToolBox, Poisson's ratios; the coefficient is nu/(1 - nu), worked by hand.
POISSON = {0.41: 0.695, 0.29: 0.408, 0.37: 0.587, 0.31: 0.449}


@pytest.mark.parametrize(("ratio", "coefficient"), POISSON.items())
def test_elastic_at_rest(ratio: float, coefficient: float) -> None:
    assert at_rest_elastic(ratio) == pytest.approx(coefficient, abs=6e-4)


# Jaky, 1 - sin phi, worked by hand.
JAKY = {28: 0.5305, 30: 0.5, 32: 0.4701, 34: 0.4408, 36: 0.4122, 40: 0.3572}


@pytest.mark.parametrize(("angle", "coefficient"), JAKY.items())
def test_jaky(angle: float, coefficient: float) -> None:
    assert at_rest(angle) == pytest.approx(coefficient, abs=6e-5)
