"""Runs between places to get into the drain, on an invented box whose lengths are plain."""

import pytest

from geometry.checks.cleanouts import cleanout_findings
from geometry.checks.finding import Finding
from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.water.cleanouts import cleaning
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds

# The wall 30 by 20 ft, the footing 6 in outside it, the pipe 8 in beyond: 32.333 by 22.333 ft.
HOUSE = """
[project]
name = "A box (invented)"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[drain]
fall = "level"
{more}
"""
FOOT = 0.3048
LONG, SHORT = 32 + 4 / 12, 22 + 4 / 12


def made(more: str) -> Layout:
    return lay_out(read_design(HOUSE.format(more=more)))


def test_a_drain_without_a_place_to_enter() -> None:
    found = cleaning(made(""))
    assert found is not None
    (run,) = found.runs
    assert (run.start, run.end, run.farthest_m) == (None, None, None)
    assert run.length_m / FOOT == pytest.approx(2 * (LONG + SHORT))
    assert found.too_far(run)


def test_cleanouts_at_two_corners_make_two_runs() -> None:
    # Between opposite corners: one long, one short side, the bend at the corner between.
    found = cleaning(made("cleanouts = [1, 3]"))
    assert found is not None
    assert [place.name for place in found.access] == [
        "cleanout at corner 1",
        "cleanout at corner 3",
    ]
    for run in found.runs:
        assert run.length_m / FOOT == pytest.approx(LONG + SHORT)
        assert run.farthest_m == pytest.approx(run.length_m / 2)
        assert (run.bends, run.bends_deg) == (1, pytest.approx(90.0))
        assert found.too_far(run)  # 54.7 ft over 50 ft
        assert not found.too_bent(run)
    longer = cleaning(made("cleanouts = [1, 3]"), reach_m=60 * FOOT)
    assert longer is not None
    assert not any(map(longer.too_far, longer.runs))


def test_one_cleanout_sees_the_whole_loop_with_three_bends_ahead() -> None:
    found = cleaning(made("cleanouts = [2]"))
    assert found is not None
    (run,) = found.runs
    assert run.length_m / FOOT == pytest.approx(2 * (LONG + SHORT))
    assert run.bends_deg == pytest.approx(270.0)
    assert found.too_bent(run)


def test_an_open_drain_ends_blind() -> None:
    # Sides 1 and 2 with one riser at the corner between them: a blind run to each end.
    found = cleaning(made("sides = [1, 2]\ncleanouts = [2]"))
    assert found is not None
    first, second = found.runs
    assert (first.start, first.end) == (None, "cleanout at corner 2")
    assert (second.start, second.end) == ("cleanout at corner 2", None)
    assert first.farthest_m == first.length_m
    assert (first.bends, second.bends) == (0, 0)


def test_the_pit_is_a_place_to_enter_through_a_tee() -> None:
    # The pit's middle 5 ft from the left wall: the tee stands on the long side below it.
    layout = made('cleanouts = [1]\n[sump]\nat = "10 ft, 4 ft"')
    found = cleaning(layout)
    assert found is not None
    assert layout.lead is not None
    near = min(found.runs, key=lambda run: run.length_m)
    assert {near.start, near.end} == {"sump pit", "cleanout at corner 1"}
    solid = layout.lead.end * layout.lead.stretch
    assert near.length_m - solid == pytest.approx((10 + 14 / 12) * FOOT)
    assert near.bends_deg == pytest.approx(90.0)
    assert sum(run.bends_deg for run in found.runs) == pytest.approx(3 * 90 + 2 * 90)


def test_a_bend_close_to_the_tee_is_counted() -> None:
    # 3 ft past corner 1 the tee of the pit's pipe: corners 1, 2 and 4, and the tee both ways.
    narrow = 'diameter = "12 in"\nstone_beside = "1 in"'
    found = cleaning(made(f'cleanouts = [3]\n[sump]\nat = "22 in, 4 ft"\n{narrow}'))
    assert found is not None
    assert sorted(run.bends for run in found.runs) == [2, 3]
    assert sum(run.bends_deg for run in found.runs) == pytest.approx(3 * 90 + 2 * 90)


def test_the_riser_reaches_the_finished_grade() -> None:
    layout = made("cleanouts = [1]")
    found = cleaning(layout)
    assert found is not None
    assert layout.drain is not None
    (place,) = found.access
    x, y = layout.drain.route.at(place.station_m)
    high = layout.ground.finished(x, y)
    assert place.riser_m == pytest.approx(high - layout.drain.centre(place.station_m))


def told(layout: Layout) -> dict[str, Finding]:
    return {finding.id: finding for finding in cleanout_findings(layout)}


GRADE = '[grade]\nat_wall = "6 ft"\nfall = "5 %"\n'
INSIDE = 'line = "inside"\noffset = "6 in"\nstone = { width = "12 in", bedding = "1 in" }\n'


