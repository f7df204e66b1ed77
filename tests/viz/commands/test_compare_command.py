"""The command `compare`: tables and a sentence, files, and what it refuses."""

import csv
from io import StringIO

import pytest
from typer.testing import CliRunner

from viz.carried import demo
from viz.commands.main import app

FOAM = 'thickness = "2 in", role = "insulation"'


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    folder = tmp_path_factory.mktemp("variants")
    text = demo().read_text(encoding="utf-8")
    thin, thick = folder / "thin.toml", folder / "thick.toml"
    thin.write_text(text, encoding="utf-8")
    thick.write_text(text.replace(FOAM, FOAM.replace("2 in", "3 in")), encoding="utf-8")
    return thin, thick


def run(*words):
    return CliRunner().invoke(app, ["compare", *map(str, words)])


def test_it_prints_the_sentence_the_tables_and_writes_the_figures(files, tmp_path):
    out = tmp_path / "c.csv"
    result = run(*files, "-o", out)
    assert result.exit_code == 0
    assert '“thick” against “thin”: finished floor 1" higher' in result.output
    assert 'floor > layer "foam" > thickness' in result.output
    assert '+0\'-7" (+1")' in result.output
    rows = list(csv.DictReader(StringIO(out.read_bytes().decode())))
    (top,) = (r for r in rows if r["what"] == "slab top (finished floor)" and r["unit"] == "m")
    assert float(top["thick"]) - float(top["thin"]) == pytest.approx(0.0254, abs=2e-6)


def test_the_same_file_twice_has_no_difference(files):
    result = run(files[0], files[0])
    assert result.exit_code == 0
    assert "No difference" in result.output


def test_what_cannot_be_compared_or_written_is_said(files, tmp_path):
    assert "2 to 4 designs" in run(files[0]).output
    refused = run(*files, "-o", tmp_path / "c.docx")
    assert refused.exit_code == 2
    assert ".xlsx" in refused.output
