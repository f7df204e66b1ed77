"""Crew cards: a page a stage, figures of the report, large enough to be read at arm's length."""

import io
import re
from functools import cache

import pikepdf
import pypdfium2 as pdfium
import pytest
import shapely

from geometry.layout.lay import lay_out
from geometry.site.stages import stages
from geometry.units import show_rod, show_volume, to_unit
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds
from tests.viz.sheets.issued import work
from tests.viz.sheets.small_papers import every
from tests.whole.networks import TEXTS
from viz.drawing.lettering import text_box
from viz.drawing.marks import Fill, Line, Text
from viz.issue import set_pdf
from viz.job import Job, job
from viz.language.reader import codes, language
from viz.sheets.cards import card_sheets
from viz.sheets.sheet import Sheet
from viz.sheets.upright import SmallName

FEW: list[tuple[str, SmallName, str]] = [
    ("l-basement", "letter", "en"),
    ("metric-house", "A4", "es"),
]
EVERY = every(FEW)
# Capitals of body text, and of figures for arm's length, mm; the foot's line is no body text.
BODY, BIG, FOOT = 4.0, 8.0, 3.0


@cache
def house(name: str) -> Job:
    return job(TEXTS[name]) if name in TEXTS else work(name)


@cache
def cards_of(name: str, paper: SmallName, code: str) -> tuple[Sheet, ...]:
    return card_sheets(house(name), paper, language(code))


def texts(sheet: Sheet) -> list[Text]:
    return [m for m in sheet.drawing.marks if isinstance(m, Text) and m.words.strip()]


def big(sheet: Sheet) -> set[str]:
    return {t.words for t in texts(sheet) if t.height >= BIG}


@pytest.mark.parametrize(("name", "paper", "code"), EVERY)
def test_every_card_is_read_at_arms_length(name: str, paper: SmallName, code: str) -> None:
    for sheet in cards_of(name, paper, code):
        small = [t for t in texts(sheet) if t.height < BODY]
        assert all(t.height == FOOT for t in small), [t.words for t in small]
        assert len(small) <= 3
        lowest = min(text_box(t).low for t in texts(sheet))
        spread = max(text_box(t).high for t in texts(sheet)) - lowest
        assert spread > 0.85 * sheet.drawing.height, "a page half empty"


@pytest.mark.parametrize(("name", "paper", "code"), EVERY)
def test_names_in_the_picture_stand_clear_of_the_cut_and_of_arrows(
    name: str, paper: SmallName, code: str
) -> None:
    for sheet in cards_of(name, paper, code):
        marks = sheet.drawing.marks
        solid = shapely.union_all(
            [m.shape for m in marks if isinstance(m, Fill) and m.layer == "cut"]
        )
        arrows = shapely.union_all(
            [
                shapely.LineString(m.points)
                for m in marks
                if isinstance(m, Line) and m.layer == "labels"
            ]
        )
        for text in texts(sheet):
            box = text_box(text)
            if text.layer == "labels":
                room = shapely.box(box.left, box.low, box.right, box.high)
                assert room.intersection(solid).area < 0.01, (sheet.title, text.words)
                assert not room.buffer(-0.2).intersects(arrows), (sheet.title, text.words)


def test_cards_are_pages_with_their_letters_within() -> None:
    made = work("l-basement")
    pdf = set_pdf(made, cards_of("l-basement", "letter", "es"), "es")
    with pikepdf.open(io.BytesIO(pdf)) as opened:
        assert len(opened.pages) == len(stages(made.layout))
        assert str(opened.Root.Lang) == "es"
        for page in opened.pages:
            assert [float(x) for x in page.mediabox] == pytest.approx([0, 0, 612, 792])
            for font in page.Resources.Font.values():
                descriptor = font.get("/FontDescriptor")
                assert descriptor is None or "/FontFile2" in descriptor
    text = " ".join(page.get_textpage().get_text_range() for page in pdfium.PdfDocument(pdf))
    assert "Cárcamo" in text
    assert "Espuma rígida" in text
    assert "¿" not in text


def test_figures_are_those_of_the_report() -> None:
    """Each layer's rod, level and order, as the report has them, stand large on its card."""
    made = work("l-basement")
    report, found = made.report, stages(made.layout)
    rods = {(r.area, r.interface.split(" (")[0]): r.rod_reading_m for r in report.levels}
    cards = cards_of("l-basement", "letter", "en")
    for stage, sheet in zip(found, cards, strict=True):
        for area in made.layout.areas:
            for layer in area.floor.layers:
                rod = rods[area.name, f"{layer.name} top"]
                if f"{area.name}/{layer.name}" in stage.parts and rod is not None and rod >= 0:
                    assert show_rod(rod, "ft-in") in big(sheet), sheet.title
        for amount in stage.amounts:
            if amount.sold == "yd3":
                ordered = show_volume(to_unit(amount.count, "yd**3", "m**3"), "ft-in")
                assert ordered in big(sheet)
    foam = next(r for r in report.order.rows if r.item == "Foam")
    sheet = next(c for c in cards if c.title == "Rigid foam")
    assert f"{foam.count:g} boards" in big(sheet)


def test_no_rod_is_read_above_the_laser_or_without_one() -> None:
    cards = cards_of("l-basement", "letter", "en")
    garage = [c for c in cards if any("garage" in t.words for t in texts(c))]
    said = {t.words for c in garage for t in texts(c)}
    assert "from TOF garage; above the laser" in said
    assert "+3'-1\"" in said
    assert not any(re.fullmatch(r"-[1-9]'-.*", words) for c in cards[7:] for words in big(c))
    for sheet in cards_of("upper to daylight", "letter", "en"):
        assert any(t.words.startswith("El. ") for t in texts(sheet))


def test_spanish_cards_speak_spanish_alone() -> None:
    english, spanish = (
        {t.words for c in cards_of("l-basement", "letter", code) for t in texts(c)}
        for code in ("en", "es")
    )
    same = {words for words in english & spanish if re.search("[a-z]{5}", words)}
    # Names the design's file gives, and sources.
    assert all(re.search("basement|garage|ACI|CFR|ASTM|Durham", words) for words in same), same


@pytest.mark.slow
@pytest.mark.parametrize("seed", seeds(15))
def test_any_sound_house_has_its_cards(seed: int) -> None:
    raw = seeded_raw(seed)
    if raw is None:
        pytest.skip("not a sound design")
    made = Job("", lay_out(design_of(raw)))
    for code in codes():
        cards = card_sheets(made, "letter", language(code))
        assert len(cards) == len(stages(made.layout))
