"""Odd but honest files of shots, and torn ones: every row is read or named, none is guessed."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.designfile import read_design
from geometry.project import Design
from geometry.survey.asdug import as_dug
from geometry.survey.reading import LARGEST_BYTES, MOST_COLUMNS, MOST_SHOTS, read_shots
from geometry.survey.shots import Shots
from tests.houses import HOUSE, edited, house
from tests.rolls import rolls

INCH, FOOT, MM = 0.0254, 0.3048, 0.001
DESIGN = read_design(HOUSE)
HEAD = "x (ft),y (ft),level (in),what\n"


def read(text: str | bytes, design: Design = DESIGN) -> Shots:
    return read_shots(text, design)


def named(shots: Shots) -> dict[int | None, str]:
    return {fault.row: fault.sentence for fault in shots.faults}


def test_a_head_with_a_unit_takes_what_rods_and_spreadsheets_write() -> None:
    shots = read("x (ft),y (ft),rod (in)\n1e1,2,57 1/2\n-2.5E-1,3,1/4\n+.5e0,4,57-1/16\n")
    assert not shots.faults
    np.testing.assert_allclose(shots.x / FOOT, [10, -0.25, 0.5])
    # The laser stands 48 in above top of footing.
    np.testing.assert_allclose(shots.level / INCH, [48 - 57.5, 48 - 0.25, 48 - 57.0625])


def test_a_fraction_of_feet_or_without_any_unit_is_not_guessed() -> None:
    (fault,) = read("x (ft),y (ft),level (in)\n1 1/2,2,-9\n3,2,-9\n").faults
    assert "row 2: x is wrong: '1 1/2' has no unit; write it like" in str(fault)
    (fault,) = read('x,y (ft),level (in)\n1/2,2,-9\n"3 ft",2,-9\n').faults
    assert 'row 2: x 1/2 has no unit; put it into the head, such as "x (ft)"' in str(fault)


cells = st.one_of(
    st.floats(-80, 80).map(repr),
    st.integers(-80, 80).map(str),
    st.decimals(-80, 80, places=3).map(str),
    st.floats(-80, 80).map(lambda v: f"{v:+.2E}"),
)


@settings(max_examples=rolls(20), deadline=None)
@given(st.lists(cells, min_size=1, max_size=8), st.sampled_from(["ft", "m", "in"]))
def test_one_bad_row_changes_no_other(column: list[str], unit: str) -> None:
    rows = [f"{cell},{n},-9" for n, cell in enumerate(column)]
    head = f"x ({unit}),y (ft),level (in)\n"
    whole = read(head + "\n".join(rows))
    assert not whole.faults
    scale = {"ft": FOOT, "m": 1.0, "in": INCH}[unit]
    np.testing.assert_allclose(whole.x, [float(cell) * scale for cell in column])
    torn = read(head + "\n".join([*rows, "nonsense,1,-9"]))
    np.testing.assert_array_equal(torn.x, whole.x)
    assert list(named(torn)) == [len(rows) + 2]


def test_what_a_shot_stands_on_in_any_writing() -> None:
    two = read_design(edited(("[drain]", '[[area.pier]]\nat = "8 ft, 10 ft"\n'
                              'material = "concrete-3000"\n\n[drain]')))  # fmt: skip
    words = ("", "Ground", " cut ", "pad p1", "PIER  P2", "tof", "pad", "pad P3", "roof", "")
    shots = read(HEAD + "".join(f"{n},1,-9,{what}\n" for n, what in enumerate(words)), two)
    assert [str(shots.whats[code]) for code in shots.code] == [
        "ground", "ground", "ground", "pad P1", "pad P2", "footing", "ground",
    ]  # fmt: skip
    assert len(set(shots.whats)) == len(shots.whats)
    wrong = named(shots)
    assert set(wrong) == {8, 9, 10}
    assert (
        "'roof' is not known; write nothing for the ground, footing or pad P1, pad P2" in wrong[10]
    )
    bare = read_design(HOUSE[: HOUSE.index("[[area.pier]]")] + HOUSE[HOUSE.index("[drain]") :])
    (fault,) = read(HEAD + "1,1,-9,pad P1\n2,2,-9,\n", bare).faults
    assert fault.sentence.endswith("write nothing for the ground, footing; left out")


def test_a_word_not_known_leaves_a_file_that_can_be_reckoned() -> None:
    shots = read(HEAD + "1,1,-6,\n2,2,-6,roof\n29,1,-6,\n15,19,-6,\n")
    (area,) = as_dug(house(), shots).areas
    assert sorted(shots.row[area.index]) == [2, 4, 5]


def test_torn_rows_say_how() -> None:
    text = (
        "point,x (ft),y (ft),level (in)\n1,2,3,-9\n2,1,234,3,-9\n3,4\nonly\n4,5,6,-9,\n5,6,7\n"
        "6,7,8,-9\n"
    )
    shots = read(text)
    assert list(shots.row) == [2, 6, 8]
    assert named(shots) == {
        3: "torn: it has 5 cells, the header 4 (a comma within a number or a name needs quotes); "
        "left out",
        4: "torn: it has 2 cells, the header 4; left out",
        5: "torn: it has 1 cell, the header 4; left out",
        7: "torn: it has 3 cells, the header 4; left out",
    }


def test_rows_that_make_up_for_each_other_are_torn_all_the_same() -> None:
    """As many cells in all as the header asks for, but one row has four and one two."""
    shots = read("x (ft),y (ft),level (in)\n1,1,-9,2\n1,-9\n3,3,-9\n")
    assert list(shots.row) == [4]
    assert set(named(shots)) == {2, 3}


def test_a_short_row_lacks_only_what_no_shot_needs() -> None:
    shots = read("x (ft),y (ft),level (in),what,point\n1,1,-9\n2,1,-9,footing\n3,1,-9,,c\n")
    assert not shots.faults
    assert [shots.name(n) for n in range(3)] == ["2", "3", "c"]
    assert list(shots.of("footing")) == [1]


def test_spaces_before_quotes_and_columns_nobody_asked_for() -> None:
    shots = read('point, "x (ft)", y (ft), level (in),,colour (\na, "1", "2", -9,,red\n')
    np.testing.assert_allclose([*shots.x, *shots.y], [FOOT, 2 * FOOT])
    (fault,) = shots.faults
    assert (fault.weight, fault.sentence) == ("note", "the column 'colour (' is not used")


def test_a_remark_after_a_name_is_no_unit() -> None:
    shots = read("No (as flagged),X (ft),Y (ft),Level (in),What (code)\n7,1,2,-9,footing\n")
    assert not shots.faults
    assert (shots.name(0), list(shots.of("footing"))) == ("7", [0])


def test_a_cell_beyond_all_reading_tears_its_own_row_or_the_file() -> None:
    endless = "9" * 140_000
    shots = read(f'x (ft),y (ft),level (in)\n"1",1,-9\n{endless},2,-9\n3,3,-9\n')
    assert list(shots.row) == [2, 4]
    assert list(named(shots)) == [3]
    assert "no file of shots" in named(read(f"{endless}\n1,2,3\n"))[None]


def test_far_and_high_shots_are_left_out_with_the_figure() -> None:
    """984'-3" is 300 m, told in whole sixteenths; 15 m is 590.6 in."""
    rows = (
        "984,0,-9,\n985,0,-9,\n0,-984,-9,\n0,-985,-9,\n1,1,590,\n2,1,591,\n3,1,-590,\n4,1,-591,\n"
    )
    shots = read(HEAD + rows + "-985,1,-9000,\n")
    assert list(shots.row) == [2, 4, 6, 8]
    wrong = named(shots)
    assert list(wrong) == [3, 5, 7, 9, 10]
    for row in (3, 5, 10):
        assert wrong[row] == "it lies more than 984'-3\" from the plan's origin; check the unit"
    assert wrong[7].startswith("it lies 49'-3\" above top of footing; check the unit")
    assert wrong[9].startswith("it lies 49'-3\" below top of footing; check the unit")


