"""The plan editor by mouse, finger and keys in a real browser: one message for each edit."""

import sys
from pathlib import Path

import pytest

from tests.browser.conftest import PATIENCE
from tests.conftest import CHROMIUM
from tests.serving import free_port, serving

pytestmark = [
    pytest.mark.browser,
    pytest.mark.slow,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
]
PAGE = Path(__file__).with_name("plannerpage.py")


@pytest.fixture(scope="module")
def served():
    port = free_port()
    command = [sys.executable, "-m", "streamlit", "run", str(PAGE), "--server.port", str(port),
               "--server.headless", "true", "--browser.gatherUsageStats", "false"]  # fmt: skip
    with serving(command, port):
        yield f"http://127.0.0.1:{port}"


@pytest.fixture
def look(browser, served):
    pages = []

    def opened(width, height, touch=False):
        page = browser.new_page(viewport={"width": width, "height": height}, has_touch=touch)
        pages.append(page)
        page.wrong = []
        page.on("console", lambda m: page.wrong.append(m.text) if m.type == "error" else None)
        page.on("pageerror", lambda error: page.wrong.append(str(error)))
        page.goto(served)
        page.locator(".corner").first.wait_for(timeout=PATIENCE)
        return page

    yield opened
    for page in pages:
        page.close()


def heard(page, count):
    page.locator(".heard", has_text=str(count)).wait_for(timeout=PATIENCE)
    return page.locator("code").inner_text()


def middle(page, key):
    box = page.locator(f'[data-grip="{key}"] .dot').bounding_box()
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def drag(page, key, across, down):
    x, y = middle(page, key)
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + across, y + down, steps=6)
    page.mouse.up()


@pytest.mark.parametrize("width", [1280, 390])
def test_the_plan_is_dragged_typed_and_nudged(look, width):
    page = look(width, 900)
    before = page.locator("code").inner_text()
    # A few pixels off level and plumb are caught: nothing moves, and nothing is told.
    drag(page, "corner:1", 5, 5)
    drag(page, "corner:1", 30, 3)
    text = heard(page, 1)
    # Kept level with its neighbour, on whole inches.
    (corner,) = [c for c in text.split("\n")[0].split('"') if c not in before and "ft" in c]
    assert corner.endswith(", 0")
    assert "/" not in corner

    page.get_by_label("Length of side 1", exact=True).fill("44 ft 3 in")
    page.keyboard.press("Enter")
    text = heard(page, 2)
    # The garage hangs on the wall that went along.
    assert '"44 ft 3 in, 0"' in text
    assert text.count("44 ft 3 in, 18 ft") + text.count("42 ft, 18 ft") == 2

    drag(page, "pier:0", -10, 0)
    heard(page, 3)
    page.locator('[data-grip="corner:4"]').focus()
    for _ in range(3):
        page.keyboard.press("ArrowUp")
    text = heard(page, 4)
    assert text.count('"26 ft, 32 ft 3 in"') == 2

    page.mouse.click(*middle(page, "add:0"))
    heard(page, 5)
    page.locator('[data-grip="corner:6"]').wait_for(timeout=PATIENCE)
    page.locator('[data-grip="corner:1"]').focus()
    page.keyboard.press("Delete")
    assert heard(page, 6).split("\n")[0] == text.split("\n")[0]

    page.get_by_label("Length of side 2", exact=True).fill("wide")
    page.keyboard.press("Enter")
    heard(page, 7)
    page.get_by_text("is not a length").wait_for(timeout=PATIENCE)
    field = page.get_by_label("Length of side 2", exact=True)
    assert field.get_attribute("aria-invalid") == "true"
    assert field.input_value() == "wide"
    wide = page.evaluate("document.documentElement.scrollWidth")
    assert wide <= page.viewport_size["width"]
    assert page.wrong == []


def test_a_finger_drags_the_pit_and_does_not_scroll_the_page(look):
    page = look(390, 500, touch=True)
    hand = page.context.new_cdp_session(page)
    x, y = middle(page, "pit:0")

    def touch(kind, *at):
        points = [{"x": at[0], "y": at[1]}] if at else []
        hand.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    top = page.evaluate("document.querySelector('.stMain').scrollTop")
    touch("touchStart", x, y)
    for share in (0.3, 0.6, 1.0):
        touch("touchMove", x + 4 * share, y - 40 * share)
    touch("touchEnd")
    assert 'at = "3 ft 6 in, 12 ft"' not in heard(page, 1)
    assert page.evaluate("document.querySelector('.stMain').scrollTop") == top
    assert page.wrong == []
