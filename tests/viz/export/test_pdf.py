"""The PDF writer, read back by two programs that did not write it: PDFium and qpdf."""

import ctypes
import re
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from io import BytesIO

import numpy as np
import pikepdf
import pypdfium2 as pdfium
import pypdfium2.raw as raw
import pytest
from fontTools.ttLib import TTFont
from PIL import Image
from shapely import Point as Spot
from shapely import box

from viz.drawing.lettering import text_box
from viz.drawing.marks import Circle, Fill, Hatch, Leader, LevelSymbol, Line, Mark, Strokes, Text
from viz.drawing.page import PAPERS, Drawing, PaperName
from viz.export.pdf import DocumentInfo, to_pdf
from viz.export.png import to_png
from viz.export.svg import to_svg

MM = 25.4 / 72
ABOUT = DocumentInfo("Foundation", "A. Builder", "Sheets for a permit", "footing, drain")
NASTY = "O'Brien & <Sons> (a\\b)) >> endobj %%EOF\x00\x07\ud800\u202e"
NASTY_PRINTED = "O'Brien & <Sons> (a\\b)) >> endobj %%EOF"


def sheet(*marks: Mark, title: str = "Section") -> Drawing:
    return Drawing(100.0, 50.0, title, 1, marks)


def every_mark() -> Drawing:
    return sheet(
        Hatch(Spot(20, 30).buffer(15), "stone", "#333333", "hatch"),
        Fill(box(50, 10, 70, 30) - box(55, 15, 65, 25), "#ff0000", "cut"),
        Line(((5, 5), (95, 5)), 0.5, dash=(9.0, 1.8, 0.6, 1.8)),
        Strokes((((75, 10), (80, 15)), ((80, 10), (85, 15))), 0.25),
        Circle((85, 30), 5, 0.5, fill="#0000ff"),
        Leader(((20, 30), (40, 40), (48, 40))),
        LevelSymbol((75, 40), 3.0, filled=True),
        Text((50, 40), "20 in × 10 in, 45°, ½", 2.5),
        Text((98, 45), "TOP OF FOOTING", 3.0, bold=True, anchor="end"),
    )


def page_of(*marks: Mark) -> pdfium.PdfPage:
    return pdfium.PdfDocument(to_pdf([sheet(*marks)], ABOUT))[0]


def picture(page: pdfium.PdfPage, dots_per_mm: float = 10.0) -> Image.Image:
    return page.render(scale=dots_per_mm * MM).to_pil().convert("RGB")


def paths(page: pdfium.PdfPage) -> list[tuple[list[tuple[float, float]], float]]:
    """Return the points and the weight of every path, in millimetres of the page."""
    found = []
    for thing in page.get_objects(filter=[raw.FPDF_PAGEOBJ_PATH]):
        x, y, weight = ctypes.c_float(), ctypes.c_float(), ctypes.c_float()
        matrix, spots = thing.get_matrix(), []
        for number in range(raw.FPDFPath_CountSegments(thing)):
            segment = raw.FPDFPath_GetPathSegment(thing, number)
            raw.FPDFPathSegment_GetPoint(segment, x, y)
            across, up = matrix.on_point(x.value, y.value)
            spots.append((across * MM, up * MM))
        raw.FPDFPageObj_GetStrokeWidth(thing, weight)
        found.append((spots, weight.value * matrix.a * MM))
    return found


@pytest.mark.parametrize("name", PAPERS)
def test_every_paper_and_every_length_on_it_is_true(name: PaperName) -> None:
    paper = PAPERS[name]
    points = ((0.0, 0.0), (paper.width, paper.height), (100.0, 123.456), (0.125, 98.7654))
    hole = box(10, 10, 60, 40) - box(20, 20, 30, 30)
    marks = (Line(points, 0.35), Fill(hole, "#ff0000"), Strokes((points[:2], points[2:]), 0.13))
    drawing = Drawing(paper.width, paper.height, name, 1, marks)
    page = pdfium.PdfDocument(to_pdf([drawing], ABOUT))[0]
    assert [size * MM for size in page.get_size()] == pytest.approx(
        [paper.width, paper.height], abs=1e-3
    )
    (line, weight), (fill, _), (strokes, fine) = paths(page)
    assert np.array(line) == pytest.approx(np.array(points), abs=0.01)
    assert np.array(strokes) == pytest.approx(np.array(points), abs=0.01)
    assert (weight, fine) == pytest.approx((0.35, 0.13), abs=1e-3)
    assert {(round(x, 2), round(y, 2)) for x, y in fill} == {
        (10, 10), (60, 10), (60, 40), (10, 40), (20, 20), (30, 20), (30, 30), (20, 30),
    }  # fmt: skip