@pytest.mark.parametrize(("level", "side"), [("1e308", "above"), ("-2e9", "below")])
def test_a_level_beyond_all_sites_is_told_without_its_digits(level: str, side: str) -> None:
    shots = read(f"x (ft),y (ft),level (ft)\n1,1,{level}\n1,2,1e999\n3,3,-0.5\n")
    assert list(shots.row) == [4]
    assert f"it lies more than 984'-3\" {side} top of footing" in named(shots)[2]
    assert "'1e999' is not a length" in named(shots)[3]


def test_a_head_alone_and_a_wrong_head_are_told_once() -> None:
    heads = {
        "x (ft),y (ft),level (in),colour\n": ["colour", "no shot below the header"],
        "x (ft),y (ft)\n": ["no column gives the height"],
        "x (ft),y (ft)\n1,1\n": ["no column gives the height"],
    }
    for head, wanted in heads.items():
        said = [fault.sentence for fault in read(head).faults]
        assert len(said) == len(wanted)
        assert all(words in sentence for words, sentence in zip(wanted, said, strict=True))


def test_faults_come_by_row_whatever_column_they_are_in() -> None:
    shots = read(HEAD + "1,1,,\n2,b,-9,\n3,1,-9,roof\na,1,-9,\n5000,1,-9,\n6,1,-9,\n")
    assert [fault.row for fault in shots.faults] == [2, 3, 4, 5, 6]
    assert {fault.weight for fault in shots.faults} == {"row"}
    assert list(shots.row) == [7]


