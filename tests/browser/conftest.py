"""The app served on this machine and opened in a headless Chromium."""

import pytest

from tests.serving import app_served
from viz.carried import demo
from viz.job import job
from viz.viewer.page import viewer_page

# The phone's width is the harder one; the desk's is looked at with the slow tests.
SCREENS = [(390, 844), pytest.param((1280, 900), marks=pytest.mark.slow)]
PATIENCE = 60_000


@pytest.fixture(scope="session")
def address():
    with app_served() as (_, port):
        yield f"http://127.0.0.1:{port}"


@pytest.fixture
def open_at(browser, address):
    """Open the app on a screen of some size, with what goes wrong written down."""
    opened = []

    def look(width, height, touch=False):
        page = browser.new_page(viewport={"width": width, "height": height}, has_touch=touch)
        opened.append(page)
        page.wrong = []
        page.on("console", lambda m: page.wrong.append(m.text) if m.type == "error" else None)
        page.on("pageerror", lambda error: page.wrong.append(str(error)))
        page.on("request", lambda asked: page.wrong.append(asked.url) if _far(asked.url) else None)
        page.goto(address)
        page.wait_for_selector(".figures", timeout=PATIENCE)
        return page

    yield look
    for page in opened:
        page.close()


@pytest.fixture(params=SCREENS, ids=lambda size: f"{size[0]} wide")
def page(request, open_at):
    """The app open on a screen of this size."""
    return open_at(*request.param)


@pytest.fixture(scope="session")
def house_file(tmp_path_factory):
    """The demo's 3D page on disk."""
    file = tmp_path_factory.mktemp("viewer") / "house.html"
    file.write_text(viewer_page(job(demo().read_text(encoding="utf-8"))), encoding="utf-8")
    return file


def _far(url):
    near = ("http://127.0.0.1:", "ws://127.0.0.1:", "data:", "blob:", "about:")
    return not url.startswith(near)