def test_pages_are_not_scaled_in_print_and_show_their_title() -> None:
    with pikepdf.open(BytesIO(to_pdf([sheet()], ABOUT))) as file:
        wishes = file.Root.ViewerPreferences
        assert wishes.PrintScaling == "/None"
        assert bool(wishes.DisplayDocTitle) is True
        assert str(file.Root.Lang) == "en"
        assert "/UserUnit" not in file.pages[0]


@pytest.mark.parametrize("anchor", ["start", "middle", "end"])
@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("words", ["TOP OF FOOTING", "20 in × 10 in", "AVAVA Київ H"])
def test_text_stands_where_its_box_says(words: str, bold: bool, anchor: str) -> None:
    text = Text((50.0, 20.0), words, 3.0, bold, anchor)  # type: ignore[arg-type]
    read, expected = page_of(text).get_textpage(), text_box(text)
    assert read.get_text_bounded() == words
    loose = [read.get_charbox(n, loose=True) for n in range(len(words))]
    assert loose[0][0] * MM == pytest.approx(expected.left, abs=0.1)
    assert loose[-1][2] * MM == pytest.approx(expected.right, abs=0.1)
    for number, sign in enumerate(words):
        if sign in "TFH":
            _, low, _, high = read.get_charbox(number)
            assert (low * MM, high * MM) == pytest.approx((20.0, expected.high), abs=0.1)


@pytest.mark.parametrize(
    "words",
    ["12'-6 1/2\", 45°, m², m³, ½ ¼ ¾ ⅛, ×, Ø, ±, –, …", "O'Brien (a\\b)) <c>", "Київ, 日本",
     "".join(map(chr, range(0xC0, 0x250)))],
    ids=["trade", "brackets", "not in the font", "more than one subset"],
)  # fmt: skip
def test_text_is_found_as_it_was_written(words: str) -> None:
    assert page_of(Text((2, 20), words, 0.2)).get_textpage().get_text_bounded() == words


def test_letters_the_fonts_lack_show_as_boxes_of_the_width_measured() -> None:
    text = Text((10, 20), "日本", 5.0)
    image = np.asarray(picture(page_of(text)).convert("L"))
    across = np.flatnonzero((image < 128).any(axis=0)) / 10
    assert across[0] > 10
    assert across[-1] < text_box(text).right
    assert across[-1] - across[0] > 0.7 * text_box(text).width


def test_fonts_are_embedded_and_hold_the_letters_used_alone() -> None:
    marks = (Text((5, 5), "TOF", 3.0), Text((5, 15), "ab", 3.0, bold=True))
    with pikepdf.open(BytesIO(to_pdf([sheet(*marks)], ABOUT))) as file:
        fonts = [o for o in file.objects
                 if isinstance(o, pikepdf.Dictionary) and o.get("/Type") == "/Font"]  # fmt: skip
        names = {str(font.BaseFont) for font in fonts}
        assert len(names) == 2
        assert all(re.fullmatch(r"/[A-Z]{6}\+B612-(Regular|Bold)", name) for name in names)
        for font in fonts:
            inside = TTFont(BytesIO(font.FontDescriptor.FontFile2.read_bytes()))
            assert inside["maxp"].numGlyphs < 8


def test_qpdf_finds_no_fault_and_nothing_is_a_raster() -> None:
    data = to_pdf([every_mark(), sheet(title="Notes")], ABOUT)
    with pikepdf.open(BytesIO(data)) as file:
        assert file.check_pdf_syntax() == []
        assert not any(page.get_images() for page in file.pages)
    page = pdfium.PdfDocument(data)[0]
    assert {thing.type for thing in page.get_objects()} == {
        raw.FPDF_PAGEOBJ_PATH, raw.FPDF_PAGEOBJ_TEXT,
    }  # fmt: skip


def test_each_page_has_a_bookmark_with_its_title() -> None:
    titles = ["Section across", "Detail ½ (sump", "Київ"]
    file = pdfium.PdfDocument(to_pdf([sheet(title=t) for t in titles], ABOUT))
    marks = list(file.get_toc())
    assert [mark.get_title() for mark in marks] == titles
    assert [mark.get_dest().get_index() for mark in marks] == [0, 1, 2]


