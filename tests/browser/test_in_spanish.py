"""The app in Spanish in a real browser: chosen in the head, kept over a reload, and all fits."""

import pytest

from tests.browser.conftest import PATIENCE
from tests.browser.test_in_a_browser import OVERLAPS, look_at, settled
from tests.conftest import CHROMIUM
from viz.language.screen import screen_words
from viz.panels.pages import PAGES

pytestmark = [
    pytest.mark.browser,
    pytest.mark.slow,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
]


@pytest.fixture
def spanish(page):
    """The page with Spanish chosen in its head, on the page of the floor."""
    look_at(page, "Floor")
    settled(page)
    page.get_by_role("button", name="Units, language").click()
    look_at(page, "Español")
    page.get_by_text("Piso terminado", exact=True).wait_for(timeout=PATIENCE)
    page.keyboard.press("Escape")
    settled(page)
    return page


def test_every_page_fits_in_spanish(spanish):
    page, words = spanish, screen_words("es")
    assert page.get_by_role("radio", name="Piso", exact=True).is_checked()
    for view in PAGES:
        look_at(page, words[view])
        settled(page)
        wide = page.evaluate("document.querySelector('.stMain').scrollWidth")
        assert wide <= page.viewport_size["width"], view
        assert page.evaluate(OVERLAPS) == [], view
    assert page.wrong == []


def test_the_language_outlives_a_reload(spanish):
    page = spanish
    assert page.evaluate("document.documentElement.lang") == "es"
    page.reload()
    page.get_by_text("Piso terminado", exact=True).wait_for(timeout=PATIENCE)
    settled(page)
    assert page.evaluate("document.documentElement.lang") == "es"
    frame = page.frame_locator(".turning iframe")
    frame.get_by_role("button", name="Zapata y dren").wait_for(timeout=PATIENCE)
    page.get_by_role("button", name="Unidades, idioma").click()
    look_at(page, "English")
    page.get_by_text("Finished floor", exact=True).wait_for(timeout=PATIENCE)
    assert page.wrong == []
