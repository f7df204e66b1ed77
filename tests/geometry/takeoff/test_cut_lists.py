"""Sticks, rolls and strips cut out of stock, against lists worked by hand."""

import pytest
import shapely

from geometry.takeoff.fabric import cut_fabric
from geometry.takeoff.pipes import elbow
from geometry.takeoff.row import Cut
from geometry.takeoff.sticks import Cutting, cut_runs, rolls
from geometry.takeoff.strips import Roll, lay_strips
from geometry.units import FOOT


def runs(*feet: float) -> list[Cut]:
    return [Cut(f"run {n}", f * FOOT) for n, f in enumerate(feet, 1)]


def lengths(cutting: Cutting) -> list[list[float]]:
    return [[round(c.length_m / FOOT, 6) for c in s.cuts] for s in cutting.stocks]


def test_runs_of_pipe_from_ten_foot_sticks() -> None:
    # 26 ft = 10 + 10 + 6; 14 ft = 10 + 4; 3 ft; 20 ft = 10 + 10. Full sticks: 2 + 1 + 1 = 4 and
    # the rests, longest first: 10, 6, 4, 3. The 4 goes into what the 6 leaves, the 3 does not.
    # 7 sticks; joints within runs: 2 + 1 + 0 + 1 = 4.
    cutting = cut_runs(runs(26, 14, 3, 20), 10 * FOOT)
    assert lengths(cutting) == [[10], [10], [10], [10], [10], [6, 4], [3]]
    assert cutting.joints == 4
    assert [round(s.left_m / FOOT, 6) for s in cutting.stocks] == [0, 0, 0, 0, 0, 0, 7]


def test_bars_lap() -> None:
    # 45 ft of bar from 20 ft sticks with a lap of 20 in: three sticks, two laps; they reach
    # 60 - 2 x 20 / 12 = 56.67 ft, so the last is 20 - 11.67 = 8 1/3 ft.
    cutting = cut_runs(runs(45), 20 * FOOT, 20 / 12 * FOOT)
    assert lengths(cutting) == [[20], [20], [pytest.approx(8 + 1 / 3, abs=1e-5)]]
    assert cutting.joints == 2


def test_a_run_of_whole_sticks_takes_no_more() -> None:
    assert lengths(cut_runs(runs(30), 10 * FOOT)) == [[10], [10], [10]]
    assert cut_runs(runs(0), 10 * FOOT).stocks == ()
    assert rolls(360 * FOOT, 180 * FOOT) == 2
    with pytest.raises(ValueError, match="shorter"):
        cut_runs(runs(30), 1.0, 1.0)


def test_sheet_in_strips() -> None:
    # Room 38 x 26 ft, turned up 6 in: 39 x 27 ft. Rolls 20 x 100 ft, lap 1 ft.
    # Along: 20 + 19 = 39 >= 27: two strips of 39 ft, one roll, seam 39 ft.
    # Across: 39 = 20 + 19 just: two strips of 27 ft, one roll, seam 27 ft: less sheet, so taken.
    room = shapely.box(0, 0, 38 * FOOT, 26 * FOOT)
    laid = lay_strips(room, Roll(20 * FOOT, 100 * FOOT, 1 * FOOT), 0.5 * FOOT)
    assert [round(r.length_m / FOOT, 6) for r in laid.runs] == [27, 27]
    assert laid.rolls == 1
    assert laid.seam_m == pytest.approx(27 * FOOT)
    assert laid.holes_m == 0


def test_a_seam_is_as_long_as_the_room_is_where_it_lies() -> None:
    """An L of 12 x 5 and 7 x 4 m: the second strip begins where the room grows narrow."""
    room = shapely.Polygon([(0, 0), (12, 0), (12, 5), (7, 5), (7, 9), (0, 9)])
    laid = lay_strips(room, Roll(5.3, 25.0, 0.3), 0.0)
    assert [run.length_m for run in laid.runs] == pytest.approx([12, 7])
    assert laid.seam_m == pytest.approx(7)


