"""Tubes by spacing and loops, and walls to keep dry, worked by hand on invented houses."""

import pytest

from geometry.designfile import read_design
from geometry.errors import DesignError
from geometry.layout.lay import lay_out
from geometry.takeoff.order import order
from geometry.takeoff.row import Row
from geometry.units import FOOT, INCH
from tests.houses import WITH_GARAGE, house

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
    """Room 40 x 24 ft, tubes 6 in from its edge: 39 x 23 ft hold 40 x 24 places a foot apart.

    Published: feet of tube = ft2 / 1 at 12 in, / 0.75 at 9 in, / 0.5 at 6 in; 1/2 in tube in loops
    of at most 300 ft (hydronic heating handbooks, second-hand). Bends and the fan save a little.
    """
    row = the(BOX + HEATED, "Tube in the slab")
    assert row.in_place == pytest.approx(40 * 24 * FOOT, rel=0.03)
    # 280 ft of each loop lie in the floor: 960 ft take four loops.
    assert len(row.parts) == 4
    assert row.to_buy == pytest.approx(row.in_place + 4 * 20 * FOOT)
    assert sum(part.in_place for part in row.parts) == pytest.approx(row.in_place)
    nine = the(BOX + HEATED.replace("12 in", "9 in"), "Tube in the slab")
    assert nine.in_place == pytest.approx(row.in_place / 0.75, rel=0.10)


@pytest.mark.parametrize("loop", [120, 200, 333])
def test_no_loop_is_longer_than_asked_and_none_has_a_joint(loop: int) -> None:
    bought = order(lay_out(read_design(BOX + HEATED.replace("300", str(loop)))))
    (row,) = (r for r in bought.rows if r.item == "Tube in the slab")
    (cuts,) = (c for c in bought.cuts if c.item == "Tube in the slab")
    lengths = [cut.length_m for stock in cuts.stocks for cut in stock.cuts]
    assert max(lengths) <= loop * FOOT + 1e-9
    assert sum(lengths) == pytest.approx(row.to_buy)
    assert (cuts.joints, len(lengths)) == (0, len(row.parts))
    assert all(sum(c.length_m for c in s.cuts) <= cuts.stock_m + 1e-9 for s in cuts.stocks)
    assert row.count == len(cuts.stocks)


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


def test_a_raised_area_is_kept_dry_from_its_own_footing_up() -> None:
    """A garage 3 ft up: 20 + 20 + 20 ft of wall, 4 ft of it under the grade at 7 ft, 6 in of ledge.

    The basement: the grade 7 ft over its footing; the garage's floor stands behind one side of it.
    """
    (row,) = (r for r in order(house(WITH_GARAGE)).rows if r.item.startswith("Damp-proofing"))
    parts = {part.name: part.in_place / FOOT**2 for part in row.parts}
    assert parts["garage"] == pytest.approx(60 * 4.5)
    assert parts["basement"] == pytest.approx((30 + 20 + 30) * 7.5)


@pytest.mark.parametrize(
    ("grade", "feet", "count"),
    [("5 ft 6 in", 6.0, 800), ("2 ft", 2.5, 334), ("6 in", 1.0, 134)],
)
def test_area_that_comes_out_even_is_not_rounded_up(grade: str, feet: float, count: int) -> None:
    """133 1/3 ft round, 6 in of ledge besides: 800, 333 1/3 and 133 1/3 ft2."""
    row = the(BOX.replace("6 ft", grade), "Damp-proofing or waterproofing, outside")
    assert row.in_place == pytest.approx(400 / 3 * feet * FOOT**2)
    assert row.count == count


def test_walls_that_stand_over_the_grade_are_not_kept_dry() -> None:
    """The grade at +2 ft, the garage's footing at +3 ft; then the grade under the basement's."""
    low = ('at_wall = "7 ft"', 'at_wall = "2 ft"')
    (row,) = (r for r in order(house(WITH_GARAGE, low)).rows if r.item.startswith("Damp-proofing"))
    assert [part.name for part in row.parts] == ["basement"]
    assert row.in_place == pytest.approx(row.parts[0].in_place)
    bare = BOX.replace('"6 ft"', '"-2 in"')
    rows = order(lay_out(read_design(bare))).rows
    assert not [r for r in rows if r.item.startswith("Damp-proofing")]
