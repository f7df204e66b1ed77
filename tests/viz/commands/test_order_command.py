"""The command `order`: a list to read out on the telephone, and files for spreadsheets."""

import csv
import json
from pathlib import Path

import openpyxl
import pytest
from typer.testing import CliRunner

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.takeoff.order import order
from tests.houses import HOUSE
from viz.commands.main import app
from viz.export.xlsxfile import to_xlsx
from viz.tables.order_tables import figures
from viz.tables.table import Table


def run(*words: str) -> str:
    result = CliRunner().invoke(app, ["order", *words])
    assert result.exit_code == 0, result.output
    return result.output


@pytest.fixture
def design(tmp_path: Path) -> str:
    file = tmp_path / "house.toml"
    more = """
[order]
currency = "crowns"
[order.stone]
density = "1.4 ton/yd3"
[[order.price]]
of = "stone-57"
each = 10
per = "ton"
"""
    file.write_text(HOUSE + more, encoding="utf-8")
    return str(file)


def test_the_list_says_yards_and_tons_and_where_figures_come_from(design: str) -> None:
    said = " ".join(run(design).split())
    stone = order(lay_out(read_design(Path(design).read_text(encoding="utf-8")))).rows[0]
    assert stone.mass_kg is not None
    tons = stone.mass_kg[0] / 907.18474
    assert f"{stone.count:,.2f} yd³ loose, {tons:,.1f} tons at 1.40 ton/yd³" in said
    for words in ("compaction 5 %", "common practice, no source", "given in the design file",
                  "1/8\" is", "laid whole", "Elbow 90°", "Not counted", f"{tons * 10:,.2f}",
                  "crowns"):  # fmt: skip
        assert words in said, words


def test_figures_for_other_programs(design: str) -> None:
    made = json.loads(run(design, "--json"))["order"]
    rows = {row["item"]: row for row in made["rows"]}
    assert rows["stone-57"]["to_buy"] == pytest.approx(rows["stone-57"]["in_place"] * 1.05**2)
    assert {f["name"] for f in rows["stone-57"]["factors"]} >= {"compaction", "waste"}
    assert made["pours"][0]["neat_m3"] > 0


def test_both_files_hold_every_row(design: str, tmp_path: Path) -> None:
    flat, book = tmp_path / "order.csv", tmp_path / "order.xlsx"
    run(design, "--csv", str(flat), "--xlsx", str(book))
    made = order(lay_out(read_design(Path(design).read_text(encoding="utf-8"))))
    with flat.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert [r["item"] for r in rows] == [r.item for r in made.rows]
    assert float(rows[0]["loose_yd3"]) == pytest.approx(made.rows[0].count, abs=1e-5)
    sheets = openpyxl.load_workbook(book)
    assert sheets.sheetnames[0] == "Stone and sand"
    cells = list(sheets["Figures"].values)
    assert cells[0] == figures(made).head
    assert [row[1] for row in cells[1:]] == [r.item for r in made.rows]
    assert cells[1][4] == pytest.approx(made.rows[0].in_place, abs=1e-6)


def test_two_files_of_one_name_are_refused(design: str, tmp_path: Path) -> None:
    same = str(tmp_path / "order")
    result = CliRunner().invoke(app, ["order", design, "--csv", same, "--xlsx", same])
    assert result.exit_code == 2
    assert not Path(same).exists()


def test_nothing_in_a_workbook_is_a_formula_or_a_link(tmp_path: Path) -> None:
    words = ("=1+1", "http://example.org", "12", "+3", "@a")
    file = tmp_path / "words.xlsx"
    data = to_xlsx([("a/b: [c]", Table(("=head",), tuple((w,) for w in words)))])
    assert data == to_xlsx([("a/b: [c]", Table(("=head",), tuple((w,) for w in words)))])
    file.write_bytes(data)
    sheet = openpyxl.load_workbook(file).active
    assert sheet is not None
    cells = [cell for (cell,) in sheet.iter_rows()]
    assert [c.value for c in cells] == ["=head", *words]
    assert all(c.data_type == "s" and c.hyperlink is None for c in cells)
