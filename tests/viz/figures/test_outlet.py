"""The drawing of an outlet to daylight: what it says of invented grounds, and that it is read."""

from math import inf

import pytest
from drain_figures import assert_legible, example, words

from geometry.layout.lay import Layout
from geometry.parts.outlet import Daylight
from geometry.water.daylight import DaylightRun
from viz.carried import examples
from viz.drawing.figure import Figure
from viz.drawing.marks import Line
from viz.drawing.scale import Scale
from viz.figures.outlet.outlet import outlet_figure
from viz.figures.profile.view import View

FOOT = 0.3048
GROUNDS = {
    "hill": ((0, 7), (150, -3.5), (200, -7)),
    "dip": ((0, 7), (20, 5.5), (45, 1), (60, 1.6), (200, -9)),
    "short": ((0, 1.2), (40, -2.5)),
    "never": ((0, 4), (150, -0.5)),
    "rising": ((0, 4), (30, 4), (60, 6)),
    "far": ((0, 7), (260, 2), (400, -13)),
}


def layouts() -> list[Layout]:
    return [layout for name in examples() if (layout := example(name)).drain is not None]


def run_of(layout: Layout, ground: str, **more: object) -> DaylightRun:
    assert layout.drain is not None
    points = [(x * FOOT, z * FOOT) for x, z in GROUNDS[ground]]
    asked = Daylight.model_validate({"toward": (30.0, 0.0), "ground": points, **more})
    return DaylightRun(layout.drain.outlet_invert, layout.drain.pipe, asked)


def drawn(
    layout: Layout, run: DaylightRun, ratio: int, text: float = 2.5, widest: float = inf,
    tall: int | None = None, compact: bool = False,
) -> Figure:  # fmt: skip
    assert layout.drain is not None
    scale = Scale(f"1:{ratio}", ratio)
    figure = outlet_figure(layout, layout.drain, run, scale, text, tall, compact, widest)
    assert figure is not None
    return figure


def test_a_drain_over_the_ground_is_not_drawn() -> None:
    layout = layouts()[0]
    assert layout.drain is not None
    below = Daylight(toward=(30.0, 0.0), ground=((0.0, -2.0), (9.0, -3.0)))
    run = DaylightRun(0.0, layout.drain.pipe, below)
    assert outlet_figure(layout, layout.drain, run, Scale("1:48", 48), 2.5) is None


@pytest.mark.parametrize("ground", GROUNDS)
@pytest.mark.parametrize(("ratio", "text", "widest"), [(48, 3.0, inf), (128, 2.5, 240.0)])
def test_every_word_is_legible(ground: str, ratio: int, text: float, widest: float) -> None:
    for layout in layouts():
        run = run_of(layout, ground, guard=ratio == 48)
        assert_legible(drawn(layout, run, ratio, text, widest, compact=widest < inf))


def test_it_says_where_the_pipe_comes_out_and_how() -> None:
    layout = layouts()[0]
    run = run_of(layout, "hill")
    said = " ".join(words(drawn(layout, run, 96)))
    assert "Open end with guard" in said
    assert "falls 1/4 in per ft" in said or "2.08 %" in said
    assert "Ground falls 7.0%" in said
    assert "1'-0\" of ground over the pipe" in said
    assert run.lacking is None
    assert "Open end, no guard" in words(drawn(layout, run_of(layout, "hill", guard=False), 96))


def test_it_says_what_is_lacking() -> None:
    layout = layouts()[0]
    figure = drawn(layout, run_of(layout, "never"), 96)
    assert "Does not come out" in words(figure)
    assert any("lacking here" in line for line in words(figure))
    assert not any("guard" in line for line in words(figure))


def test_the_invert_is_drawn_where_it_lies() -> None:
    layout = layouts()[0]
    for ground in ("hill", "never"):
        run, view = run_of(layout, ground), View(1000 / 96, 3)
        figure = drawn(layout, run, 96, tall=3)
        (invert,) = (m for m in figure.marks if isinstance(m, Line) and m.layer == "invert")
        (x, y), (far, low) = invert.points
        assert (x, y) == pytest.approx((0.0, view.y(run.start_m)))
        assert far == pytest.approx(view.x(run.reach_m))
        assert (y - low) / (far - x) == pytest.approx(3 * run.asked.fall)
        assert "3 times larger" in figure.remark


def test_stations_too_many_for_columns_get_a_table_no_wider_than_asked() -> None:
    layout = layouts()[0]
    run = run_of(layout, "hill")
    wide, narrow = drawn(layout, run, 240), drawn(layout, run, 240, widest=340.0)
    assert narrow.box.width <= 340.0 + 1e-6 < wide.box.width
    assert {"A", "B"} <= set(words(narrow)) - set(words(wide))
