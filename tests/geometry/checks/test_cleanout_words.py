"""Risers, high ends and runs of a drain, each told from records given by hand."""

import pytest

from geometry.checks.cleanouts import high_end_finding, riser_finding, run_finding
from geometry.units import FOOT
from geometry.water.cleanouts import (
    BENDS_SOURCE,
    REACH_SOURCE,
    Access,
    Cleaning,
    HighEnd,
    Run,
)

ONE, OTHER = "cleanout at corner 1", "cleanout at corner 3"


def access(name: str, riser_ft: float | None) -> Access:
    """Its plug 9 ft over the project's TOF; the footing it is told against stands at 2 ft."""
    top = None if riser_ft is None else 9 * FOOT
    return Access(name, 0.0, None if riser_ft is None else riser_ft * FOOT, top, "finished grade")


def run(
    length_ft: float, bends: int, degrees: float, start: str | None = ONE, end: str | None = OTHER,
    hose_ft: float | None = 40.0,
) -> Run:  # fmt: skip
    away = None if start is None and end is None else length_ft * FOOT / 2
    hose = None if hose_ft is None else hose_ft * FOOT
    return Run(start, end, length_ft * FOOT, away, bends, degrees, hose)


def cleaned(*runs: Run, places: tuple[Access, ...] = (), highs: tuple[HighEnd, ...] = ()):
    return Cleaning(places, runs, highs, 50 * FOOT, 135.0)


def test_every_riser_is_told_from_the_drains_own_footing_and_a_pit_is_none() -> None:
    places = (access(ONE, 7.5), access("sump pit", None), access(OTHER, 6.0))
    found = cleaned(run(40, 1, 90, hose_ft=31), run(40, 1, 90, hose_ft=36), places=places)
    told = riser_finding(found, 2 * FOOT, "ft-in")
    assert told.severity == "fine"
    assert told.found.startswith("Cleanout at corner 1: 7'-6\" of solid pipe")
    assert "to the finished grade at +7'-0\" against TOF" in told.found
    assert "Cleanout at corner 3: 6'-0\"" in told.found
    assert "pit" not in told.found
    # The longest of the hoses does for all.
    assert told.found.endswith("A hose of 36'-0\" reaches all from their tops.")
    without = cleaned(run(40, 1, 90, hose_ft=None), places=places)
    assert "hose" not in riser_finding(without, 0.0, "ft-in").found


def test_a_drain_without_risers_is_looked_at() -> None:
    told = riser_finding(cleaned(places=(access("sump pit", None),)), 0.0, "ft-in")
    assert told.severity == "look"
    assert told.advice.startswith("Name corners in drain.cleanouts")


def high(name: str, nearest: str | None, away_ft: float | None, bends: int = 0) -> HighEnd:
    return HighEnd(name, 0.0, nearest, None if away_ft is None else away_ft * FOOT, bends)


@pytest.mark.parametrize(
    ("end", "severity", "said"),
    [
        (high("high point", ONE, 0.0), "fine", "High point: at the cleanout at corner 1."),
        (high("high point", ONE, 9), "fine",
         "High point: 9'-0\" from the cleanout at corner 1, no bend between."),
        (high("high point", ONE, 9, 1), "look",
         "High point: 9'-0\" from the cleanout at corner 1, one bend between."),
        (high("high point", ONE, 9, 2), "look",
         "High point: 9'-0\" from the cleanout at corner 1, 2 bends between."),
        (high("closed end 2", ONE, 2), "fine",
         "Closed end 2: 2'-0\" from the cleanout at corner 1, no bend between."),
        (high("closed end 2", ONE, 3), "look",
         "Closed end 2: 3'-0\" from the cleanout at corner 1, no bend between."),
        (high("high point", None, None), "look", "High point: no cleanout anywhere."),
    ],
)  # fmt: skip
def test_a_high_end_wants_a_cleanout_on_its_own_straight(
    end: HighEnd, severity: str, said: str
) -> None:
    (told,) = high_end_finding(cleaned(highs=(end,)), "ft-in")
    assert (told.severity, told.found) == (severity, said)


def test_only_the_ends_that_lack_one_are_told_each_with_its_own_way_out() -> None:
    bare = (high("high point", ONE, 9, 2), high("closed end", ONE, 20))
    served = high("high point 2", OTHER, 0.0)
    (both,) = high_end_finding(cleaned(highs=(*bare, served)), "ft-in")
    assert "High point 2" not in both.found
    assert both.found.count("from the cleanout") == 2
    assert "Set a cleanout at a corner next to the high point" in both.advice
    assert "Bring the closed end up to grade" in both.advice
    for end, other in zip(bare, ("Bring", "Set"), strict=True):
        (alone,) = high_end_finding(cleaned(highs=(end, served)), "ft-in")
        assert other not in alone.advice
    assert list(high_end_finding(cleaned(), "ft-in")) == []


@pytest.mark.parametrize(
    ("one", "severity", "source", "said"),
    [
        (run(50, 1, 90), "fine", REACH_SOURCE, "50'-0\" along the pipe, 1 bend of 90° in all;"),
        (run(50, 2, 135), "fine", REACH_SOURCE, "2 bends of 135° in all; 25'-0\" from the nearer"),
        (run(51, 2, 90), "look", REACH_SOURCE, "51'-0\" along the pipe"),
        (run(40, 2, 180), "look", BENDS_SOURCE, "2 bends of 180° in all"),
        (run(60, 2, 180), "look", REACH_SOURCE, "2 bends of 180° in all"),
        (run(20, 0, 0), "fine", REACH_SOURCE, "no bends;"),
        (run(20, 0, 0, None, None), "look", REACH_SOURCE, "nothing can be put into it."),
    ],
)  # fmt: skip
def test_a_run_is_held_to_reach_and_bends(one: Run, severity: str, source: object, said: str):
    told = run_finding(cleaned(one), one, "ft-in")
    assert (told.severity, told.source) == (severity, source)
    assert said in told.found
    assert told.asked.startswith("at most 50'-0\" and 135° of bends")
    add = "Add a cleanout with a riser" if one.farthest_m is None else "Add a cleanout at a corner"
    assert told.advice.startswith("Build it so" if severity == "fine" else add)


@pytest.mark.parametrize(
    ("start", "end", "subject"),
    [(ONE, OTHER, f"{ONE} to {OTHER}"), (ONE, ONE, f"{ONE} round to itself"),
     (ONE, None, f"{ONE} to closed end"), (None, ONE, f"closed end to {ONE}"),
     (None, None, "whole length")],
)  # fmt: skip
def test_a_run_is_named_by_its_ends(start: str | None, end: str | None, subject: str) -> None:
    one = run(20, 0, 0, start, end)
    assert run_finding(cleaned(one), one, "ft-in").subject == f"drain, {subject}"
