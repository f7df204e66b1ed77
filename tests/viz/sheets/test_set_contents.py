"""What a permit set says of itself, read from its PDF: index, marks, title blocks, words."""

import re
from collections import Counter
from collections.abc import Iterator

import pytest

from tests.viz.sheets.issued import EVERY, Issued, issued
from tests.viz.sheets.printed import Printed
from viz.drawing.page import PaperName
from viz.figures.pressure.pressure import TITLE

NUMBER = re.compile(r"[A-Z]-\d{3}")
INDEX = "Sheets of this set"
STAMP = "notforconstructionuntilapproved"
# Heights of type, mm: a drawing's number under it, and a sheet's in its title block.
CAPTION_CAPITAL, LARGEST = 3.5, 5.0
CAPITAL = 0.75

on_every_paper = pytest.mark.parametrize(("name", "paper"), EVERY)


@pytest.fixture
def sent(name: str, paper: PaperName) -> Issued:
    return issued(name, paper)


def bare(text: str) -> str:
    """A text without its spaces and capitals: lines are broken anywhere."""
    return "".join(text.split()).lower()


def numbers(page: Printed, largest: bool = False) -> list:
    """The numbers of sheets a page names, or its own in its title block."""
    named = [w for w in page.words if NUMBER.fullmatch(w.words)]
    return [w for w in named if (w.size * CAPITAL > LARGEST - 0.1) == largest]


@on_every_paper
def test_every_sheet_bears_its_own_number(sent: Issued) -> None:
    for sheet, page in zip(sent.sheets, sent.pages, strict=True):
        assert [w.words for w in numbers(page, largest=True)] == [sheet.number]
    numbered = [s.number for s in sent.sheets]
    assert numbered == sorted(set(numbered))


@on_every_paper
def test_the_index_lists_exactly_the_sheets_with_their_drawings(sent: Issued) -> None:
    pages = [
        page
        for sheet, page in zip(sent.sheets, sent.pages, strict=True)
        if any(one.startswith(INDEX) for one in sheet.contents)
    ]
    listed = [w.words for page in pages for w in numbers(page)]
    assert listed == [s.number for s in sent.sheets]
    said = "".join(bare(page.text) for page in pages)
    for sheet in sent.sheets:
        assert bare(sheet.title) in said
        assert all(bare(one) in said for one in sheet.contents)


@on_every_paper
def test_every_sheet_says_its_place_in_the_set(sent: Issued) -> None:
    for place, page in enumerate(sent.pages, 1):
        assert f"Sheet {place} of {len(sent.pages)}" in page.text


def drawings(page: Printed) -> list[str]:
    """The numbers of the drawings on a page, each beside the name of its scale."""
    found = []
    for caption in page.captions:
        beside = [
            w for w in page.words
            if abs(w.size * CAPITAL - CAPTION_CAPITAL) < 0.05 and w.words.isdigit()
            and 0 < caption.left - w.middle < 12 and abs(w.base - caption.base) < 8
        ]  # fmt: skip
        found += [w.words for w in beside]
    return found


@on_every_paper
def test_every_drawing_has_a_number_of_its_own_on_its_sheet(sent: Issued) -> None:
    for sheet, page in zip(sent.sheets, sent.pages, strict=True):
        found = drawings(page)
        assert sorted(map(int, found)) == list(range(1, len(page.captions) + 1))
        if found:
            assert len(found) == len(sheet.contents)


def stacked(page: Printed) -> Iterator[tuple[str, str]]:
    for sheet in numbers(page):
        over = [
            w for w in page.words
            if abs(w.middle - sheet.middle) < 1.5 and 0 < w.base - sheet.base < 8
            and re.fullmatch(r"\d{1,2}", w.words)
        ]  # fmt: skip
        yield min(over, key=lambda w: w.base).words, sheet.words


def on_one_line(page: Printed) -> Iterator[tuple[str, str]]:
    for word in page.words:
        mark = re.fullmatch(r"(\d{1,2})/([A-Z]-\d{3})", word.words)
        if mark:
            yield mark[1], mark[2]


@on_every_paper
def test_marks_on_the_plan_lead_to_every_section_and_detail_that_is_there(sent: Issued) -> None:
    """A mark is a number over the number of a sheet; on small papers both on one line.

    The push of the fill stands beside the sections and is cut nowhere.
    """
    there = {
        (drawing, sheet.number)
        for sheet in sent.sheets
        if sheet.number[2] in "35"
        for drawing in drawings(sent.by_number[sheet.number])
        if TITLE not in sheet.contents[int(drawing) - 1]
    }
    led = {mark for page in sent.of_kind(1) for mark in (*stacked(page), *on_one_line(page))}
    assert led == there


@on_every_paper
def test_the_title_block_says_whose_house_it_is_on_every_sheet(sent: Issued) -> None:
    about = sent.work.layout.design.project
    for page in sent.pages:
        whole = bare(page.text)
        cut = [bare(w.words[:-1]) for w in page.words if w.words.endswith("…")]
        for field in ("name", "address", "parcel", "drawn_for", "prepared_by", "date",
                      "revision", "code"):  # fmt: skip
            said = bare(getattr(about, field))
            assert said
            assert said in whole or any(len(c) > 8 and c in said for c in cut), field


@on_every_paper
def test_nothing_claims_to_be_approved(sent: Issued) -> None:
    for page in sent.pages:
        said = bare(page.text)
        assert STAMP in said
        assert "approved" not in said.replace(STAMP, "")
        assert "complian" not in said
        assert "certified" not in said


@on_every_paper
def test_the_local_code_governs_on_every_large_sheet_or_among_the_cautions(sent: Issued) -> None:
    said = ["localcodegoverns" in bare(page.text) for page in sent.pages]
    assert all(said) if sent.paper.width > 550 else any(said)


@on_every_paper
def test_no_sheet_is_bare_and_no_two_drawings_are_the_same(sent: Issued) -> None:
    titles = Counter(
        one.split(" ", 1)[-1] for s in sent.sheets if s.number[2] in "35" for one in s.contents
    )
    assert max(titles.values()) == 1
    assert all(len(page.words) > 30 for page in sent.pages)
