"""Loads by weight and by volume where a weight is a range, is not known, or stone is rolled."""

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.takeoff.deliveries import Arrived, arrived
from geometry.takeoff.tickets import read_tickets
from geometry.units import INCH
from tests.geometry.takeoff.test_deliveries import HOUSE, SHORT_TON, YARD

# Six yards in place, 1.35 to 1.75 tons each as yards print it.
RANGE = HOUSE.replace('density = "1.5 ton/yd3"', "")
ROLLED = HOUSE.replace("compaction = 0", 'compaction = "20 %"')
FILLED = f'{HOUSE}\n[backfill]\nmaterial = "SW"\n'


def laid(text: str) -> Layout:
    return lay_out(read_design(text))


def came(text: str, material: str, *amounts: str) -> Arrived:
    lines = "\n".join(f"2026-04-02,{material},{amount}," for amount in amounts)
    rows = arrived(laid(text), read_tickets(lines).tickets)
    (one,) = (row for row in rows if row.material == material)
    return one


def test_volume_is_weighed_by_both_ends_of_a_range() -> None:
    """3 tons and 1 yd3: 4.35 to 4.75 tons; 1 + 3 / 1.75 to 1 + 3 / 1.35 yd3."""
    found = came(RANGE, "stone-57", "3 tons", "1 yd3")
    assert found.arrived_kg == pytest.approx((4.35 * SHORT_TON, 4.75 * SHORT_TON))
    low, high = 1 + 3 / 1.75, 1 + 3 / 1.35
    assert found.arrived_m3 == pytest.approx((low * YARD, high * YARD))
    # A yard makes an inch of the 6 in.
    assert found.covers_m == pytest.approx((low * INCH, high * INCH))
    short = 6 - high, 6 - low
    assert found.short_m3 == pytest.approx([x * YARD for x in short])
    assert found.short_kg == pytest.approx(
        (short[0] * 1.35 * SHORT_TON, short[1] * 1.75 * SHORT_TON)
    )


def test_stone_that_is_rolled_covers_less_than_it_fills_loose() -> None:
    """7.2 yd3 loose for 6 in place: 3.6 yd3 make 3 in, and 3 yd3 in place are lacking."""
    found = came(ROLLED, "stone-57", "3.6 yd3")
    assert found.covers_m == pytest.approx((3 * INCH, 3 * INCH))
    assert found.short_m3 == pytest.approx((3.6 * YARD, 3.6 * YARD))
    assert found.short_in_place_m3 == pytest.approx(3 * YARD)
    assert found.loads == 2


def test_a_mix_up_is_told_by_the_least_that_the_need_weighs() -> None:
    assert "the need weighs 8.1 tons or more" in came(RANGE, "stone-57", "6 tons").mixed_up


def test_soil_of_unknown_weight_is_told_by_volume_alone() -> None:
    needed = came(FILLED, "SW").needed_m3 / YARD
    found = came(FILLED, "SW", "1 yd3")
    assert found.needed_kg is None
    assert found.arrived_m3 == pytest.approx((YARD, YARD))
    assert (found.arrived_kg, found.short_kg) == (None, None)
    assert found.short_m3 == pytest.approx(((needed - 1) * YARD,) * 2)
    # Trucks of 2 yd3; what they weigh is not known.
    assert found.loads == -(-(needed - 1) // 2)
    assert (found.covers_m, found.wanted_m, found.mixed_up) == (None, None, "")


def test_soil_of_unknown_weight_that_was_weighed_tells_no_volume() -> None:
    found = came(FILLED, "SW", "3 tons", "2 tons")
    assert found.arrived_kg == pytest.approx((5 * SHORT_TON, 5 * SHORT_TON))
    assert (found.arrived_m3, found.short_m3, found.short_kg) == (None, None, None)
    assert (found.short_in_place_m3, found.loads, found.covers_m) == (None, None, None)


def test_what_may_be_enough_lacks_nothing_at_the_best() -> None:
    """9 tons are 5.14 to 6.67 yd3, where 6 are needed."""
    found = came(RANGE, "stone-57", "9 tons")
    assert found.short_m3 == pytest.approx((0.0, (6 - 9 / 1.75) * YARD))
    assert found.loads == 1