def test_the_document_says_what_it_is_and_no_date() -> None:
    with pikepdf.open(BytesIO(to_pdf([sheet()], ABOUT))) as file:
        assert {key: str(value) for key, value in file.docinfo.items()} == {
            "/Title": ABOUT.title, "/Author": ABOUT.author, "/Subject": ABOUT.subject,
            "/Keywords": ABOUT.keywords, "/Creator": "Bedcourse",
        }  # fmt: skip


def test_hostile_words_stay_words() -> None:
    about = DocumentInfo(NASTY, NASTY, NASTY, NASTY)
    data = to_pdf([sheet(Text((5, 5), NASTY, 2.5), title=NASTY), sheet(title="\x00")], about)
    with pikepdf.open(BytesIO(data)) as file:
        assert file.check_pdf_syntax() == []
        for key in ("/Title", "/Author", "/Subject", "/Keywords"):
            assert str(file.docinfo[key]) == NASTY_PRINTED
    read = pdfium.PdfDocument(data)
    assert [mark.get_title() for mark in read.get_toc()] == [NASTY_PRINTED, "Sheet 2"]
    assert read[0].get_textpage().get_text_bounded() == NASTY_PRINTED


def test_same_sheets_same_bytes_even_when_two_are_written_at_once() -> None:
    sheets = [every_mark(), sheet(Text((5, 5), "x", 3.0))]
    first = to_pdf(sheets, ABOUT)
    for _ in range(6):
        # Areas that no one has asked anything yet: as two pages of the app would first draw them.
        sheets = [every_mark(), sheet(Text((5, 5), "x", 3.0))]
        with ThreadPoolExecutor(4) as pool:
            assert set(pool.map(lambda _, s=sheets: to_pdf(s, ABOUT), range(8))) == {first}
    assert to_pdf(sheets, DocumentInfo("Other")) != first


def test_later_marks_lie_over_earlier_ones_and_holes_stay_open() -> None:
    ring = box(10, 10, 40, 40) - box(20, 20, 30, 30)
    image = picture(page_of(
        Fill(ring, "#ff0000"), Circle((15, 15), 3, 0, fill="#0000ff"), Circle((70, 25), 10, 2.0),
    ))  # fmt: skip
    seen = [image.getpixel((round(x * 10), round((50 - y) * 10)))
            for x, y in ((12, 35), (25, 25), (15, 15), (70, 25), (79.8, 25))]  # fmt: skip
    assert seen == [(255, 0, 0), (255, 255, 255), (0, 0, 255), (255, 255, 255), (26, 26, 26)]


def is_ink(image: Image.Image, spots: Sequence[tuple[float, float]]) -> list[bool]:
    return [image.convert("L").getpixel((round(x * 10), round((50 - y) * 10))) < 128
            for x, y in spots]  # fmt: skip


def test_ends_are_round_and_dashes_flat_and_rings_closed() -> None:
    image = picture(page_of(
        Line(((10, 10), (40, 10)), 4.0), Line(((10, 20), (40, 20)), 4.0, dash=(10.0, 5.0)),
        Line(((60, 10), (90, 10), (90, 40), (60, 10)), 4.0),
    ))  # fmt: skip
    assert is_ink(image, ((8.5, 10), (41.5, 10), (8.0, 11.8))) == [True, True, False]
    dashes = is_ink(image, ((9.5, 20), (10.5, 20), (19.5, 21.8), (20.5, 20), (25.5, 21.8)))
    assert dashes == [False, True, True, False, True]
    assert is_ink(image, ((58.6, 9.4), (91.4, 8.6), (75, 25))) == [True, True, True]


def test_it_looks_as_the_svg_does_to_another_renderer() -> None:
    drawing = every_mark()
    page = pdfium.PdfDocument(to_pdf([drawing], ABOUT))[0]
    ours = picture(page).resize((100, 50), Image.Resampling.BOX)
    theirs = Image.open(BytesIO(to_png(to_svg(drawing), 254))).convert("RGB")
    coarse = theirs.resize((100, 50), Image.Resampling.BOX)
    apart = np.abs(np.asarray(ours, dtype=float) - np.asarray(coarse, dtype=float))
    assert np.asarray(coarse).std() > 20
    assert apart.max() < 48
    assert apart.mean() < 2


def test_a_document_needs_a_sheet() -> None:
    with pytest.raises(ValueError, match="at least one sheet"):
        to_pdf([], ABOUT)
