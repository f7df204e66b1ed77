"""Soil, wrap, pipe and runs as figures: apart, to one scale, and nothing where nothing is known."""

from collections.abc import Callable, Iterator
from itertools import combinations
from math import log10

import pytest

from geometry.layout.lay import Layout, lay_out
from geometry.parts.ground import Soil
from geometry.water.cleanouts import cleaning
from geometry.water.filtering import filters
from geometry.water.strength import pipe_strength
from geometry.water.wrapping import wrap_sheet
from tests.viz.figures.drain_figures import assert_legible, example, layouts, words
from viz.drawing.figure import Figure
from viz.drawing.lettering import text_box
from viz.drawing.marks import Fill, Line, Text
from viz.drawing.scale import Scale
from viz.figures.ground.bars import BAR
from viz.figures.ground.cleanouts import cleanouts_figure
from viz.figures.ground.grading import grading_figure
from viz.figures.ground.strength import strength_figure
from viz.figures.ground.wrap import wrap_figure
from viz.figures.pit.pit import pit_figure
from viz.figures.pressure.pressure import pressure_figure

SIZES = [(290.0, 3.0), (106.0, 2.6)]
Draw = Callable[[Layout, float, float], Figure | None]


def strength(layout: Layout, width: float, text: float) -> Figure | None:
    return strength_figure(pipe_strength(layout), layout.design.project.units, width, text)


def runs(layout: Layout, width: float, text: float) -> Figure | None:
    return cleanouts_figure(cleaning(layout), layout.design.project.units, width, text)


def wrap(layout: Layout, width: float, text: float) -> Figure | None:
    return wrap_figure(wrap_sheet(layout), layout.design.project.units, width, text)


def grading(layout: Layout, width: float, text: float) -> Figure | None:
    return grading_figure(layout, filters(layout), width, text)


def drawn(draw: Draw, layout: Layout, width: float = 106.0, text: float = 2.6) -> Figure:
    figure = draw(layout, width, text)
    assert figure is not None
    return figure


def bars(figure: Figure) -> list[float]:
    """The lengths of the full bars, from the top down."""
    found = [m.shape.bounds for m in figure.marks if isinstance(m, Fill) and m.colour == BAR]
    return [right - left for left, _, right, _ in sorted(found, key=lambda box: -box[3])]


@pytest.mark.parametrize("draw", [strength, runs, wrap, grading])
@pytest.mark.parametrize("size", SIZES, ids=["wide", "narrow"])
def test_words_are_apart_and_keep_the_width(draw: Draw, size: tuple[float, float]) -> None:
    count = 0
    for layout in layouts()[::3]:
        figure = draw(layout, *size)
        if figure is None:
            continue
        count += 1
        texts = [m for m in figure.marks if isinstance(m, Text)]
        for one, two in combinations(texts, 2):
            assert not text_box(one).overlaps(text_box(two)), (one.words, two.words)
        assert figure.box.width <= size[0] * 1.03
    assert count > 10


def test_bars_are_as_long_as_what_they_show() -> None:
    layout = example("l-basement")
    shown, found, sheet = pipe_strength(layout), cleaning(layout), wrap_sheet(layout)
    assert shown is not None
    assert found is not None
    assert sheet is not None
    flat = [place.flattened for pipe in shown.pipes for place in pipe.places]
    lengths = [run.length_m for run in found.runs]
    pieces = [piece.length_m - sheet.bend_lap_m for piece in sheet.pieces]
    for draw, wanted, drop in ((strength, flat, 0), (runs, lengths, 0), (wrap, pieces, 2)):
        long = bars(drawn(draw, layout))[drop:]
        assert [x / long[0] for x in long] == pytest.approx([x / wanted[0] for x in wanted])
    across = bars(drawn(wrap, layout))[:2]
    assert across[0] / across[1] == pytest.approx(sheet.girth_ratio)


def test_the_reach_stands_at_its_length_and_the_words_agree() -> None:
    layout = example("l-basement")
    found, figure = cleaning(layout), drawn(runs, layout)
    assert found is not None
    limits = {m.points[0][0] for m in figure.marks if isinstance(m, Line) and m.layer == "limit"}
    per_metre = bars(figure)[0] / found.runs[0].length_m
    assert any(x == pytest.approx(found.reach_m * per_metre) for x in limits)
    said = words(figure)
    assert any("too long" in line for line in said)
    assert any("within reach" in line for line in said)


def uprights(figure: Figure) -> Iterator[float]:
    for mark in figure.marks:
        if isinstance(mark, Line) and mark.layer == "openings":
            yield mark.points[0][0]


def test_openings_stand_at_their_sizes_on_a_scale_of_tenfolds() -> None:
    layout = example("l-basement")
    figure, found = drawn(grading, layout), filters(layout)
    names = {t.words: t.at[0] for t in figure.marks if isinstance(t, Text)}
    tenfold = names["10 mm"] - names["1 mm"]
    fabric, hole = uprights(figure)
    sizes = found.fabric[0].opening_m, found.holes[0].hole_m
    for x, size in zip((fabric, hole), sizes, strict=True):
        assert x == pytest.approx(names["1 mm"] + tenfold * log10(size * 1000))


def test_a_soil_of_its_own_grading_is_a_curve_and_another_a_share_of_fines() -> None:
    graded, named = drawn(grading, example("metric-house")), drawn(grading, example("l-basement"))
    assert any("by its own grading" in line for line in words(graded))
    assert any("50% to 100% passes No. 200" in line for line in words(named))
    unknown = example("l-basement")
    unknown = lay_out(unknown.design.model_copy(update={"soil": Soil()}))
    assert not any("No. 200" in line for line in words(drawn(grading, unknown)))


def test_without_a_drain_nothing_is_drawn() -> None:
    dry = next(layout for layout in layouts() if layout.drain is None)
    assert [draw(dry, *SIZES[0]) for draw in (strength, runs, wrap)] == [None] * 3


@pytest.mark.parametrize("name", ["l-basement", "metric-house", "foam-stopped"])
def test_wall_and_pit_fit_a_narrow_screen(name: str) -> None:
    layout = example(name)
    wall = pressure_figure(layout, Scale("1:40", 40), 2.6, stacked=True)
    pit = pit_figure(layout, 104.0, 96.0, 2.7, keyed=True)
    assert wall is not None
    assert pit is not None
    for figure in (wall, pit):
        assert figure.box.width <= 110
        texts = [m for m in figure.marks if isinstance(m, Text)]
        for one, two in combinations(texts, 2):
            assert not text_box(one).overlaps(text_box(two)), (one.words, two.words)
    assert_legible(wall)
    wide = pit_figure(layout, 220.0, 120.0, 3.0)
    assert wide is not None
    named = {" ".join(w.split()) for w in words(wide) if "  " in w}
    assert named <= {" ".join(w.split()) for w in words(pit)}