def test_risers_end_with_a_plug_at_grade_outside_and_at_the_floor_inside() -> None:
    # The grade falls 5 % from 6 ft at the wall, its hips run out from the corners: there the riser
    # stands 14 in from either wall.
    layout = made(f"cleanouts = [1, 3]\n{GRADE}")
    found = cleaning(layout)
    assert found is not None
    assert layout.drain is not None
    top = 6 - 0.05 * 14 / 12  # 5'-11.3"
    high = top * FOOT - layout.drain.centre(0.0)
    for place in found.access:
        assert place.top_m == pytest.approx(top * FOOT)
        assert place.riser_m == pytest.approx(high)
        assert place.ends_at == "finished grade"
    # Down either riser and half of the pipe between: half of it all from each end.
    for run in found.runs:
        assert run.hose_m == pytest.approx(((LONG + SHORT) * FOOT + 2 * high) / 2)
    words = told(layout)["drain-risers"]
    assert words.severity == "fine"
    assert words.found.count("finished grade at +5'-11 5/16\" against TOF, a plug on it") == 2
    assert "two 45° elbows or a long sweep" in words.asked
    inside = cleaning(made(f"{INSIDE}cleanouts = [1]"))
    assert inside is not None
    assert {p.ends_at for p in inside.access} == {"finished floor"}


def test_no_cleanout_is_told() -> None:
    words = told(made(""))["drain-risers"]
    assert words.severity == "look"
    assert "No cleanout is given" in words.found


def test_a_blind_run_takes_a_hose_of_its_riser_and_all_of_it() -> None:
    found = cleaning(made("sides = [1, 2]\ncleanouts = [2]"))
    assert found is not None
    (place,) = found.access
    assert place.riser_m is not None
    for run in found.runs:
        assert run.hose_m == pytest.approx(run.length_m + place.riser_m)
    shut = cleaning(made(""))
    assert shut is not None
    assert [run.hose_m for run in shut.runs] == [None]


FALLS = '[drain]\nfall = "level"', '[drain]\nfall = "1/16 in per ft"'


def falling(more: str) -> Layout:
    return lay_out(read_design(HOUSE.replace(*FALLS).format(more=more)))


@pytest.mark.parametrize(
    ("corner", "away", "bends", "served"),
    [(3, 0.0, 0, True), (2, SHORT, 0, True), (1, SHORT + LONG, 1, False)],
)
def test_the_high_point_wants_a_cleanout_on_its_own_straight(
    corner: int, away: float, bends: int, served: bool
) -> None:
    # Low at corner 1 the ring is highest half way round, at corner 3.
    layout = falling(f"low_corner = 1\nhigh_corner = 3\ncleanouts = [{corner}]")
    found = cleaning(layout)
    assert found is not None
    (end,) = found.high_ends
    assert end.name == "high point"
    assert end.nearest == f"cleanout at corner {corner}"
    assert end.away_m == pytest.approx(away * FOOT, rel=1e-4, abs=1e-6)
    assert (end.bends, end.served) == (bends, served)
    assert told(layout)["drain-high-end"].severity == ("fine" if served else "look")


def test_the_high_point_half_way_round_from_a_pit_is_flushed_from_a_cleanout() -> None:
    # The tee stands 11'-2" along side 1; half way round is as far along side 3, on the straight
    # that ends at corner 4.
    layout = falling('cleanouts = [4]\n[sump]\nat = "10 ft, 4 ft"')
    found = cleaning(layout)
    assert found is not None
    (end,) = found.high_ends
    along = 10 + 14 / 12
    assert end.nearest == "cleanout at corner 4"
    assert end.bends == 0
    assert end.away_m == pytest.approx((LONG - along) * FOOT, rel=1e-4)
    # From a pit, low as it is, nothing is flushed down the fall.
    alone = cleaning(falling('[sump]\nat = "10 ft, 4 ft"'))
    assert alone is not None
    assert [(e.nearest, e.served) for e in alone.high_ends] == [(None, False)]


def test_closed_ends_are_told_and_a_level_ring_has_none() -> None:
    assert "drain-high-end" not in told(made("cleanouts = [1]"))
    layout = falling("sides = [1, 2]\ncleanouts = [2]\nlow_corner = 2")
    words = told(layout)["drain-high-end"]
    assert words.severity == "look"
    assert words.found.startswith("Closed end 1: ")
    assert "Closed end 2: " in words.found
    bare = falling("low_corner = 1\nhigh_corner = 3")
    assert "no cleanout anywhere" in told(bare)["drain-high-end"].found


@pytest.mark.parametrize("seed", seeds(15))
def test_random_designs_lose_no_pipe(seed: int) -> None:
    raw = seeded_raw(seed)
    layout = lay_out(design_of(raw)) if raw else None
    found = cleaning(layout) if layout else None
    if layout is None or found is None:
        assert layout is None or layout.drain is None
        return
    assert layout.drain is not None
    pits = sum((r.start == "sump pit") + (r.end == "sump pit") for r in found.runs)
    solid = layout.lead.end * layout.lead.stretch if layout.lead else 0.0
    whole = sum(run.length_m for run in found.runs) - pits * solid
    assert whole == pytest.approx(layout.drain.run_length, rel=1e-6)
    assert all(run.bends_deg >= 0 for run in found.runs)


def test_a_riser_is_told_by_its_corner_and_its_length() -> None:
    (found,) = (f for f in cleanout_findings(made("cleanouts = [1]")) if f.id == "drain-risers")
    assert found.found.startswith("Cleanout at corner 1: ")
