"""Whose shots are whose, what lies on the dug ground, and the figures given to other programs."""

import json

import numpy as np
import pytest

from geometry.layout.lay import Layout
from geometry.survey.asdug import AsDug, as_dug
from geometry.survey.reading import read_shots
from geometry.survey.reported import survey_figures
from geometry.survey.shots import Shots, ground_shots
from tests.geometry.survey.surveyed import dry_house, dug
from tests.houses import HOUSE, WITH_GARAGE, house

INCH, FOOT = 0.0254, 0.3048
HEAD = "point,x (ft),y (ft),level (in),what\n"
# The house's floor lies within its footing, 14 in from the outside of its 8 in wall.
ACROSS, UP = (30 * 12 - 28) * INCH, (20 * 12 - 28) * INCH
# Of the house without its pit nothing stands in the base but the pier's pad.
NO_PIER = ('[[area.pier]]\nname = "P1"\nat = "15 ft, 10 ft"\nmaterial = "concrete-3000"\n', "")


def survey(layout: Layout, rows: str) -> AsDug:
    return as_dug(layout, read_shots(HEAD + rows, layout.design))


def level_ground(layout: Layout, over_subgrade_m: float) -> Shots:
    x, y = np.array([(0.0, 0.0), (9.2, 0.0), (9.2, 6.2), (0.0, 6.2), (4.0, 3.0)]).T
    return ground_shots(x, y, np.full(5, layout.areas[0].subgrade + over_subgrade_m))


def test_a_shot_beyond_all_walls_belongs_to_the_nearest_area() -> None:
    """The garage stands from 30 ft to 50 ft beside the basement, its ground some 3 ft higher."""
    layout = house(WITH_GARAGE)
    low, high = (a.subgrade / INCH for a in layout.areas)
    own = {
        "basement": [(-1, 5), (10, -2), (29, 21), (15, 10), (30, 10)],
        "garage": [(51, 5), (40, -2), (31, 21), (45, 10), (50, 10)],
    }
    rows = [
        f"{name}-{n},{x},{y},{level},"
        for (name, places), level in zip(own.items(), (low, high), strict=True)
        for n, (x, y) in enumerate(places)
    ]
    found = survey(layout, "\n".join(rows[k] for k in (5, 0, 1, 6, 2, 7, 8, 3, 9, 4)))
    assert not found.faults
    for area in found.areas:
        names = {found.shots.name(int(n)) for n in area.index}
        assert names == {f"{area.name}-{n}" for n in range(5)}
        assert area.ground.cut_m3 == pytest.approx(0, abs=1e-9)


def test_concrete_alone_and_no_file_at_all_are_told_once() -> None:
    layout = house()
    (fault,) = survey(layout, "f,0,10,0,footing\n").faults
    assert (fault.weight, fault.sentence) == ("file", "no shot of the ground is left")
    faults = survey(layout, "f,0,10,0,footing\ng,4,4,-6,attic\n").faults
    assert [f.weight for f in faults] == ["row", "file"]
    (fault,) = as_dug(layout, read_shots("", layout.design)).faults
    assert "holds no shots" in fault.sentence


@pytest.mark.parametrize(("thick", "least"), [(6, 4), (4, 4), (3, 3)])
def test_the_least_base_is_four_inches_or_all_that_is_planned(thick: int, least: int) -> None:
    """Four inches: IRC R506.2.2, as the finding names it."""
    layout = house(('material = "stone-57", thickness = "6 in"',
                    f'material = "stone-57", thickness = "{thick} in"'))  # fmt: skip
    just = dug(layout, level_ground(layout, (thick - least) * INCH)).ground
    assert just.least_m == pytest.approx(least * INCH)
    assert just.thin_m2 == 0
    short = dug(layout, level_ground(layout, (thick - least + 0.01) * INCH)).ground
    assert short.thin_m2 == pytest.approx(short.area_m2)
    assert dug(layout, level_ground(layout, 0), least_m=0.2).ground.least_m == 0.2


