"""The command `soil`: its tables say what the engine found, its JSON keeps to the report."""

import json

import pytest
from typer.testing import CliRunner

from geometry.parts.ground import BackfillState
from viz.carried import demo, examples
from viz.commands.main import app
from viz.job import job
from viz.tables.soil_tables import states, tables

DEMO = demo().read_text(encoding="utf-8")


def asked(*words: str) -> str:
    done = CliRunner().invoke(app, ["soil", *words])
    assert done.exit_code == 0
    return done.stdout


def test_the_demo_by_hand() -> None:
    # CL at rest 0.75 x 100 lb/ft3 over 7 ft 8 in: 575 lb/ft2; D50 of No. 57's fine edge 10.3 mm
    # over 3/8 in: 1.08; outline 42 + 26 + ... less what the garage covers: 118 ft of outer wall.
    said = asked("demo")
    for words in ("575 lb/ft²", "1.08", "7.19", "118'-0\"", "78'-8\"", "suits"):
        assert words in said
    assert "the code's tables or an engineer" in said


def test_json_is_the_reports_own() -> None:
    made = json.loads(asked("demo", "--json"))
    assert set(made) == {
        "design", "units", "filter", "walls", "backfill_state", "drains",
    }  # fmt: skip
    whole = json.loads(job(DEMO).report.to_json())
    assert made == {key: whole[key] for key in made}
    basement = next(run for run in made["walls"] if run["behind"] == "ground")
    assert basement["fill_to_foot_m"] == pytest.approx(7.6667 * 0.3048, abs=1e-4)


@pytest.mark.parametrize("name", examples())
def test_tables_have_a_cell_under_every_head(name: str) -> None:
    work = job(examples()[name].read_text(encoding="utf-8"))
    titles = []
    for title, table in tables(work.report, work.system):
        titles.append(title)
        assert table.rows
        assert all(len(row) == len(table.head) for row in table.rows)
        if work.system == "metric":
            cells = [str(cell) for row in table.rows for cell in row]
            assert not any("lb" in cell or "psi" in cell or "'-" in cell for cell in cells)
    assert len(titles) == len(set(titles)) >= 8


def test_a_house_without_a_drain_still_has_walls() -> None:
    text = DEMO[: DEMO.index("[drain]")] + '[soil]\ngroup = "CL"\n'
    titles = [title for title, _ in tables(job(text).report, "ft-in")]
    assert "Fill on the walls" in titles
    assert not [title for title in titles if "ipe" in title or "rap" in title]


def test_no_state_of_the_work_is_called_safe() -> None:
    report = job(DEMO).report
    rows = states(report.walls, BackfillState()).rows
    assert len(rows) >= 5
    said = states(report.walls, BackfillState(deck=True, slab=False)).rows
    assert {row[1] for row in said} == {"as said"}
    assert len(said) < len(rows)
    for row in rows:
        assert "safe" not in str(row[-1])
    basement = [row for row in rows if row[0] == "basement"]
    assert all("Ask an engineer" in str(row[-1]) for row in basement)
