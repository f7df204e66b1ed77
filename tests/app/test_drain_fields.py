"""The fields of several drains, their outlets, and of loads, rules, backfill and order."""

import tomllib
from html import unescape

import pytest

from geometry.measures import read_measure
from geometry.units import read_length
from tests.app.walking import on, put
from tests.whole.networks import TEXTS
from viz.job import job


def raw(app):
    return tomllib.loads(app.session_state["design text"])


def design(app):
    return job(app.session_state["design text"]).layout.design


def press(app, label):
    next(b for b in app.button if b.label == label).click().run()
    assert not app.exception


def faults(app):
    return [unescape(b.proto.body) for b in app.get("html") if 'class="fault"' in b.proto.body]


def test_a_drain_is_added_told_what_it_lacks_mended_and_taken_out_again(app):
    before = on(app, "Drain").session_state["design text"]
    press(app, "Add a drain")
    assert [d.get("line") for d in raw(app)["drain"]] == [None, "inside"]
    assert "# footing's face to the middle of the pipe" in app.session_state["design text"]
    assert app.selectbox(key="drain shown").value == 1
    app.selectbox(key="drain shown").set_value(0).run()
    assert len([f for f in faults(app) if "would cross the drain inside" in f]) == 1
    app.selectbox(key="field drain/0/outlet").set_value("bleeders").run()
    app.selectbox(key="drain shown").set_value(1).run()
    app.selectbox(key="field drain/1/outlet").set_value("pit").run()
    assert any("the pit and the stone round it run into the inside drain" in f for f in faults(app))
    app.text_input(key="field sump/at").set_value("5 ft, 12 ft").run()
    assert not app.error
    assert len(job(app.session_state["design text"]).layout.drains) == 2
    press(app, "Take this drain out")
    app.selectbox(key="field drain/0/outlet").set_value("").run()
    assert not app.error
    assert tomllib.loads(before)["drain"] == raw(app)["drain"][0]


@pytest.mark.slow
def test_every_drain_of_a_network_is_chosen_and_edited_in_its_own_table(app):
    put(app, TEXTS["upper to lower stone"], "Drain")
    app.selectbox(key="drain shown").set_value(1).run()
    assert app.selectbox(key="field drain/1/area").value == "garage"
    assert app.selectbox(key="field drain/1/outlet").value == "lower stone"
    assert app.text_input(key="field drain/1/sides").value == "2, 3, 4"
    assert app.text_input(key="field drain/1/low_corner").value == "2"
    app.text_input(key="field drain/1/name").set_value("garage drain").run()
    app.text_input(key="field drain/1/stone/cover").set_value("4 in").run()
    app.text_input(key="field drain/1/cleanouts").set_value("4").run()
    assert not app.error
    upper = design(app).drains[1]
    assert (upper.name, upper.cleanouts) == ("garage drain", (4,))
    assert upper.stone.cover == read_length("4 in")
    assert design(app).drains[0].stone.cover != upper.stone.cover
    app.text_input(key="field drain/1/sides").set_value("north").run()
    assert faults(app)


@pytest.mark.slow
def test_an_outlet_to_daylight_is_added_its_ground_edited_and_taken_out(app):
    put(app, TEXTS["daylight"], "Drain")
    ground = app.text_area(key="field drain/0/daylight/0/ground")
    assert ground.value.splitlines() == ["0, 7 ft", "30 ft, -3 ft", "80 ft, -8 ft"]
    ground.set_value("0, 7 ft\n30 ft, -2 ft\n90 ft, -9 ft").run()
    assert not app.error
    assert design(app).drains[0].daylight[0].ground[-1][0] == pytest.approx(read_length("90 ft"))
    app.text_area(key="field drain/0/daylight/0/ground").set_value("30 ft, -2 ft\nhigh").run()
    assert any("no distance and level" in f for f in faults(app))
    app.text_area(key="field drain/0/daylight/0/ground").set_value("0, 7 ft\n80 ft, -8 ft").run()
    press(app, "Add an outlet to daylight")
    assert len(raw(app)["drain"][0]["daylight"]) == 2
    app.text_input(key="field drain/0/daylight/1/toward").set_value("80 ft, 9 ft").run()
    assert not app.error
    press(app, "Take this outlet out")
    assert len(raw(app)["drain"][0]["daylight"]) == 1
    assert raw(app)["drain"][0]["daylight"][0]["toward"] == "80 ft, 9 ft"


