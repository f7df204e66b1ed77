"""The app in Spanish: its labels are, its figures and the file are what they were."""

import re

import pytest
from streamlit.testing.v1 import AppTest

from tests.app.walking import on
from viz.carried import app_file

TILE = re.compile(r"<span>([^<]*)</span><b>([^<]*)</b>")


@pytest.fixture
def spanish():
    app = AppTest.from_file(str(app_file()), default_timeout=120)
    app.query_params["lang"] = "es"
    return app.run()


def shown(app):
    return "".join(one.proto.body for one in app.get("html"))


def figures(app):
    return dict(TILE.findall(shown(app)))


def tables(app):
    return [one for one in app.get("html") if "table" in one.proto.body]


def test_labels_are_spanish_and_figures_are_what_they_were(app, spanish):
    for one in (app, spanish):
        on(one, "Floor", "Levels")
        assert not one.exception
        assert not one.error
    said, english = figures(spanish), figures(app)
    assert list(said.values()) == list(english.values())
    assert "Piso terminado" in said
    assert not set(said) & set(english)
    assert "Espesor, losa" in [field.label for field in spanish.text_input]
    levels = tables(spanish)[0].proto.body
    assert "arriba de losa (piso terminado)" in levels
    figure = re.compile(r">([^<>]*\d[^<>]*)</td>")
    assert [f for f in figure.findall(levels) if f[0] in "+-"] == [
        f for f in figure.findall(tables(app)[0].proto.body) if f[0] in "+-"
    ]


def test_an_edit_in_spanish_writes_the_same_file(spanish):
    on(spanish, "Drain")
    runs = next(one for one in spanish.selectbox if one.label == "Corre")
    assert runs.options == ["afuera de la zapata", "adentro, bajo el piso"]
    runs.set_value("inside").run()
    assert not spanish.exception
    assert 'line = "inside"' in spanish.session_state["design text"]


def test_the_language_is_chosen_and_stands_in_the_address(app):
    switch = app.segmented_control(key="language switch")
    assert switch.options == ["English", "Español"]
    switch.set_value("es").run()
    assert app.query_params["lang"] in ("es", ["es"])
    assert "Piso terminado" in figures(app)
    on(app, "On site")
    assert app.segmented_control(key="page language").value == "es"
    app.segmented_control(key="language switch").set_value("en").run()
    assert "Finished floor" in figures(on(app, "Layout"))
    assert not app.exception


def test_a_language_that_is_not_there_leaves_english():
    app = AppTest.from_file(str(app_file()), default_timeout=120)
    app.query_params["lang"] = "xx"
    assert "Finished floor" in figures(app.run())
