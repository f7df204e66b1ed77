"""Pump cycles and pits against military manuals and an extension service."""

import pytest

from geometry.formulas import wet_well

INCH, GALLON = 0.0254, 231 * 0.0254**3
GPM = GALLON / 60

# UFC 3-240-04A (EI 11C201), paragraph 7: V = t q / 4, with t of Table 7-1 (10 to 15 min below
# 20 bhp, 15 to 20 below 100, 20 to 30 below 250); the volumes follow from the rule.
RULE = [(10, 40, 100), (15, 40, 150), (10, 50, 125), (20, 100, 500), (30, 200, 1500)]
# U. of Illinois Extension in waterproofmag.com 2013: an inch of an 18 in pit holds 1 gal, of a
# 24 in pit 2 gal (rounded by them: exact 1.10 and 1.96).
PITS = [(18, 1.0), (24, 2.0)]


@pytest.mark.parametrize(("minutes", "gpm", "gallons"), RULE)
def test_least_wet_volume_is_the_manual_s(minutes: float, gpm: float, gallons: float) -> None:
    found = wet_well.least_wet_volume(minutes * 60, gpm * GPM)
    assert found / GALLON == pytest.approx(gallons)


@pytest.mark.parametrize(("minutes", "gpm", "gallons"), RULE)
def test_shortest_cycle_is_at_half_the_pump_s_flow(
    minutes: float, gpm: float, gallons: float
) -> None:
    # MIL-HDBK-1005/9A, equation 2: least t = 4 V / D, at Q = D / 2.
    volume, flow = gallons * GALLON, gpm * GPM
    assert wet_well.cycle_time(volume, flow, flow / 2) == pytest.approx(minutes * 60)
    for share in (0.1, 0.3, 0.45, 0.55, 0.9):
        assert wet_well.cycle_time(volume, flow, share * flow) > minutes * 60


def test_cycle_of_equation_1() -> None:
    # MIL-HDBK-1005/9A, equation 1, worked by hand: V 50 gal, D 40 gpm; Q 10 or 30 gpm: 6 min 40 s.
    for inflow in (10, 30):
        assert wet_well.cycle_time(50 * GALLON, 40 * GPM, inflow * GPM) == pytest.approx(400)
    assert wet_well.starts_per_hour(50 * GALLON, 40 * GPM, 20 * GPM) == pytest.approx(12)


@pytest.mark.parametrize(("inches", "gallons"), PITS)
def test_an_inch_of_pit_holds_the_rule_of_thumb(inches: float, gallons: float) -> None:
    held = wet_well.round_pit_area(inches * INCH) * INCH / GALLON
    assert held == pytest.approx(gallons, rel=0.11)
