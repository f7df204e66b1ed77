"""An outlet to daylight in figures worked by hand: what is lacking, where it is bare, how it ends.

The pipe falls 1/4 in per ft (1 in 48) and ends 4 in over the ground unless said otherwise; its top
lies 4.215 in less a wall of 0.120 in over the invert, which begins at TOF.
"""

import pytest

from geometry.water.daylight import DaylightRun
from tests.geometry.checks.test_outlet_findings import HILL, findings, run

FLATTER = "A flatter pipe does not do"


def test_ground_that_rises_leaves_raising_the_drain_or_a_pit() -> None:
    """10 in of fall in 40 ft, the end 4 in over ground 2 ft up: 38 in are lacking."""
    found = findings(run((0, 1), (40, 2)))["comes-out"]
    assert "the ground rises 1'-0\", 2'-2\" of fall is needed" in found.found
    assert "At its last point 3'-2\" is lacking" in found.found
    assert found.advice == (
        "Either raise the drain 3'-2\" where its height may change (it then comes out 40'-0\" from "
        "the drain); or take a pit with a pump."
    )


def test_a_little_that_is_lacking_can_be_had_in_four_ways() -> None:
    """24 in of fall in 96 ft, 22 in may be used: 2 in are lacking; 22 in are 0.229 in per ft.

    The ground nears the pipe by 98 in in 96 ft less 1 in 48, 0.0642: 2 in take 2 ft 7 1/8 in more.
    """
    advice = findings(run((0, 6), (96, -2 - 2 / 12)))["comes-out"].advice
    for way in (
        'raise the drain 2" where', 'let the end stand 2" over the ground, 96\'-0" from the drain',
        "lay the pipe at 0.229 in per ft at most", "run 2'-7 1/4\" farther",
    ):  # fmt: skip
        assert way in advice
    assert FLATTER not in advice


def test_a_pipe_that_would_have_to_lie_too_flat_is_told_so() -> None:
    """0.6 ft less 4 in may be used in 40 ft: 0.08 in per ft, where 1/8 is asked."""
    advice = findings(run((0, 1), (40, -0.6)))["comes-out"].advice
    assert f"{FLATTER}: it would come out at 0.080 in per ft, and 1/8 in per ft" in advice
    assert "lay the pipe at" not in advice


def test_a_pipe_bare_in_a_dip_is_stopped_and_told_from_where_to_where() -> None:
    """Ground less pipe's top: 5.659 ft - 0.1592 x to 40 ft, then -9.941 ft + 0.2308 x: 1 ft of it
    at 29.27 and 47.40 ft."""
    bare = run((0, 6), (40, -1.2), (60, 3), (150, -8), above_ground="8 in")
    found = findings(bare)["cover"]
    assert found.severity == "stop"
    assert 'Too little from 29\'-3 1/4" to 47\'-4 3/4" (least 0") from the drain.' in found.found
    # 2 ft higher there it is covered, though thinly for nothing less than 1 ft is bare.
    thin = findings(run((0, 6), (40, 0), (60, 3), (150, -8), above_ground="8 in"))["cover"]
    assert thin.severity == "look"
    assert thin.advice.startswith("Take a stronger pipe there")
    whole = findings(run((0, 6), (40, 2), (60, 3), (150, -8), above_ground="8 in"))["cover"]
    assert whole.severity == "fine"
    assert "Too little" not in whole.found


@pytest.mark.parametrize(
    ("made", "severity", "advice"),
    [
        (run(*HILL), "fine", "Lay stones"),
        (run(*HILL, above_ground="3 in"), "look", 'Let the end stand 4" or more'),
        # The end lies over ground at -3.17 ft, which rises beyond by 2.4 in, or by 4.8 in.
        (run(*HILL[:2], (150, -4), (170, -2.97)), "fine", "Lay stones"),
        (run(*HILL[:2], (150, -4), (170, -2.77)), "stop", "Lead the water on"),
    ],
)
def test_the_open_end_stands_free_and_water_runs_on(
    made: DaylightRun, severity: str, advice: str
) -> None:
    found = findings(made)["end"]
    assert found.severity == severity
    assert found.advice.startswith(advice)
    assert ("in that hollow" in found.found) == (severity == "stop")


def test_high_water_short_of_the_drain_wants_a_flap_and_over_it_a_pit() -> None:
    """The end lies 2'-8 1/4" under TOF, where the drain begins."""
    low, mid, high = (
        findings(run(*HILL, high_water=level))["backwater"] for level in ("-6 ft", "-1 ft", "1 ft")
    )
    assert (
        "3'-3 13/16\" under the open end's invert, 6'-0\" under the drain's low point" in low.found
    )
    assert "1'-8 3/16\" over the open end's invert, 1'-0\" under the drain's low point" in mid.found
    assert "3'-8 3/16\" over the open end's invert, 1'-0\" over the drain's low point" in high.found
    assert "a flap keeps that water out" in mid.advice
    assert "take a pit with a pump" in high.advice


def test_the_least_fall_is_enough_and_a_guard_and_the_flow_are_told() -> None:
    assert findings(run(*HILL, fall="1/8 in per ft"))["fall"].severity == "fine"
    for guard, said in ((True, "with a guard"), (False, "without a guard")):
        assert said in findings(run(*HILL, guard=guard))["solid"].found
    assert findings(run(*HILL), 1.0)["capacity"].advice.startswith("Take a larger pipe")
    assert findings(run(*HILL), 1e-3)["capacity"].advice == "Keep it."
    free = findings(run((0, -1), (40, -3)))["comes-out"]
    assert free.advice.startswith("Check the levels given")
    assert free.found.startswith("The drain's low point itself lies free over the ground")
