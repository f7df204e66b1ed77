"""A person new to the app makes an L-shaped basement of their own and prints a section of it."""

import pytest

from geometry.units import read_length
from tests.browser.conftest import PATIENCE
from tests.browser.test_in_a_browser import settled
from tests.conftest import CHROMIUM

pytestmark = [
    pytest.mark.browser,
    pytest.mark.slow,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
]

MOST = 20
SIZES = {
    "Overall width": "46 ft", "Overall depth": "34 ft",
    "Width of the leg": "20 ft", "Depth of the long part": "22 ft",
}  # fmt: skip


class Hand:
    """What a person does, counted: every press, every field typed into."""

    def __init__(self, page):
        self.page, self.done = page, 0

    def press(self, place):
        place.click(timeout=PATIENCE)
        self._waited()

    def type(self, label, words):
        field = self.page.get_by_label(label, exact=True)
        field.fill(words)
        field.press("Enter")
        self._waited()

    def _waited(self):
        self.done += 1
        settled(self.page)


def test_from_the_open_app_to_a_printed_section_of_ones_own_house(page, tmp_path):
    hand = Hand(page)
    hand.press(page.get_by_text("Begin from a shape", exact=True))
    hand.press(page.get_by_role("radio", name="L", exact=True))
    for label, words in SIZES.items():
        hand.type(label, words)
    hand.press(page.get_by_role("button", name="Use this shape"))
    hand.press(page.get_by_role("radio", name="Set", exact=True))
    hand.type("Project", "Our own house")
    hand.press(page.get_by_role("radio", name="Section", exact=True))
    page.locator(".sheet img").first.wait_for(timeout=PATIENCE)
    with page.expect_download(timeout=PATIENCE) as saved:
        hand.press(page.get_by_role("button", name="PDF", exact=True))
    saved.value.save_as(tmp_path / "section.pdf")
    assert hand.done < MOST
    assert page.wrong == []
    _is_the_house(tmp_path / "section.pdf")


def _is_the_house(file):
    import pypdfium2

    with pypdfium2.PdfDocument(file) as document:
        words = document[0].get_textpage().get_text_bounded()
    assert "Our own house" in words
    assert "Finished floor" in words
    # The cut across the house shows one of its own lengths.
    lengths = {round(read_length(size) / 0.3048) for size in SIZES.values()}
    assert any(f"{feet}'-0\"" in words for feet in lengths)
