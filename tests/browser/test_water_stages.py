"""The view on water in a real browser: every stage fits its screen and stays where it is."""

import pytest

from tests.browser.conftest import PATIENCE
from tests.browser.test_in_a_browser import OVERLAPS, look_at, settled
from tests.conftest import CHROMIUM
from tests.whole.networks import TEXTS

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
]

PICTURES = {
    "Soil and filter": "Grain sizes against fabric and holes",
    "Pipe strength": "How far the pipe flattens",
    "Wall": "Push of the fill on the wall",
    "Cleanouts": "Runs between places to enter the drain",
    "Pit and storm": "Water in the pit over the storm",
    "Heights": "Heights of the drain",
}


def picture(page, title):
    """The one picture of that title that this screen shows."""
    found = page.locator(f'img[alt="{title}"]:visible')
    found.wait_for(timeout=PATIENCE)
    return found


@pytest.mark.slow
def test_every_stage_fits_without_sideways_scrolling(page):
    look_at(page, "Drain")
    for stage, title in PICTURES.items():
        look_at(page, stage)
        box = picture(page, title).bounding_box()
        assert box["x"] >= 0
        assert box["x"] + box["width"] <= page.viewport_size["width"]
        # While a stage is replaced, the one before stands below it.
        settled = "document.querySelectorAll('.caution').length === 1"
        page.wait_for_function(settled, timeout=PATIENCE)
        wide = "document.querySelector('.stMain').scrollWidth"
        assert page.evaluate(wide) <= page.viewport_size["width"], stage
        scrolls = (
            "[...document.querySelectorAll('.sheet')].some(e => e.scrollWidth > e.clientWidth)"
        )
        assert not page.evaluate(scrolls), stage
        assert page.evaluate(OVERLAPS) == [], stage
    assert page.wrong == []


@pytest.mark.slow
def test_an_outlet_to_daylight_fits_its_screen(page, tmp_path):
    (tmp_path / "hill.toml").write_text(TEXTS["daylight"], encoding="utf-8")
    page.get_by_role("button", name="Open and save").click()
    page.locator("input[type=file]").first.set_input_files(tmp_path / "hill.toml")
    page.get_by_text("Invented", exact=True).wait_for(timeout=PATIENCE)
    page.keyboard.press("Escape")
    look_at(page, "Drain")
    look_at(page, "Outlet")
    settled(page)
    box = picture(page, "Outlet to daylight").bounding_box()
    assert box["x"] >= 0
    assert box["x"] + box["width"] <= page.viewport_size["width"]
    assert page.evaluate(OVERLAPS) == []
    assert page.wrong == []


@pytest.mark.slow
def test_the_picture_follows_an_edit_and_stays_in_its_place(page):
    look_at(page, "Drain")
    before = picture(page, PICTURES["Heights"])
    place, source = before.bounding_box(), before.get_attribute("src")
    settled(page)
    field = page.get_by_label("Stone under the pipe", exact=True)
    field.fill("3 in")
    field.press("Enter")
    page.wait_for_function(
        "([title, old]) => [...document.querySelectorAll(`img[alt='${title}']`)]"
        ".some(e => e.offsetWidth && e.src !== old)",
        arg=[PICTURES["Heights"], source],
        timeout=PATIENCE,
    )
    after = picture(page, PICTURES["Heights"]).bounding_box()
    # A field may scroll the page to itself: what counts is the place on the page.
    scrolled = page.evaluate("document.querySelector('.stMain').scrollTop")
    assert (after["x"], after["y"] + scrolled) == pytest.approx((place["x"], place["y"]), abs=2)
    assert after["width"] == pytest.approx(place["width"], abs=2)
    assert page.wrong == []
