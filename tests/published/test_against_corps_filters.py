"""Filters against guides of the US Army Corps of Engineers.

The shore protection guide (section 54), equations 9 to 11, and EM 1110-2-1901, UFC 3-270-04.
"""

import pytest

from geometry.formulas.fabric_filter import corps_opening
from geometry.formulas.granular_filter import CORPS, ROUND_HOLES, SLOTS, least_d15

MM = 1e-3


def test_round_holes() -> None:
    # D85 of the filter over the hole's diameter: above 1.0 to 1.2; over a slot's width 1.2 to 1.4.
    (rule,) = [rule for rule in ROUND_HOLES if rule.source is CORPS]
    assert (rule.share, rule.least) == (0.85, 1.2)
    assert [(rule.share, rule.least) for rule in SLOTS] == [(0.85, 1.4)]


def test_fabric_on_sand() -> None:
    # Under half fines: d85 over the opening at least 1.
    assert corps_opening(0.5 * MM, 0.3) == pytest.approx(0.5 * MM)


def test_fabric_on_fine_soil() -> None:
    # Else not coarser than No. 70, 0.0083 in.
    opening = corps_opening(0.05 * MM, 0.6)
    assert opening is not None
    assert opening / 0.0254 == pytest.approx(0.0083, abs=5e-5)


def test_no_fabric_alone_on_clay() -> None:
    # No fabric alone where more than 85 % passes No. 200; none with openings under No. 100.
    assert corps_opening(0.02 * MM, 0.86) is None
    assert corps_opening(0.02 * MM, 0.85) is not None
    assert corps_opening(0.149 * MM, 0.3) is None
    assert corps_opening(0.151 * MM, 0.3) == pytest.approx(0.151 * MM)


@pytest.mark.parametrize("factor", [3.0, 4.0, 5.0])
def test_permeability(factor: float) -> None:
    # EM 1110-2-1901: 3 to 5 times the base's d15; FEMA: never under 0.1 mm.
    assert least_d15(0.1 * MM, factor) == pytest.approx(factor * 0.1 * MM)
    assert least_d15(0.01 * MM, factor) == pytest.approx(0.1 * MM)
