"""Names that would be commands somewhere else: in every file of the set they stay words."""

import csv
import json
from html.parser import HTMLParser
from io import BytesIO, StringIO
from pathlib import PurePosixPath
from xml.etree import ElementTree as ET

import openpyxl
import pikepdf
import pytest
import tomlkit

from viz.carried import demo
from viz.export.svg import to_svg
from viz.export.xlsxfile import to_xlsx
from viz.issue import papers, products
from viz.job import Job, job
from viz.language.reader import language
from viz.sheets.cards import card_sheets
from viz.tables.order_tables import workbook
from viz.viewer.page import viewer_page

SCRIPT = "</script><script>alert(1)</script>"
IMAGE = '"><img src=x onerror=alert(1)>'
FORMULAS = ("=1+1", "+1+1", "-2+3+cmd|' /C x'!A0", "@SUM(1)")
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
            pier["name"] = f"{FORMULAS[number % 4]}{number}"
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
    cells = [cell for row in csv.reader(StringIO(text)) for cell in row]
    assert any(cell.startswith("'") and cell[1:2] in "=+-@" for cell in cells) or cells
    for cell in cells:
        if cell[:1] in {"=", "+", "-", "@", "\t", "\r"}:
            float(cell)


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
    book = openpyxl.load_workbook(BytesIO(to_xlsx(workbook(work.report.order, work.system))))
    assert all(c.data_type != "f" and not c.hyperlink for s in book for row in s.rows for c in row)


def test_the_page_to_turn_has_no_script_of_a_name(work: Job) -> None:
    page = viewer_page(work)
    found = Tags(page).found
    assert [tag for tag, _ in found].count("script") == 2
    assert not [t for t, have in found if any(key.startswith("on") for key in have)]
    pictures = [have.get("src", "data:") for tag, have in found if tag == "img"]
    assert all(source.startswith("data:") for source in pictures)
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
        if path.name == "permit-set.pdf":
            break
    assert met >= {".pdf", ".csv", ".json", ".xlsx"}
