"""The page On site: the survey of the dug ground, and the pages to carry, in their languages."""

from base64 import b64decode
from html import unescape

import pytest

from geometry.checks.survey import survey_findings
from geometry.survey.asdug import as_dug
from geometry.survey.reading import read_shots
from tests.whole.networks import TEXTS
from viz.carried import demo_shots
from viz.job import job
from viz.language.reader import codes, language

PAGES = {
    "Crew cards": "stage.subgrade", "Story pole": "pole.title", "Laser sheet": "laser.title",
    "Inspection sheet": "inspection.title",
}  # fmt: skip


@pytest.fixture
def site(app):
    app.segmented_control(key="view").set_value("On site").run()
    return app.segmented_control(key="site stage").set_value("As dug").run()


def shown(app):
    return unescape(" ".join(block.proto.body for block in app.get("html")))


def press(app, label):
    next(b for b in app.button if b.label == label).click().run()
    assert not app.exception


def surveyed(app, shots, least=None):
    layout = job(app.session_state["design text"]).layout
    found = as_dug(layout, read_shots(shots, layout.design), least)
    return found, list(survey_findings(layout, found))


def drawn(app):
    start = "data:image/svg+xml;base64,"
    blocks = [b.proto.body for b in app.get("html") if start in b.proto.body]
    return unescape(b64decode(blocks[0].split(start, 1)[1].split('"', 1)[0]).decode())


def test_before_any_shots_it_says_how_to_bring_them(site):
    assert "Shoot the dug ground" in site.info[0].value
    assert "Never undercut a footing" in shown(site)


def test_the_demos_shots_are_mapped_judged_and_outlast_another_page(site):
    press(site, "Example shots")
    _, findings = surveyed(site, demo_shots().read_bytes())
    assert shown(site).count('alt="As dug: thickness of the stone, basement"') == 2
    assert all(f.found[1:] in shown(site) for f in findings)
    assert {b.label for b in site.get("download_button")} >= {"Every shot, CSV", "SVG"}
    site.segmented_control(key="view").set_value("Layout").run()
    site.segmented_control(key="view").set_value("On site").run()
    site.segmented_control(key="site stage").set_value("As dug").run()
    assert 'alt="As dug' in shown(site)
    press(site, "Put the shots away")
    assert 'alt="As dug' not in shown(site)


def test_a_thicker_least_base_is_asked_and_words_that_are_none_are_said(site):
    press(site, "Example shots")
    site.text_input(key="least base").set_value("5 1/2 in").run()
    found, _ = surveyed(site, demo_shots().read_bytes(), 5.5 * 0.0254)
    assert found.areas[0].ground.thin_m2 > 1
    assert 'thinner than 5 1/2"' in shown(site)
    site.text_input(key="least base").set_value("thick").run()
    assert "write a thickness like 4 in" in shown(site)
    assert not site.exception


def test_ones_own_shots_with_broken_rows_tell_them_and_map_the_rest(site):
    lines = demo_shots().read_text(encoding="utf-8").splitlines()
    lines[6] = "4,here,1'-3\",4'-9\","
    text = "\n".join(lines)
    site.file_uploader(key="shots file").set_value(("s.csv", text.encode(), "text/csv")).run()
    found, _ = surveyed(site, text)
    assert found.faults
    assert all(str(fault) in shown(site) for fault in found.faults)
    assert 'alt="As dug' in shown(site)


def test_a_file_that_holds_no_shots_is_said_and_nothing_falls(site):
    for data in (b"", b"\xff\xfe\x00", b"point,x\n1,2\n", b"\0"):
        site.file_uploader(key="shots file").set_value(("s.csv", data, "text/csv")).run()
        assert not site.exception
        assert not any("unexpected" in e.value for e in site.error)
        assert "no map" in site.warning[0].value
        assert "In the list of shots" in shown(site)


def test_only_the_demos_house_offers_the_demos_shots(app):
    app.segmented_control(key="view").set_value("Set").run()
    app.segmented_control(key="set stage").set_value("Design file").run()
    app.text_area(key="whole text").set_value(TEXTS["inside"]).run()
    app.segmented_control(key="view").set_value("On site").run()
    app.segmented_control(key="site stage").set_value("As dug").run()
    assert not any(b.label == "Example shots" for b in app.button)


@pytest.mark.slow
def test_pages_to_carry_are_drawn_in_every_language_on_either_paper(site):
    for stage, key in PAGES.items():
        site.segmented_control(key="site stage").set_value(stage).run()
        for code in codes():
            site.segmented_control(key="page language").set_value(code).run()
            assert not site.warning
            title = language(code).words[key].split(",")[0].split("{")[0].strip()
            assert title in drawn(site)
        labels = {b.label.split(",")[0] for b in site.get("download_button")}
        assert labels >= {"PDF", "SVG", "PNG"}
        assert "Caution." in shown(site)
    site.selectbox(key="small paper ft-in").set_value("A4").run()
    assert 'width="210mm"' in drawn(site)
