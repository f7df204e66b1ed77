"""Order and On site in a real browser: all fits, files come whole, an edit moves nothing."""

import re

import pytest

from tests.browser.conftest import PATIENCE
from tests.browser.test_in_a_browser import OVERLAPS, look_at, saved, settled
from tests.conftest import CHROMIUM
from viz.carried import demo_shots

pytestmark = [
    pytest.mark.browser,
    pytest.mark.slow,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
]

STAGES = {
    "Order": {"To order": "Boards: Foam, basement", "What has arrived": "What has arrived"},
    "On site": {
        "Crew cards": "1 Subgrade", "Story pole": "Story pole, basement, 1 of",
        "Laser sheet": "Laser sheet", "Inspection sheet": "Inspection sheet",
    },
}  # fmt: skip


def fits(page):
    """One caution: while a stage is replaced, the one before stands below it."""
    settled = "document.querySelectorAll('.caution').length === 1"
    page.wait_for_function(settled, timeout=PATIENCE)
    wide = page.evaluate("document.querySelector('.stMain').scrollWidth")
    assert wide <= page.viewport_size["width"]
    sheets = "[...document.querySelectorAll('.sheet')].some(e => e.scrollWidth > e.clientWidth)"
    assert not page.evaluate(sheets)
    assert page.evaluate(OVERLAPS) == []


def picture(page, title):
    found = page.locator(f'img[alt^="{title}"]:visible')
    found.first.wait_for(timeout=PATIENCE)
    return found.first


def test_every_stage_shows_its_picture_and_fits(page):
    for view, stages in STAGES.items():
        look_at(page, view)
        for stage, title in stages.items():
            look_at(page, stage)
            box = picture(page, title).bounding_box()
            assert box["x"] >= 0
            assert box["x"] + box["width"] <= page.viewport_size["width"]
            fits(page)
    assert page.wrong == []


def test_shots_are_opened_and_mapped(page):
    look_at(page, "On site")
    look_at(page, "As dug")
    page.get_by_text("Open shots").wait_for(timeout=PATIENCE)
    page.locator(".stMain input[type=file]").first.set_input_files(demo_shots())
    picture(page, "As dug: thickness of the stone, basement")
    fits(page)
    assert page.wrong == []


def test_a_ticket_is_typed_and_the_list_saved(page, tmp_path):
    look_at(page, "Order")
    look_at(page, "What has arrived")
    settled(page)
    page.get_by_label("Amount", exact=True).fill("14.2")
    page.get_by_role("button", name="Put it on the list").click()
    settled(page)
    page.locator("summary", has_text="The list of tickets").click()
    assert b",stone-57,14.2 tons," in saved(page, "Save the list", tmp_path / "tickets.csv")
    fits(page)
    assert page.wrong == []


def test_files_of_order_and_cards_come_whole(page, tmp_path):
    look_at(page, "Order")
    for name, begins in (("XLSX", b"PK"), ("PDF, to print", b"%PDF")):
        assert saved(page, name, tmp_path / "file").startswith(begins)
    look_at(page, "On site")
    assert saved(page, re.compile("PDF, all"), tmp_path / "cards.pdf").startswith(b"%PDF")
    assert page.wrong == []


def test_the_laying_plan_follows_an_edit_and_keeps_its_place(page):
    look_at(page, "Order")
    title = STAGES["Order"]["To order"]
    before = picture(page, title)
    place, source = before.bounding_box(), before.get_attribute("src")
    settled(page)
    field = page.get_by_label("Board length", exact=True)
    field.fill("10 ft")
    field.press("Enter")
    page.wait_for_function(
        "([title, old]) => [...document.querySelectorAll(`img[alt^='${title}']`)]"
        ".some(e => e.offsetWidth && e.src !== old)",
        arg=[title, source],
        timeout=PATIENCE,
    )
    after = picture(page, title).bounding_box()
    scrolled = page.evaluate("document.querySelector('.stMain').scrollTop")
    assert (after["x"], after["y"] + scrolled) == pytest.approx((place["x"], place["y"]), abs=2)
    assert page.wrong == []
