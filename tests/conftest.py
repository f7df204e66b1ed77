"""What all tests share: how much is rolled, judged by results alone; one browser a worker."""

from pathlib import Path

import pytest
from hypothesis import settings

from tests import rolls

# What hypothesis tries of a property in a usual run, where the test says nothing else.
EXAMPLES = 40

CHROMIUM = Path("/usr/bin/chromium")
ARGUMENTS = [
    "--no-sandbox", "--disable-gpu", "--use-gl=angle", "--use-angle=swiftshader",
    "--enable-unsafe-swiftshader", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--no-first-run",
]  # fmt: skip


def pytest_addoption(parser):
    parser.addoption(
        "--rolls", type=float, default=rolls.USUAL, metavar="FACTOR",
        help="roll so many times the usual number of designs and examples (nightly: 20)",
    )  # fmt: skip


def pytest_configure(config):
    rolls.use(config.getoption("rolls"))
    settings.register_profile("steady", deadline=None, max_examples=rolls.rolls(EXAMPLES))
    settings.load_profile("steady")


@pytest.fixture(scope="session")
def browser():
    playwright = pytest.importorskip("playwright.sync_api")
    with playwright.sync_playwright() as tools:
        opened = tools.chromium.launch(executable_path=str(CHROMIUM), args=ARGUMENTS)
        yield opened
        opened.close()
