"""The drain's wrap as it is bought, worked by hand: laps at bends, lanes side by side, rolls."""

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.takeoff.order import order
from geometry.takeoff.row import CutList, Row

# Metres, invented: strips 0.2 m outside of 9 x 7 m, a trench of 0.5 m beside them. Its outer edge
# is 9.4 + 2 x 0.5 = 10.4 m and 7.4 + 2 x 0.5 = 8.4 m long.
TEXT = """
[project]
name = "Wrapped (invented)"
units = "metric"
[footing]
width = "0.6 m"
thickness = "0.3 m"
[wall]
thickness = "0.2 m"
[[area]]
name = "room"
corners = ["0, 0", "9 m, 0", "9 m, 7 m", "0, 7 m"]
[drain]
fall = "level"
offset = "0.25 m"
wrap = {{ overlap = "0.4 m" }}
stone = {{ width = "0.5 m" }}
{drain}
[order.fabric]
lap = "0.3 m"
{roll}
"""
OPEN, ROUND = "sides = [1, 2]", ""


def bought(drain: str, roll: str) -> tuple[Row, CutList, float]:
    """The row, its cuts and how wide the wrap is: twice round from wall or footing, and its lap."""
    layout = lay_out(read_design(TEXT.format(drain=drain, roll=roll)))
    assert layout.drain is not None
    tall = layout.drain.stone_top - layout.drain.stone_bottom
    made = order(layout)
    (row,) = (r for r in made.rows if r.item == "Fabric wrap")
    (cuts,) = (c for c in made.cuts if c.item == "Fabric wrap")
    # The stone stands over TOF, where it reaches 0.2 m farther, to the wall.
    return row, cuts, 2 * (0.5 + 0.2) + 2 * tall + 0.4


def test_wrap_in_place_is_what_lies_there_without_laps_at_bends() -> None:
    for drain, along, laps in ((OPEN, 10.4 + 8.4, 1), (ROUND, 2 * (10.4 + 8.4), 4)):
        row, _, wide = bought(drain, 'roll_width = "5 m"')
        assert row.in_place == pytest.approx(along * wide)
        # One lane of a roll of 5 m: all its width is bought.
        assert wide < 5.0 < 2 * wide
        assert row.to_buy == pytest.approx((along + laps * 0.3) * 5.0)


def test_lanes_side_by_side_come_off_one_length_of_roll() -> None:
    """Four pieces of 10.7, 10.7, 8.7 and 8.7 m, two to a width of 6 m: two rolls of 11 m."""
    row, cuts, wide = bought(ROUND, 'roll_width = "6 m"\nroll_length = "11 m"')
    assert 2 * wide < 6.0
    assert (row.count, len(cuts.stocks)) == (2, 4)
    assert row.to_buy == pytest.approx((2 * 10.7 + 2 * 8.7) / 2 * 6.0)
    assert "2 side by side" in row.note
    # 0.3 m and 2.3 m are left of each lane.
    assert sorted(stock.left_m for stock in cuts.stocks) == pytest.approx([0.3, 0.3, 2.3, 2.3])


def test_a_lane_too_many_takes_a_roll_of_its_own() -> None:
    """Four pieces of one lane each, three to a width of 8.5 m."""
    row, _, wide = bought(ROUND, 'roll_width = "8.5 m"\nroll_length = "11 m"')
    assert 3 * wide < 8.5 < 4 * wide
    assert row.count == 2
