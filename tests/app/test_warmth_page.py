"""The page on warmth and its fields, without a browser, alone."""

import pytest
from streamlit.testing.v1 import AppTest

from viz.carried import demo

TUBES = (
    '[floor.tubing]\nspacing = "12 in"\n\n[climate]\ninside = "70 F"\noutside = "48 F"\n\n[[area]]'
)


def _script(text):
    from viz.panels import state
    from viz.panels.warmth import warmth_page
    from viz.panels.warmthfields import (
        climate_fields,
        joint_fields,
        load_fields,
        site_fields,
        tubing_fields,
        vent_fields,
        wall_fields,
    )

    if not state.begun():
        state.put(text)
    work = state.work()
    assert work is not None
    for fields in (climate_fields, site_fields, load_fields, wall_fields, joint_fields,
                   tubing_fields, vent_fields):  # fmt: skip
        fields()
    warmth_page(work)


@pytest.fixture
def page():
    text = demo().read_text(encoding="utf-8").replace("[[area]]", TUBES, 1)
    return AppTest.from_function(_script, args=(text,), default_timeout=60).run()


def shown(page):
    return " ".join(part.body for part in page.get("html"))


@pytest.mark.slow
def test_every_stage_shows_its_table_or_says_what_is_missing(page):
    for stage, head in (
        ("Heat", "Down to the ground"), ("Edge", "Cold concrete"), ("Load", "Spread at 45 degrees"),
        ("Tubes", "Cut to"),
    ):  # fmt: skip
        page.segmented_control(key="warmth stage").set_value(stage).run()
        assert not page.exception, stage
        assert head in shown(page), stage
        assert not page.info, stage
    assert shown(page).count('alt="Heating tubes: basement"') == 2


@pytest.mark.slow
def test_a_field_lays_the_tubes_anew_and_says_its_own_fault(page):
    page.segmented_control(key="warmth stage").set_value("Tubes").run()
    before = shown(page)
    page.selectbox(key="field floor/tubing/pattern").set_value("counterflow").run()
    assert not page.exception
    assert 'pattern = "counterflow"' in page.session_state["design text"]
    assert shown(page) != before
    page.text_input(key="field floor/tubing/spacing").set_value("5 ft").run()
    assert "out of range" in shown(page)