def test_long_strips_lap_within() -> None:
    # 100 x 8 ft flat, rolls 10 x 40 ft, lap 1 ft. Along: one strip of 100 ft of three pieces with
    # two laps, 40 + 40 + 22, three rolls, 102 ft of sheet, seams 2 x 10 ft. Across it would be
    # (100 - 1) / 9 = 11 strips of 8 ft, 5 to a roll, three rolls, but only 88 ft of sheet.
    room = shapely.box(0, 0, 100 * FOOT, 8 * FOOT)
    laid = lay_strips(room, Roll(10 * FOOT, 40 * FOOT, 1 * FOOT), 0.0)
    assert laid.rolls == 3
    assert len(laid.runs) == 11
    assert laid.seam_m == pytest.approx(10 * 8 * FOOT)


def test_a_strip_longer_than_the_roll_is_taped_across() -> None:
    # 50 x 19 ft, rolls 20 x 40 ft, lap 1 ft. Along: one strip of 40 + 11 ft, 51 ft of roll, taped
    # across its 20 ft. Across: three strips of 19 ft, 57 ft of roll.
    room = shapely.box(0, 0, 50 * FOOT, 19 * FOOT)
    laid = lay_strips(room, Roll(20 * FOOT, 40 * FOOT, 1 * FOOT), 0.0)
    assert [run.what for run in laid.runs] == ["strip 1"]
    assert laid.seam_m == pytest.approx(20 * FOOT)


def test_openings_in_sheet_are_taped_round_and_save_nothing() -> None:
    room = shapely.box(0, 0, 9 * FOOT, 7 * FOOT)
    pier = shapely.box(2 * FOOT, 2 * FOOT, 3 * FOOT, 3 * FOOT)
    whole, opened = (
        lay_strips(shape, Roll(10 * FOOT, 100 * FOOT, 1 * FOOT), 0.0)
        for shape in (room, room.difference(pier))
    )
    assert opened.cutting.length_m == whole.cutting.length_m
    assert opened.holes_m == pytest.approx(4 * FOOT)


def test_strips_cover_the_room_and_its_turn_ups() -> None:
    room = shapely.Polygon([(0, 0), (12, 0), (12, 5), (7, 5), (7, 9), (0, 9)])
    laid = lay_strips(room, Roll(4.0, 25.0, 0.3), 0.15)
    turned_up = room.buffer(0.15, join_style="mitre")
    assert turned_up.difference(shapely.union_all(laid.strips)).area < 1e-9


def test_fabric_along_the_roll_or_across_it() -> None:
    # Wrap 6 ft wide. Roll 12 ft 6 in x 100 ft: two lanes; 40 + 40 + 30 ft are 2 stocks of one
    # lane each: one roll. Roll 4 ft wide: too narrow, so cut across: 40 ft in pieces that reach
    # 3 ft: (40 - 1) / 3 = 13; 30 ft: (30 - 1) / 3 = 10 (9.67): 36 pieces of 6 ft, 16 to a roll.
    wide = cut_fabric(runs(40, 40, 30), 6 * FOOT, 12.5 * FOOT, 100 * FOOT, 1 * FOOT)
    assert wide is not None
    assert (wide.along, wide.lanes, wide.rolls) == (True, 2, 1)
    narrow = cut_fabric(runs(40, 40, 30), 6 * FOOT, 4 * FOOT, 100 * FOOT, 1 * FOOT)
    assert narrow is not None
    assert (narrow.along, len([c for s in narrow.cutting.stocks for c in s.cuts])) == (False, 36)
    assert narrow.rolls == 3
    assert cut_fabric(runs(40), 6 * FOOT, 4 * FOOT, 5 * FOOT, 1 * FOOT) is None
    # A roll just as wide as the wrap is wide enough, whatever binary fractions make of it.
    just = cut_fabric(runs(40), 3 * 0.1, 0.3, 0.2, 0.01)
    assert just is not None
    assert (just.along, just.lanes) == (True, 1)
    across = cut_fabric(runs(40), 3 * 0.1, 0.2, 0.3, 0.01)
    assert across is not None
    assert not across.along


@pytest.mark.parametrize(
    ("turn", "said"),
    [(90.0, "Elbow 90°"), (88.5, "Elbow 90°"), (45.0, "Elbow 45°"), (21.0, "Elbow 22.5°"),
     (60.0, "Elbow, special, 60°"), (87.0, "Elbow, special, 87°")],
)  # fmt: skip
def test_elbows_by_angle(turn: float, said: str) -> None:
    assert elbow(turn) == said
