"""Every page of the app under the axe rules: no serious fault for who sees or moves otherwise."""

from pathlib import Path

import pytest

from tests.browser.test_in_a_browser import look_at, settled
from tests.conftest import CHROMIUM
from viz.panels.pages import PAGES

AXE = Path(__file__).parents[2] / "viz/viewer/node_modules/axe-core/axe.min.js"

pytestmark = [
    pytest.mark.browser,
    pytest.mark.slow,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
    pytest.mark.skipif(not AXE.exists(), reason="npm ci in viz/viewer brings axe-core"),
]
# The 3D page is looked at by its own tests; within another page's frame axe cannot reach it.
ASK = """() => axe.run({exclude: ['iframe']}, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa']})"""


def serious(page):
    """The serious faults: rule, and the first element it names."""
    return [
        (fault["id"], fault["nodes"][0]["target"], fault["nodes"][0]["html"][:160])
        for fault in page.evaluate(ASK)["violations"]
        if fault["impact"] in ("serious", "critical")
    ]


def test_no_page_has_a_serious_fault(page):
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = {}
    for name in PAGES:
        look_at(page, name)
        settled(page)
        if faults := serious(page):
            found[name] = faults
    assert found == {}
