"""Files of shots: units, forms, and every fault in one sentence."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.designfile import read_design
from geometry.project import Design
from geometry.survey.reading import read_shots
from geometry.survey.shots import Shots
from tests.houses import HOUSE, edited
from tests.rolls import rolls

INCH, FOOT = 0.0254, 0.3048
# Laser at 254 ft, top of footing at 250 ft.
DESIGN = read_design(HOUSE)


def read(text: str | bytes, design: Design = DESIGN) -> Shots:
    return read_shots(text, design)


def said(text: str | bytes, design: Design = DESIGN) -> list[str]:
    return [str(fault) for fault in read(text, design).faults]


@pytest.mark.parametrize(
    "text",
    [
        "point,x,y,rod,what\n1,2 ft,3 ft,4'-9 1/2\",\n2,5',4 ft,57 in,footing\n",
        "x (ft),y (ft),rod (in),what\n2,3,57.5,\n5,4,57,footing\n",
        "\ufeffX [m]; Y [m]; Elevation [ft]; What\n0.6096;0.9144;249.2083333333333;ground\n"
        "1.524;1.2192;249.25;Top of footing\n",
        "# INVENTED\n\nlevel (mm)\teasting (mm)\tnorthing (mm)\tcode\r\n-241.3\t609.6\t914.4\t\r\n"
        "-228.6\t1524\t1219.2\tfooting\r\n",
        'x,y,rod,what\n2 ft,3 ft,"4\'-9 1/2""",\n"5\'","4 ft","4\'-9""",footing',
    ],
)
def test_all_forms_say_the_same(text: str) -> None:
    shots = read(text)
    assert not shots.faults
    np.testing.assert_allclose(shots.x, [2 * FOOT, 5 * FOOT], rtol=1e-12)
    np.testing.assert_allclose(shots.y, [3 * FOOT, 4 * FOOT], rtol=1e-12)
    np.testing.assert_allclose(shots.level, [-9.5 * INCH, -9 * INCH], atol=1e-9)
    assert list(shots.of("ground")) == [0]
    assert list(shots.of("footing")) == [1]


def test_plain_numbers_need_a_unit_from_somewhere() -> None:
    text = "x,y,level (in)\n1,2,-9\n3,2,-9\n"
    (first, *rest) = said(text)
    assert 'row 2: x 1 has no unit; put it into the head, such as "x (ft)"' in first
    assert len(rest) == 3
    stated = read_design(edited(("[datum]", 'numbers = "ft"\n\n[datum]')))
    assert not said(text, stated)
    assert read(text, stated).x[1] == pytest.approx(3 * FOOT, rel=1e-12)


def test_bad_rows_are_named_and_the_rest_is_kept() -> None:
    text = (
        "point,x (ft),y (ft),level (in),what\n"
        "a,1,1,-9,\nb,2,1\nc,3,1,-9,pad P1\nd,4,1,-9,pad P7\ne,5,one,-9,\nf,6,1,,\n"
        "g,5000,1,-9,\nh,8,1,-9000,\ni,9,1,-9,,x\nj,10,1,nan,\nk,1_1,1,-9,\nl,12,1,-9,ground\n"
    )
    shots = read(text)
    assert list(shots.names) == ["a", "c", "l"]
    named = {fault.row: fault.sentence for fault in shots.faults}
    assert set(named) == {3, 5, 6, 7, 8, 9, 10, 11, 12}
    assert "it has 3 cells, the header 5" in named[3]
    assert "pad P1" in named[5]
    assert "'one' is not a length" in named[6]
    assert "level is missing" in named[7]
    assert "from the plan's origin" in named[8]
    assert "below top of footing" in named[9]


def test_many_like_faults_are_counted_not_listed() -> None:
    body = "\n".join(f"{n},bad,1" for n in range(1, 101))
    lines = said(f"x (ft),y (ft),level (ft)\n{body}\n")
    assert len(lines) == 21
    assert lines[-1] == "... and 80 more rows cannot be read"


def test_a_quote_left_open_tears_its_own_line_alone() -> None:
    shots = read('x (ft),y (ft),level (in)\n1,1,-9\n"2,1,-9\n3,1,-9\n')
    np.testing.assert_allclose(shots.x / FOOT, [1, 3])
    assert [fault.row for fault in shots.faults] == [3]


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "the file holds no shots"),
        (b"\xff\xfex\x00", "not UTF-8 text (line 1)"),
        (b"x,y\n\x00", "no text file"),
        ("PK binary nonsense", "no file of shots"),
        ("x (ft),y (ft)\n1,2", "no column gives the height"),
        ("x (ft),rod (ft)\n1,2", "there is no column y"),
        ("x (ft),x (ft),y (ft),rod (ft)\n1,1,2,3", "two columns are named x"),
        ("x (ft),y (ft),rod (ft),level (ft)\n1,2,3,4", "2 columns give the height"),
        ("x (yd),y (ft),rod (ft)\n1,2,3", "'yd' in the head 'x (yd)' is no unit"),
        ("x (ft),y (ft),rod (ft)\n", "no shot below the header"),
    ],
)
def test_files_that_are_no_shots(text: str | bytes, sentence: str) -> None:
    shots = read(text)
    assert len(shots) == 0
    assert any(sentence in str(fault) for fault in shots.faults)


def test_a_rod_needs_the_laser() -> None:
    design = read_design(edited(('instrument = "254 ft"', "")))
    assert any("state `instrument` under" in line for line in said("x (ft),y (ft),rod (ft)\n1,2,3",
                                                                   design))  # fmt: skip


def test_shots_of_one_place() -> None:
    rows = "1,1,-9,\n1,1,-9.1,\n2,2,-9,\n2,2,-12,\n2,2,0,footing"
    shots = read(f"x (ft),y (ft),level (in),what\n{rows}")
    np.testing.assert_allclose(shots.level / INCH, [-9, -9, 0])
    repeats = [f for f in shots.faults if f.weight == "note"]
    apart = [f for f in shots.faults if f.weight == "row"]
    assert "1 shot repeats another" in repeats[0].sentence
    assert [f.row for f in apart] == [5]
    assert 'where row 4 lies, but 3" lower' in apart[0].sentence


@settings(max_examples=rolls(60), deadline=None)
@given(st.one_of(st.binary(max_size=120), st.text(max_size=120)), st.booleans())
def test_no_file_whatever_breaks_the_reader(noise: str | bytes, headed: bool) -> None:
    head = "point,x (ft),y (ft),rod (ft),what\n"
    if isinstance(noise, bytes):
        text: str | bytes = head.encode() + noise if headed else noise
    else:
        text = head + noise if headed else noise
    shots = read(text)
    assert len(shots) or shots.faults
    assert all(len(str(fault).splitlines()) <= 1 for fault in shots.faults)