def test_a_fault_of_a_single_drain_is_said_once_beside_its_field(app):
    on(app, "Drain").text_input(key="field drain/fall").set_value("steep").run()
    assert len(faults(app)) == 1
    lacking = TEXTS["daylight"].replace('toward = "20 ft, -60 ft"', "")
    put(app, lacking, "Drain")
    assert faults(app)


@pytest.mark.slow
def test_the_bleeders_are_edited(app):
    put(app, TEXTS["both to the pit"], "Drain")
    app.selectbox(key="drain shown").set_value(1).run()
    app.text_input(key="field drain/1/bleeders/spacing").set_value("6 ft").run()
    assert not app.error
    assert design(app).drains[1].bleeders.spacing == pytest.approx(read_length("6 ft"))


@pytest.mark.slow
def test_loads_rules_soil_water_and_north_reach_the_design(app):
    app.text_input(key="field datum/north").set_value("35")
    app.text_area(key="field soil/grading").set_value("2 mm, 95 %\nNo. 200, 35 %")
    app.run()
    on(app, "Drain")
    for key, words in {
        "loads/wheel": "3000 lbf", "loads/surcharge": "100 psf", "loads/deflection_limit": "4 %",
        "water/low_water_table": "-9 ft", "water/tight_base": "-12 ft", "water/reach": "80 ft",
        "backfill/water_depth": "2 ft",
    }.items():  # fmt: skip
        app.text_input(key=f"field {key}").set_value(words)
    app.selectbox(key="field loads/bedding").set_value("moderate")
    app.selectbox(key="field backfill/material").set_value("sand-c33")
    app.run()
    on(app, "Checks").multiselect(key="field rules/sets").set_value(["din", "irc"]).run()
    assert not app.error
    made = design(app)
    assert made.loads.wheel == pytest.approx(read_measure("3000 lbf", "force"))
    assert made.loads.surcharge == pytest.approx(read_measure("100 psf", "pressure"))
    assert (made.loads.bedding, made.loads.deflection_limit) == ("moderate", pytest.approx(0.04))
    assert made.water.low_water_table is not None
    assert made.water.reach == pytest.approx(read_length("80 ft"))
    assert [share for _, share in made.soil.grading] == [0.95, 0.35]
    assert (made.backfill.material, made.datum.north) == ("sand-c33", 35.0)
    assert set(made.rules.sets) == {"din", "irc"}
    app.multiselect(key="field rules/sets").set_value([]).run()
    on(app, "Drain").selectbox(key="field backfill/material").set_value("").run()
    assert design(app).rules.sets == ()
    assert design(app).backfill.material == ""


@pytest.mark.slow
def test_what_holds_the_wall_is_yes_no_or_not_said(app):
    key = "field backfill/state/deck"
    on(app, "Drain")
    for word, meant in (("yes", True), ("no", False), ("not said", None)):
        app.segmented_control(key=key).set_value(word).run()
        assert not app.error
        assert design(app).backfill.state.deck is meant
        assert app.segmented_control(key=key).value == word


def test_the_orders_factors_reach_the_design_and_a_wrong_one_is_said(app):
    on(app, "Order")
    for key, words in {
        "stone/compaction": "8 %", "stone/density": "1.4 ton/yd3", "truck/volume": "12 yd3",
        "concrete/step": "0.5 yd3", "board/length": "9 ft", "bars/lap": "36", "sheet/lap": "8 in",
    }.items():  # fmt: skip
        app.text_input(key=f"field order/{key}").set_value(words)
    app.run()
    assert not app.error
    order = design(app).order
    assert order.stone.compaction == pytest.approx(0.08)
    assert order.truck.volume == pytest.approx(read_measure("12 yd3", "volume"))
    assert (order.bars.lap, order.sheet.lap) == (36, read_length("8 in"))
    app.text_input(key="field order/stone/compaction").set_value("much").run()
    assert any("no share" in f for f in faults(app))
