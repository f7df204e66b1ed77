"""The line of every key, in every way TOML lets one write it."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from geometry.faults.lines import lines_by_path
from geometry.faults.places import in_words, line_of, written_at

EXAMPLES = Path(__file__).parents[3] / "assets" / "examples"

TEXT = '''\
title = "a # no comment"          # 1
[one]
"quoted key" = 1                  # 3
dotted.inner.deep = 2
note = """
[not.a.table]
fake = 1
"""
after = { a = 1, b = { c = "}" } } # 9
[[many]]
x = [
  { y = 1 },                      # 12
  # a comment, ] and "
  { y = 2, z = [1,
      2] },                       # 15
]
[many.sub]
k = 'it''s'
[[many]]
[[many.list]]
v = 1                             # 21
[[many.list]]
v = 2
'''.replace("'it''s'", "'it s'")

WANTED = {
    ("title",): 1,
    ("one", "quoted key"): 3,
    ("one", "dotted"): 4,
    ("one", "dotted", "inner", "deep"): 4,
    ("one", "note"): 5,
    ("one", "after", "b", "c"): 9,
    ("many", 0, "x", 0, "y"): 12,
    ("many", 0, "x", 1): 14,
    ("many", 0, "x", 1, "z", 1): 15,
    ("many", 0, "sub", "k"): 18,
    ("many", 1): 19,
    ("many", 1, "list", 0, "v"): 21,
    ("many", 1, "list", 1, "v"): 23,
}


@pytest.mark.parametrize(("path", "line"), WANTED.items(), ids=str)
def test_line_of_a_path(path: tuple[str | int, ...], line: int) -> None:
    assert lines_by_path(TEXT)[path] == line


def test_text_inside_a_note_is_no_key() -> None:
    found = lines_by_path(TEXT)
    assert ("one", "fake") not in found
    assert ("not",) not in found


def paths_of(raw: Any, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    inner = (
        raw.items() if isinstance(raw, dict) else enumerate(raw) if isinstance(raw, list) else ()
    )
    return [p for key, value in inner for p in [(*path, key), *paths_of(value, (*path, key))]]


@pytest.mark.parametrize("file", sorted(EXAMPLES.glob("*.toml")), ids=lambda f: f.stem)
def test_every_path_of_the_examples_has_a_line_that_names_its_key(file: Path) -> None:
    text = file.read_text(encoding="utf-8")
    found, rows = lines_by_path(text), text.split("\n")
    paths = paths_of(tomllib.loads(text))
    assert len(paths) > 50
    assert set(paths) <= set(found)
    for path in paths:
        if isinstance(path[-1], str):
            assert path[-1] in rows[found[path] - 1]


def test_a_path_without_a_line_takes_the_nearest_above() -> None:
    assert line_of(("one", "after", "zzz", 3), lines_by_path(TEXT)) == 9
    assert line_of(("nowhere",), lines_by_path(TEXT)) is None


def test_places_in_words() -> None:
    raw = {"area": [{"name": "porch", "corners": ["x"]}, {"name": 5}], "floor": {"tie": "x"}}
    assert in_words(("area", 0, "corners", 0), raw) == 'area "porch" > corners 1'
    assert in_words(("area", 1, "step"), raw) == "area 2 > step"
    assert in_words(("floor", "tie", 0), raw) == "floor > tie"


@pytest.mark.parametrize(
    ("own", "home"),
    [
        ({}, ("wall", "height")),
        ({"wall": {"thickness": 1}}, ("wall", "height")),
        ({"wall": {"height": 1}}, ("area", 0, "wall", "height")),
    ],
)
def test_inherited_values_stand_with_the_house(own: Any, home: tuple[str | int, ...]) -> None:
    raw = {"wall": {"height": "8 ft"}, "area": [own]}
    assert written_at(("area", 0, "wall", "height"), raw) == home
