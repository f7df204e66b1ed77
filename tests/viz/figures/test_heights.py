"""The drain's heights at once: legible on many designs, true to scale, every level and rule."""

from math import isclose

import pytest

from geometry.layout.lay import Layout, lay_out
from geometry.units import show_level
from geometry.water.heights import POINTS, drain_heights
from tests.viz.figures.drain_figures import assert_legible, example, layouts, words
from tests.whole.networks import network
from viz.drawing.figure import Figure
from viz.drawing.marks import Fill
from viz.drawing.scale import Scale
from viz.figures.heights.heights import heights_figure
from viz.figures.heights.screen import heights_pictures
from viz.style.materials import look

SCALES = [Scale("1:8", 8), Scale("1:12", 12), Scale("1:20", 20)]


def drawn(layout: Layout, scale: Scale = SCALES[1], text: float = 2.5) -> Figure:
    figure = heights_figure(layout, scale, text)
    assert figure is not None
    return figure


def drained() -> list[Layout]:
    return [layout for layout in layouts() if layout.drain]


def test_no_drain_no_figure() -> None:
    dry = [layout for layout in layouts() if layout.drain is None]
    assert dry
    assert all(heights_figure(layout, SCALES[0], 2.5) is None for layout in dry)


@pytest.mark.parametrize("scale", SCALES, ids=lambda scale: scale.name)
@pytest.mark.parametrize("text", [2.5, 3.0])
def test_words_of_many_can_be_read(scale: Scale, text: float) -> None:
    assert len(drained()) > 12
    for layout in drained()[::2]:
        assert_legible(drawn(layout, scale, text))


@pytest.mark.parametrize("name", ["l-basement", "metric-house", "foam-stopped"])
def test_every_height_is_said_at_both_ends(name: str) -> None:
    layout = example(name)
    heights, system = drain_heights(layout), layout.design.project.units
    assert heights is not None
    said = words(drawn(layout))
    for point in POINTS:
        called = "top of pipe" if point == "crown" else point
        for levels in (heights.low, heights.high):
            assert f"{called} {show_level(levels[point], system)}" in said
    for reference in ("finished floor", "slab underside", "top of footing", "footing bottom"):
        assert any(line.startswith(reference) for line in said)


def test_two_pipes_stand_as_far_apart_in_height_as_the_drain_rises() -> None:
    layout = example("l-basement")
    assert layout.drain is not None
    ink = look("pipe").ink
    rings = [
        m.shape for m in drawn(layout).marks if isinstance(m, Fill) and m.colour == ink
    ]  # fmt: skip
    assert len(rings) == 2
    low, high = sorted(ring.bounds[3] for ring in rings)
    assert isclose((high - low) * 12 / 1000, layout.drain.rise, abs_tol=1e-9)
    wide = [ring.bounds[2] - ring.bounds[0] for ring in rings]
    assert all(
        isclose(w * 12 / 1000, layout.drain.pipe.outside_diameter_m, rel_tol=1e-3) for w in wide
    )


def test_rules_are_rows_with_their_verdict_in_words() -> None:
    said = words(drawn(example("l-basement")))
    # The house is held to the first alone.
    others = {"Ontario and BC 9.14.3.3 (not asked here)", "DIN 4095 (from memory, not asked here)"}
    assert {"IRC R405.1", *others} <= set(said)
    assert any(line.startswith("not met, ") for line in said)
    assert any(line.startswith("met, ") for line in said)


def test_a_drain_inside_the_footing_stands_between_the_footings() -> None:
    layout = lay_out(network("both to the pit"))
    ink = {look("pipe").ink, look("footing").fill}
    for view in layout.views():
        assert view.drain is not None
        both = heights_pictures(view)
        assert both is not None
        for figure in both:
            assert_legible(figure)
        fills = [m for m in both[0].marks if isinstance(m, Fill) and m.colour in ink]
        pipes = [m.shape.centroid.x for m in fills if m.colour == look("pipe").ink]
        footings = [m.shape.bounds for m in fills if m.colour == look("footing").fill]
        strips = sorted(b for b in footings if b[1] < 0 <= b[3] + 1e-6 and b[3] < 1e-6)
        inner = strips[0][2], strips[-1][0]
        assert len(pipes) == 2
        assert all((inner[0] < x < inner[1]) == view.drain.inside for x in pipes)
