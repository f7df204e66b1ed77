"""The pit over the storm as a figure: legible, true to the march, none where nothing is known."""

from itertools import combinations
from pathlib import Path

import numpy as np
import pytest

from geometry.designfile import edited, load, read_design, start_text
from geometry.layout.lay import Layout, lay_out
from geometry.water.study import study
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds
from viz.drawing.figure import Figure
from viz.drawing.lettering import text_box
from viz.drawing.marks import Line, Text
from viz.figures.pit.pit import pit_figure
from viz.figures.pit.view import view_of

EXAMPLES = sorted((Path(__file__).parents[3] / "assets" / "examples").glob("*.toml"))


def example(path: Path, **water: str) -> Layout:
    text = load(path)
    for key, value in water.items():
        text = edited(text, ("water", key), value)
    return lay_out(read_design(text))


def drawn(layout: Layout, width: float = 200.0, height: float = 110.0) -> Figure:
    figure = pit_figure(layout, width, height, 2.5)
    assert figure is not None
    return figure


def words(figure: Figure) -> list[Text]:
    return [mark for mark in figure.marks if isinstance(mark, Text)]


def assert_apart(figure: Figure) -> None:
    for one, other in combinations(words(figure), 2):
        assert not text_box(one).overlaps(text_box(other)), (one.words, other.words)


@pytest.mark.parametrize("path", EXAMPLES, ids=[p.stem for p in EXAMPLES])
@pytest.mark.parametrize(("width", "height"), [(150.0, 85.0), (200.0, 110.0), (320.0, 160.0)])
def test_no_text_overlaps_and_every_level_is_named(path: Path, width: float, height: float) -> None:
    layout = example(path)
    figure = drawn(layout, width, height)
    assert_apart(figure)
    assert figure.box.width <= width + 1e-6
    assert figure.box.height <= height + 1e-6
    said = " ".join(text.words for text in words(figure))
    pit = study(layout).pit
    assert pit is not None
    for name in [r.mark.name for r in pit.reached] + ["pump on", "pump off", "alarm", "pit bottom"]:
        assert name in said


SEEDS = [raw for raw in map(seeded_raw, seeds(60)) if raw and "drain" in raw and "sump" in raw]


@pytest.mark.parametrize("number", range(len(SEEDS)))
def test_random_pits_are_legible_too(number: int) -> None:
    layout = lay_out(design_of(SEEDS[number]))
    figure = pit_figure(layout, 200.0, 110.0, 2.5)
    assert (figure is None) == (study(layout).pit is None)
    if figure:
        assert_apart(figure)


def test_the_dead_pumps_line_meets_each_level_when_the_march_says() -> None:
    layout = example(EXAMPLES[-1])
    pit = study(layout).pit
    assert pit is not None
    lines = [m for m in drawn(layout).marks if isinstance(m, Line) and m.layer == "water"]
    (line,) = (mark for mark in lines if mark.dash)
    xs, ys = (np.array(v) for v in zip(*line.points, strict=True))
    edges = [m for m in drawn(layout).marks if isinstance(m, Line) and m.layer == "frame"]
    (left, high), _, (right, _) = next(e.points for e in edges if len(e.points) == 3)
    view = view_of(pit, right - left, high)
    for row in pit.reached:
        assert row.after_s is not None
        hours = (pit.series.peak_s + row.after_s) / 3600
        # The line is drawn by 600 points; a step between two of them may hide a kink.
        assert np.interp(view.x(hours), xs, ys) == pytest.approx(view.y(row.mark.level_m), abs=2.0)


def test_more_rain_lifts_the_band_over_the_level_where_the_pump_starts() -> None:
    demo = next(p for p in EXAMPLES if p.stem == "l-basement")

    def highest(rain: str) -> float:
        layout = example(demo, rain=rain)
        lines = [m for m in drawn(layout).marks if isinstance(m, Line) and m.layer == "water"]
        return max(y for m in lines if not m.dash for _, y in m.points)

    assert highest("9 in") > highest("3 in") + 5


def test_where_no_inflow_is_known_nothing_is_drawn() -> None:
    assert pit_figure(lay_out(read_design(start_text())), 200.0, 110.0, 2.5) is None


def test_text_too_small_to_read_is_refused() -> None:
    with pytest.raises(ValueError, match="smaller"):
        pit_figure(example(EXAMPLES[0]), 200.0, 110.0, 1.0)
