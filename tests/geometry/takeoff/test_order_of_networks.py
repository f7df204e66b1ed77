"""What several drains, outlets to daylight and bought fill add to the order (invented houses)."""

from math import ceil, hypot

import pytest

from geometry.layout.lay import lay_out
from geometry.takeoff.earth import backfill_volume, grading_volume
from geometry.takeoff.order import order
from geometry.takeoff.row import Order
from geometry.units import FOOT, INCH
from tests.whole import networks


def ordered(name: str, **changes: object) -> Order:
    return order(lay_out(networks.network(name, **changes)))


def counts(found: Order) -> dict[str, int]:
    return {row.item: row.count for row in found.rows if row.group == "drain"}


def test_pipe_to_daylight_is_ordered_as_far_as_its_open_end() -> None:
    """The ground falls 10 ft over the first 30 ft: the pipe comes out within them.

    Invert: footing bottom -10 in + fabric + 2 in bedding + 0.075 in wall. It is free 4 in over the
    ground where 7 ft - d / 3 + 4 in = invert - d / 48.
    """
    layout = lay_out(networks.network("daylight"))
    drain = layout.drain
    assert drain is not None
    invert = (-10 + 2 + 0.075) * INCH + drain.wrap_m
    out = (7 * FOOT + 4 * INCH - invert) / (1 / 3 - 1 / 48)
    (lead,) = layout.leads(drain)
    pipe = out * hypot(1, 1 / 48) - lead.begin * lead.stretch
    riser = sum(r.top - r.bottom for r in layout.risers(drain))
    solid = next(row for row in order(layout).rows if row.item == "Solid pipe")
    assert solid.in_place == pytest.approx(pipe + riser, rel=1e-9)
    assert counts(order(layout))["Guard for an open end"] == 1


def test_every_tee_elbow_and_bleeder_of_all_drains_is_there() -> None:
    found = ordered("both to the pit")
    assert counts(found)["Elbow 90°"] == 12
    assert counts(found)["Tee"] == 1
    assert counts(found)["Cleanout plug"] == 2
    bleeders = next(r for r in found.rows if r.material == "sch40-3")
    # 20 in of footing, twice 2 in and the fabric, eighteen times: from 10 ft sticks, five each.
    laid = lay_out(networks.network("both to the pit")).bleeders
    assert bleeders.in_place == pytest.approx(len(laid) * laid[0].length)
    assert bleeders.count >= ceil(len(laid) / (10 * FOOT // laid[0].length))
    assert counts(ordered("upper to lower stone"))["Cap"] == 1


def test_bought_fill_is_ordered_with_its_allowance() -> None:
    layout = lay_out(networks.network("daylight", backfill={"material": "SW"}))
    row = next(r for r in order(layout).rows if r.material == "SW")
    assert {p.name for p in row.parts} == {"Backfill", "Finished grade"}
    assert row.in_place == pytest.approx(backfill_volume(layout) + grading_volume(layout))
    assert row.to_buy > row.in_place
    assert not any("Backfill" in words for words in order(layout).left_out)
