"""The design file: edits that keep comments, whole or no saving, the start file, the schema."""

import difflib
import os
import tomllib
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from geometry import designfile
from geometry.designfile import FileError, edited, load, read_design, save, start_text
from geometry.errors import DesignError
from geometry.layout.lay import lay_out
from geometry.project import Design
from geometry.report import report

EXAMPLES = sorted((Path(__file__).parents[2] / "assets" / "examples").glob("*.toml"))
TEN_LINES = """\
[project]
name = "Ten lines (invented)"
[[area]]
name = "house"
corners = ["0, 0", "30 ft, 0", "30 ft, 24 ft", "0, 24 ft"]
[drain]
pipe = "d2729-4"
fall = "1/16 in per ft"
[sump]
at = "3 ft 6 in, 6 ft"
"""


def comments(text: str) -> list[str]:
    return [line.partition("#")[2] for line in text.split("\n") if "#" in line]


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
@pytest.mark.parametrize(
    ("at", "value"),
    [
        (("footing", "width"), "24 in"),
        (("project", "note"), 'with "quotes" # and a hash'),
        (("floor", "layer", 0, "thickness"), "8 in"),
        (("area", 0, "name"), "cellar 2"),
        (("datum", "north"), 12.5),
    ],
)
def test_an_edit_changes_one_value_and_nothing_else(
    path: Path, at: tuple[Any, ...], value: Any
) -> None:
    text = path.read_text(encoding="utf-8")
    new = edited(text, at, value)
    wanted = tomllib.loads(text)
    here: Any = wanted
    for step in at[:-1]:
        here = here[step]
    here[at[-1]] = value
    assert tomllib.loads(new) == wanted
    assert [c for c in comments(text) if c not in comments(new)] == []
    changes = list(difflib.unified_diff(text.split("\n"), new.split("\n"), n=0, lineterm=""))[2:]
    assert len([line for line in changes if line.startswith("-")]) <= 1
    assert len([line for line in changes if line.startswith("+")]) == 1


def test_an_edit_makes_tables_on_its_way() -> None:
    new = edited(TEN_LINES, ("drain", "stone", "width"), "20 in")
    assert tomllib.loads(new)["drain"]["stone"] == {"width": "20 in"}
    assert read_design(new).drains[0].stone.width == pytest.approx(20 * 0.0254)


def test_no_value_takes_a_key_out() -> None:
    new = edited(TEN_LINES, ("drain", "fall"), None)
    assert tomllib.loads(new)["drain"] == {"pipe": "d2729-4"}
    assert edited(new, ("drain", "fall"), None) == new


@pytest.mark.parametrize("at", [("area", 7, "name"), ("project", "name", "x"), ("area", "x", "y")])
def test_an_edit_that_cannot_be_made_is_one_sentence(at: tuple[Any, ...]) -> None:
    with pytest.raises(DesignError) as caught:
        edited(TEN_LINES, at, "1 in")
    (fault,) = caught.value.faults
    assert "cannot be changed here" in fault.sentence
    assert fault.sentence.isprintable()


def test_an_edit_of_what_is_not_toml_is_one_sentence() -> None:
    with pytest.raises(DesignError, match="this is not TOML"):
        edited("[project", ("project", "name"), "x")


def test_saved_text_is_loaded_back(tmp_path: Path) -> None:
    file = tmp_path / "new folder" / "häuschen.toml"
    save(file, start_text())
    assert load(file) == start_text()
    save(file, b"\xef\xbb\xbf# marked\n")
    assert load(file) == "# marked\n"
    assert [p.name for p in file.parent.iterdir()] == [file.name]


@pytest.mark.parametrize("step", ["fsync", "replace"])
def test_a_failure_midway_leaves_the_old_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    file = tmp_path / "house.toml"
    save(file, "old")

    def full_disk(*_args: Any) -> None:
        raise OSError(28, "No space left on device")

    owner = os if step == "fsync" else Path
    monkeypatch.setattr(owner, step, full_disk)
    with pytest.raises(FileError, match=r"house\.toml cannot be written: no space left on device"):
        save(file, "new" * 1000)
    assert file.read_text() == "old"
    assert list(tmp_path.iterdir()) == [file]


