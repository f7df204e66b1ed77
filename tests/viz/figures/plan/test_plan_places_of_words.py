"""Every word of the plan stands free, whatever the design, the scale and what is referred to."""

import pytest
import shapely
from shapely import LineString

from tests.rolls import seeds
from tests.viz.figures.plan.reading import (
    EXAMPLES,
    FOOT,
    SCALES,
    SMALL,
    all_finite,
    clashes,
    drawn,
    example,
    of_layer,
    referred,
    rolled,
    room,
    texts,
)  # fmt: skip
from viz.drawing.lettering import text_box
from viz.drawing.marks import Line
from viz.drawing.scale import Scale
from viz.figures.plan.refs import SectionRef

SEEDS = [*range(8), *(pytest.param(n, marks=pytest.mark.slow) for n in seeds(24, 8))]


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("name", EXAMPLES)
def test_words_of_examples_stand_free(name: str, scale: Scale) -> None:
    layout = example(name)
    figure = drawn(layout, scale, 2.5, *referred(layout))
    assert clashes(figure) == []
    assert all_finite(figure)


@pytest.mark.parametrize("seed", SEEDS)
def test_words_of_rolled_designs_stand_free(seed: int) -> None:
    layout = rolled(seed)
    if layout is None:
        pytest.skip("this seed's design has faults")
    for scale in SCALES:
        figure = drawn(layout, scale, 3.0, *referred(layout))
        assert clashes(figure) == []
        assert all_finite(figure)


@pytest.mark.parametrize("name", EXAMPLES)
def test_words_stand_free_at_a_scale_far_too_small(name: str) -> None:
    layout = example(name)
    figure = drawn(layout, SMALL, 3.0, *referred(layout))
    assert clashes(figure) == []
    assert len(texts(figure)) >= len(texts(drawn(layout, SCALES[0], 3.0)))


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_word_is_crossed_by_the_drain(name: str) -> None:
    layout = example(name)
    drain = layout.drain
    assert drain is not None
    for scale in SCALES:
        figure = drawn(layout, scale)
        pipe = shapely.transform(drain.route.line, lambda xy, s=scale: xy * s.per_metre)
        shapely.prepare(pipe)
        assert not [t.words for t in texts(figure) if pipe.intersects(room(t))]


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_box_holds_every_word(name: str) -> None:
    figure = drawn(example(name))
    box = figure.box
    for text in texts(figure):
        inner = text_box(text)
        assert box.left <= inner.left <= inner.right <= box.right
        assert box.low <= inner.low <= inner.high <= box.high


def test_cutting_lines_of_every_kind_stand_free() -> None:
    refs = (
        SectionRef(((-3.0, 1.5), (6.0, 1.5), (6.0, 4.5), (18.0, 4.5)), "1", "S-301"),
        SectionRef(((1.2, 8.0), (-2.7, 8.0)), "2", "S-301"),
        SectionRef(((9.1, 6.7), (11.6, 9.1)), "3", "S-301"),
        SectionRef(((-6.0, -2.7), (15.0, 15.0)), "4", "S-301"),
        SectionRef(((-6.0, -2.6), (15.0, 15.1)), "5", "S-301"),
    )
    for scale in SCALES:
        figure = drawn(example("l-basement"), scale, 2.5, refs)
        assert clashes(figure) == []
        numbers = [t.words for t in texts(figure) if t.layer == "marks"]
        assert [numbers.count(str(n)) for n in range(1, 6)] == [2, 1, 1, 2, 2]


def test_the_figure_is_the_same_on_every_run() -> None:
    layout = example("l-basement")
    assert drawn(layout, SCALES[1]) == drawn(layout, SCALES[1])


def test_the_drain_line_runs_the_whole_route() -> None:
    layout = example("l-basement")
    assert layout.drain is not None
    lines = [m for m in of_layer(drawn(layout), "drain") if isinstance(m, Line) and m.dash]
    length = max(LineString(line.points).length for line in lines)
    assert length == pytest.approx(layout.drain.route.length * 1000 / 48, rel=1e-9)
    assert length > FOOT * 10 * 1000 / 48
