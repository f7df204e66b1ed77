"""Spots, tops of concrete, foam, doubts and findings for shots held against a design."""

from pathlib import Path

import numpy as np
import pytest

from geometry.checks.survey import survey_findings
from geometry.designfile import load, read_design
from geometry.layout.lay import Layout, lay_out
from geometry.survey.asdug import AsDug, as_dug
from geometry.survey.reading import read_shots
from geometry.survey.shots import Shots, ground_shots
from tests.geometry.survey.surveyed import dug, random_shots
from tests.houses import WITH_GARAGE, house

INCH = 0.0254
HEAD = "point,x (ft),y (ft),level (in),what\n"
# Subgrade of the house lies 6 in under top of footing, its base is 6 in thick.
CORNERS = "".join(f"c{n},{x},{y},-6,\n" for n, (x, y) in enumerate(
    [(1, 1), (29, 1), (29, 19), (1, 19), (10, 10), (20, 10)]))  # fmt: skip


def read(layout: Layout, rows: str) -> AsDug:
    return as_dug(layout, read_shots(HEAD + CORNERS + rows, layout.design))


def ids(layout: Layout, found: AsDug) -> dict[str, str]:
    return {f.id: f.severity for f in survey_findings(layout, found)}


def test_a_floor_dug_as_planned_is_fine() -> None:
    layout = house()
    found = read(layout, "f,0,10,0,footing\np,15,10,0,pad P1\n")
    assert not found.faults
    assert ids(layout, found) == {
        "survey-base-volume": "fine", "survey-base-thin": "fine", "survey-concrete": "fine",
    }  # fmt: skip
    (area,) = found.areas
    assert area.foam.count("lies flat") + area.foam.count("outside the floor") == 6


def test_a_hump_and_a_hole_are_found_where_they_are() -> None:
    layout = house()
    found = read(layout, "h,12,6,-4.5,\nl,20,14,-9,\n")
    (area,) = found.areas
    (high,), (low,) = area.high.worst, area.low.worst
    assert (high.x / 12 / INCH, high.y / 12 / INCH) == pytest.approx((12, 6))
    assert high.off_m == pytest.approx(1.5 * INCH)
    assert (low.x / 12 / INCH, low.y / 12 / INCH) == pytest.approx((20, 14))
    assert low.off_m == pytest.approx(-3 * INCH)
    assert high.volume_m3 < area.ground.cut_m3
    assert low.volume_m3 < area.ground.low_m3
    assert {"survey-high-spots", "survey-low-spots"} <= set(ids(layout, found))


def test_ground_above_the_base_lifts_the_foam() -> None:
    layout = house()
    found = read(layout, "h,12,6,0.5,\nt,20,14,-3,\n")
    (area,) = found.areas
    verdicts = {row.shot: (row.verdict, row.meets_tof) for row in area.foam.rows()}
    assert verdicts["h"] == ("lifts off", False)
    assert verdicts["t"] == ("lies flat, base thin", True)
    said = ids(layout, found)
    assert said["survey-foam-ground"] == "stop"
    assert said["survey-base-thin"] == "stop"


def test_tops_of_concrete_within_their_tolerances() -> None:
    rows = (
        "f1,0,10,0.5,footing\nf2,30,10,0.6,footing\nf3,0,5,-2,footing\nf4,0,6,-2.1,footing\n"
        "p1,15,10,-0.25,pad P1\np2,15,10.5,0.75,pad P1\nbeside,15,5,0,footing\n"
    )
    found = read(house(), rows)
    assert {top.shot: top.within for top in found.tops} == {
        "f1": True, "f2": False, "f3": True, "f4": False, "p1": True, "p2": False, "beside": True,
    }  # fmt: skip
    (fault,) = found.faults
    assert "lies beside it" in str(fault)
    foam = {row.shot: row.verdict for row in found.foam_on_footing.rows()}
    assert (foam["f1"], foam["f3"], foam["f2"]) == ("lifts off", "gap under it", "lifts off")
    masonry = house(('height = "8 ft"', 'height = "8 ft"\nkind = "concrete block"'))
    tight = {top.shot: top.within for top in read(masonry, rows).tops}
    assert not tight["f3"]
    assert tight["f1"]


def test_a_shot_off_its_neighbours_is_named_and_kept() -> None:
    layout = house()
    shots = random_shots(layout, lambda x, y: -0.15 + 0.05 * x + 0 * y, count=60)
    shots.level[17] += 0.4
    found = as_dug(layout, shots)
    (fault,) = found.faults
    assert fault.row == 18
    assert fault.weight == "doubt"
    assert "above the ground its neighbours make" in str(fault)
    assert found.areas[0].surface.level.max() == shots.level.max()


def test_a_steep_ramp_alone_raises_no_doubt() -> None:
    layout = house()
    corners = np.array([0.0, 9.0, 9.0, 0.0, 4.0]), np.array([0.0, 0.0, 6.0, 6.0, 3.0])
    assert not as_dug(layout, ground_shots(*corners, -0.5 + 0.08 * corners[0])).faults


@pytest.mark.parametrize(
    ("places", "sentence"),
    [
        ([(1, 1), (2, 2)], "a surface needs three"),
        ([(1, 1), (2, 2), (5, 5), (3, 3)], "on one line"),
    ],
)
def test_too_few_shots(places: list[tuple[float, float]], sentence: str) -> None:
    x, y = np.array(places, float).T
    found = as_dug(house(), ground_shots(x, y, np.full(len(x), -0.2)))
    assert not found.areas
    assert sentence in str(found.faults[0])


