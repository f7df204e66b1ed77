"""The app in a real browser: figures follow an edit, nothing leaves this machine, all fits."""

import os
import socket
import subprocess
import sys
import time
from pathlib import Path

import pytest

CHROMIUM = Path("/usr/bin/chromium")
ARGUMENTS = [
    "--no-sandbox", "--disable-gpu", "--use-gl=angle", "--use-angle=swiftshader",
    "--enable-unsafe-swiftshader", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--no-first-run",
]  # fmt: skip
SCREENS = [(1280, 900), (390, 844)]
VIEWS = ["3D", "Section", "Levels", "Volumes", "Findings", "Design file"]
PATIENCE = 60_000

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
]


@pytest.fixture(scope="module")
def address():
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    run = "from viz.commands.main import run; run()"
    told = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY")}
    command = [sys.executable, "-c", run, "app", "--port", str(port)]
    with subprocess.Popen(command, env=told, stderr=subprocess.DEVNULL) as server:
        try:
            _listening(port)
            yield f"http://127.0.0.1:{port}"
        finally:
            server.terminate()
            server.wait(30)


def _listening(port):
    for _ in range(120):
        try:
            socket.create_connection(("127.0.0.1", port), 1).close()
        except OSError:
            time.sleep(0.5)
        else:
            return
    pytest.fail("the app did not start within a minute")


@pytest.fixture(scope="module")
def browser():
    playwright = pytest.importorskip("playwright.sync_api")
    with playwright.sync_playwright() as tools:
        opened = tools.chromium.launch(executable_path=str(CHROMIUM), args=ARGUMENTS)
        yield opened
        opened.close()


@pytest.fixture(params=SCREENS, ids=lambda size: f"{size[0]} wide")
def page(request, browser, address):
    """The app open on a screen of this size, with what went wrong written down."""
    width, height = request.param
    opened = browser.new_page(viewport={"width": width, "height": height})
    opened.wrong = []
    opened.on("console", lambda m: opened.wrong.append(m.text) if m.type == "error" else None)
    opened.on("pageerror", lambda error: opened.wrong.append(str(error)))
    opened.on("request", lambda asked: opened.wrong.append(asked.url) if _far(asked.url) else None)
    opened.goto(address)
    opened.wait_for_selector(".figures", timeout=PATIENCE)
    yield opened
    opened.close()


def _far(url):
    near = ("http://127.0.0.1:", "ws://127.0.0.1:", "data:", "blob:", "about:")
    return not url.startswith(near)


def figure(page, name):
    tile = page.locator(".figures div", has=page.get_by_text(name, exact=True))
    return tile.locator("b").inner_text()


def look_at(page, view):
    page.get_by_role("radio", name=view, exact=True).click()


def drawn(page):
    """Wait until the model's own page has drawn its parts; return how many."""
    frame = page.frame_locator("iframe")
    frame.locator("body[data-drawn]").wait_for(timeout=PATIENCE)
    return int(frame.locator("body").get_attribute("data-drawn"))


def test_an_edit_changes_the_figures_and_nothing_leaves_this_machine(page):
    assert drawn(page) > 10
    assert figure(page, "Finished floor") == "+0'-6\""
    field = page.get_by_label("Thickness, slab")
    field.fill("5 in")
    field.press("Enter")
    page.get_by_text("+0'-7\"", exact=True).wait_for(timeout=PATIENCE)
    assert figure(page, "Finished floor") == "+0'-7\""
    field.fill("5")
    field.press("Enter")
    page.get_by_text("has no unit").first.wait_for(timeout=PATIENCE)
    assert figure(page, "Finished floor") == "+0'-7\""
    assert page.wrong == []


def test_every_view_fits_the_screen(page):
    for view in VIEWS:
        look_at(page, view)
        page.wait_for_timeout(2000)
        page.wait_for_selector(".figures", timeout=PATIENCE)
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


def test_a_picture_and_a_table_can_be_saved(page, tmp_path):
    look_at(page, "Section")
    page.get_by_role("button", name="SVG").wait_for(timeout=PATIENCE)
    with page.expect_download() as saved:
        page.get_by_role("button", name="SVG").click()
    saved.value.save_as(tmp_path / "section.svg")
    assert (tmp_path / "section.svg").read_text(encoding="utf-8").startswith("<svg")
    look_at(page, "Levels")
    page.get_by_role("button", name="CSV").wait_for(timeout=PATIENCE)
    with page.expect_download() as saved:
        page.get_by_role("button", name="CSV").click()
    saved.value.save_as(tmp_path / "levels.csv")
    assert "finished floor" in (tmp_path / "levels.csv").read_text(encoding="utf-8")
    assert page.wrong == []
