"""The ready beginnings in the app: choose, type a few sizes, press one button."""

import pytest
from streamlit.testing.v1 import AppTest

from geometry.designfile import read_design
from viz.panels import state

FOOT = 0.3048


def _page() -> None:
    from viz.carried import demo
    from viz.panels import presets, state

    if not state.begun():
        state.put(demo().read_text(encoding="utf-8"))
    presets.shape_presets()
    presets.floor_presets()
    presets.drain_presets()


@pytest.fixture
def page() -> AppTest:
    return AppTest.from_function(_page, default_timeout=60).run()


def press(page: AppTest, label: str) -> None:
    next(b for b in page.button if b.label == label).click().run()
    assert not page.exception


def text(page: AppTest) -> str:
    return str(page.session_state[state.TEXT])


def test_an_l_of_one_s_own_is_a_choice_four_sizes_and_a_button(page: AppTest) -> None:
    page.segmented_control(key="preset shape").set_value("l").run()
    sizes = {"width": "40 ft", "depth": "30 ft 6 in", "leg": "20 ft", "body": "16 ft"}
    for key, words in sizes.items():
        page.text_input(key=f"preset shape l {key} ft-in").set_value(words).run()
    press(page, "Use this shape")
    (area,) = read_design(text(page)).areas
    corners = [(x / FOOT, y / FOOT) for x, y in area.corners]
    assert corners[1] == pytest.approx((40, 0))
    assert corners[3] == pytest.approx((20, 16))
    assert corners[4] == pytest.approx((20, 30.5))


@pytest.mark.slow
def test_a_size_that_cannot_be_is_said_and_changes_nothing(page: AppTest) -> None:
    before = text(page)
    page.segmented_control(key="preset shape").set_value("l").run()
    page.text_input(key="preset shape l leg ft-in").set_value("40 ft").run()
    said = [h.proto.body for h in page.get("html")]
    assert any("Width of the leg" in words and "at most" in words for words in said)
    press(page, "Use this shape")
    assert text(page) == before
    # The size stays as it was typed while another shape is looked at.
    page.segmented_control(key="preset shape").set_value("u").run()
    page.segmented_control(key="preset shape").set_value("l").run()
    assert page.text_input(key="preset shape l leg ft-in").value == "40 ft"


@pytest.mark.slow
def test_floor_and_drain_are_put_in(page: AppTest) -> None:
    page.selectbox(key="preset floor").set_value("no foam").run()
    press(page, "Use this floor")
    page.selectbox(key="preset drain").set_value("both-pit").run()
    press(page, "Use this drain")
    design = read_design(text(page))
    assert not any(layer.role == "insulation" for layer in design.floor.layers)
    assert [d.outlet for d in design.drains] == ["bleeders", "pit"]
