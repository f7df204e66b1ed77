"""The command line as people and programs meet it: words, figures, files, exit codes."""

import csv
import io
import json
import os
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest
from typer.testing import CliRunner

from geometry.errors import BedcourseError
from geometry.report import Report
from viz.carried import demo, examples
from viz.commands.main import app

RUN = [sys.executable, "-c", "from viz.commands.main import run; run()"]
DEMO = demo().read_text(encoding="utf-8")


def asked(*words):
    return CliRunner().invoke(app, [str(w) for w in words])


def design(folder, text):
    file = folder / "house.toml"
    file.write_text(text, encoding="utf-8")
    return file


def test_start_writes_a_design_that_can_be_built_and_never_writes_over_one(tmp_path):
    file = tmp_path / "mine.toml"
    assert asked("start", file).exit_code == 0
    assert asked("check", file).exit_code == 0
    file.write_text("# my work\n", encoding="utf-8")
    refused = asked("start", file)
    assert refused.exit_code == 2
    assert "--force" in refused.stderr
    assert file.read_text(encoding="utf-8") == "# my work\n"
    assert asked("start", file, "--force").exit_code == 0
    assert "[project]" in file.read_text(encoding="utf-8")


@pytest.mark.parametrize("name", sorted(examples()))
def test_every_example_checks_and_its_json_keeps_to_the_published_schema(name):
    done = asked("check", examples()[name], "--json")
    assert done.exit_code == 0
    jsonschema.validate(json.loads(done.stdout), Report.schema())


def test_levels_by_hand():
    """The demo's floor by hand: sand top at TOF, then 10 mil, 2 in and 4 in above, 6 1/2 in below.

    Elevations: TOF 412.35 ft as the file says; laser 416.60 ft, so a rod on TOF reads 4.25 ft.
    """
    rows = json.loads(asked("levels", "demo", "--json").stdout)["levels"]
    level = {r["interface"]: r for r in rows if r["area"] == "basement"}
    inch = 0.0254
    assert level["slab top (finished floor)"]["level_m"] == pytest.approx(6.010 * inch, abs=1e-9)
    assert level["subgrade"]["level_m"] == pytest.approx(-6.5 * inch, abs=1e-9)
    assert level["top of footing"]["elevation_m"] == pytest.approx(412.35 * 0.3048, abs=1e-9)
    assert level["top of footing"]["rod_reading_m"] == pytest.approx(4.25 * 0.3048, abs=1e-9)


def test_the_level_table_reads_in_feet_and_inches():
    lines = asked("levels", "demo").stdout.splitlines()
    subgrade = next(line for line in lines if "subgrade" in line)
    assert "-0'-6 1/2\"" in subgrade
    assert "411.81 ft" in subgrade
    assert "4'-9 1/2\"" in subgrade
    assert any("local code" in line for line in lines)


def test_volumes_are_the_same_in_three_units_and_add_up_by_material():
    figures = json.loads(asked("volumes", "demo", "--json").stdout)["volumes"]
    for row in figures:
        assert row["volume_ft3"] == pytest.approx(27 * row["volume_yd3"])
        assert row["volume_m3"] == pytest.approx(row["volume_ft3"] * 0.3048**3)
    slab = next(r for r in figures if r["part"] == "garage/slab")
    printed = asked("volumes", "demo").stdout.splitlines()
    total = next(line for line in reversed(printed) if "3,500 psi" in line)
    assert f"{slab['volume_yd3']:,.2f}" in total


def test_a_finding_that_says_stop_gives_exit_code_one(tmp_path):
    """Foam half above and half below TOF cannot be laid flat over the footing."""
    text = DEMO.replace('tie = "sand top at TOF"', 'tie = "foam top at +1 in"')
    done = asked("check", design(tmp_path, text))
    assert done.exit_code == 1
    assert "! stop: basement" in done.stdout


def test_faults_come_all_at_once_with_their_lines_and_exit_code_two(tmp_path):
    text = DEMO.replace('height = "8 ft 4 in"', 'height = "8"').replace('"xps-iv"', '"xps-44"')
    done = asked("check", design(tmp_path, text))
    assert done.exit_code == 2
    assert done.stdout == ""
    line = text.splitlines().index('height = "8"') + 1
    assert f"line {line}, wall > height" in done.stderr
    assert "xps-44" in done.stderr
    listed = json.loads(asked("check", design(tmp_path, text), "--json").stdout)["faults"]
    assert {f["line"] for f in listed} >= {line}


def test_models_are_written_as_glb_and_page(tmp_path):
    assert asked("model", "demo", "--out", tmp_path / "m.glb").exit_code == 0
    assert (tmp_path / "m.glb").read_bytes()[:4] == b"glTF"
    assert asked("model", "demo", "--out", tmp_path / "m.html").exit_code == 0
    assert "</html>" in (tmp_path / "m.html").read_text(encoding="utf-8").lower()
    refused = asked("model", "demo", "--view", "inside out", "--out", tmp_path / "m.png")
    assert refused.exit_code == 2
    assert "whole, cutaway, exploded" in refused.stderr


FIGURES = {
    "design.toml", "design.schema.json", "report.json", "report.schema.json", "levels.csv",
    "volumes.csv", "findings.csv", "inverts.csv", "order.csv", "order.xlsx", "model.glb",
    "model.ifc", "model.html", "findings.html", "findings.pdf",
}  # fmt: skip


