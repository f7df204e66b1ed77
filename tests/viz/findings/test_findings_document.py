"""The findings as a document: everything found stands in it, what is open, what was taken."""

from collections import Counter
from functools import cache

import pytest

from geometry.checks.subjects import SUBJECTS, subject_of
from geometry.layout.lay import lay_out
from geometry.report import report
from geometry.rules.editions import EDITIONS
from geometry.site.inspection import inspection
from geometry.sources import PRACTICE, Source, how_sure
from tests.designs import design_of, seeded_raw
from tests.houses import edited
from viz.findings.document import Card, Document, Grid, Items, Section
from viz.findings.found import first_sentence
from viz.findings.loads import wall_grid
from viz.findings.write import findings_document
from viz.job import Job, job
from viz.tables.report_tables import by_gravity

Change = tuple[str, str]


@cache
def work(*changes: Change) -> Job:
    return job(edited(*changes))


@cache
def document(*changes: Change) -> Document:
    return findings_document(work(*changes))


def section(key: str, *changes: Change) -> Section:
    sections = document(*changes).sections
    return next(s for one in sections for s in (one, *one.parts) if s.key == key)


def table(key: str, title: str, *changes: Change) -> Grid:
    blocks = section(key, *changes).blocks
    return next(b for b in blocks if isinstance(b, Grid) and b.title == title)


def test_the_sections_stand_in_the_order_they_are_read() -> None:
    keys = [one.key for one in document().sections]
    assert keys == ["what", "summary", "found", "inputs", "loads", "holds", "open", "cautions"]
    assert [one.title[:2] for one in document().sections] == [f"{n}." for n in range(1, 9)]


def test_every_finding_stands_under_one_subject_with_source_sureness_and_advice() -> None:
    cards = [b for part in section("found").parts for b in part.blocks if isinstance(b, Card)]
    said = Counter((card.subject, *(words for _, words in card.rows)) for card in cards)
    found = work().report.findings
    assert said == Counter(
        (f.subject, f.found, f.asked, f.source, how_sure(f.source), f.advice) for f in found
    )
    for part in section("found").parts:
        grave = [b.severity for b in part.blocks if isinstance(b, Card)]
        assert grave == sorted(grave, key=["stop", "look", "fine"].index)


def test_the_summary_counts_all_and_tells_what_is_not_fine_the_gravest_first() -> None:
    low = 'fall = "1/16 in per ft"', 'fall = "1/16 in per ft"\noutlet_invert = "-13 in"'
    change = (low, ('[sump]\nat = "4 ft, 5 ft"\npump = { off = "4 in", on = "12 in" }\n', ""))
    found = work(*change).report.findings
    counted = table("summary", "Findings by subject", *change).rows
    severities = [f.severity for f in found]
    assert counted[-1] == ("In all", *(str(severities.count(s)) for s in ("stop", "look", "fine")))
    (listed,) = (b for b in section("summary", *change).blocks if isinstance(b, Items))
    grave = [f for f in by_gravity(found) if f.severity != "fine"]
    assert listed.rows[0][0].startswith("Stop: ")
    assert [said for _, said in listed.rows] == [first_sentence(f.found) for f in grave]


def test_a_sentence_ends_at_its_point_and_not_at_a_number_of_stone() -> None:
    assert first_sentence("Stone, No. 57. More of it.") == "Stone, No. 57."
    assert first_sentence("Nothing more") == "Nothing more."


@pytest.mark.parametrize(
    ("source", "words"),
    [
        (Source("IRC", "2021", "R1"), "read in the place named"),
        (Source("IRC", sure="memory"), "from memory"),
        (Source("IRC", sure="second-hand"), "second-hand"),
        (PRACTICE, "common practice"),
        (Source("Archimedes", sure="computed"), "computed"),
        (Source(f"ACI 318; {Source('IRC', sure='memory')}"), "in part from memory"),
    ],
)
def test_how_sure_a_source_is_is_told_from_its_print(source: Source, words: str) -> None:
    assert how_sure(str(source)).startswith(words)


def test_every_finding_of_any_house_belongs_to_a_subject() -> None:
    raws = [raw for seed in range(12) if (raw := seeded_raw(seed))]
    ids = {f.id for raw in raws for f in report(lay_out(design_of(raw))).findings}
    assert len(ids) > 25
    assert {i for i in ids if subject_of(i) == "whole"} <= {"rules-not-given"}
    assert {subject_of(i) for i in ids} == set(SUBJECTS)


def test_a_value_is_stated_or_taken_as_usual_with_its_source_and_never_both() -> None:
    stated = dict(table("inputs", "Stated in the design file").rows)
    usual = {place: (words, source) for place, words, source in
             table("inputs", "Taken as usual").rows}  # fmt: skip
    assert stated["footing > width"] == "20 in"
    assert usual["sump > diameter"][0] == "1'-6\""
    assert "P3303.1.2" in usual["sump > diameter"][1]
    assert "R301.5" in usual["loads > floor"][1]
    assert not stated.keys() & usual.keys()
    given = ('at = "4 ft, 5 ft"', 'at = "4 ft, 5 ft"\ndiameter = "20 in"')
    assert dict(table("inputs", "Stated in the design file", given).rows)["sump > diameter"]
    later = {row[0] for row in table("inputs", "Taken as usual", given).rows}
    assert "sump > diameter" not in later


