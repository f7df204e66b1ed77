"""The command `survey`: tables, figures, files, and faults in sentences."""

import csv
import json
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from viz.commands.main import app

EXAMPLES = Path(__file__).parents[3] / "assets" / "examples"
SHOTS = EXAMPLES / "l-basement-shots.csv"


def asked(*words: object) -> Result:
    return CliRunner().invoke(app, ["survey", *(str(word) for word in words)])


def test_the_bundled_shots_are_told_and_drawn(tmp_path: Path) -> None:
    table, picture = tmp_path / "shots.csv", tmp_path / "map.svg"
    done = asked("demo", SHOTS, "--csv", table, "--out", picture)
    assert done.exit_code == 0
    for words in ("the dug floor", "H1", "L1", "W1", "pad P3", "outside", "gap under it"):
        assert words in done.stdout
    rows = list(csv.DictReader(table.open(encoding="utf-8")))
    assert sum(row["on"] == "footing" for row in rows) == 10
    assert {row["foam"] for row in rows if row["on"] == "ground"} >= {"lies flat"}
    svg = picture.read_text(encoding="utf-8")
    assert "As dug: thickness of the stone" in svg
    assert "NaN" not in svg


def test_json_holds_the_same_figures() -> None:
    done = asked("demo", SHOTS, "--json")
    figures = json.loads(done.stdout)
    (area,) = figures["areas"]
    ground = area["ground"]
    assert ground["covered_m2"] + ground["beyond_m2"] == pytest.approx(ground["area_m2"])
    assert ground["cut_m3"] - ground["low_m3"] == pytest.approx(
        ground["planned_m3"] - ground["base_m3"], abs=0.02
    )
    assert len(figures["tops"]) == 16
    assert figures["faults"] == []


def test_a_thicker_least_is_missed_on_more_ground() -> None:
    usual, thick = (
        json.loads(asked("demo", SHOTS, "--json", *more).stdout)["areas"][0]["ground"]["thin_m2"]
        for more in ((), ("--least", "6 in"))
    )
    assert thick > 10 * usual > 0


def test_ground_over_the_base_stops(tmp_path: Path) -> None:
    file = tmp_path / "shots.csv"
    file.write_text("x (ft),y (ft),level (in)\n2,2,-6\n40,2,-6\n40,16,-6\n2,30,-6\n20,9,1\n")
    assert asked("demo", file).exit_code == 1


@pytest.mark.parametrize(
    ("text", "words", "sentence"),
    [
        ("x,y,rod\n1,2,3\n", (), "has no unit"),
        ("hello", (), "no file of shots"),
        ("x (m),y (m),rod (m)\n1,1,1.4\n2,2,1.4\n", (), "a surface needs three"),
        ("x (m),y (m),rod (m)\n1,1,1.4\n", ("--least", "0"), "--least"),
        ("x (m),y (m),rod (m)\n1,1,1.4\n", ("--out", "map.doc"), "should end in .svg or .png"),
    ],
)
def test_what_is_wrong_is_said(
    tmp_path: Path, text: str, words: tuple[str, ...], sentence: str
) -> None:
    file = tmp_path / "shots.csv"
    file.write_text(text)
    done = asked("demo", file, *words)
    assert done.exit_code == 2
    assert sentence in done.stderr
    assert "Traceback" not in done.stderr


def test_a_file_that_is_not_there() -> None:
    done = asked("demo", "nowhere.csv")
    assert done.exit_code == 2
    assert "no such file" in done.stderr
