"""The app in a real browser: figures follow an edit, nothing leaves this machine, all fits."""

import pytest

from tests.browser.conftest import PATIENCE
from tests.conftest import CHROMIUM
from viz.panels.pages import PAGES

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
]


def figure(page, name):
    tile = page.locator(".figures div", has=page.get_by_text(name, exact=True))
    return tile.locator("b").inner_text()


def look_at(page, view):
    page.get_by_role("radio", name=view, exact=True).click()


def settled(page):
    """Wait until the page shows what was asked for, nothing of what was there before."""
    page.wait_for_timeout(400)
    done = "() => document.querySelector('.stApp').dataset.testScriptState === 'notRunning'"
    page.wait_for_function(done, timeout=PATIENCE)
    page.wait_for_timeout(600)


# What opens or grows moves all below it: a click that begins on a button may end beside it.
STILL = """async (element) => {
  const place = () => { const at = element.getBoundingClientRect(); return `${at.x} ${at.y}`; };
  let before = null;
  while (place() !== before) {
    before = place();
    await new Promise((done) => setTimeout(done, 400));
  }
}"""


def saved(page, name, path):
    """Press a button that stands still, save what it gives, return the bytes.

    name: all the words on it, or a pattern found in them.
    """
    button = page.get_by_role("button", name=name, exact=True)
    button.wait_for(timeout=PATIENCE)
    settled(page)
    button.evaluate(STILL)
    with page.expect_download(timeout=PATIENCE) as found:
        button.click()
    found.value.save_as(path)
    return path.read_bytes()


def drawn(page):
    """Wait until the model's own page has drawn its parts; return how many."""
    body = page.frame_locator(".turning iframe").locator("[data-drawn]")
    body.wait_for(timeout=PATIENCE)
    return int(body.get_attribute("data-drawn"))


def test_an_edit_changes_the_figures_and_nothing_leaves_this_machine(page):
    assert drawn(page) > 10
    assert figure(page, "Finished floor") == "+0'-6\""
    look_at(page, "Floor")
    field = page.get_by_label("Thickness, slab", exact=True)
    field.fill("5 in")
    field.press("Enter")
    page.get_by_text("+0'-7\"", exact=True).wait_for(timeout=PATIENCE)
    assert figure(page, "Finished floor") == "+0'-7\""
    field.fill("5")
    field.press("Enter")
    page.get_by_text("has no unit").first.wait_for(timeout=PATIENCE)
    assert figure(page, "Finished floor") == "+0'-7\""
    assert page.wrong == []


@pytest.mark.slow
def test_every_view_fits_the_screen(page):
    for view in PAGES:
        look_at(page, view)
        settled(page)
        wide = page.evaluate("document.querySelector('.stMain').scrollWidth")
        assert wide <= page.viewport_size["width"], view
        assert page.evaluate(OVERLAPS) == [], view
    assert page.wrong == []


OVERLAPS = """() => {
  const seen = [...document.querySelectorAll(
    '.stMain .stButton, .stMain .stTextInput, .stMain .stSelectbox, .stMain .stTextArea, ' +
    '.stMain .stDownloadButton, .stMain .stIFrame, .stMain .stDataFrame, .stMain .figures > div, ' +
    '.stMain .finding, .stMain .sheet, .stMain .foot, .stMain .head')]
    .filter(e => !e.closest('details:not([open])'))
    .map(e => [e.className + ' ' + e.innerText.slice(0, 20), e.getBoundingClientRect()])
    .filter(([, b]) => b.width > 0 && b.height > 0);
  const found = [];
  seen.forEach(([one, a], i) => seen.slice(i + 1).forEach(([other, b]) => {
    const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
    const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
    if (across > 1 && down > 1) { found.push(one + ' / ' + other); }
  }));
  return found;
}"""


@pytest.mark.slow
def test_a_picture_and_a_table_can_be_saved(page, tmp_path):
    look_at(page, "Section")
    assert saved(page, "SVG", tmp_path / "section.svg").startswith(b"<svg")
    look_at(page, "Layout")
    look_at(page, "Levels")
    assert b"finished floor" in saved(page, "CSV", tmp_path / "levels.csv")
    assert page.wrong == []


def test_unsaved_work_outlives_a_reload_of_the_page_and_can_be_taken_back(page):
    look_at(page, "Floor")
    field = page.get_by_label("Thickness, slab", exact=True)
    field.fill("5 in")
    field.press("Enter")
    page.get_by_text("+0'-7\"", exact=True).wait_for(timeout=PATIENCE)
    page.reload()
    page.get_by_text("+0'-7\"", exact=True).wait_for(timeout=PATIENCE)
    page.get_by_text("Your unsaved work was brought back").wait_for(timeout=PATIENCE)
    page.get_by_role("button", name="undo").first.click()
    page.get_by_text("+0'-6\"", exact=True).wait_for(timeout=PATIENCE)
    assert page.wrong == []


@pytest.mark.slow
def test_long_work_says_what_it_is_at_and_can_be_stopped(page):
    look_at(page, "Set")
    look_at(page, "Files")
    settled(page)
    page.get_by_role("button", name="Make a ZIP of all files").click()
    page.get_by_text("Making ").first.wait_for(timeout=PATIENCE)
    page.get_by_role("button", name="Stop", exact=True).click()
    page.get_by_role("button", name="Stop", exact=True).wait_for(state="detached", timeout=PATIENCE)
    settled(page)
    assert page.get_by_role("button", name="ZIP of all files", exact=True).count() == 0
    assert page.wrong == []
