"""The command `drain`: what it prints of an invented house, and its figures for programs."""

import json
from pathlib import Path

from click.testing import Result
from typer.testing import CliRunner

from tests.houses import edited, without
from tests.whole import networks
from viz.commands.main import app


def asked(folder: Path, text: str, *options: str) -> Result:
    file = folder / "house.toml"
    file.write_text(text, encoding="utf-8")
    return CliRunner().invoke(app, ["drain", str(file), *options])


STEEP = edited(('fall = "1/16 in per ft"', 'fall = "1/4 in per ft"'))


def test_heights_rules_clashes_and_budget_are_printed(tmp_path: Path) -> None:
    done = asked(tmp_path, STEEP)
    assert done.exit_code == 0
    words = " ".join(done.stdout.split())
    # Footing 12 in thick; wrap, bedding of 2 in and the pipe's wall lie under the invert.
    assert "trench bottom -1'-0\" -1'-0\"" in words
    assert "not met, " in words
    assert "No such pipe can meet both of these in this house" in words
    assert "Lay the pipe level" in words
    assert "(from memory" in done.stdout or "memory, to be" in words
    assert "building department" in words


def test_every_drain_has_its_tables_and_its_inverts(tmp_path: Path) -> None:
    done = asked(tmp_path, networks.TEXTS["both to the pit"])
    assert done.exit_code == 0
    for title in ("inside drain, basement", "outside drain, basement"):
        assert f"heights of the {title}" in done.stdout
        words = done.stdout.split(f"Inverts along the {title}, to set out")[1]
        assert "corner 6, cleanout" in words
    assert "low point, emptied by bleeders, corner 1" in done.stdout
    assert "Rod reading" not in done.stdout
    with_laser = edited(("[footing]", '[datum]\ninstrument = "105 ft"\n[footing]'),
                        text=networks.TEXTS["daylight"])  # fmt: skip
    rows = asked(tmp_path, with_laser).stdout.split("Inverts along the drain")[1]
    # Invert 7 7/8 in under TOF at 100 ft, the laser at 105 ft: 5 ft 7 7/8 in on the rod.
    line = next(row for row in rows.splitlines() if row.strip().startswith("outlet to daylight"))
    assert line.split()[-2:] == ["5'-7", '7/8"']


def test_figures_for_programs(tmp_path: Path) -> None:
    figures = json.loads(asked(tmp_path, STEEP, "--json").stdout)
    assert set(figures) == {"design", "units", "drains", "outlets"}
    slope, heights = figures["drains"][0]["slope"], figures["drains"][0]["heights"]
    assert slope["short_m"] > 0
    rise = heights["high_m"]["invert"] - heights["low_m"]["invert"]
    assert abs(rise - slope["needed_m"]) < 1e-12


def test_metric_figures(tmp_path: Path) -> None:
    done = asked(tmp_path, STEEP.replace("[project]", '[project]\nunits = "metric"'))
    assert "-304.8 mm" in done.stdout
    assert " %" in done.stdout.split("The same under each rule")[1]


def test_a_house_without_a_drain_is_told_what_to_add(tmp_path: Path) -> None:
    done = asked(tmp_path, edited(without("drain"), without("sump")))
    assert done.exit_code == 2
    assert "[drain]" in done.stderr


def test_levels_count_from_the_top_of_footing_of_the_drained_area(tmp_path: Path) -> None:
    # The same house with its one area 2 ft over the project's datum prints the same levels.
    step = ('name = "basement"', 'name = "basement"\nstep = "2 ft"')
    grade = ('at_wall = "7 ft"', 'at_wall = "9 ft"')
    plain, raised = asked(tmp_path, STEEP), asked(tmp_path, edited(step, grade, text=STEEP))
    assert raised.exit_code == 0
    upper, lower = (done.stdout.split("Inverts along the drain") for done in (raised, plain))
    assert upper[0] == lower[0]
    # The inverts to set out are told against the project's datum.
    assert upper[1] != lower[1]


DAYLIGHT = """
[drain.daylight]
toward = "90 ft, 10 ft"
ground = ["0, 4 ft", "200 ft, -10 ft"]
above_ground = "0"
"""
OPEN_END = edited(("\n[sump]", f"{DAYLIGHT}\n[sump]"), text=STEEP)


def test_an_outlet_to_daylight_stands_beside_the_pit(tmp_path: Path) -> None:
    assert "give [drain.daylight]" in asked(tmp_path, STEEP).stdout
    done = asked(tmp_path, OPEN_END)
    words = " ".join(done.stdout.split())
    assert done.exit_code == 0
    assert "Comes out, from the drain" in words
    assert "Two ways out, what fails in each" in words
    assert "give [drain.daylight]" not in words
    (outlet,) = json.loads(asked(tmp_path, OPEN_END, "--json").stdout)["outlets"]
    # Over the drain lie 4 ft less its invert's level; the ground gains 0.07 - 1/48 on the pipe.
    deep = 4 * 0.3048 - outlet["run"]["start_invert_m"]
    assert abs(outlet["run"]["end_at_m"] - deep / (0.07 - 1 / 48)) < 1e-9
