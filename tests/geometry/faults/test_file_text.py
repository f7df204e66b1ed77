"""What keeps a file from being read at all, and odd but honest files that are read."""

import pytest
from sound_design import CORNERS, SOUND, edited

from geometry.designfile import read_design
from geometry.errors import DesignError, Fault
from geometry.layout.lay import lay_out


def only_fault(text: str) -> Fault:
    with pytest.raises(DesignError) as caught:
        read_design(text)
    (fault,) = caught.value.faults
    return fault


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ("[footing]\nwidth 20 in\n", 2, "expected '=' after a key"),
        ("[footing]\nwidth = 20 in\n", 2, "this is not TOML"),
        ('[wall]\nheight = "5\'-6"\n", 2, ""', 3, "this is not TOML"),
        ('[wall]\n\nheight = "8 ft\n', 3, "this is not TOML"),
        ("[footing\n", 1, "this is not TOML"),
        ("a = 1\n\na = 2\n", 3, "this key is set twice; leave one of the two out"),
        ("[wall]\n[soil]\n[wall]\n", 3, "this table is written twice; put its keys together"),
        ("x = { a = 1, a = 2 }\n", 1, "this key is set twice"),
        ("[wall]\nheight = [1, 2\n\n\n", 2, "this is not TOML"),
        ("<!DOCTYPE html>\n<html></html>", 1, "this is not TOML"),
        ('{"project": {}}', 1, "this is not TOML"),
        (f"n = {'9' * 5000}", None, "a number has thousands of digits"),
        (f"n = {'[' * 3000}{']' * 3000}", None, "deeper than 10"),
        (f"n = {'[' * 40}{']' * 40}", None, "deeper than 10 within each other"),
        (f"{'a.' * 400}b = 1", None, "deeper than 10"),
        (f"[wall]\n# {'x' * 20_000}\n", 2, "the line has 20,002 characters; break it"),
        ("# wide\n" * 150_000, None, "larger than 1 MB"),
    ],
    ids=lambda value: repr(value)[:24],
)
def test_a_file_that_cannot_be_read_is_told_where(text: str, line: int | None, words: str) -> None:
    fault = only_fault(text)
    assert fault.place == "design"
    assert fault.line == line
    assert words in fault.sentence
    assert len(fault.sentence) < 260


def test_an_empty_file_is_told_what_it_needs() -> None:
    with pytest.raises(DesignError) as caught:
        read_design("")
    assert [str(f) for f in caught.value.faults] == [
        'project: project is missing; add a table [project] with name = "..."',
        "area: area is missing; add a table [[area]] with name and corners",
    ]


def test_one_area_in_single_brackets() -> None:
    fault = only_fault('[project]\nname = "x"\n[area]\nname = "b"\n')
    assert (fault.place, fault.line) == ("area", 3)
    assert "write [[area]] in double brackets" in fault.sentence


@pytest.mark.parametrize("other", ["\ufeff" + SOUND, SOUND.replace("\n", "\r\n")])
def test_byte_order_mark_and_windows_line_ends_are_read(other: str) -> None:
    assert read_design(other) == read_design(SOUND)


def test_lines_are_right_with_windows_line_ends() -> None:
    text = edited((('height = "8 ft"', 'height = "tall"'),))
    wanted = only_fault(text)
    assert wanted.line == text[: text.index("tall")].count("\n") + 1
    assert only_fault("\ufeff" + text.replace("\n", "\r\n")) == wanted


def test_names_are_kept_as_text() -> None:
    name = "<script>alert('1')</script> & \"Söhne\" 家"
    design = read_design(edited((('name = "porch"', f"name = '''{name}'''"),)))
    assert design.areas[1].name == name


def test_clockwise_corners_are_mended() -> None:
    clockwise = 'corners = ["0, 0", "0, 28 ft", "36 ft, 28 ft", "36 ft, 0"]'
    turned = lay_out(
        read_design(edited(((CORNERS, clockwise), ("cleanouts = [3]", "cleanouts = []"))))
    )
    straight = lay_out(read_design(edited((("cleanouts = [3]", "cleanouts = []"),))))
    volumes = {b.label.part: b.volume for b in straight.bodies}
    assert {b.label.part: b.volume for b in turned.bodies} == pytest.approx(volumes)
    assert volumes["footing"] > 0
