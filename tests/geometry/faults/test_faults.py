"""Every fault says where it is, what is wrong and what would be right."""

import re
import time

import misread_designs
import pytest
import unbuildable_designs
import warm_designs
import wet_designs
from sound_design import SOUND, Case, edited

from geometry.designfile import read_design
from geometry.errors import DesignError, Fault

CASES = (*misread_designs.ALL, *unbuildable_designs.ALL, *warm_designs.ALL, *wet_designs.ALL)


def faults_of(text: str) -> tuple[Fault, ...]:
    with pytest.raises(DesignError) as caught:
        read_design(text)
    return caught.value.faults


def line_of(text: str, fault: Fault) -> str:
    return text.split("\n")[fault.line - 1] if fault.line else ""


@pytest.mark.parametrize("case", CASES, ids=[f"{c.place}: {c.name}" for c in CASES])
def test_one_fault_is_said_once_in_its_place(case: Case) -> None:
    text = edited(case.edits)
    (fault,) = faults_of(text)
    assert fault.place == case.place
    assert case.on in line_of(text, fault)
    for words in case.words:
        assert words in fault.sentence


@pytest.mark.parametrize("case", CASES, ids=[f"{c.place}: {c.name}" for c in CASES])
def test_a_sentence_is_one_line_of_words(case: Case) -> None:
    (fault,) = faults_of(edited(case.edits))
    assert len(fault.sentence) <= 403
    assert fault.sentence.isprintable()
    assert not fault.sentence.endswith(".")
    programmers = {"Error", "None", "validation", "pydantic", "Traceback", "float", "str", "dict"}
    assert programmers.isdisjoint(re.findall(r"\w+", fault.sentence))


def test_the_sound_design_is_sound() -> None:
    assert [a.name for a in read_design(SOUND).areas] == ["basement", "porch"]


def test_many_faults_of_reading_are_said_together() -> None:
    text = edited(
        (
            ("[soil]", "[sole]"),
            ('width = "20 in"', "width = 20"),
            ('height = "8 ft"', 'height = "80 ft"'),
            ('"sand-c33"', '"sand-c34"'),
            ('"36 ft, 28 ft"', '"36 ft"'),
            ('at = "12 ft, 14 ft"\n', ""),
            ("cleanouts = [3]", "cleanouts = [3, 3]"),
            ('fall = "1/16 in per ft"', 'fall = "some"'),
        )
    )
    found = faults_of(text)
    assert [f.place for f in found] == [
        "footing > width",
        "wall > height",
        'floor > layer "sand" > material',
        'area "basement" > corners 3',
        'area "basement" > pier "P1" > at',
        "drain > fall",
        "sole",
    ]
    lines = [f.line for f in found]
    assert lines == sorted(lines, key=lambda n: n or 0)


def test_cleanouts_are_not_judged_where_the_corners_could_not_be_read() -> None:
    text = edited((("cleanouts = [3]", "cleanouts = [9]"), ('"36 ft, 28 ft"', '"36 ft"')))
    assert [f.place for f in faults_of(text)] == ['area "basement" > corners 3']


def test_float_levels_are_not_judged_where_the_pit_could_not_be_read() -> None:
    pump = 'depth = "lots"\npump = { off = "4 in", on = "4 ft" }'
    assert [f.place for f in faults_of(edited((('depth = "30 in"', pump),)))] == ["sump > depth"]


def test_many_faults_of_building_are_said_together() -> None:
    text = edited(
        (
            ('cover = "3 in"', 'cover = "6 in"'),
            ('"12 ft, 14 ft"', '"12 ft, 40 ft"'),
            ('column_size = "10 in"', 'column_size = "40 in"'),
            ("rows = [-60, 60]", "rows = [0, 1]"),
            ('working_space = "2 ft"', 'working_space = "1 ft"'),
            ('at_wall = "7 ft"', 'at_wall = "9 ft"'),
            ('instrument = "104 ft"', 'instrument = "904 ft"'),
            ('"concrete", thickness = "4 in"', '"conkrete", thickness = "4 in"'),
        )
    )
    assert {f.place for f in faults_of(text)} == {
        "datum > instrument",
        "footing > bars > cover",
        'floor > layer "slab" > material',
        'area "basement" > pier "P1" > at',
        'area "basement" > pier "P2" > column_size',
        "drain > holes > rows",
        "excavation > working_space",
        "grade > at_wall",
    }


def test_a_house_wide_fault_is_said_once_for_all_areas() -> None:
    text = edited((('[wall]\nthickness = "8 in"', '[wall]\nthickness = "24 in"'),))
    (fault,) = faults_of(text)
    assert fault.place == "footing > width"


def test_one_misread_value_brings_no_false_followers() -> None:
    # The stone's name is what the tie speaks of; its misread thickness must not unname it.
    text = edited(
        (
            ('"stone-57", thickness = "6 in"', '"stone-57", thickness = "lots"'),
            ("sand top", "stone top"),
        )
    )
    assert [f.place for f in faults_of(text)] == ['floor > layer "stone" > thickness']


def test_metric_designs_hear_metric_limits() -> None:
    metric = ('name = "Two rooms (invented)"', 'name = "x"\nunits = "metric"')
    for edit, words in (
        (('width = "20 in"', 'width = "5 mm"'), "give 204 mm to 2438 mm, such as 508 mm"),
        (('thickness = "4 in"', 'thickness = "1 m"'), "give 26 mm to 609 mm"),
        (('"1/16 in per ft"', '"40 %"'), "give level to 25 %, such as 1 %"),
        (('"12 ft, 14 ft"', '"24 ft, 14 ft"'), "the pads of piers P1 and P2 overlap"),
        (('working_space = "2 ft"', 'working_space = "1 ft"'), "dig at least 407 mm"),
    ):
        (fault,) = faults_of(edited((metric, edit)))
        assert words in fault.sentence


def test_a_flood_of_huge_numbers_is_no_trouble() -> None:
    many = ", ".join(["0x" + "f" * 1200] * 3)
    text = "".join(f"k{n} = [{many}]\n" for n in range(100))
    assert {f.sentence[:24] for f in faults_of(text)[:-1]} == {"this is no number for a "}


def test_a_flood_of_faults_is_cut_short() -> None:
    areas = "".join(f'[[area]]\nname = "a{n}"\ncorners = ["x"]\n' for n in range(19))
    layers = "".join(f'[[floor.layer]]\nname = "b{n}"\n' for n in range(25))
    found = faults_of(f'[project]\nname = "x"\n{layers}{areas}')
    assert len(found) == 51
    assert found[-1].sentence == "more faults follow; mend these first"


@pytest.mark.slow
@pytest.mark.parametrize(
    "row", ["k{0} = 1", "k{0} = true", "[[area]]", "[k{0}]", "[[floor.layer]]\nx = 1"]
)
def test_a_large_file_of_nonsense_is_answered_soon(row: str) -> None:
    text = "\n".join(row.format(n) for n in range(20_000))
    started = time.perf_counter()
    assert len(faults_of(text)) <= 51
    assert time.perf_counter() - started < 20


def test_a_discharge_pipe_just_as_high_as_the_pit_is_deep_is_no_fault() -> None:
    curve = 'curve = ["18 ft, 0 gpm", "5 ft, 40 gpm"], lift = "30 in"'
    pump = f'depth = "30 in"\npump = {{ off = "4 in", on = "12 in", {curve} }}'
    assert read_design(edited((('depth = "30 in"', pump),))).sump is not None
