"""Which designs a batch runs, what each gives, and the table: without any worker."""

import csv
import json
from io import BytesIO, StringIO

import openpyxl
import pytest
from pyarrow import parquet

from geometry.errors import BedcourseError
from geometry.units import FOOT, INCH
from viz.batch.designs import Asked, asked_files, asked_grid, text_of
from viz.batch.outcome import outcome_of
from viz.batch.run import How, Line, run
from viz.batch.store import Store
from viz.batch.table import table, write_tables
from viz.carried import demo

# Invented: 32 ft by 16 ft outside, 8 in walls on footings 20 in by 10 in.
HOUSE = """
[project]
name = "Plain house (invented)"
[datum]
top_of_footing = "100 ft"
[footing]
width = "20 in"
thickness = "10 in"
[wall]
thickness = "8 in"
height = "4 ft"
[floor]
tie = "foam bottom at TOF"
layer = [
    { name = "stone", material = "stone-57", thickness = "4 in", role = "base" },
    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },
    { name = "slab", material = "concrete", thickness = "4 in", role = "slab" },
]
[[area]]
name = "cellar"
corners = ["0, 0", "32 ft, 0", "32 ft, 16 ft", "0, 16 ft"]
"""


def lines_of(*asked):
    return [Line(one, outcome_of(one, False)[0]) for one in asked]


def by_head(made):
    return [dict(zip(made.head, row, strict=True)) for row in made.rows]


def test_a_line_holds_the_main_figures_in_units_its_heads_name():
    """By hand: room 30'-8" by 14'-8"; footing ring 96 ft by 20 in by 10 in, wall ring less corners."""  # noqa: E501
    (row,) = by_head(table(lines_of(Asked("plain", HOUSE))))
    room = (30 + 8 / 12) * (14 + 8 / 12)
    footing = ((32 + 1) * (16 + 1) - (32 - 14 / 6) * (16 - 14 / 6)) * 10 / 12
    wall = (32 * 16 - room) * 4
    slab = room * 4 / 12
    assert row["status"] == "done"
    assert row["tof_elevation_ft"] == pytest.approx(100)
    assert row["floor_area_ft2"] == pytest.approx(room)
    assert row["floor_area_m2"] == pytest.approx(room * FOOT**2)
    assert row["finished_floor_above_tof_in"] == pytest.approx(6)
    assert row["concrete_yd3"] == pytest.approx((footing + wall + slab) / 27, rel=1e-5)
    assert row["foam_m3"] == pytest.approx(room * FOOT**2 * 2 * INCH, abs=1e-6)
    assert row["drain_length_m"] is None
    assert row["findings_stop"] + row["findings_look"] + row["findings_fine"] > 0


def test_a_grid_is_the_full_product_and_each_says_its_own_values():
    varies = ["floor.layer[foam].thickness=1 in, 2 in, 3 in", "wall.height=4 ft,5 ft"]
    asked = asked_grid(Asked("plain", HOUSE), varies)
    assert len(asked) == 6
    assert asked[-1].name == "plain, 3 in, 5 ft"
    rows = by_head(table(lines_of(*asked)))
    place = 'floor > layer "foam" > thickness'
    for row in rows:
        foam = float(row[place].split()[0])
        assert row["finished_floor_above_tof_in"] == pytest.approx(4 + foam)
    assert text_of(asked_grid(Asked("p", HOUSE), ["floor.layer[1].thickness=3 in"])[0]) == text_of(
        asked[4]
    ).replace('"5 ft"', '"4 ft"')