def test_level_ground_on_a_bare_floor_is_a_box() -> None:
    """Six inches of base planned, dug one inch too high; then over the base's top by one."""
    layout = house(("[sump]\n" + 'at = "4 ft, 5 ft"\npump = { off = "4 in", on = "12 in" }\n', ""),
                   NO_PIER)  # fmt: skip
    floor = ACROSS * UP
    high = dug(layout, level_ground(layout, INCH))
    assert high.bed.pipe_m3 == 0
    assert high.ground.area_m2 == pytest.approx(floor)
    assert high.ground.planned_m3 == pytest.approx(floor * 6 * INCH)
    assert high.ground.base_m3 == pytest.approx(floor * 5 * INCH)
    assert high.ground.cut_m3 == pytest.approx(floor * INCH)
    assert high.ground.mean_m == pytest.approx(5 * INCH)
    assert high.ground.thickest.value == pytest.approx(5 * INCH)
    assert (high.ground.no_room_m3, high.ground.low_m3) == pytest.approx((0, 0), abs=1e-9)
    over = dug(layout, level_ground(layout, 7 * INCH)).ground
    assert over.base_m3 == pytest.approx(0, abs=1e-9)
    assert over.no_room_m3 == pytest.approx(floor * INCH)
    assert over.thinnest.value == pytest.approx(-INCH)
    low = dug(layout, level_ground(layout, -2 * INCH)).ground
    assert low.base_m3 == pytest.approx(floor * 8 * INCH)
    assert low.low_m3 == pytest.approx(floor * 2 * INCH)


def test_half_the_floor_shot_leaves_half_of_the_base_beyond() -> None:
    layout = house(NO_PIER)
    x = np.array([0.0, 15.0, 15.0, 0.0]) * FOOT
    y = np.array([0.0, 0.0, 20.0, 20.0]) * FOOT
    found = dug(layout, ground_shots(x, y, np.full(4, layout.areas[0].subgrade)))
    half = (15 * 12 - 14) * INCH * UP
    assert found.ground.beyond_m2 == pytest.approx(half)
    assert found.ground.base_beyond_m3 == pytest.approx(half * 6 * INCH)
    assert found.ground.base_m3 == pytest.approx(found.ground.planned_m3)


DRAINAGE = HOUSE[HOUSE.index("\n[drain]") : HOUSE.index("\n[soil]")]
ANNEX = """
[[area]]
name = "annex"
step = "4 in"
corners = ["30 ft, 0", "50 ft, 0", "50 ft, 20 ft", "30 ft, 20 ft"]
"""
FALL = 'fall = "1/16 in per ft"'
WAYS = {
    "a drain under the floor": (FALL, f'{FALL}\nline = "inside"'),
    "a vent pipe through it": ("[soil]", '[vent]\nat = "22 ft, 12 ft"\n\n[soil]'),
    "a neighbour one step up": (DRAINAGE, ANNEX),
}


@pytest.mark.parametrize("way", WAYS)
def test_a_floor_dug_as_planned_takes_the_planned_base_whatever_stands_in_it(way: str) -> None:
    layout, plain = house(WAYS[way]), house()
    for area in layout.areas:
        left, low, right, high = area.outline.buffer(-0.01).bounds
        x, y = np.array([(left, low), (right, low), (right, high), (left, high)]).T
        found = dug(layout, ground_shots(x, y, np.full(4, area.subgrade)))
        assert found.name == area.name
        assert found.ground.base_m3 == pytest.approx(found.ground.planned_m3, rel=1e-9)
        if way != "a neighbour one step up":
            assert found.ground.planned_m3 < dug(plain, level_ground(plain, 0)).ground.planned_m3


