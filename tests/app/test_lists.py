"""Lists of the design file in the app: prices, rules of one's own, gradings as delivered."""

import tomllib

import pytest

from tests.app.walking import on
from viz.job import job


def raw(app):
    return tomllib.loads(app.session_state["design text"])


def press(app, label):
    next(b for b in app.button if b.label == label).click().run()
    assert not app.exception


def test_a_price_is_added_typed_reckoned_with_and_taken_out(app):
    press(on(app, "Order"), "Add a price")
    app.text_input(key="field order/price/0/each").set_value("40").run()
    assert not app.error
    assert raw(app)["order"]["price"] == [{"of": "stone-57", "each": 40.0, "per": "ton"}]
    order = job(app.session_state["design text"]).report.order
    priced = [row for row in order.rows if row.cost]
    assert priced
    for end in (0, 1):
        assert order.cost[end] == pytest.approx(sum(row.cost[end] for row in priced))
    press(app, "Take out")
    assert not raw(app).get("order", {}).get("price")


@pytest.mark.slow
def test_a_rule_of_ones_own_is_added_and_judged(app):
    press(on(app, "Checks"), "Add a rule")
    assert not app.error
    app.text_input(key="field height_rule/0/level").set_value("TOF -3 ft").run()
    found = job(app.session_state["design text"]).report.findings
    assert any("top of pipe" in f.found or "top of pipe" in f.asked for f in found)


@pytest.mark.slow
def test_a_grading_is_added_and_a_sieve_that_is_none_is_said(app):
    press(on(app, "Drain"), "Add a grading")
    assert not app.error
    app.text_area(key="field grading/0/sieves").set_value("1 in, 100 %\nfine, 3 %").run()
    assert app.error


def test_a_vent_pipe_is_placed_by_its_place_and_taken_out(app):
    app.text_input(key="field vent/at").set_value("20 ft, 6 ft").run()
    assert not app.error
    assert app.selectbox(key="field vent/pipe").value == "sch40-3"
    assert any(
        "vent" in s.label.part for s in job(app.session_state["design text"]).foundation.solids
    )
    press(app, "Take the vent pipe out")
    assert not app.error
    assert "vent" not in raw(app)