def test_every_material_is_told_with_its_properties_and_source() -> None:
    rows = {name: (said, source) for name, said, source in
            table("inputs", "Materials and their properties").rows}  # fmt: skip
    said, source = rows["Rigid foam, XPS type IV (25 psi)"]
    assert "25 psi" in said
    assert "R-5 per inch" in said
    assert "ASTM C578" in source
    assert all(source for _, source in rows.values())


def test_the_editions_stand_beside_each_other_with_what_each_asks() -> None:
    rows = table("alternatives", "Editions differ on the vapor retarder",
                 ("[soil]", '[rules]\nsets = ["irc-2021"]\n\n[soil]')).rows  # fmt: skip
    assert [row[0] for row in rows] == [one.title for one in EDITIONS]
    assert {row[0] for row in rows if row[3] == "yes"} == {"IRC 2021"}


def test_the_ways_to_hold_the_foot_and_to_lap_stand_where_they_are_asked() -> None:
    def told(*changes: Change) -> str:
        listed = [b for b in section("alternatives", *changes).blocks if isinstance(b, Items)]
        return " ".join(" ".join(row) for one in listed for row in one.rows)

    assert "Keyway or dowels" in told()
    assert "against damp" in told()
    low = told(('at_wall = "7 ft"', 'at_wall = "4 ft"'))
    assert "Keyway or dowels" not in low
    sheet = '"e1745-a-15mil", thickness = "15 mil"'
    bare = told((f'    {{ name = "retarder", material = {sheet}, role = "retarder" }},\n', ""))
    assert "against damp" not in bare


def test_a_way_to_make_the_edge_tells_what_moves_and_what_it_takes() -> None:
    rows = {row[0]: row for row in table("alternatives", "The floor's edge at the lowest footing")
            .rows}  # fmt: skip
    assert "Foam over the footing (as designed)" in rows
    _, _, levels, amounts = rows["Foam stopped at the footing"]
    # Foam of 2 in whose top meets TOF in place of its bottom.
    assert 'finished floor 2" lower' in levels
    assert "cold ledge" in levels
    assert "Rigid foam, XPS type IV (25 psi)" in amounts
    assert "less" in amounts
    heats = table("alternatives", "What each does to the floor's heat").rows
    assert all(row[-1].startswith("+") for row in heats if "as designed" not in row[0])


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ((), "table not at hand"),
        ((("[soil]", '[water]\nwater_table = "2 ft"\n\n[soil]'),), "needs an engineer"),
        (
            (('height = "8 ft"\n', 'height = "8 ft"\nkind = "8 in block, grouted"\n'),
             ('at_wall = "7 ft"', 'at_wall = "4 ft"')),
            "table value",
        ),
    ],
)  # fmt: skip
def test_a_wall_run_tells_fill_fluid_push_and_what_the_code_says(
    changes: tuple[Change, ...], words: str
) -> None:
    (row,) = wall_grid(work(*changes)).rows
    said = dict(zip(wall_grid(work(*changes)).head, row, strict=True))
    assert said["By the code"].startswith(words)
    # Gravel: 30 lb/ft3 by the wall tables (IRC Table R404.1.2).
    assert "table 30 lb/ft³" in said["Equivalent fluid"]
    assert "at rest" in said["Push, drained"]
    assert said["Load beside it"] == "none given"


def test_the_hold_points_are_those_of_the_inspection_sheet_with_their_photos() -> None:
    holds = inspection(work().layout, work().report)
    parts = section("holds").parts
    assert len(parts) == len(holds)
    for hold, part in zip(holds, parts, strict=True):
        (listed,) = (b for b in part.blocks if isinstance(b, Items))
        assert len(listed.rows) == len(hold.checks) + len(hold.photos)


def test_what_was_not_checked_and_the_dangers_are_told() -> None:
    open_ = {row[0] for row in table("open", "Not checked").rows}
    assert "Frost depth" in open_
    frost = ("[soil]", '[site]\nfrost_depth = "42 in"\n\n[soil]')
    assert "Frost depth" not in {row[0] for row in table("open", "Not checked", frost).rows}
    listed = [b for b in section("cautions").blocks if isinstance(b, Items)]
    said = " ".join(words for rows in listed for _, words in rows.rows)
    for words in ("29 CFR 1926.651", "ground-fault", "NEC", "unbraced"):
        assert words in said
    dry = (
        '[sump]\nat = "4 ft, 5 ft"\npump = { off = "4 in", on = "12 in" }\n', "",
    )  # fmt: skip
    without = [b for b in section("cautions", dry).blocks if isinstance(b, Items)]
    assert "NEC" not in " ".join(words for rows in without for _, words in rows.rows)
