"""The slope budget and what buys room, worked by hand on an invented box."""

import pytest
from drained_box import HALF_FT, INCH, INVERT, ROOM, box

from geometry.layout.lay import lay_out
from geometry.rules.codes import IBC, TRENCH_ABOVE_FOOTING_BOTTOM
from geometry.water.budget import fall_verdicts, slope_budget, slope_budgets
from geometry.water.ways import Way, foam_lift, greatest_fall_words, ways
from tests.whole.networks import network

FOOT = 12 * INCH
NEARLY = pytest.approx


def the_ways(fall: str, tie: str = "foam top at TOF", more: str = "") -> dict[str, Way]:
    layout = box(fall, more, tie)
    budget = slope_budget(layout)
    assert budget is not None
    return {way.key: way for way in ways(layout, budget)}


def test_an_eighth_in_a_foot_does_not_fit_beside_a_ten_inch_footing() -> None:
    # Room 10 - 2 - 4.215 - 0.07 = 3.72 in; 54'-8" at 1/8 in per ft need 6.83 in.
    budget = slope_budget(box("1/8 in per ft"))
    assert budget is not None
    assert budget.rule.key == "canada-crown"
    assert budget.room / INCH == NEARLY(ROOM)
    assert budget.lowest / INCH == NEARLY(INVERT)
    assert budget.needed / INCH == NEARLY(HALF_FT / 8)
    assert budget.short / INCH == NEARLY(HALF_FT / 8 - ROOM)
    assert not budget.fits
    assert budget.greatest_fall == NEARLY(ROOM / (12 * HALF_FT))
    assert budget.greatest_length is not None
    assert budget.greatest_length / FOOT == NEARLY(8 * ROOM)
    assert greatest_fall_words(budget, "ft-in") == "0.068 in per ft"


def test_a_sixteenth_fits() -> None:
    budget = slope_budget(box("1/16 in per ft"))
    assert budget is not None
    assert budget.fits
    assert budget.short == 0


# Footings of 8, 10 and 12 in, 2 in of bedding, slab underside at TOF, pipe 4.215 in outside and
# wrap 0.07 in: 1.72, 3.72 and 5.72 in of room. At 1/16 in per ft 27, 59 and 91 ft of branch.
@pytest.mark.parametrize(
    ("thick", "room", "feet"), [(8, 1.716, 27), (10, 3.716, 59), (12, 5.716, 91)]
)
def test_room_grows_with_the_footing(thick: int, room: float, feet: int) -> None:
    from tests.houses import house

    layout = house(('thickness = "12 in"', f'thickness = "{thick} in"'),
                   ("foam bottom at TOF", "slab bottom at TOF"))  # fmt: skip
    budget = slope_budget(layout)
    assert budget is not None
    assert budget.greatest_length is not None
    assert budget.room / INCH == NEARLY(room, abs=1e-3)
    assert int(budget.greatest_length / FOOT) == feet


def test_a_rule_on_the_invert_leaves_more_room_than_one_on_the_crown() -> None:
    # The floor is at +4 in and the invert counts: 4 + 10 - 2 - 0.07 - 0.075.
    budget = slope_budget(box("1/8 in per ft"), IBC.heights[0])
    assert budget is not None
    assert budget.room / INCH == NEARLY(4 - INVERT)
    assert budget.fits


def test_rules_that_hold_the_drain_up_or_hold_its_trench_give_no_budget() -> None:
    assert slope_budget(box(), TRENCH_ABOVE_FOOTING_BOTTOM) is None
    assert slope_budget(box(), IBC.heights[1]) is None
    keys = {budget.rule.key for budget in slope_budgets(box())}
    assert keys == {
        "irc-area", "irc-tof", "ibc-invert", "canada-crown", "din-invert", "din-crown", "wayne-high"
    }  # fmt: skip


def test_what_buys_room_each_with_its_number() -> None:
    short, found = HALF_FT / 8 - ROOM, the_ways("1/8 in per ft")
    assert list(found) == [
        "as designed", "level pipe", "second outlet", "foam over footing", "raised floor",
        "deeper footing", "below the splay",
    ]  # fmt: skip
    assert found["level pipe"].fits
    nothing = [(found[key].amount, found[key].aside) for key in ("as designed", "level pipe")]
    assert nothing == [(0, 0), (0, 0)]
    assert found["level pipe"].needed == 0
    assert found["second outlet"].amount / FOOT == NEARLY(HALF_FT / 2)
    assert found["second outlet"].fits
    assert found["deeper footing"].amount / INCH == NEARLY(short)
    # Two inches of foam carried over the footing are not the 3.1 in that are lacking.
    assert found["foam over footing"].amount / INCH == NEARLY(2)
    assert not found["foam over footing"].fits
    assert found["raised floor"].amount / INCH == NEARLY(short)
    # 1:1 splay: as far out as deep.
    assert found["below the splay"].aside / INCH == NEARLY(short)
    assert '3 1/8" deeper' in found["deeper footing"].sentence("ft-in")


def test_foam_that_lies_over_the_footing_buys_nothing_more() -> None:
    assert "foam over footing" not in the_ways("1/8 in per ft", "foam bottom at TOF")


def test_a_floor_without_foam_cannot_be_raised_by_it() -> None:
    assert foam_lift(lay_out(network("daylight")).areas[0]) == 0


def test_bedding_beyond_two_inches_can_be_taken_off() -> None:
    found = the_ways("1/8 in per ft", more='stone = { bedding = "5 in" }')
    assert found["smaller bedding"].amount / INCH == NEARLY(3)
    assert found["smaller bedding"].room / INCH == NEARLY(ROOM)
    assert "smaller bedding" not in the_ways("1/8 in per ft")


def test_where_the_fall_fits_nothing_needs_to_be_deeper() -> None:
    found = the_ways("1/16 in per ft")
    assert {"deeper footing", "raised floor", "below the splay"}.isdisjoint(found)


def test_not_even_a_level_pipe_under_a_low_slab() -> None:
    # The slab's underside at -4 in lies under the crown of a level pipe at -3.72 in.
    layout = box(tie="slab top at TOF")
    budget = slope_budget(layout)
    assert budget is not None
    assert budget.room / INCH == NEARLY(ROOM - 4)
    assert not budget.level_fits
    assert budget.greatest_fall == 0
    assert greatest_fall_words(budget, "ft-in") == "none, not even level"


def test_falls_that_are_asked_for_somewhere() -> None:
    # 54'-8" at 0, 1/16 in per ft, 0.5 % and 1/8 in per ft: 0, 3.42, 3.28 and 6.83 in of 3.72.
    budget = slope_budget(box("1/8 in per ft"))
    assert budget is not None
    found = {v.rule.key: v for v in fall_verdicts(budget)}
    assert {key: round(v.needed / INCH, 2) for key, v in found.items()} == {
        "level": 0.0, "hunting-valley": 3.42, "din-fall": 3.28, "eighth": 6.83
    }  # fmt: skip
    assert [key for key, v in found.items() if not v.fits] == ["eighth"]