@pytest.mark.parametrize("kind", ["rod (m)", "elevation (m)", "level (m)"])
def test_the_three_heights_say_one_level(kind: str) -> None:
    """Laser 254 ft, top of footing 250 ft: 0.2 m under it."""
    height = {"rod (m)": 4 * FOOT + 0.2, "elevation (m)": 250 * FOOT - 0.2, "level (m)": -0.2}
    shots = read(f"x (m),y (m),{kind}\n1,1,{height[kind]!r}\n")
    assert shots.level == pytest.approx([-0.2], abs=1e-12)


def test_a_file_too_large_is_refused_before_it_is_read() -> None:
    row = "1,1,1\n"
    for text in (
        "x (ft),y (ft),level (ft)\n" + row * (MOST_SHOTS + 1),
        ",".join(["x"] * (MOST_COLUMNS + 1)) + "\n" + row,
    ):
        assert "holds more than 200,000 shots or 100 columns" in named(read(text))[None]
    assert "larger than 20 MB" in named(read(b" " * (LARGEST_BYTES + 1)))[None]
    full = read("x (m),y (m),level (m)" + ",a" * (MOST_COLUMNS - 3) + "\n1,1,1\n")
    assert len(full) == 1


def test_the_line_that_is_no_utf_8_is_told() -> None:
    (fault,) = read(b"x,y\n1,2\n3,\xff\n").faults
    assert "not UTF-8 text (line 3)" in fault.sentence


def test_places_a_millimetre_apart_are_places_of_their_own() -> None:
    """In all quarters of the plan out to its edge, on ground, footing and pad by chance."""
    what = np.random.default_rng(3).choice(["", "footing", "pad P1"], 245)
    corners = [(0, 0), *((x, y) for x in (-299_990, 299_990) for y in (-299_990, 299_990))]
    places = [(cx + a, cy + b) for cx, cy in corners for a in range(-3, 4) for b in range(-3, 4)]
    rows = [f"{x},{y},-200,{on}" for (x, y), on in zip(places, what, strict=True)]
    shots = read("x (mm),y (mm),level (mm),what\n" + "\n".join(rows))
    assert not shots.faults
    assert len(shots) == len(places)


def test_two_readings_of_one_place() -> None:
    """Within a quarter of an inch they are one; the millimetre decides what is one place."""
    (note,) = read(HEAD + "1,1,-9,\n1,1,-9.2,\n").faults
    assert (note.weight, note.row) == ("note", None)
    assert note.sentence.startswith("1 shot repeats another")
    shots = read(HEAD + "1,1,-9,\n1,1,-8.7,\n1,1,-9.3,\n1.001,1,-9,\n1,1.001,-9.1,\n9,9,-9,\n")
    assert list(shots.row) == [2, 7]
    apart = named(shots)
    assert 'row 2 lies, but 5/16" higher' in apart[3]
    assert 'row 2 lies, but 5/16" lower' in apart[4]
    assert apart[None].startswith("2 shots repeat another")