def test_figures_for_other_programs_are_what_was_found() -> None:
    """A hump of 1 1/2 in, a hollow of 2 in, a footing 3/4 in too high, a shot beside the floor."""
    layout = dry_house()
    ground = "".join(
        f"g{x}-{y},{x},{y},{-4.5 if (x, y) == (8, 8) else -8 if (x, y) == (20, 12) else -6},\n"
        for x in range(0, 31, 2)
        for y in range(0, 21, 2)
    )
    found = survey(layout, ground + "f,0,10,0.75,footing\np,15,10,-0.25,pad P1\nd,1,1,0,what\n")
    figures = json.loads(json.dumps(survey_figures(found)))
    assert figures["shots"] == 16 * 11 + 2
    (fault,) = figures["faults"]
    assert (fault["row"], fault["weight"]) == (16 * 11 + 4, "row")
    (area,) = figures["areas"]
    assert (area["area"], area["layer"], area["shots"]) == ("basement", "stone", 16 * 11)
    # From 2 ft to 28 ft and to 18 ft they lie on the floor, but for two on the pier's pad.
    assert area["shots_outside_the_floor"] == 16 * 11 - (14 * 9 - 2)
    assert area["planned_top_m"] == pytest.approx(0)
    assert area["planned_subgrade_m"] == pytest.approx(-6 * INCH)
    ground = area["ground"]
    assert ground["area_m2"] == pytest.approx(ACROSS * UP - (36 * INCH) ** 2)
    hump, hollow = (8 * FOOT, 8 * FOOT), (20 * FOOT, 12 * FOOT)
    for name, place, thick in (("thinnest", hump, 4.5), ("thickest", hollow, 8)):
        assert ground[name] == pytest.approx({"value": thick * INCH, "x": place[0], "y": place[1]})
    for name, place, off in (("high", hump, 1.5), ("low", hollow, -2)):
        (worst,) = area[f"{name}_spots"]["worst"]
        assert area[f"{name}_spots"]["count"] == 1
        assert (worst["kind"], worst["off_m"]) == (name, pytest.approx(off * INCH))
        assert (worst["x"], worst["y"]) == pytest.approx(place)
    ponds = area["ponds"]
    assert (ponds["count"], ponds["volume_m3"], ponds["deepest"]) == (0, 0, [])
    assert ponds["ends"] == pytest.approx([*hollow, -8 * INCH])
    assert {k: n for k, n in area["foam"].items() if n} == {
        "lies flat": 124, "outside the floor": 52,
    }  # fmt: skip
    assert {k: n for k, n in figures["foam_on_footing"].items() if n} == {"lifts off": 1}
    footing, pad = figures["tops"]
    assert (footing["shot"], footing["on"], footing["within"]) == ("f", "footing", False)
    assert (pad["shot"], pad["on"], pad["within"]) == ("p", "pad P1", True)
    assert (footing["off_m"], pad["off_m"]) == pytest.approx((0.75 * INCH, -0.25 * INCH))
    tolerance = footing["tolerance"]
    assert (tolerance["above_m"], tolerance["below_m"]) == pytest.approx((0.5 * INCH, 2 * INCH))
    assert "ACI 117" in tolerance["source"]


def test_ponds_are_given_deepest_first() -> None:
    """Two hollows of 1 in and 1 1/2 in beside the lowest shot, at which water ends."""
    layout = dry_house()
    deep = {(6, 6): -7, (24, 6): -7.5, (15, 16): -9}
    rows = "".join(f"s,{x},{y},{deep.get((x, y), -6)},\n"
                   for x in range(0, 31, 3) for y in range(1, 21, 3 if x % 2 else 5))  # fmt: skip
    rows += "".join(f"s,{x},{y},{level},\n" for (x, y), level in deep.items())
    (area,) = survey_figures(survey(layout, rows))["areas"]
    assert [p["spill_m"] - p["bottom_m"] for p in area["ponds"]["deepest"]] == pytest.approx(
        [1.5 * INCH, INCH]
    )
    volumes = [p["volume_m3"] for p in area["ponds"]["deepest"]]
    assert area["ponds"]["volume_m3"] == pytest.approx(sum(volumes))
