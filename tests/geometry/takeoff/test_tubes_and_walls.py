"""Tubes by spacing and loops, and walls to keep dry, worked by hand on invented houses."""

import pytest

from geometry.designfile import read_design
from geometry.errors import DesignError
from geometry.layout.lay import lay_out
from geometry.takeoff.order import order
from geometry.takeoff.row import Row
from geometry.units import FOOT, INCH

BOX = """
[project]
name = "Invented box"
[[area]]
name = "room"
corners = ["0, 0", "41 ft 4 in, 0", "41 ft 4 in, 25 ft 4 in", "0, 25 ft 4 in"]
[grade]
at_wall = "6 ft"
"""
HEATED = """
[floor.tubing]
spacing = "12 in"
loop = "300 ft"
way = "10 ft"
"""


def the(text: str, item: str) -> Row:
    (row,) = (r for r in order(lay_out(read_design(text))).rows if r.item == item)
    return row


def test_tubes_at_12_in_take_a_foot_for_every_square_foot() -> None:
    """Room 40 x 24 ft, tubes 0.15 m from its edge.

    Published: feet of tube = ft2 / 1 at 12 in, / 0.75 at 9 in, / 0.5 at 6 in; 1/2 in tube in loops
    of at most 300 ft (hydronic heating handbooks, second-hand).
    """
    row = the(BOX + HEATED, "Tube in the slab")
    inside = (40 * FOOT - 0.3) * (24 * FOOT - 0.3)
    assert row.in_place == pytest.approx(inside / FOOT)
    # 280 ft of each loop lie in the floor: 928 ft take four loops.
    assert row.count == 4
    assert row.to_buy == pytest.approx(row.in_place + 4 * 20 * FOOT)
    nine = the(BOX + HEATED.replace("12 in", "9 in"), "Tube in the slab")
    assert nine.in_place == pytest.approx(row.in_place / 0.75)


def test_no_loop_is_longer_than_asked() -> None:
    for loop in (120, 200, 333):
        row = the(BOX + HEATED.replace("300", str(loop)), "Tube in the slab")
        assert row.to_buy / row.count <= loop * FOOT + 1e-9
        fewer = row.in_place / (row.count - 1) + 20 * FOOT
        assert fewer > loop * FOOT


def test_a_loop_that_is_all_way_is_a_fault() -> None:
    with pytest.raises(DesignError) as caught:
        read_design(BOX + HEATED.replace("300 ft", "50 ft").replace("10 ft", "30 ft"))
    (fault,) = caught.value.faults
    assert fault.place == "floor > tubing > way"


def test_wall_to_keep_dry_runs_from_the_footings_edge_to_the_grade() -> None:
    """Outline 41'-4\" x 25'-4\", grade 6 ft over TOF, a 20 in footing under an 8 in wall."""
    row = the(BOX, "Damp-proofing or waterproofing, outside")
    around = 2 * (41 * FOOT + 4 * INCH + 25 * FOOT + 4 * INCH)
    assert row.in_place == pytest.approx(around * (6 * FOOT + 6 * INCH))
    # 133 1/3 ft x 6.5 ft = 866 2/3 ft2.
    assert (row.count, row.sold) == (867, "ft2")
