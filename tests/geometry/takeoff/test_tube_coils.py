"""Coils of tube: as they are sold, or as long as the longest loop."""

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.takeoff.tubing import tube_rows

FOOT = 0.3048
ROOM = """
[project]
name = "Invented room"
[[area]]
name = "room"
corners = ["0, 0", "31 ft 4 in, 0", "31 ft 4 in, 13 ft 4 in", "0, 13 ft 4 in"]
[grade]
at_wall = "6 ft"
[floor.tubing]
spacing = "12 in"
loop = "{loop}"
way = "10 ft"
[order.tube]
coil = "{coil}"
"""


@pytest.mark.parametrize(("coil", "longer"), [("500 ft", False), ("300 ft", True)])
def test_no_coil_is_shorter_than_a_loop(coil: str, longer: bool) -> None:
    """Room 30 x 12 ft: 360 ft of tube and 20 ft of ways are one loop, less what bends save."""
    ((row, cuts),) = tube_rows(lay_out(read_design(ROOM.format(loop="400 ft", coil=coil))))
    assert row.to_buy == pytest.approx(380 * FOOT, rel=0.04)
    assert cuts is not None
    assert cuts.stock_m == pytest.approx(row.to_buy if longer else 500 * FOOT)
    assert ("a loop is longer than the coil: ask for a longer one" in row.note) == longer
    assert row.count == len(cuts.stocks) == 1
    assert [f.value for f in row.factors if f.name.startswith("ways")] == [pytest.approx(20 * FOOT)]
