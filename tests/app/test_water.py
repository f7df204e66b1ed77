"""The view on water in the app: it follows the design file, and says what is not known."""

from html import unescape

import pytest

from geometry.designfile import read_design, start_text
from geometry.layout.lay import lay_out
from geometry.measures import show_flow
from geometry.water.study import study


@pytest.fixture
def wet(app):
    return app.segmented_control(key="view").set_value("Water").run()


def shown(app):
    return unescape(" ".join(block.proto.body for block in app.get("html")))


def cells(app):
    """Every cell of every table as text."""
    found = (cell for table in app.table for cell in table.value.to_numpy().ravel())
    return {str(cell).replace("\\", "") for cell in found}


def peak_of(text):
    known = study(lay_out(read_design(text))).inflow
    return show_flow(known.peak_m3s, "ft-in")


def test_it_shows_figure_tables_and_findings_on_water(wet):
    assert not wet.exception
    assert 'alt="Water in the pit over the storm"' in shown(wet)
    assert {s.value for s in wet.subheader} >= {"Inflow", "Capacities", "The pit"}
    assert "sump, pump dead" in shown(wet)
    assert peak_of(wet.session_state["design text"]) in cells(wet)


def test_more_rain_in_the_field_brings_more_water(wet):
    before = peak_of(wet.session_state["design text"])
    wet.text_input(key="field water/rain").set_value("9 in").run()
    after = peak_of(wet.session_state["design text"])
    assert after != before
    assert after in cells(wet)
    assert before not in cells(wet)


def test_a_share_is_written_as_a_number_and_a_wrong_one_said(wet):
    wet.text_input(key="field water/share").set_value("0.5").run()
    assert "share = 0.5" in wet.session_state["design text"]
    wet.text_input(key="field water/share").set_value("5").run()
    assert "out of range; give 0 to 1" in shown(wet)


def test_what_is_not_known_is_said_and_nothing_is_drawn(app):
    app.segmented_control(key="view").set_value("Design file").run()
    app.text_area(key="whole text").set_value(start_text()).run()
    app.segmented_control(key="view").set_value("Water").run()
    assert not app.exception
    assert "must be known" in app.info[0].value
    assert "Not given: the rain of a storm" in shown(app)
