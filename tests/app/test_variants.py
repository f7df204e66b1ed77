"""The door to variants: kept, renamed, opened, taken out, uploaded, and compared."""

from html import unescape

import pytest
from streamlit.testing.v1 import AppTest

from viz.carried import demo

FOAM = 'thickness = "2 in", role = "insulation"'
THICKER = FOAM.replace("2 in", "3 in")


def _page():
    from viz.carried import demo
    from viz.panels import state
    from viz.panels.variants import variants

    if not state.begun():
        state.put(demo().read_text(encoding="utf-8"))
    variants(state.work())


@pytest.fixture
def door():
    return AppTest.from_function(_page, default_timeout=120).run()


def shown(app):
    return unescape(" ".join(block.proto.body for block in app.get("html")))


def press(app, label):
    return next(b for b in app.button if b.label == label).click().run()


def names(app):
    return [one.name for one in app.session_state["variants kept"]]


def keep(app, name):
    app.text_input(key="variant name").set_value(name)
    return press(app, "Keep this as a variant")


def edit(app, old, new):
    app.session_state["design text"] = app.session_state["design text"].replace(old, new)
    app.session_state["sound text"] = app.session_state["design text"]
    return app.run()


def test_a_variant_outlasts_an_edit_and_the_edit_is_told_against_it(door):
    assert "Keep the design" in door.info[0].value
    keep(door, "thin foam")
    assert not door.exception
    assert "No difference" in shown(door)
    edit(door, FOAM, THICKER)
    assert not door.exception
    assert names(door) == ["thin foam"]
    told = shown(door)
    assert '“thin foam” against “as it stands”: finished floor 1" lower' in told
    assert 'floor > layer "foam" > thickness' in told
    assert 'alt="Footing and floor, side by side"' in told
    press(door, "Open")
    assert FOAM in door.session_state["design text"]
    assert "No difference" in shown(door)


@pytest.mark.slow
def test_variants_are_renamed_and_taken_out_and_no_more_than_four_are_kept(door):
    keep(door, "one")
    keep(door, "one")
    assert names(door) == ["one", "one 2"]
    door.text_input(key="variant 1 name").set_value("first").run()
    assert names(door) == ["first", "one 2"]
    press(door, "Add the ways to make the edge")
    assert not door.exception
    assert len(names(door)) == 4
    assert next(b for b in door.button if b.label == "Keep this as a variant").disabled
    press(door, "Take out")
    assert len(names(door)) == 3
    assert "first" not in names(door)


def test_a_file_is_added_and_a_faulty_one_refused_with_its_fault(door):
    text = demo().read_text(encoding="utf-8").replace(FOAM, THICKER)
    loader = door.file_uploader(key="variant file")
    loader.set_value(("thick.toml", text.encode(), "application/toml")).run()
    assert names(door) == ["thick"]
    assert "“thick” against “as it stands”" in shown(door)
    bad = text.replace('thickness = "3 in"', 'thickness = "3 parsecs"')
    door.file_uploader(key="variant file").set_value(
        ("bad.toml", bad.encode(), "application/toml")
    ).run()
    assert "bad.toml is not kept" in door.warning[0].value
    assert names(door) == ["thick"]
