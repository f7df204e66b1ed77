"""The app over whatever a file or an address says: pages, never a script, a picture or a crash."""

import re
from collections.abc import Iterator
from typing import Any

import pytest
from streamlit.testing.v1 import AppTest

from tests.app.walking import on, put
from tests.dice import Dice, Seeded
from tests.fuzz.hostile import DESIGNS
from tests.fuzz.test_injection import CALL, IMAGE, PATH, SCRIPT, Tags, evil
from tests.geometry.faults.test_random_edits import LINES, VALUES
from tests.rolls import seeds
from viz.carried import app_file, examples
from viz.panels.pages import PAGES

# Where Streamlit shows text as it is; everything else it reads as Markdown.
PLAIN = {"id", "value", "raw_value", "url", "json", "key", "form_id", "default", "placeholder"}
STAGES = {"Floor": "Warmth", "Order": "What has arrived", "Set": "Sheets"}


@pytest.fixture
def app() -> AppTest:
    return AppTest.from_file(str(app_file()), default_timeout=300).run()


def told(message: Any) -> Iterator[tuple[str, str]]:
    """Every text of an element, by its field."""
    for field, value in message.ListFields() if message else ():
        for one in value if isinstance(value, list | tuple) or _many(value) else [value]:
            if isinstance(one, str):
                yield field.name, one
            elif hasattr(one, "ListFields"):
                yield from told(one)


def _many(value: Any) -> bool:
    return not isinstance(value, str | bytes) and hasattr(value, "__iter__")


def elements(block: Any) -> Iterator[Any]:
    for child in block.children.values():
        yield child
        if hasattr(child, "children"):
            yield from elements(child)


def crashed(app: AppTest) -> list[str]:
    return [e.value for e in app.error if "unexpected" in e.value] + [str(e) for e in app.exception]


def holds(app: AppTest) -> int:
    """Nothing on the page is an element or a picture of a name; return how many names it shows."""
    assert crashed(app) == []
    met = 0
    for element in elements(app._tree):
        if element.type in ("html", "selectbox"):
            found = Tags(str(element.proto)).found
            assert not [t for t, have in found if t == "script" or "onerror" in have]
            met += CALL in str(element.proto)
            continue
        for name, words in told(element.proto):
            if name not in PLAIN:
                assert not re.search(r"(?<!\\)!?\[[^\]]*(?<!\\)\]\(", words), (element.type, words)
                met += "192.0.2.1" in words
    return met


@pytest.mark.slow
def test_no_name_becomes_an_element_or_calls_a_picture(app: AppTest) -> None:
    app.query_params["view"] = IMAGE
    app.query_params["design"] = PATH
    put(app, evil())
    met = 0
    for name in PAGES:
        met += holds(on(app, name))
        if name in STAGES:
            met += holds(on(app, name, STAGES[name]))
    assert met > 50


def names_of_the_address() -> None:
    import streamlit as st

    from viz.panels.spoken import code, said

    st.text(code())
    st.text(said("Language"))


SIGNS = ["es", "en", "EN", "es-MX", SCRIPT, IMAGE, CALL, PATH, "\0", "\u202ees", "é", "9" * 5000,
         "../es", "es\r\nSet-Cookie: a=1", "%00", "{code}", "__class__", "[]", "None"]  # fmt: skip


@pytest.mark.slow
def test_whatever_the_address_says_gives_a_language() -> None:
    app, spoken = AppTest.from_function(names_of_the_address), set()
    for seed in seeds(40):
        dice = Seeded(seed)
        if "language" in app.session_state:
            del app.session_state["language"]
        for name in ("lang", dice.choice(("view", "design", "embed", "lang2", "session"))):
            app.query_params[name] = [value(dice) for _ in range(dice.whole(1, 3))]
        app.run()
        assert not app.exception
        spoken.add((app.text[0].value, app.text[1].value))
    assert spoken == {("en", "Language"), ("es", "Idioma")}


def value(dice: Dice) -> str:
    """A sign of the address, or two joined with the first cut."""
    if dice.whole(0, 1):
        return dice.choice(SIGNS)
    return dice.choice(SIGNS)[dice.whole(0, 3) :] + dice.choice(SIGNS)


def edited(dice: Dice, text: str) -> str:
    """A design after one to three values, keys or lines of another sort."""
    rows = text.split("\n")
    for _ in range(dice.whole(1, 3)):
        kind = dice.whole(0, 3)
        keys = [n for n, row in enumerate(rows) if "=" in row] if kind < 2 else []
        place = dice.choice(keys) if keys else dice.whole(0, len(rows) - 1)
        if keys:
            rows[place] = f"{rows[place].partition('=')[0]}= {dice.choice(VALUES)}"
        elif kind == 2:
            rows.insert(place, dice.choice(LINES))
        else:
            del rows[place]
    return "\n".join(rows)


@pytest.mark.slow
def test_texts_changed_at_random_leave_the_app_standing(app: AppTest) -> None:
    texts = [path.read_text(encoding="utf-8") for path in examples().values()]
    faulty = 0
    for seed in seeds(6):
        dice = Seeded(seed)
        put(app, edited(dice, dice.choice(texts)), dice.choice(tuple(PAGES)))
        faulty += bool(app.error)
        assert crashed(app) == [], seed
    assert faulty


@pytest.mark.slow
def test_no_hostile_file_takes_the_app_from_its_owner(app: AppTest) -> None:
    """After each the page stands, says what is wrong, and the way back to the design works."""
    short = {name: data for name, data in DESIGNS.items() if len(data) < 50_000}
    for name, data in short.items():
        text = data.decode("utf-8", "replace")
        for page in ("Layout", "Drain", "Set"):
            put(app, text, page)
            assert crashed(app) == [], (name, page)
        if app.error:
            assert any("fault" in e.value for e in app.error), name
            next(b for b in app.button if b.label.startswith("Back to")).click().run()
            assert not app.error, name