@pytest.mark.parametrize(
    ("vary", "said"),
    [
        ("floor.layer[fome].thickness=1 in", "it has: stone, foam, slab"),
        ("floor.layer[foam].thickness", "names no values"),
        ("floor..layer]=1 in", "is no place"),
        ("wall.height=" + ",".join(f"{n} mm" for n in range(400)), "100,000 is the most"),
    ],
)
def test_a_change_that_cannot_be_made_is_said(vary, said):
    with pytest.raises(BedcourseError, match=said):
        asked_grid(Asked("plain", HOUSE), [vary] * 2)


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "in/street").mkdir(parents=True)
    (tmp_path / "in/=1+2.toml").write_text(HOUSE, encoding="utf-8")
    (tmp_path / "in/street/bad.toml").write_text("[project", encoding="utf-8")
    (tmp_path / "in/street/odd.toml").write_bytes(b"\xff\xfe")
    faulty = HOUSE.replace('"4 ft"', '"4 parsecs"')
    (tmp_path / "in/street/faulty.toml").write_text(faulty, encoding="utf-8")
    (tmp_path / "in/notes.txt").write_text("no design", encoding="utf-8")
    return tmp_path


def known(asked, store):
    """Keep every outcome as a run would, so that nothing is left to run."""
    for one in asked:
        if not one.unread:
            store.keep(store.key(one), outcome_of(one, False)[0])


def test_a_bad_file_stands_in_the_table_with_its_faults_and_stops_nothing(folder):
    asked = asked_files([folder / "in"])
    known(asked, Store(folder / "out"))
    lines = run(asked, How(folder / "out", 1, 60.0))
    rows = {row["design"]: row for row in by_head(table(lines))}
    assert rows["=1+2"]["status"] == "done"
    assert rows["street/bad"]["status"] == "faults"
    assert "4 parsecs" in rows["street/faulty"]["note"]
    assert rows["street/odd"]["status"] == "cannot be read"
    assert "UTF-8" in rows["street/odd"]["note"]


def test_the_table_is_written_in_three_forms_and_no_cell_is_a_formula(folder):
    asked = asked_files([folder / "in"])
    known(asked, Store(folder / "out"))
    files = list(write_tables(run(asked, How(folder / "out", 1, 60.0)), folder / "out"))
    data = {file.suffix: file.read_bytes() for file in files}
    rows = list(csv.DictReader(StringIO(data[".csv"].decode())))
    assert rows[0]["design"] == "'=1+2"
    sheet = openpyxl.load_workbook(BytesIO(data[".xlsx"])).active
    assert sheet["A2"].value == "=1+2"
    assert sheet["A2"].data_type == "s"
    made = parquet.read_table(BytesIO(data[".parquet"]))
    assert made.column("design").to_pylist()[0] == "=1+2"
    yards = made.column("concrete_yd3").to_pylist()
    assert yards[0] == pytest.approx(float(rows[0]["concrete_yd3"]))
    assert yards[1:] == [None, None, None]


def test_what_is_finished_is_not_run_again_and_a_broken_result_is(folder):
    one = Asked("plain", HOUSE)
    store, how = Store(folder / "out"), How(folder / "out", 1, 60.0)
    known([one], store)
    (kept,) = (folder / "out/results").iterdir()
    marked = json.loads(kept.read_text())
    marked["figures"]["foam_boards"] = 999
    kept.write_text(json.dumps(marked))
    assert run([one], how)[0].outcome.figures.foam_boards == 999
    changed = Asked("plain", HOUSE.replace("2 in", "3 in"))
    assert store.kept(store.key(changed)) is None
    kept.write_text(kept.read_text()[:50])
    assert store.kept(store.key(one)) is None


def test_sets_are_named_by_design_and_stay_in_their_folder(tmp_path):
    store = Store(tmp_path)
    for name in ("street/house 1", "../../up", "a:b", "n" * 300, "demo, 1/8 in per ft"):
        file = store.set_file(name).resolve()
        assert file.is_relative_to((tmp_path / "sets").resolve())
        store.keep_set(name, b"x")
        assert store.has_set(name)
    assert len({store.set_file(n) for n in ("a:b", "a*b", "a-b")}) == 3


def test_the_demo_gives_a_line():
    (line,) = lines_of(*asked_files([demo()]))
    assert line.outcome.status == "done"
    assert line.outcome.figures.drain_m > 0
