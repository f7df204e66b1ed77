"""The view on water in the app: it follows the design file, and says what is not known."""

import re
from html import unescape

import pytest

from geometry.designfile import read_design, start_text
from geometry.layout.lay import lay_out
from geometry.measures import show_flow
from geometry.report import report
from geometry.units import show_level
from geometry.water.study import study
from tests.whole.networks import TEXTS

# Each stage with its pictures, a finding's name and a word of its caution.
STAGES = {
    "Heights": (["Heights of the drain"], "drain, slope", "footing's bearing"),
    "Outlet": ([], "drain.daylight", "sanitary sewer"),
    "Soil and filter": (
        ["Grain sizes against fabric and holes", "The wrap, laid flat"], "drain wrap, ground",
        "until a sample is tested",
    ),
    "Pipe strength": (["How far the pipe flattens"], "drain pipe, deepest place", "cave in"),
    "Wall": (["Push of the fill on the wall"], "basement, outer wall", "Backfill only when"),
    "Cleanouts": (
        ["Runs between places to enter the drain"], "drain, cleanout at corner 6 to sump pit",
        "common practice, no rule",
    ),
    "Pit and storm": (["Water in the pit over the storm"], "sump, pump dead", "electricity"),
}  # fmt: skip


@pytest.fixture
def wet(app):
    return app.segmented_control(key="view").set_value("Drain").run()


@pytest.fixture
def pit(wet):
    return stage(wet, "Pit and storm")


def stage(app, name):
    return app.segmented_control(key="water stage").set_value(name).run()


def shown(app):
    return unescape(" ".join(block.proto.body for block in app.get("html")))


def cells(app):
    """Every cell of every table as text."""
    return set(re.findall(r"<td[^>]*>([^<]*)</td>", shown(app)))


def peak_of(text):
    known = study(lay_out(read_design(text))).inflow
    return show_flow(known.peak_m3s, "ft-in")


def test_every_stage_shows_its_pictures_findings_tables_and_caution(wet):
    for name, (pictures, finding, caution) in STAGES.items():
        stage(wet, name)
        assert not wet.exception, name
        for title in pictures:
            # One picture for a wide and one for a narrow screen.
            assert shown(wet).count(f'alt="{title}"') == 2, title
        assert finding in shown(wet) or any(finding in i.value for i in wet.info)
        assert caution in shown(wet)
        assert cells(wet), name
        assert not wet.info or not pictures, name


def test_the_stage_outlasts_a_look_at_something_else(wet):
    stage(wet, "Wall")
    wet.segmented_control(key="view").set_value("Layout").run()
    wet.segmented_control(key="view").set_value("Drain").run()
    assert 'alt="Push of the fill on the wall"' in shown(wet)


def test_the_rule_sets_stand_beside_each_other_with_words_and_contradictions(wet):
    said, found = shown(wet), report(lay_out(read_design(wet.session_state["design text"])))
    assert found.drain is not None
    assert found.drain.heights is not None
    for rule in found.drain.heights.rules:
        assert f"<b>{rule.rules}</b>" in said
        assert rule.title in said
    assert "Met:" in said
    assert "Not met:" in said
    assert all(clash.sentence in said for clash in found.drain.heights.clashes)


@pytest.mark.slow
def test_of_several_drains_one_is_looked_at(app):
    app.segmented_control(key="view").set_value("Set").run()
    app.segmented_control(key="set stage").set_value("Design file").run()
    app.text_area(key="whole text").set_value(TEXTS["both to the pit"]).run()
    app.segmented_control(key="view").set_value("Drain").run()
    drains = report(lay_out(read_design(TEXTS["both to the pit"]))).drains
    for number, drain in enumerate(drains):
        app.selectbox(key="water drain").set_value(number).run()
        assert not app.exception
        assert show_level(drain.heights.high_m["crown"], "ft-in") in cells(app)
    assert not [box for box in stage(app, "Wall").selectbox if box.key == "water drain"]


@pytest.mark.slow
def test_an_outlet_to_daylight_is_drawn_with_its_levels_and_stands_beside_a_pit(app):
    text = TEXTS["pit and two to daylight"]
    app.segmented_control(key="view").set_value("Set").run()
    app.segmented_control(key="set stage").set_value("Design file").run()
    app.text_area(key="whole text").set_value(text).run()
    stage(app.segmented_control(key="view").set_value("Drain").run(), "Outlet")
    assert not app.exception
    assert not app.info
    for outlet in report(lay_out(read_design(text))).outlets:
        assert show_level(outlet.run.end_invert_m, "ft-in") in cells(app)
        assert {row.daylight for row in outlet.beside} <= cells(app)
    assert {s.value for s in app.subheader} >= {"Levels to set out 1", "Levels to set out 2"}
    drawn = [b.proto.body for b in app.get("html") if 'alt="Outlet to daylight' in b.proto.body]
    assert len(drawn) == 2
    assert shown(app).count("The pipe comes out") == 2


def test_it_shows_figure_tables_and_findings_on_water(pit):
    assert {s.value for s in pit.subheader} >= {"Inflow", "Capacities", "The pit"}
    assert peak_of(pit.session_state["design text"]) in cells(pit)


def test_more_rain_in_the_field_brings_more_water(pit):
    before = peak_of(pit.session_state["design text"])
    pit.text_input(key="field water/rain").set_value("9 in").run()
    after = peak_of(pit.session_state["design text"])
    assert after != before
    assert after in cells(pit)
    assert before not in cells(pit)


def test_a_share_is_written_as_a_number_and_a_wrong_one_said(wet):
    wet.text_input(key="field water/share").set_value("0.5").run()
    assert "share = 0.5" in wet.session_state["design text"]
    wet.text_input(key="field water/share").set_value("5").run()
    assert "out of range; give 0 to 1" in shown(wet)


def test_what_is_not_known_is_said_and_nothing_is_drawn(app):
    app.segmented_control(key="view").set_value("Set").run()
    app.segmented_control(key="set stage").set_value("Design file").run()
    app.text_area(key="whole text").set_value(start_text()).run()
    app.segmented_control(key="view").set_value("Drain").run()
    for name, word in (("Pit and storm", "must be known"), ("Wall", "soil's group is not known")):
        stage(app, name)
        assert not app.exception
        assert word in app.info[0].value
    assert "Not given: the rain of a storm" in shown(stage(app, "Pit and storm"))