def build_without_opengl(monkeypatch, folder):
    monkeypatch.setattr(sys, "platform", "linux")
    monkeypatch.setattr("viz.scene.worker.found", lambda _: False)
    done = asked("build", "demo", "--out", folder)
    assert done.exit_code == 0
    assert "apt-get install" in done.stdout
    return done, {file.relative_to(folder).as_posix() for file in folder.rglob("*.*")}


@pytest.mark.slow
def test_the_set_without_an_opengl_library_says_what_to_install_and_makes_the_rest(
    tmp_path, monkeypatch
):
    _, names = build_without_opengl(monkeypatch, tmp_path / "set")
    assert names >= FIGURES | {"permit-set.pdf", "for-decision.pdf"}
    papers = {"crew-cards", "story-pole", "laser-sheet", "inspection-sheet"}
    assert {f"site/{name}{code}.pdf" for name in papers for code in ("", ".es")} <= names
    assert "site/order-sheet.pdf" in names
    assert {"sheets/S-001.svg", "sheets/S-101.png", "sheets/S-301.svg", "sheets/S-501.png"} <= names
    assert "whole.png" not in names


def test_what_cannot_be_drawn_is_left_out_with_its_reason_and_the_figures_are_written(
    tmp_path, monkeypatch
):
    def refuse(*_):
        raise BedcourseError("the plan does not fit")

    monkeypatch.setattr("viz.issue.permit_set", refuse)
    monkeypatch.setattr("viz.issue.alternatives", refuse)
    monkeypatch.setattr("viz.issue.order_sheets", refuse)
    monkeypatch.setattr("viz.issue.site_papers", lambda *_: [("story-pole", refuse)])
    done, names = build_without_opengl(monkeypatch, tmp_path / "set")
    assert names == FIGURES
    printed = " ".join(done.stdout.split())
    assert "the permit set was left out: the plan does not fit" in printed
    assert "story-pole.es.pdf was left out: the plan does not fit" in printed
    assert "order-sheet.pdf was left out: the plan does not fit" in printed
    assert (tmp_path / "set" / "design.toml").read_text(encoding="utf-8") == DEMO
    schema = json.loads((tmp_path / "set" / "report.schema.json").read_text(encoding="utf-8"))
    report = json.loads((tmp_path / "set" / "report.json").read_text(encoding="utf-8"))
    jsonschema.validate(report, schema)
    rows = list(csv.DictReader(io.StringIO((tmp_path / "set" / "levels.csv").read_text("utf-8"))))
    assert [float(r["level_m"]) for r in rows] == pytest.approx(
        [r["level_m"] for r in report["levels"]], abs=1e-6
    )


def test_control_characters_of_a_name_do_not_reach_the_terminal(tmp_path):
    text = DEMO.replace("Larkmoor Lane (invented example)", "Hill\\u001b[2J house")
    done = asked("levels", design(tmp_path, text))
    assert "\x1b" not in done.stdout + done.stderr
    assert done.exit_code in (0, 2)


def run(*words, **more):
    return subprocess.run([*RUN, *words], capture_output=True, timeout=120, check=False, **more)


@pytest.mark.slow
@pytest.mark.parametrize(
    "garbage",
    [b"", b"\x00\xff\xfe", b"[[[", b"area = 5", b'[[area]]\ncorners = "x"', b"a = " + b"[" * 5000],
)
def test_garbage_gives_sentences_and_exit_code_two_never_a_traceback(tmp_path, garbage):
    file = tmp_path / "garbage.toml"
    file.write_bytes(garbage)
    done = run("check", str(file))
    assert done.returncode == 2
    assert b"Traceback" not in done.stderr + done.stdout
    assert done.stderr.strip()


@pytest.mark.slow
def test_an_ascii_terminal_gets_every_table():
    told = {**os.environ, "PYTHONIOENCODING": "ascii", "NO_COLOR": "1"}
    for words in (("levels", "demo"), ("volumes", "demo"), ("check", "demo")):
        done = run(*words, env=told)
        assert done.returncode == 0, done.stderr
        assert done.stdout.decode("ascii")
    assert b"ft2" in done.stdout


def test_a_reader_that_goes_away_is_no_error():
    piped = f"{sys.executable} -c 'from viz.commands.main import run; run()' volumes demo | head -1"
    done = subprocess.run(piped, shell=True, capture_output=True, check=False)  # noqa: S602
    assert done.stderr == b""


def test_an_unexpected_error_asks_to_be_reported(monkeypatch):
    monkeypatch.setattr("viz.job.lay_out", lambda _: 1 / 0)
    done = asked("levels", "demo")
    assert done.exit_code == 3
    assert "please report it" in done.stderr
    assert "Traceback" not in done.output


def test_levels_load_no_picture_makers():
    code = (
        "import sys; sys.argv = ['bedcourse', 'levels', 'demo', '--json']\n"
        "from viz.commands.main import app\n"
        "try: app()\n"
        "except SystemExit: pass\n"
        "heavy = {'pyvista', 'vtkmodules', 'streamlit', 'trimesh', 'PIL', 'fontTools'}\n"
        "print(sorted(heavy & {m.split('.')[0] for m in sys.modules}), file=sys.stderr)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert json.loads(done.stdout)["units"] == "ft-in"
    assert done.stderr.strip() == "[]"


def test_standard_input_is_a_design_too():
    done = run("levels", "-", "--json", input=DEMO.encode())
    assert json.loads(done.stdout)["design"] == "Larkmoor Lane (invented example)"


def test_a_file_that_is_missing_or_a_folder_is_said(tmp_path):
    assert "does not exist" in asked("check", tmp_path / "none.toml").stderr
    assert "is a folder" in asked("check", tmp_path).stderr
    assert asked("check", Path("/")).exit_code == 2
