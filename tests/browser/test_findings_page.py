"""The findings as a page in a real browser: nothing too wide, nothing asked of a network, open."""

from dataclasses import replace

import pytest

from tests.browser.test_viewer_exact import AXE
from tests.conftest import CHROMIUM
from viz.carried import demo
from viz.findings.document import Card, Grid, Items, Paragraph
from viz.findings.page import findings_page
from viz.findings.write import findings_document
from viz.job import job

pytestmark = [
    pytest.mark.browser,
    pytest.mark.slow,
    pytest.mark.skipif(not CHROMIUM.exists(), reason=f"{CHROMIUM} is not installed"),
]


@pytest.fixture(scope="module")
def document():
    return findings_document(job(demo().read_text(encoding="utf-8")))


@pytest.fixture(scope="module")
def files(document, tmp_path_factory):
    """The whole page, and one with a little of each kind of thing it holds."""
    folder = tmp_path_factory.mktemp("findings")
    few = replace(document, sections=tuple(map(short, document.sections)))
    for name, one in (("whole", document), ("few", few)):
        (folder / f"{name}.html").write_text(findings_page(one), encoding="utf-8")
    return {name: (folder / f"{name}.html").as_uri() for name in ("whole", "few")}


def short(section):
    kept = [b for b in section.blocks if isinstance(b, Paragraph)][:2]
    kept += [b for b in section.blocks if isinstance(b, Card)][:2]
    rows = [b for b in section.blocks if isinstance(b, Grid | Items)][:2]
    kept += [replace(b, rows=b.rows[:2]) for b in rows]
    parts = tuple(map(short, section.parts[:2]))
    return replace(section, blocks=tuple(kept), parts=parts)


@pytest.mark.parametrize("width", [390, 1280])
def test_the_page_fits_the_screen_and_asks_nothing_of_a_network(browser, files, width):
    page = browser.new_page(viewport={"width": width, "height": 900})
    asked = []
    page.on("request", lambda one: asked.append(one.url))
    page.goto(files["whole"])
    assert asked == [files["whole"]]
    assert page.evaluate("document.documentElement.scrollWidth") == width
    page.close()


@pytest.mark.skipif(not AXE.exists(), reason="npm ci in viz/viewer brings axe-core")
@pytest.mark.parametrize(("width", "scheme"), [(390, "dark"), (1280, "light")])
def test_the_page_has_no_serious_fault_for_readers_of_screens(browser, files, width, scheme):
    context = browser.new_context(
        viewport={"width": width, "height": 900}, color_scheme=scheme, bypass_csp=True
    )
    page = context.new_page()
    page.goto(files["few"])
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = page.evaluate("axe.run({ resultTypes: ['violations'] })")
    grave = [f["id"] for f in found["violations"] if f["impact"] in ("serious", "critical")]
    assert grave == []
    context.close()


def test_print_drops_the_contents_and_keeps_every_finding(browser, files, document):
    page = browser.new_page()
    page.goto(files["whole"])
    page.emulate_media(media="print")
    assert not page.locator("nav").is_visible()
    kept = [b for part in document.section("found").parts for b in part.blocks]
    cards = page.locator("article.card")
    assert cards.count() == sum(isinstance(b, Card) for b in kept)
    ground = page.evaluate("getComputedStyle(document.documentElement).backgroundColor")
    assert ground == "rgb(255, 255, 255)"
    page.close()
