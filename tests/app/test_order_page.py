"""The page Order: the boards as laid, the list, its files; tickets kept, added, read in spite."""

from html import unescape

import pytest

from geometry.takeoff.deliveries import arrived
from geometry.takeoff.tickets import read_tickets
from tests.whole.networks import TEXTS
from viz.job import job
from viz.tables import delivery_tables, order_tables

LIST = """date,material,amount,place
2026-04-02,stone-57,14.2 tons,basement
2026-04-03,gravel pit run,20 yd3,
2026-04-03,sand-0-4,3 t,basement
"""


@pytest.fixture
def order(app):
    return app.segmented_control(key="view").set_value("Order").run()


@pytest.fixture
def came(order):
    return order.segmented_control(key="order stage").set_value("What has arrived").run()


def shown(app):
    return unescape(" ".join(block.proto.body for block in app.get("html")))


def work(app):
    return job(app.session_state["design text"])


def saved(app):
    return {b.label for b in app.get("download_button")}


def test_it_shows_the_boards_the_list_what_is_left_out_and_its_files(order):
    assert not order.exception
    made = work(order)
    found = made.report.order
    assert shown(order).count('alt="Boards: Foam, basement"') == 2
    for _, table in order_tables.tables(found, made.system):
        for row in table.rows:
            assert all(str(cell) in shown(order) for cell in row)
    assert all(line in shown(order) for line in order_tables.spoken(found, made.system))
    assert found.left_out
    assert all(line in shown(order) for line in found.left_out)
    assert "Agree on the unit" in shown(order)
    assert {"CSV", "XLSX", "PDF, to print"} <= saved(order)


def test_another_laying_plan_is_chosen(order):
    order.selectbox(key="laid").set_value(1).run()
    assert 'alt="Strips: Retarder, basement"' in shown(order)
    assert 'alt="Boards: Foam, basement"' not in shown(order)


def test_a_house_without_foam_or_retarder_says_so_and_lists_the_rest(app):
    text = TEXTS["inside"].replace(
        '    { name = "retarder", material = "poly-10mil", thickness = "10 mil", role = "retarder" '
        "},\n", "",
    )  # fmt: skip
    app.segmented_control(key="view").set_value("Set").run()
    app.segmented_control(key="set stage").set_value("Design file").run()
    app.text_area(key="whole text").set_value(text).run()
    app.segmented_control(key="view").set_value("Order").run()
    assert not app.exception
    assert "neither foam boards" in app.info[0].value
    assert {s.value for s in app.subheader} >= {"Stone and sand", "Concrete, a pour at a time"}


def put(app, material, amount, unit, place=""):
    app.selectbox(key="ticket material").set_value(material)
    app.text_input(key="ticket amount").set_value(amount)
    app.selectbox(key="ticket unit ft-in").set_value(unit)
    app.selectbox(key="ticket place").set_value(place)
    next(b for b in app.button if b.label == "Put it on the list").click().run()


def test_a_ticket_put_on_the_list_counts_and_a_wrong_one_is_said_and_left_out(came):
    put(came, "stone-57", "14.2", "tons", "basement")
    assert not came.exception
    rows = arrived(work(came).layout, read_tickets(came.session_state["tickets"]).tickets)
    for row in delivery_tables.arrivals(rows, "ft-in").rows:
        assert all(str(cell) in shown(came) for cell in row)
    before = came.session_state["tickets"]
    put(came, "stone-57", "a lot", "tons")
    assert "is no amount" in shown(came)
    assert came.session_state["tickets"] == before
    put(came, "sand-c33", "2", "yd3")
    assert "is no amount" not in shown(came)
    assert len(read_tickets(came.session_state["tickets"]).tickets) == 2


def test_a_list_is_opened_its_broken_line_told_by_number_and_the_rest_kept(came):
    came.file_uploader(key="tickets file").set_value(("t.csv", LIST.encode(), "text/csv")).run()
    assert "Line 3:" in shown(came)
    assert delivery_tables.not_needed("sand-0-4") in shown(came)
    assert "14.2 tons" in came.text_area(key="tickets text").value
    came.segmented_control(key="view").set_value("Layout").run()
    came.segmented_control(key="view").set_value("Order").run()
    came.segmented_control(key="order stage").set_value("What has arrived").run()
    assert came.text_area(key="tickets text").value == LIST
    bad = ("bad.csv", b"\xff\xfe\x00", "text/csv")
    came.file_uploader(key="tickets file").set_value(bad).run()
    assert "not UTF-8" in shown(came)
    assert came.session_state["tickets"] == LIST


def test_what_is_short_is_made_up_with_another_material(came):
    came.selectbox(key="top-up material").set_value("gravel-16-32").run()
    assert "Washed gravel, 16/32" in shown(came)
    assert "instead of stone-57" in shown(came)


def test_tons_taken_for_yards_are_said(came):
    stone = next(r for r in work(came).report.order.rows if r.material == "stone-57")
    yards = stone.to_buy / 0.9144**3
    came.text_area(key="tickets text").set_value(f"2026-04-02,stone-57,{yards:.1f} tons,").run()
    assert "the same number in another unit" in came.warning[0].value