def test_each_area_is_reckoned_from_its_own_ground() -> None:
    layout = house(WITH_GARAGE)
    low = random_shots(layout, lambda x, y: 0 * (x + y) + layout.areas[0].subgrade, count=80)
    dice = np.random.default_rng(4)
    left, bottom, right, top = layout.areas[1].outline.bounds
    x, y = dice.uniform(left + 0.6, right, 50), dice.uniform(bottom, top, 50)
    both = ground_shots(
        np.concatenate((low.x, x)),
        np.concatenate((low.y, y)),
        np.concatenate((low.level, np.full(50, layout.areas[1].subgrade + 0.01))),
    )
    inside = both.x < left
    kept = inside | (np.arange(len(both)) >= 80)
    found = as_dug(layout, ground_shots(both.x[kept], both.y[kept], both.level[kept]))
    first, second = found.areas
    assert (first.name, second.name) == ("basement", "garage")
    assert first.ground.cut_m3 == pytest.approx(0, abs=1e-9)
    assert second.ground.cut_m3 == pytest.approx(0.01 * second.ground.area_m2, rel=1e-9)
    # The basement's ground alone says nothing about the garage, which it touches.
    alone = as_dug(layout, low)
    assert [area.name for area in alone.areas] == ["basement"]
    assert any("garage is not reckoned" in str(fault) for fault in alone.faults)


def test_the_bundled_shots_are_invented_and_sound() -> None:
    folder = Path(__file__).parents[3] / "assets" / "examples"
    layout = lay_out(read_design(load(folder / "l-basement.toml")))
    text = (folder / "l-basement-shots.csv").read_text(encoding="utf-8")
    assert "INVENTED" in text
    shots: Shots = read_shots(text, layout.design)
    assert not shots.faults
    found = as_dug(layout, shots)
    assert [area.name for area in found.areas] == ["basement"]
    assert 0 < dug(layout, shots).ground.beyond_m2 < 1


def test_foam_on_a_footing_as_built_lies_within_what_a_board_bridges() -> None:
    """The foam's underside is planned at TOF; a board bridges 1/4 in either way."""
    heights = {"f1": 0.24, "f2": 0.26, "f3": -0.24, "f4": -0.26}
    rows = "".join(
        f"{name},0,{n + 5},{up},footing\n" for n, (name, up) in enumerate(heights.items())
    )
    found = {row.shot: row for row in read(house(), rows).foam_on_footing.rows()}
    assert {name: row.verdict for name, row in found.items()} == {
        "f1": "lies flat", "f2": "lifts off", "f3": "lies flat", "f4": "gap under it",
    }  # fmt: skip
    for name, up in heights.items():
        assert found[name].gap_m == pytest.approx(-up * INCH)
        assert found[name].meets_tof == (abs(up) < 0.25)


def test_foam_that_stops_at_the_footing_is_not_judged_on_it() -> None:
    layout = house(("foam bottom at TOF", "foam top at TOF"))
    (row,) = read(layout, "f,0,10,0.5,footing\n").foam_on_footing.rows()
    assert (row.verdict, row.meets_tof) == ("not over footing", None)
    assert row.gap_m == pytest.approx(
        -2.5 * INCH
    )  # 2 in of foam under TOF, the footing 1/2 in high


@pytest.mark.parametrize(("inches", "words"), [(18, "1'-6\" above"), (-18, "1'-6\" below")])
@pytest.mark.parametrize("tilt", [0.0, 0.05])
def test_a_shot_off_a_plane_is_told_by_how_much(inches: int, words: str, tilt: float) -> None:
    shots = random_shots(house(), lambda x, y: -0.15 + tilt * (x - 4.5) + 0 * y, count=60)
    inner = int(np.argmin(np.hypot(shots.x - 4.5, shots.y - 3.0)))
    shots.level[inner] += inches * INCH
    (fault,) = as_dug(house(), shots).faults
    assert fault.row == inner + 1
    assert f"it lies {words} the ground its neighbours make" in str(fault)


@pytest.mark.parametrize(("off", "word"), [(0.8, "above"), (-0.8, "below")])
def test_ground_far_off_the_floor_is_not_its_own(off: float, word: str) -> None:
    shots = random_shots(house(), lambda x, y: -0.1524 + off + 0 * x * y, count=40)
    found = as_dug(house(), shots)
    assert found.areas == ()
    (fault,) = found.faults
    assert "basement is not reckoned: half of its 40 shots lie 2'-7" in str(fault)
    assert f"or more {word} its planned subgrade" in str(fault)


def test_the_top_farthest_off_is_named() -> None:
    layout = house()
    found = read(layout, "f1,0,10,0.1,footing\nf2,30,10,0.6,footing\nf3,0,5,-1,footing\n")
    (told,) = (f for f in survey_findings(layout, found) if f.id == "survey-concrete")
    assert "2 of 3 shots within tolerance" in told.found
    assert "is shot f3 (row 10), -0'-1\"" in told.found
    lone = read(layout, "h,12,6,0.5,\n")
    words = {f.id: f.found for f in survey_findings(layout, lone)}
    assert words["survey-foam-ground"].startswith("at 1 shot the ground stands above")
