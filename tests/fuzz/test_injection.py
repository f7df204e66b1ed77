"""Names that would be commands somewhere else: in every file of the set they stay words."""

import csv
import json
import struct
from html.parser import HTMLParser
from io import BytesIO, StringIO
from pathlib import PurePosixPath
from xml.etree import ElementTree as ET

import ifcopenshell
import openpyxl
import pikepdf
import pytest
import tomlkit

from geometry.takeoff.tickets import read_tickets, ticket_line
from geometry.variants.compare import compare
from viz.carried import demo
from viz.export.csvfile import to_csv
from viz.export.glb import to_glb
from viz.export.ifc.house import to_ifc
from viz.export.svg import to_svg
from viz.export.xlsxfile import to_xlsx
from viz.issue import papers, products
from viz.job import Job, job
from viz.language.reader import language
from viz.sheets.cards import card_sheets
from viz.tables.order_tables import workbook
from viz.variants.variant_files import comparison_file
from viz.variants.variant_pictures import variant_of
from viz.variants.variant_tables import figures
from viz.viewer.page import viewer_page

SCRIPT = "</script><script>alert(1)</script>"
IMAGE = '"><img src=x onerror=alert(1)>'
FORMULAS = ("=1+1", "+1+1", "-2+3+cmd|' /C x'!A0", "@SUM(1)")
# Where a spreadsheet's country parts cells by semicolons.
PARTED = "a;=1+1"
# A picture for Markdown; the address is kept for documents (RFC 5737).
CALL = "![x](http://192.0.2.1/x.png)"
PATH, PDF = "../../../etc/cron.d/x", r") Tj /JS (app.alert\(1\)) ("


def evil() -> str:
    """The demo with such names wherever a name may stand."""
    file = tomlkit.parse(demo().read_text(encoding="utf-8"))
    file["project"].update({
        "name": SCRIPT, "address": IMAGE, "prepared_by": FORMULAS[0], "drawn_for": PDF,
        "parcel": FORMULAS[1], "date": FORMULAS[2], "revision": FORMULAS[3],
        "code": "&xxe; <!ENTITY xxe SYSTEM 'file:///etc/passwd'>", "note": "]]><!-- ${7*7} {{7*7}}",
    })  # fmt: skip
    names = [PATH, "=HYPERLINK(1)", IMAGE, "con", "a/b\\c"]
    old = {}
    for area, name in zip(file["area"], names, strict=False):
        old[area["name"]] = name
        area["name"] = name
        for number, pier in enumerate(area.get("pier", [])):
            pier["name"] = f"{(*FORMULAS[:2], PARTED)[number % 3]}{number}"
    for part in (file["drain"], file["sump"]):
        if "area" in part:
            part["area"] = old[part["area"]]
    file["floor"]["tie"] = "subgrade at TOF -6 1/2 in"
    file["area"][1]["floor"]["tie"] = "subgrade at TOF +2 ft 6 1/2 in"
    file["floor"]["tubing"] = {"spacing": "9 in"}
    for number, layer in enumerate(file["floor"]["layer"]):
        layer["name"] = f"{FORMULAS[number % 4]} {CALL} {number}"
    file.setdefault("order", tomlkit.table())["currency"] = IMAGE
    return tomlkit.dumps(file)


@pytest.fixture(scope="module")
def work() -> Job:
    return job(evil())


