"""The page "Checks": counts, findings by subject and severity, walls, hold points, open points."""

from html import unescape

import pytest
from streamlit.testing.v1 import AppTest

from geometry.checks.subjects import SUBJECTS
from viz.carried import demo
from viz.job import job

STAGES = {
    "Alternatives": "The floor's edge at the lowest footing",
    "Walls": "Equivalent fluid",
    "Inspections": "LAST LOOK BEFORE THE POUR",
    "Not checked": "Who would answer it",
}


def page() -> None:
    from viz.carried import demo
    from viz.job import job
    from viz.panels.checking import checks_page

    text = demo().read_text(encoding="utf-8")
    checks_page(job(text.replace('name = "P1"', 'name = "<b>P1</b>"')))


@pytest.fixture(scope="module")
def opened() -> AppTest:
    return AppTest.from_function(page, default_timeout=60).run()


def said(app: AppTest) -> str:
    return unescape(" ".join(block.proto.body for block in app.get("html")))


def test_the_page_counts_and_tells_every_finding_under_its_subject(opened: AppTest) -> None:
    assert not opened.exception
    words, found = said(opened), job(demo().read_text(encoding="utf-8")).report.findings
    for title in SUBJECTS.values():
        assert f"<h3>{title}</h3>" in words
    assert all(f"{f.found[1:]}</p>" in words for f in found if "P1" not in f.subject)
    assert "<b>P1</b>" not in " ".join(block.proto.body for block in opened.get("html"))


@pytest.mark.slow
def test_only_the_severity_that_is_chosen_is_shown() -> None:
    app = AppTest.from_function(page, default_timeout=60).run()
    app.segmented_control(key="findings shown").set_value("Look again").run()
    assert 'class="finding look"' in said(app)
    assert 'class="finding fine"' not in said(app)
    app.segmented_control(key="findings shown").set_value("Stop").run()
    assert "None of these." in [info.value for info in app.info]


@pytest.mark.slow
def test_every_stage_shows_what_it_is_about_and_the_files_are_at_hand() -> None:
    app = AppTest.from_function(page, default_timeout=60).run()
    for name, words in STAGES.items():
        app.segmented_control(key="checks stage").set_value(name).run()
        assert not app.exception, name
        assert words in said(app), name
        labels = [button.proto.label for button in app.get("download_button")]
        assert {"PDF", "Page, HTML"} <= set(labels)