def test_an_interrupt_midway_leaves_no_file_behind(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stopped(*_args: Any) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", stopped)
    with pytest.raises(KeyboardInterrupt):
        save(tmp_path / "house.toml", "new")
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_cannot_be_written_is_one_sentence(tmp_path: Path) -> None:
    blocked = tmp_path / "a file, no folder"
    blocked.write_text("x")
    with pytest.raises(FileError, match=r"house\.toml cannot be written: "):
        save(blocked / "house.toml", "new")


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write anywhere")
def test_a_read_only_folder_is_one_sentence(tmp_path: Path) -> None:
    tmp_path.chmod(0o555)
    with pytest.raises(FileError, match="cannot be written: permission denied"):
        save(tmp_path / "house.toml", "new")


def test_refused_permission_is_one_sentence(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_args: Any, **_named: Any) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(designfile.tempfile, "mkstemp", refused)
    with pytest.raises(FileError, match="cannot be written: permission denied"):
        save(tmp_path / "house.toml", "new")


def test_other_encodings_and_missing_files_are_one_sentence(tmp_path: Path) -> None:
    file = tmp_path / "latin.toml"
    file.write_bytes("name = 'Söhne'".encode("latin-1"))
    with pytest.raises(FileError, match=r"latin\.toml is not UTF-8 text; save it as UTF-8"):
        load(file)
    with pytest.raises(FileError, match="cannot be read: no such file"):
        load(tmp_path / "none.toml")
    with pytest.raises(FileError, match="cannot be read: is a directory"):
        load(tmp_path)
    file.write_bytes(b"#" * 1_000_001)
    with pytest.raises(FileError, match="larger than 1 MB"):
        load(file)


@pytest.mark.parametrize("text", [start_text(), TEN_LINES], ids=["start", "ten lines"])
def test_first_files_are_sound(text: str) -> None:
    design = read_design(text)
    found = report(lay_out(design), None)
    assert {v.role for v in found.volumes} >= {"footing", "wall", "slab", "drain stone", "basin"}
    assert all(v.volume_m3 > 0 for v in found.volumes)


def test_the_start_file_explains_itself() -> None:
    text = start_text()
    assert len(comments(text)) > 10
    assert "TOF" in text
    uncommented = text.replace('# instrument = "104.25 ft"', 'instrument = "104.25 ft"')
    uncommented = uncommented.replace("# [[area.pier]]\n# at", "[[area.pier]]\nat")
    design = read_design(uncommented)
    assert design.datum.instrument == pytest.approx(104.25 * 0.3048)
    assert len(design.areas[0].piers) == 1


SCHEMA = Design.model_json_schema()


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_the_schema_takes_the_examples(path: Path) -> None:
    raw = tomllib.loads(path.read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    jsonschema.validate(raw, SCHEMA, cls=jsonschema.Draft202012Validator)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_the_schema_takes_the_examples_with_ties_in_lists(path: Path) -> None:
    raw = tomllib.loads(path.read_text(encoding="utf-8"))
    floors = [part["floor"] for part in (raw, *raw["area"]) if "floor" in part]
    for floor in floors:
        floor["tie"] = [floor["tie"]]
    jsonschema.validate(raw, SCHEMA, cls=jsonschema.Draft202012Validator)


@pytest.mark.parametrize(
    "wrong",
    [
        {},
        {"project": {"name": "x"}, "area": []},
        {"project": {"name": "x"}, "area": [{"name": "x"}]},
        {"project": {"name": "x", "colour": 1}, "area": [{"name": "x", "corners": [[0, 0]] * 3}]},
        {"project": {"name": "x"}, "area": [{"name": "x", "corners": [True, True, True]}]},
    ],
    ids=["empty", "no area", "no corners", "unknown key", "wrong kind"],
)
def test_the_schema_refuses_what_the_reader_refuses(wrong: Any) -> None:
    assert not jsonschema.Draft202012Validator(SCHEMA).is_valid(wrong)