class Tags(HTMLParser):
    """Every element of a page with its attributes."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.found: list[tuple[str, dict]] = []
        self.feed(page)

    def handle_starttag(self, tag, attrs):
        self.found.append((tag, dict(attrs)))


def assert_no_formula(text: str) -> None:
    rows = list(csv.reader(StringIO(text)))
    elsewhere = [row[1:] for row in csv.reader(StringIO(text), delimiter=";")]
    for cell in [cell for row in (*rows, *elsewhere) for cell in row]:
        if cell.lstrip()[:1] in {"=", "+", "-", "@"} or cell[:1] in {"\t", "\r"}:
            float(cell)


def assert_no_formula_in_book(data: bytes) -> None:
    book = openpyxl.load_workbook(BytesIO(data))
    assert all(c.data_type != "f" and not c.hyperlink for s in book for row in s.rows for c in row)


def assert_no_script_in_page(page: str, scripts: int) -> None:
    found = Tags(page).found
    assert [tag for tag, _ in found].count("script") == scripts
    assert not [t for t, have in found if any(key.startswith("on") for key in have)]
    told = [have[key] for _, have in found for key in ("src", "href", "data") if key in have]
    assert all(source.startswith(("data:", "#")) for source in told)


def assert_only_words(pdf: bytes) -> None:
    with pikepdf.open(BytesIO(pdf)) as opened:
        for thing in opened.objects:
            if isinstance(thing, pikepdf.Dictionary):
                assert not {"/JS", "/JavaScript", "/OpenAction", "/AA", "/Launch"} & set(
                    thing.keys()
                )
                assert thing.get("/S") not in ("/JavaScript", "/Launch", "/URI")


def test_tables_and_report_hold_words_alone(work: Job) -> None:
    made = papers(work)
    for name, text in made.items():
        if name.endswith(".csv"):
            assert_no_formula(text)
    assert json.loads(made["report.json"])["design"] == SCRIPT
    assert "'=HYPERLINK(1)" in made["levels.csv"]
    assert any(f"'{sign}" in text for text in made.values() for sign in FORMULAS)
    assert any("a;'=1+1" in text for text in made.values())
    assert_no_formula_in_book(to_xlsx(workbook(work.report.order, work.system)))


@pytest.mark.parametrize("place", [*FORMULAS, PATH, "'quoted", "plain, with a comma"])
def test_a_list_of_tickets_holds_no_formula_and_gives_the_place_back(place: str) -> None:
    line = ticket_line("2026-04-02", "stone-57", "14 tons", place)
    assert_no_formula(line)
    (ticket,) = read_tickets(line).tickets
    assert ticket.place == place


def test_the_page_to_turn_has_no_script_of_a_name(work: Job) -> None:
    page = viewer_page(work)
    assert_no_script_in_page(page, scripts=2)
    start = page.index('id="model">') + len('id="model">')
    record, _ = json.JSONDecoder().raw_decode(page[start:])
    assert SCRIPT in json.dumps(record)


def test_crew_cards_are_drawings_of_words(work: Job) -> None:
    cards = card_sheets(work, "letter", language("en"))
    for card in cards[:2]:
        root = ET.fromstring(to_svg(card.drawing))  # noqa: S314 - our own
        tags = {element.tag.rpartition("}")[2] for element in root.iter()}
        assert not tags & {"script", "image", "a", "foreignObject", "iframe", "use"}


@pytest.mark.slow
def test_every_file_of_the_set_keeps_to_its_folder_and_holds_no_command(work: Job) -> None:
    met = set()
    for made in products(work, lambda _: None):
        if isinstance(made, str):
            continue
        path = PurePosixPath(made.name)
        assert not path.is_absolute()
        assert ".." not in path.parts
        assert len(path.parts) <= 2
        met.add(path.suffix)
        if path.suffix == ".pdf":
            assert_only_words(made.data)
        elif path.suffix == ".svg":
            tags = {e.tag.rpartition("}")[2] for e in ET.fromstring(made.data).iter()}  # noqa: S314
            assert not tags & {"script", "image", "a", "foreignObject", "iframe"}
        elif path.suffix == ".csv":
            assert_no_formula(made.data.decode())
        elif path.suffix == ".xlsx":
            assert_no_formula_in_book(made.data)
        elif path.suffix == ".html":
            assert_no_script_in_page(made.data.decode(), scripts=0)
        if path.name == "permit-set.pdf":
            break
    assert met >= {".pdf", ".csv", ".json", ".xlsx", ".html"}


@pytest.mark.slow
def test_two_designs_beside_each_other_hold_words_alone(work: Job) -> None:
    names = ("=1+1", f"{PARTED} {SCRIPT}")
    other = job(evil().replace('"9 in"', '"6 in"'))
    found = compare([variant_of(n, w) for n, w in zip(names, (work, other), strict=True)])
    head, *_ = csv.reader(StringIO(to_csv(figures(found))))
    assert head[-2] == "'=1+1"
    assert_no_formula(to_csv(figures(found)))
    assert_no_formula_in_book(comparison_file((work, other), found, ".xlsx"))
    assert_only_words(comparison_file((work, other), found, ".pdf"))


@pytest.mark.slow
def test_models_for_programs_hold_the_names_as_they_are(work: Job) -> None:
    step = ifcopenshell.file.from_string(to_ifc(work.layout, work.foundation).decode())
    assert SCRIPT in {one.Name for one in step.by_type("IfcProject")}
    told = {one.Name for one in step.by_type("IfcRoot")}
    assert any(name and PARTED in name for name in told)
    data = to_glb(work.foundation.solids)
    (length,) = struct.unpack("<I", data[12:16])
    named = json.loads(data[20 : 20 + length])["nodes"]
    assert any(PARTED in json.dumps(node) for node in named)
