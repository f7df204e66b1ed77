"""The permit set's files on every paper, read by programs that did not write them and measured."""

from dataclasses import replace
from io import BytesIO

import numpy as np
import pikepdf
import pytest

from tests.viz.sheets.issued import DEMO, EVERY, METRIC, USUAL, Issued, issued, work
from tests.viz.sheets.printed import MM, Printed, from_svg
from viz.drawing.page import PaperName
from viz.drawing.scale import named_scale
from viz.export.svg import to_svg
from viz.pictures import section_shots
from viz.sheets.permit import one_sheet
from viz.style.lines import CUT, THINNEST_OUTLINED

TRUE_MM = 0.1
# Lengths in words are rounded to an eighth of an inch, those of the pipe to a 32nd; or 0.1 mm.
ROUNDED_MM = 25.4 / 16
# From the files of the two designs: the house from end to end on its plan and in its section,
# and the thickness of its walls.
OVERALL = {DEMO: ("42'-0\"", 42 * 0.3048), METRIC: ("9600 mm", 9.6)}
WALL_M = {DEMO: 8 * 0.0254, METRIC: 0.24}
FLAT = "EFHILT"

on_every_paper = pytest.mark.parametrize(("name", "paper"), EVERY)


@pytest.fixture
def sent(name: str, paper: PaperName) -> Issued:
    return issued(name, paper)


def true(pages: list[Printed]) -> int:
    """Hold every length that is written against the one drawn; return how many there were."""
    found = [m for page in pages for m in page.dimensions()]
    for one in found:
        assert one.error_mm < TRUE_MM + ROUNDED_MM / one.ratio, one
    return len(found)


@on_every_paper
def test_every_page_has_the_papers_true_size(sent: Issued) -> None:
    assert len(sent.pages) == len(sent.sheets)
    for page in sent.pages:
        assert (page.width, page.height) == pytest.approx(
            (sent.paper.width, sent.paper.height), abs=1e-3
        )


@on_every_paper
def test_every_scale_bar_and_every_scale_named_is_true(sent: Issued) -> None:
    """A bar's end says a length of the job; what the scale's name makes of it is the bar's."""
    drawn = [page for first in (1, 3, 4, 5) for page in sent.of_kind(first)]
    for page in drawn:
        bars = list(page.bars())
        assert len(bars) == len(page.captions) > 0
        assert max(bar.error_mm for bar in bars) < TRUE_MM
    named = {c.words for page in drawn for c in page.captions}
    assert len(named) > 1  # a set is drawn at more than one scale


@on_every_paper
def test_figures_say_the_lengths_that_are_drawn(sent: Issued) -> None:
    assert true(sent.of_kind(3)) >= 3
    assert true(sent.of_kind(5)) >= 3
    true(sent.of_kind(1))
    true(sent.of_kind(4))


@on_every_paper
def test_the_houses_overall_dimension_is_true(sent: Issued, name: str) -> None:
    words, length = OVERALL[name]
    for first in (1, 3):
        found = [m for p in sent.of_kind(first) for m in p.dimensions() if m.words == words]
        assert found
        for one in found:
            assert one.drawn_mm == pytest.approx(length * 1000 / one.ratio, abs=TRUE_MM)


@on_every_paper
def test_a_walls_width_is_true_in_every_section(sent: Issued, name: str) -> None:
    for page in sent.of_kind(3):
        assert_wall(page, WALL_M[name])


def assert_wall(page: Printed, thick_m: float) -> None:
    for caption in page.captions:
        wall = thick_m * 1000 / caption.ratio
        if wall < 2 * THINNEST_OUTLINED:
            continue  # such a wall may be one heavy line
        pairs = page.upright_pairs(CUT, 2 * wall)
        assert min(abs(pair - wall) for pair in pairs) < TRUE_MM


@on_every_paper
def test_all_letters_stand_inside_the_border(sent: Issued) -> None:
    for number, page in enumerate(sent.pages):
        frames = [s for s in page.strokes if len(s.points) == 5 and abs(s.weight - 0.7) < 0.01]
        border = max(frames, key=lambda s: float(np.prod(s.size))).points
        assert border.min() == pytest.approx(sent.paper.border, abs=0.01)
        letters = letters_of(sent, number)
        assert len(letters) > 200
        low = np.array([(box[0], box[1]) for _, box in letters]).min(axis=0)
        high = np.array([(box[2], box[3]) for _, box in letters]).max(axis=0)
        assert (low > border.min(axis=0)).all()
        assert (high < border.max(axis=0)).all()


