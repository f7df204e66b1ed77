"""Runs between places to get into the drain, on an invented box whose lengths are plain."""

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.water.cleanouts import cleaning
from tests.designs import design_of, seeded_raw

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


def test_the_riser_reaches_the_finished_grade() -> None:
    layout = made("cleanouts = [1]")
    found = cleaning(layout)
    assert found is not None
    assert layout.drain is not None
    (place,) = found.access
    x, y = layout.drain.route.at(place.station_m)
    high = layout.ground.finished(x, y)
    assert place.riser_m == pytest.approx(high - layout.drain.centre(place.station_m))


@pytest.mark.parametrize("seed", range(40))
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
