"""A cut drawn on the plan with mouse or finger, and the permit set saved, in a real browser."""

from zipfile import ZipFile

import pytest

from tests.browser.conftest import PATIENCE
from tests.browser.test_in_a_browser import saved
from tests.conftest import CHROMIUM

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
]

CHANGED = "before => document.querySelector('.sheet img').src !== before"
FIELDS = ("From (x, y)", "To (x, y)")


@pytest.fixture
def section(page):
    page.get_by_role("radio", name="Section", exact=True).click()
    page.locator(".sheet img").wait_for(timeout=PATIENCE)
    page.locator(".over .end").first.wait_for(timeout=PATIENCE)
    return page


def changes(page, act):
    """Do something and wait until another drawing is shown."""
    before = page.locator(".sheet img").get_attribute("src")
    act()
    page.wait_for_function(CHANGED, arg=before, timeout=PATIENCE)


def spot(page, across, down):
    """A place on the plan, as shares of its width and height; where it is on the screen."""
    page.locator(".over").scroll_into_view_if_needed()
    box = page.locator(".over").bounding_box()
    return box["x"] + across * box["width"], box["y"] + down * box["height"]


def drag(page, start, *more):
    page.mouse.move(*start)
    page.mouse.down()
    for place in more:
        page.mouse.move(*place, steps=4)
    page.mouse.up()


def places(page):
    for label in FIELDS:
        page.get_by_label(label, exact=True).wait_for(timeout=PATIENCE)
    return [page.get_by_label(label, exact=True).input_value() for label in FIELDS]


def own(page):
    return [words.split(", ") for words in places(page)]


@pytest.mark.slow
def test_a_line_dragged_on_the_plan_is_cut_and_fills_the_fields(section):
    page = section
    top = page.evaluate("document.querySelector('.stMain').scrollTop")
    changes(page, lambda: drag(page, spot(page, 0.06, 0.5), spot(page, 0.94, 0.52)))
    first, last = own(page)
    assert first[1] == last[1]
    assert first[0] != last[0]
    assert page.evaluate("document.querySelector('.stMain').scrollTop") == top
    assert page.wrong == []


@pytest.mark.slow
def test_an_end_is_dragged_and_the_other_stays(section):
    page = section
    changes(page, lambda: drag(page, spot(page, 0.2, 0.08), spot(page, 0.25, 0.9)))
    before = own(page)
    end = page.locator(".over .end").last.bounding_box()
    held = (end["x"] + end["width"] / 2, end["y"] + end["height"] / 2)
    changes(page, lambda: drag(page, held, spot(page, 0.7, 0.9)))
    page.wait_for_function(
        "was => [...document.querySelectorAll('input')].every(i => i.value !== was)",
        arg=", ".join(before[1]), timeout=PATIENCE,
    )  # fmt: skip
    after = own(page)
    assert after[0] == before[0]
    assert after[1][0] != before[1][0]
    assert page.wrong == []


@pytest.mark.slow
def test_two_taps_and_a_named_cut_choose_too(section):
    page = section
    page.mouse.click(*spot(page, 0.5, 0.06))
    page.get_by_text("Now tap where the cut ends").wait_for(timeout=PATIENCE)
    page.keyboard.press("Escape")
    page.get_by_text("Press and drag on the plan").wait_for(timeout=PATIENCE)
    page.mouse.click(*spot(page, 0.06, 0.8))
    changes(page, lambda: page.mouse.click(*spot(page, 0.9, 0.2)))
    assert places(page)[0] != places(page)[1]
    changes(page, lambda: page.locator(".names button", has_text="pier").click())
    assert page.locator(".names button[aria-pressed=true]").inner_text() == "pier"
    page.get_by_label(FIELDS[0], exact=True).wait_for(state="detached", timeout=PATIENCE)
    assert page.wrong == []


@pytest.mark.slow
def test_a_finger_draws_and_does_not_scroll_the_page(open_at):
    page = open_at(390, 844, touch=True)
    page.get_by_role("radio", name="Section", exact=True).tap()
    page.locator(".over .end").first.wait_for(timeout=PATIENCE)
    page.locator(".sheet img").wait_for(timeout=PATIENCE)
    hand = page.context.new_cdp_session(page)

    def touch(kind, *at):
        points = [{"x": at[0], "y": at[1]}] if at else []
        hand.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    def swipe():
        (x, y), (_, low) = spot(page, 0.4, 0.1), spot(page, 0.4, 0.9)
        touch("touchStart", x, y)
        for share in (0.3, 0.6, 1.0):
            touch("touchMove", x, y + share * (low - y))
        touch("touchEnd")

    top = page.evaluate("document.querySelector('.stMain').scrollTop")
    changes(page, swipe)
    (x, _), (same, _) = own(page)
    assert x == same
    assert page.evaluate("document.querySelector('.stMain').scrollTop") == top
    assert page.wrong == []


@pytest.mark.slow
def test_a_section_and_the_set_are_saved_whole(open_at, tmp_path):
    page = open_at(390, 844)
    page.get_by_role("radio", name="Section", exact=True).click()
    page.locator(".sheet img").wait_for(timeout=PATIENCE)
    assert saved(page, "SVG", tmp_path / "a.svg").startswith(b"<svg")
    assert saved(page, "PNG, 150 dpi", tmp_path / "a.png").startswith(b"\x89PNG")
    assert saved(page, "PDF", tmp_path / "a.pdf").startswith(b"%PDF")
    page.get_by_role("radio", name="Set", exact=True).click()
    page.get_by_role("radio", name="Set", exact=True).click()
    page.get_by_role("radio", name="S-401").wait_for(timeout=PATIENCE)
    changes(page, lambda: page.get_by_role("radio", name="S-401").click())
    page.get_by_text("Drain profile").first.wait_for(timeout=PATIENCE)
    assert saved(page, "PDF", tmp_path / "set.pdf").startswith(b"%PDF")
    page.get_by_role("button", name="Make a ZIP of everything").click()
    page.get_by_role("button", name="ZIP", exact=True).wait_for(timeout=PATIENCE)
    saved(page, "ZIP", tmp_path / "set.zip")
    with ZipFile(tmp_path / "set.zip") as bundle:
        assert {name.rsplit(".")[-1] for name in bundle.namelist()} == {"pdf", "svg", "png"}
    wide = page.evaluate("document.querySelector('.stMain').scrollWidth")
    assert wide <= page.viewport_size["width"]
    assert page.wrong == []