def letters_of(sent: Issued, number: int) -> list[tuple[str, tuple[float, ...]]]:
    """Every letter of a page with its box of ink, mm."""
    read = sent.document[number].get_textpage()
    words = read.get_text_range()
    found = []
    for at, sign in enumerate(words):
        if not sign.isspace():
            found.append((sign, tuple(edge * MM for edge in read.get_charbox(at))))
    return found


@on_every_paper
def test_no_capital_is_lower_than_2_5_mm(sent: Issued) -> None:
    for number in range(len(sent.pages)):
        heights = [box[3] - box[1] for sign, box in letters_of(sent, number) if sign in FLAT]
        assert min(heights) > 2.5 - 0.02


@on_every_paper
def test_the_document_is_sound_and_names_its_sheets(sent: Issued) -> None:
    with pikepdf.open(BytesIO(sent.pdf)) as file:
        assert file.check_pdf_syntax() == []
        for page in file.pages:
            fonts = page.Resources.Font
            assert len(fonts) >= 2
            assert all("/FontFile2" in fonts[key].FontDescriptor for key in fonts)
    outline = [(b.get_title(), b.get_dest().get_index()) for b in sent.document.get_toc()]
    assert outline == [(f"{s.number} {s.title}", n) for n, s in enumerate(sent.sheets)]
    about, said = sent.work.layout.design.project, sent.document.get_metadata_dict()
    assert about.name in said["Title"]
    assert said["Author"] == about.prepared_by
    assert about.address in said["Subject"]
    assert said["Keywords"].split(", ") == [s.number for s in sent.sheets]


@pytest.mark.parametrize(("name", "paper"), USUAL)
def test_the_same_lengths_are_true_in_svg(sent: Issued, name: str) -> None:
    words, length = OVERALL[name]
    for sheet, page in zip(sent.sheets, sent.pages, strict=True):
        if sheet.number[2] not in "1345":
            continue
        read = from_svg(to_svg(sheet.drawing))
        assert (read.width, read.height) == (sent.paper.width, sent.paper.height)
        assert [c.ratio for c in read.captions] == [c.ratio for c in page.captions]
        assert max(bar.error_mm for bar in read.bars()) < TRUE_MM
        assert true([read]) == true([page])
        if sheet.number[2] == "3":
            assert_wall(read, WALL_M[name])
        if sheet.number[2] == "1":
            (overall,) = (m for m in read.dimensions() if m.words == words)
            assert overall.drawn_mm == pytest.approx(length * 1000 / overall.ratio, abs=TRUE_MM)


GIVEN = [(DEMO, "ARCH D", '1/8" = 1\'-0"'), (METRIC, "A1", "1:100")]


@pytest.mark.parametrize(("name", "paper", "scale"), GIVEN)
def test_a_scale_that_is_given_is_the_one_drawn(name: str, paper: PaperName, scale: str) -> None:
    one = work(name)
    for shot in section_shots(one):
        (sheet,) = one_sheet(one, shot, paper, named_scale(scale, one.system))
        page = from_svg(to_svg(sheet.drawing))
        assert [c.words for c in page.captions] == [f"Scale {scale}"]
        assert max(bar.error_mm for bar in page.bars()) < TRUE_MM
        assert true([page]) >= 1
        assert_wall(page, WALL_M[name])


@pytest.mark.slow
@pytest.mark.parametrize(("name", "paper", "scale"), GIVEN)
def test_a_scale_that_is_given_is_that_of_all_sections_of_a_set(
    name: str, paper: PaperName, scale: str
) -> None:
    pages = issued(name, paper, named_scale(scale, work(name).system)).of_kind(3)
    assert {c.words for page in pages for c in page.captions} == {f"Scale {scale}"}
    assert max(bar.error_mm for page in pages for bar in page.bars()) < TRUE_MM


@pytest.mark.parametrize("grown", [1.01, 0.99])
def test_the_measuring_sees_what_is_drawn_at_another_scale(grown: float) -> None:
    """A page with every place a hundredth out, as a printer that fits pages makes it."""
    shot = section_shots(work(DEMO))[0]
    (sheet,) = one_sheet(work(DEMO), shot, "ARCH C")
    page = from_svg(to_svg(sheet.drawing))
    bad = replace(
        page,
        words=tuple(
            replace(w, left=grown * w.left, right=grown * w.right, base=grown * w.base)
            for w in page.words
        ),
        strokes=tuple(replace(s, points=grown * s.points) for s in page.strokes),
    )
    assert_wall(page, WALL_M[DEMO])
    assert max(m.error_mm for m in (*page.bars(), *page.dimensions())) < TRUE_MM
    assert min(m.error_mm for m in bad.bars()) > TRUE_MM
    with pytest.raises(AssertionError):
        true([bad])
