"""Foam boards laid and counted, against layouts worked by hand."""

import pytest
import shapely
from shapely import affinity

from geometry.takeoff.boards import BoardLayout, lay_boards
from geometry.takeoff.foam import courses
from geometry.takeoff.offcuts import boards_of
from geometry.units import FOOT, INCH

WIDE, LONG = 4 * FOOT, 8 * FOOT


def laid(x: float, y: float, **more: bool) -> BoardLayout:
    return lay_boards(shapely.box(0, 0, x * FOOT, y * FOOT), WIDE, LONG, **more)


def tiles(layout: BoardLayout) -> bool:
    """Pieces fill the region exactly and lie beside, not on, each other."""
    regions = [p.region for p in layout.pieces]
    union = shapely.union_all(regions)
    whole = sum(r.area for r in regions)
    return (
        abs(whole - layout.region.area) < 1e-9
        and abs(union.area - whole) < 1e-9
        and union.difference(layout.region.buffer(1e-9)).area < 1e-9
    )


def test_a_room_of_whole_rows() -> None:
    # 40 x 28 ft in boards of 4 x 8 ft along the 40 ft. Seven rows. Rows 1, 3, 5, 7: five whole
    # boards each, 20. Rows 2, 4, 6 begin with half a board: half, four whole, half: 12 whole and
    # 6 halves, which three boards give. 20 + 12 + 3 = 35 = 1120 / 32: nothing is wasted.
    # Joints: six of 40 ft along; across, four of 4 ft in four rows and five in three:
    # 240 + 64 + 60 = 364 ft.
    layout = laid(40, 28)
    assert (layout.whole, layout.cut) == (32, 6)
    assert (layout.boards, layout.without_reuse, layout.least) == (35, 38, 35)
    assert layout.joints_m == pytest.approx(364 * FOOT, rel=1e-12)
    assert tiles(layout)


def test_offcuts_are_laid_or_thrown_away() -> None:
    # 12 x 8 ft along the 12 ft: row 1 is a whole board and a half; row 2 a half and a whole one.
    # The two halves come from one board: 3 boards; without offcuts 4; by area 96 / 32 = 3.
    layout, wasteful = laid(12, 8), laid(12, 8, reuse=False)
    assert (layout.whole, layout.cut, layout.boards) == (2, 2, 3)
    assert (wasteful.boards, wasteful.least) == (4, 3)


def test_a_narrow_room_takes_boards_from_rips() -> None:
    # 32 x 2 ft: one row of four boards ripped to 2 ft, or across it: each way the ripped half
    # makes the next piece, so two boards do what 64 / 32 = 2 ask.
    assert laid(32, 2).boards == 2


def test_a_pier_is_cut_out_and_saves_no_board() -> None:
    # An 8 x 4 ft room takes one board, with a 1 ft pier in its midst too.
    room = shapely.box(0, 0, LONG, WIDE)
    pier = shapely.box(3 * FOOT, 1 * FOOT, 4 * FOOT, 2 * FOOT)
    layout = lay_boards(room.difference(pier), WIDE, LONG)
    assert (layout.whole, layout.cut, layout.boards) == (0, 1, 1)
    assert layout.joints_m == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("turn", [17, 90])
def test_a_turned_house_takes_the_same_boards(turn: float) -> None:
    room = shapely.Polygon([(0, 0), (12.6, 0), (12.6, 5.4), (7.8, 5.4), (7.8, 9.7), (0, 9.7)])
    straight = lay_boards(room, WIDE, LONG)
    turned = lay_boards(affinity.rotate(room, turn, origin=(3, 4)), WIDE, LONG)
    assert tiles(turned)
    assert (turned.boards, turned.whole) == (straight.boards, straight.whole)
    assert turned.joints_m == pytest.approx(straight.joints_m, abs=1e-6)


def test_joints_are_staggered_by_half_a_board() -> None:
    edges = {
        row: {round(p.region.bounds[0] / FOOT, 6) for p in laid(40, 28).pieces if p.row == row}
        for row in (0, 1)
    }
    assert edges[0] == {0, 8, 16, 24, 32}
    assert edges[1] == {0, 4, 12, 20, 28, 36}


def test_first_fit_by_hand() -> None:
    # Board 4 x 8. The 4 x 5 leaves 4 x 3; the 3 x 3 is cut from that, leaving 1 x 3; a second
    # 4 x 5 takes a new board; the 1 x 3 is what was left of the first.
    pieces = [(4, 5), (3, 3), (4, 5), (1, 3)]
    assert boards_of([(a * FOOT, b * FOOT) for a, b in pieces], (WIDE, LONG)) == [0, 0, 1, 0]


def test_courses_make_a_thickness_of_boards_that_are_sold() -> None:
    sold = tuple(i * INCH for i in (1, 1.5, 2, 3, 4))
    assert courses(2 * INCH, sold) == (2 * INCH,)
    assert courses(6 * INCH, sold) == (4 * INCH, 2 * INCH)
    assert courses(12 * INCH, sold) == (4 * INCH,) * 3
    assert courses(2.2 * INCH, sold) == (2.2 * INCH,)


@pytest.mark.parametrize("off", [-1e-11, 0.0, 1e-11])
def test_a_wall_all_but_on_a_joint_makes_no_board_of_a_spike(off: float) -> None:
    # An L of 24 x 12 ft and 12 x 8 ft, its inner corner on a joint. Both rows of 24 ft take three
    # boards, the third row two and a half, the short rows one and a half: 3 + 3 + 3 + 3 = 12.
    inner = 12 * FOOT + off
    outline = ((0, 0), (24 * FOOT, 0), (24 * FOOT, inner), (inner, inner), (inner, 20 * FOOT))
    region = shapely.Polygon([*outline, (0, 20 * FOOT)])
    layout = lay_boards(region, WIDE, LONG)
    assert tiles(layout)
    assert layout.boards == 12 == layout.least
