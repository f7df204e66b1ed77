"""Foam under a slab against a worked example, a maker's table and the energy codes' factors."""

import pytest

from geometry.checks.board import DEAD_SHARE, LIVE_SHARE
from geometry.formulas.slab_on_foam import (
    concrete_modulus,
    layered_modulus,
    plate_pressure,
    spread_pressure,
)
from geometry.heat.f_factors import f_factor
from geometry.materials.catalogue import BOARDS

PSI, PCI, INCH, LBF = 6894.757, 271_447.1, 0.0254, 4.448222


# Structure Magazine, April 2014: 6 in of 2,500 psi concrete on 2 in of EPS whose stiffness is 360
# psi for one inch; a forklift's wheel of 8,000 lb on 6 x 10 in: 20.2 psi spread at 45 degrees
# (396 in2), 1.85 psi by the theory of plates.
def test_a_forklift_on_insulated_concrete() -> None:
    load, slab = 8000 * LBF, 6 * INCH
    spread = spread_pressure(load, 6 * INCH, 10 * INCH, slab)
    assert spread / PSI == pytest.approx(20.2, abs=0.05)
    concrete = concrete_modulus(2500 * PSI)
    assert concrete / PSI == pytest.approx(57_000 * 50)
    plate = plate_pressure(load, 360 / 2 * PCI, concrete, slab)
    assert plate / PSI == pytest.approx(1.85, abs=0.005)


def test_its_foam_is_the_lightest_of_the_standard() -> None:
    # 3.6 psi at 1 % strain (ASTM D6817) is the 360 psi an inch of the example.
    strain = BOARDS["eps-i"].strain1_kpa
    assert strain is not None
    assert strain * 1000 / 0.01 / PSI == pytest.approx(360)


# A maker's table: ultimate, dead and live compressive stress, psi.
@pytest.mark.parametrize(
    ("ultimate", "dead", "live"), [(15, 5, 3), (25, 8.3, 5), (40, 13.3, 8), (60, 20, 12)]
)
def test_parts_of_the_strength(ultimate: float, dead: float, live: float) -> None:
    assert ultimate * DEAD_SHARE == pytest.approx(dead, abs=0.05)
    assert ultimate * LIVE_SHARE == pytest.approx(live)


def test_boards_on_each_other() -> None:
    # The maker: alike, one's modulus over their number; unlike, reciprocals add.
    assert layered_modulus([675, 675]) == pytest.approx(675 / 2)
    assert layered_modulus([710, 675]) == pytest.approx(1 / (1 / 710 + 1 / 675))


# WAC 51-11C-61061, Table A106.1, and 136 ft of edge at 60 F: 0.73 is 5,956.8 Btu/h.
@pytest.mark.parametrize(
    ("r_value", "btu_h"), [(0, 5956.8), (9, 5956.8), (10, 2937.6), (14, 2937.6), (30, 1713.6)]
)
def test_the_codes_edge_factors(r_value: float, btu_h: float) -> None:
    made = f_factor(r_value * 0.176110, 136 * 0.3048, 0.0)
    # 1 Btu/h F is 0.527527 W/K (NIST SP 811).
    assert made.loss_w_k / 0.527527 * 60 == pytest.approx(btu_h, rel=1e-4)
    assert made.applies


def test_a_heated_slab_has_factors_of_its_own_and_a_deep_floor_none() -> None:
    # R-10 under a heated slab: 0.55 Btu/h F ft, 1.730735 W/mK each.
    made = f_factor(10 * 0.176110, 1.0, 2.0, warmed=True)
    assert made.factor / 1.730735 == pytest.approx(0.55, rel=1e-4)
    assert not made.applies
