"""The model in the app: an edit shows in it, and takes neither camera nor cut nor choices away."""

import pytest

from tests.browser.conftest import PATIENCE
from tests.browser.viewerpage import RESTED, rest, stand, state
from tests.conftest import CHROMIUM

pytestmark = [
    pytest.mark.browser,
    pytest.mark.slow,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
]

SCREENS = [(390, 844), (1280, 900)]
FRAME = ".turning iframe"
CHOOSE = """() => {
  window.same = true;
  bedcourse.store.set({cut: {along: 'x', at: 3, turn: 5, flip: false}, explode: 0.4,
    stage: 2, hidden: new Set(['basement/foam'])});
  bedcourse.viewer.eye.put({round: 77, down: 40});
  bedcourse.viewer.moved();
}"""
# How deep the footing reaches below its top, inches.
FOOTING = """() => {
  const { low } = bedcourse.viewer.house.views.find(v => v.part.id === 'footing');
  return Math.round(-low.z / 0.0254 * 100) / 100;
}"""

LOSE = "globalThis[Symbol.for('bedcourse turning')].shapes.clear()"


def viewer(page):
    """The frame of the model, when its picture has come to rest."""
    page.frame_locator(FRAME).locator(RESTED).wait_for(timeout=PATIENCE)
    return page.query_selector(FRAME).content_frame()


def typed(page, label, words):
    field = page.get_by_label(label, exact=True)
    field.fill(words)
    field.press("Enter")


def until(page, frame, script, wanted):
    """Wait until the frame says so; its policy lets no test wait within it."""
    for _ in range(300):
        if frame.evaluate(script) == wanted:
            return
        page.wait_for_timeout(100)
    pytest.fail(f"never {wanted}: {frame.evaluate(script)}")


def chosen(frame):
    found = state(frame)
    return {key: found[key] for key in ("cut", "explode", "stage", "hidden")}


@pytest.mark.parametrize("size", SCREENS, ids=lambda size: f"{size[0]} wide")
def test_an_edit_shows_in_the_model_and_leaves_camera_cut_and_choices(open_at, size):
    page = open_at(*size)
    frame = viewer(page)
    assert frame.evaluate(FOOTING) == 12
    frame.evaluate(CHOOSE)
    rest(frame)
    choices, place = chosen(frame), stand(frame)
    box = page.query_selector(FRAME).bounding_box()
    assert box["x"] >= 0
    assert box["x"] + box["width"] <= size[0]

    page.get_by_text("Footing and wall", exact=True).click()
    typed(page, "Footing thickness", "13 in")
    until(page, frame, FOOTING, 13)
    # A browser that holds less than it is taken to hold asks for what it lacks.
    page.evaluate(LOSE)
    typed(page, "Footing thickness", "14 in")
    until(page, frame, FOOTING, 14)
    rest(frame)
    assert frame.evaluate("() => window.same") is True  # the page in the frame is the same one
    assert (chosen(frame), stand(frame)) == (choices, place)
    assert page.query_selector(FRAME).bounding_box()["height"] == box["height"]

    # A page of its own in between: the frame is a new one, what was chosen is not lost.
    page.get_by_role("radio", name="Order", exact=True).click()
    page.wait_for_selector(FRAME, state="detached", timeout=PATIENCE)
    page.get_by_role("radio", name="Layout", exact=True).click()
    page.wait_for_selector(FRAME, timeout=PATIENCE)
    frame = viewer(page)
    until(page, frame, FOOTING, 14)
    assert frame.evaluate("() => window.same") is None
    assert chosen(frame) == choices
    assert stand(frame) == pytest.approx(place)
    assert page.wrong == []
