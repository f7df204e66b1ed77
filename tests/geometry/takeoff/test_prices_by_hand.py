"""What rows cost by prices in other units than they are sold in, worked by hand."""

import pytest

from geometry.parts.order import Price, Unit
from geometry.takeoff.prices import priced, total, unused
from geometry.takeoff.row import Row

YARD_M3, SHORT_TON_KG = 0.764554857984, 907.18474


def row(
    sold: Unit, count: float, mass: tuple[float, float] | None = None, item: str = "stone-57"
) -> Row:
    return Row(
        "stone and sand", item, "stone-57", "", 1.0, "m3", (), 1.0, sold, count, mass_kg=mass
    )


def price(each: float, per: str, of: str = "stone-57") -> Price:
    return Price.model_validate({"of": of, "each": each, "per": per})


@pytest.mark.parametrize(
    ("bought", "each", "per", "cost"),
    [
        # By weight: least and most, whatever the volume is sold in.
        (row("yd3", 10, (9_000.0, 12_000.0)), 30, "t", (270.0, 360.0)),
        (row("m3", 10, (2 * SHORT_TON_KG, 3 * SHORT_TON_KG)), 30, "ton", (60.0, 90.0)),
        (row("yd3", 10), 100, "yd3", (1000.0, 1000.0)),
        (row("yd3", 10), 100, "m3", (1000 * YARD_M3,) * 2),
        (row("m3", 10), 100, "m3", (1000.0, 1000.0)),
        (row("m3", 10), 100, "yd3", (1000 / YARD_M3,) * 2),
        (row("roll", 3), 40, "roll", (120.0, 120.0)),
        # What is not weighed, or sold otherwise, cannot be reckoned.
        (row("yd3", 10), 30, "ton", None),
        (row("roll", 3), 100, "yd3", None),
        (row("roll", 3), 40, "board", None),
    ],
)
def test_a_price_is_reckoned_in_its_own_unit(
    bought: Row, each: float, per: str, cost: tuple[float, float] | None
) -> None:
    found = priced(bought, [price(each, per)]).cost
    assert found == (None if cost is None else pytest.approx(cost))
    told = unused([bought], [price(each, per)])
    assert told == (
        [f"The price of stone-57 per {per} fits nothing in this order."] if cost is None else []
    )


def test_a_price_for_the_item_goes_before_one_for_its_material() -> None:
    slab = row("yd3", 2, item="Slab")
    material, item = price(100, "yd3"), price(150, "yd3", of="Slab")
    assert priced(slab, [material, item]).cost == (300.0, 300.0)
    assert priced(slab, [material]).cost == (200.0, 200.0)
    # One that does not fit is passed over.
    assert priced(slab, [material, price(5, "board", of="Slab")]).cost == (200.0, 200.0)
    assert priced(slab, [price(5, "yd3", of="Wall")]).cost is None


def test_costs_add_up_at_the_least_and_at_the_most() -> None:
    prices = [price(10, "t"), price(40, "roll")]
    rows = [priced(r, prices) for r in (row("yd3", 1, (1_000.0, 2_000.0)), row("roll", 2))]
    assert total([*rows, row("board", 9)]) == pytest.approx((90.0, 100.0))
    assert total([row("board", 9)]) is None


def test_a_price_that_one_of_two_rows_can_be_reckoned_with_is_used() -> None:
    rows = [row("yd3", 1, (1_000.0, 2_000.0)), row("yd3", 1, item="sand")]
    assert unused(rows, [price(10, "t")]) == []
    assert unused(rows, [price(10, "t", of="gravel")]) != []
