"""Designs side by side: what moves is what the arithmetic by hand says, and nothing else."""

from dataclasses import fields

import pytest

from geometry.errors import BedcourseError
from geometry.units import FOOT, INCH
from geometry.variants.compare import compare, variant
from geometry.variants.rows import moves

# Invented: 24 ft by 16 ft outside, 8 in walls; the foam runs to the wall, over the footing.
WIDE, DEEP, WALL = 24 * FOOT, 16 * FOOT, 8 * INCH
HOUSE = """
[project]
name = "Plain house (invented)"
[footing]
width = "20 in"
thickness = "10 in"
[wall]
thickness = "8 in"
height = "4 ft"
[floor]
tie = "foam bottom at TOF"
layer = [
    { name = "stone", material = "stone-57", thickness = "4 in", role = "base" },
    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },
    { name = "slab", material = "concrete", thickness = "4 in", role = "slab" },
]
[[area]]
name = "cellar"
corners = ["0, 0", "24 ft, 0", "24 ft, 16 ft", "0, 16 ft"]
"""
FOAM = 'thickness = "2 in", role = "insulation"'


def held(*texts):
    return compare([variant(f"design {n}", text) for n, text in enumerate(texts, 1)])


@pytest.fixture(scope="module")
def thicker():
    return held(HOUSE, HOUSE.replace(FOAM, 'thickness = "3 in", role = "insulation"'))


def test_identical_designs_have_no_difference():
    written_otherwise = HOUSE.replace('"2 in"', '"50.8 mm"').replace('"4 ft"', '"48 in"')
    found = held(HOUSE, written_otherwise)
    assert found.same
    lists = [f.name for f in fields(found) if f.name not in ("names", "costs", "currency")]
    assert all(getattr(found, name) == () for name in lists)


def test_thicker_foam_is_told_in_the_files_own_words(thicker):
    assert not thicker.same
    assert [(row.place, row.words) for row in thicker.written] == [
        ('floor > layer "foam" > thickness', ("2 in", "3 in"))
    ]


def test_thicker_foam_lifts_what_lies_over_it_and_nothing_else(thicker):
    """Foam's bottom is tied to TOF: 2 in or 3 in of foam, then 4 in of slab."""
    found = {row.interface: row for row in thicker.levels}
    assert set(found) == {"foam top", "slab top (finished floor)"}
    assert found["foam top"].levels_m == pytest.approx((2 * INCH, 3 * INCH))
    assert found["slab top (finished floor)"].levels_m == pytest.approx((6 * INCH, 7 * INCH))
    assert moves(found["foam top"].levels_m) == pytest.approx((0, 1 * INCH))


def test_thicker_foam_takes_its_area_times_an_inch_more(thicker):
    room = (WIDE - 2 * WALL) * (DEEP - 2 * WALL)
    (foam,) = (row for row in thicker.volumes if row.role == "insulation")
    assert foam.volumes_m3 == pytest.approx((room * 2 * INCH, room * 3 * INCH))
    bought = [row for row in thicker.materials if row.material == "xps-iv"]
    assert moves(bought[0].volumes_m3)[1] == pytest.approx(room * INCH)
    assert not [row for row in thicker.volumes if row.role in ("slab", "base")]


def test_thicker_foam_keeps_heat_in(thicker):
    by_what = {row.what: row.values for row in thicker.warmth}
    assert by_what["loss"][1] < by_what["loss"][0]
    assert by_what["u"][1] < by_what["u"][0]


def test_the_order_differs_by_whole_sheets():
    """A room of 32 ft by 8 ft takes 8 boards of 4 ft by 8 ft, one of 32 ft by 12 ft takes 12."""
    rooms = []
    for deep in (8, 12):
        corners = f'"0, 0", "33 ft 4 in, 0", "33 ft 4 in, {deep} ft 16 in", "0, {deep} ft 16 in"'
        text = HOUSE.replace('"0, 0", "24 ft, 0", "24 ft, 16 ft", "0, 16 ft"', corners)
        text = text.replace(f"{deep} ft 16 in", f"{deep + 1} ft 4 in")
        rooms.append(f'{text}\n[order]\ncurrency = "USD"\nboard = {{ spare = "0 %" }}\n'
                     'price = [{ of = "xps-iv", each = 40, per = "board" }]\n')  # fmt: skip
    found = held(*rooms)
    (foam,) = (row for row in found.order if row.item == "Foam")
    assert foam.counts == (8, 12)
    assert foam.sold == ("board", "board")
    assert foam.middles == (320, 480)
    assert found.order[0] is foam, "what costs most stands first"
    assert [money[0] for money in found.costs] == [320, 480]


def test_a_finding_that_comes_or_grows_graver_is_named():
    """Tied 8 in lower, stone's bottom is at -12 in, 2 in under the footing's bottom at -10 in."""
    found = held(HOUSE, HOUSE.replace("foam bottom at TOF", "foam bottom at TOF -8 in"))
    rows = {row.id: row for row in found.findings}
    dug = rows["subgrade-above-footing"]
    assert dug.severities == ("fine", "stop")
    assert dug.way(1) == "worse"
    assert "2" in dug.found[1]
    assert found.findings[0].severities[1] == "stop", "the gravest stands first"


def test_layers_put_in_taken_out_or_turned_round_are_told_by_name():
    sand = (
        '    { name = "sand", material = "sand-c33", thickness = "1/2 in", role = "blinding" },\n'
    )
    more = HOUSE.replace('    { name = "foam"', f'{sand}    {{ name = "foam"')
    turned = more.replace(sand, "").replace('    { name = "stone"', f'{sand}    {{ name = "stone"')
    found = held(HOUSE, more, turned)
    told = {row.place: row.words for row in found.written}
    assert told['floor > layer "sand"'] == ("–", "given", "given")
    assert told["floor > layer, in order"][1] == "stone, sand, foam, slab"
    assert told["floor > layer, in order"][2] == "sand, stone, foam, slab"


def test_of_several_areas_the_one_that_differs_is_named():
    corners = '"24 ft, 0", "40 ft, 0", "40 ft, 16 ft", "24 ft, 16 ft"'
    two = f'{HOUSE}[[area]]\nname = "shed"\ncorners = [{corners}]\n'
    own = two + 'wall = { height = "5 ft" }\n'
    place = 'area "shed" > wall > height'
    assert [(r.place, r.words) for r in held(two, own).written] == [(place, ("4 ft", "5 ft"))]
    both = two.replace('height = "4 ft"', 'height = "5 ft"')
    assert [r.place for r in held(two, both).written] == ["wall > height"]


def test_one_or_five_designs_are_refused():
    one = variant("one", HOUSE)
    for count in (1, 5):
        with pytest.raises(BedcourseError, match="2 to 4"):
            compare([one] * count)
