"""Wall pressure against B. M. Das, Principles of Geotechnical Engineering, chapter 13.

The examples were read in an open companion to the book (FOSSEE), which prints its steps.
"""

import pytest

from geometry.formulas.earth_pressure import at_rest, rankine_active
from geometry.formulas.wall_pressure import pressure_diagram, thrust, water_thrust

FOOT, PCF, PLF = 0.3048, 157.0875, 14.593903  # NIST SP 811


def test_example_13_1_at_rest_with_water() -> None:
    # 15 ft of sand, phi 30, OCR 2, 100 pcf; water at 10 ft, 122.4 pcf below; water 62.4 pcf.
    coefficient = at_rest(30, 2)
    assert coefficient == pytest.approx(0.707, abs=5e-4)
    wall = pressure_diagram(
        15 * FOOT, coefficient, 100 * PCF, 122.4 * PCF, 10 * FOOT, water_weight_n_m3=62.4 * PCF
    )
    psf = [pascal / 47.88026 for pascal in wall.soil_pa]
    assert psf == pytest.approx([0, 707, 707 + 212.1], rel=1e-3)
    assert wall.water_pa[-1] / 47.88026 == pytest.approx(312.0)
    # Areas 3535, 3535, 530.3 and 780 lb/ft; resultant 4.8 ft above the base.
    assert thrust(wall).force_n_m / PLF == pytest.approx(3535 + 3535 + 530.3 + 780, rel=1e-3)
    assert water_thrust(wall).force_n_m / PLF == pytest.approx(780)
    assert thrust(wall).height_m / FOOT == pytest.approx(4.8, abs=0.05)
    moment = 3535 * (5 + 10 / 3) + 3535 * 2.5 + 530.3 * 5 / 3 + 780 * 5 / 3
    assert thrust(wall).moment_n / PLF / FOOT == pytest.approx(moment, rel=1e-3)


def test_example_13_2_rankine_dry() -> None:
    # 6 m of sand, 16 kN/m3, phi 36: 74.8 kN/m at 2 m above the base.
    found = thrust(pressure_diagram(6.0, rankine_active(36), 16e3))
    assert found.force_n_m / 1000 == pytest.approx(74.8, abs=0.05)
    assert found.height_m == pytest.approx(2.0)
