"""The command `data`: figures and model for other programs, safe to open in a spreadsheet."""

import csv
import io
import json

import openpyxl
import pytest
from typer.testing import CliRunner

from geometry.layout.inverts import invert_rows
from tests.whole.networks import TEXTS
from viz.commands.main import app
from viz.export.ifc import library
from viz.issue import data_products
from viz.job import job

TABLES = ("findings", "inverts", "levels", "order", "volumes")
# Names of a design file that a spreadsheet would run, were they not kept as text.
HOSTILE = (
    TEXTS["one side, two outlets"]
    .replace('name = "basement"', 'name = "=cmd|calc"')
    .replace('name = "base"', 'name = "@SUM(1)"')
    .replace('"base top at TOF"', '"@SUM(1) top at TOF"')
    .replace("[[drain]]", '[[drain]]\nname = "+1 drain"')
)


def made(text):
    return {p.name: p.data for p in data_products(job(text), lambda _: None)}


@pytest.fixture(scope="module")
def files():
    return made(HOSTILE)


def rows(files, name):
    return list(csv.reader(io.StringIO(files[f"{name}.csv"].decode(), newline="")))


def is_figure(cell):
    try:
        float(cell)
    except ValueError:
        return False
    return True


def test_every_kind_of_file_is_there_and_the_same_design_gives_the_same_bytes(files):
    assert set(files) == {
        "report.json", "design.schema.json", "report.schema.json", "data.xlsx", "model.glb",
        "model.ifc", *(f"{name}.csv" for name in TABLES),
    }  # fmt: skip
    assert json.loads(files["report.json"])["design"] == "Invented"
    assert files["model.ifc"].startswith(b"ISO-10303-21;")
    assert files["model.glb"].startswith(b"glTF")
    assert made(HOSTILE) == files


def test_no_name_becomes_a_formula_in_a_csv(files):
    cells = [c for name in TABLES for row in rows(files, name) for c in row if not is_figure(c)]
    assert {"'=cmd|calc", "'+1 drain"} <= set(cells)
    assert not [c for c in cells if c.startswith(("=", "+", "-", "@"))]


def test_no_name_becomes_a_formula_in_the_workbook(files):
    book = openpyxl.load_workbook(io.BytesIO(files["data.xlsx"]))
    assert sorted(book.sheetnames) == [name.capitalize() for name in TABLES]
    cells = [cell for sheet in book for row in sheet for cell in row]
    assert {"=cmd|calc", "+1 drain"} <= {cell.value for cell in cells}
    assert {c.data_type for c in cells if isinstance(c.value, str)} == {"s"}
    assert not [cell for cell in cells if cell.hyperlink]


def test_inverts_of_the_table_are_the_drains_own(files):
    layout = job(HOSTILE).layout
    head, *told = rows(files, "inverts")
    laid = [row for drain in layout.drains for row in invert_rows(layout, drain)]
    assert len(told) == len(laid)
    level, place = head.index("level_m"), head.index("places")
    assert [float(row[level]) for row in told] == pytest.approx([r.level for r in laid], abs=1e-6)
    assert [row[place] for row in told] == [", ".join(r.names) for r in laid]


def test_without_the_library_the_rest_is_written_and_the_model_says_what_to_install(
    tmp_path, monkeypatch
):
    monkeypatch.setattr(library, "find_spec", lambda _: None)
    house = tmp_path / "house.toml"
    house.write_text(TEXTS["one side, two outlets"], encoding="utf-8")
    done = CliRunner().invoke(app, ["data", str(house), "--out", str(tmp_path / "out")])
    assert done.exit_code == 0
    said = " ".join(done.stdout.split())
    assert "model.ifc was left out: IFC needs the library ifcopenshell" in said
    assert (tmp_path / "out/model.glb").exists()
    assert not (tmp_path / "out/model.ifc").exists()
    refused = CliRunner().invoke(app, ["model", str(house), "--out", str(tmp_path / "house.ifc")])
    assert refused.exit_code == 2
    assert "requirements-ifc.lock" in refused.stderr
