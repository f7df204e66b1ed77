"""Forms to fill in: nothing lost over a page, headings and signatures kept with their rows."""

import pytest

from viz.drawing.figure import Figure
from viz.drawing.marks import Text
from viz.drawing.place import NoRoomError
from viz.figures.forms.entries import Column, Entry
from viz.figures.forms.form import Form, largest
from viz.figures.forms.grid import Grid

COLUMNS = (Column("", 1, "box"), Column("What", 12), Column("Found", 4, "blank"))


def form(count: int, text: float = 3.0) -> Form:
    entries = []
    for number in range(count):
        entries.append(Entry((f"Part {number}", "Who asks"), "heading"))
        entries += [Entry(("", f"row {number} {n}", "")) for n in range(number % 4 + 2)]
        entries.append(Entry(("Seen by", f"date {number}"), "sign"))
    return Form(Grid(COLUMNS, text, 180.0), tuple(entries))


def words(page: Figure) -> list[str]:
    return [m.words for m in page.marks if isinstance(m, Text)]


def test_every_entry_stands_once_in_its_order() -> None:
    pages = form(9).pages(90.0)
    assert len(pages) > 2
    rows = [w for page in pages for w in words(page) if w.startswith("row")]
    assert rows == [f"row {n} {m}" for n in range(9) for m in range(n % 4 + 2)]
    assert all(page.box.height <= 90.0 + 1e-6 for page in pages)


@pytest.mark.parametrize("height", [60.0, 71.0, 83.0, 97.0, 120.0])
def test_a_heading_keeps_two_rows_and_a_signature_its_last_row(height: float) -> None:
    for page in form(9).pages(height):
        said = [w for w in words(page) if w not in ("What", "Found", "Who asks", "Seen by")]
        assert not said[-1].startswith("Part")
        assert not said[-2].startswith("Part")
        assert not said[0].startswith("date")


def test_a_form_that_fits_is_one_page_and_its_text_as_large_as_it_may() -> None:
    assert len(form(2).pages(300.0)) == 1
    one = largest(form(3), (5.0, 4.0, 3.0), 130.0, 1)
    heights = {m.height for m in one[0].marks if isinstance(m, Text) and m.words.startswith("row")}
    assert len(one) == 1
    assert heights == {max(s for s in (5.0, 4.0, 3.0) if len(form(3, s).pages(130.0)) == 1)}


def test_an_entry_higher_than_the_page_is_refused() -> None:
    with pytest.raises(NoRoomError):
        form(1).pages(15.0)
