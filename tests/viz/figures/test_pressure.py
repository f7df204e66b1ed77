"""The push of the fill: numbers against the engine, heights to scale, and that it can be read."""

import pytest

from geometry.layout.lay import Layout, lay_out
from geometry.parts.ground import Soil
from geometry.water.wall import highest, wall_runs
from tests.viz.figures.drain_figures import assert_legible, example, layouts, words
from viz.drawing.figure import Figure
from viz.drawing.marks import Fill, Line, Strokes
from viz.drawing.scale import Scale
from viz.figures.pressure.pressure import REMARK, at_rest_push, pressure_figure
from viz.style.lines import CUT

SCALES = [Scale("1:20", 20), Scale('1/2" = 1\'-0"', 24), Scale('1/4" = 1\'-0"', 48)]


def in_soil(layout: Layout, group: str) -> Layout:
    return lay_out(layout.design.model_copy(update={"soil": Soil(group=group)}))


def drawn(layout: Layout, scale: Scale = SCALES[1], text: float = 2.5) -> Figure:
    figure = pressure_figure(layout, scale, text)
    assert figure is not None
    return figure


def test_unknown_soil_and_no_fill_draw_nothing() -> None:
    demo = example("l-basement")
    assert pressure_figure(in_soil(demo, "unknown"), SCALES[0], 2.5) is None
    grade = demo.design.grade.model_copy(update={"at_wall": -1.0})
    bare = lay_out(demo.design.model_copy(update={"grade": grade}))
    assert pressure_figure(bare, SCALES[0], 2.5) is None


@pytest.mark.parametrize("scale", SCALES, ids=lambda scale: scale.name)
@pytest.mark.parametrize("text", [2.5, 3.0])
def test_words_of_many_walls_can_be_read(scale: Scale, text: float) -> None:
    count = 0
    for layout in layouts():
        figure = pressure_figure(in_soil(layout, "ML"), scale, text)
        if figure is not None:
            assert_legible(figure)
            count += 1
    assert count > 12


@pytest.mark.parametrize("scale", SCALES, ids=lambda scale: scale.name)
def test_heights_are_to_scale_and_pressures_share_one(scale: Scale) -> None:
    layout = example("l-basement")
    figure, run = drawn(layout, scale), highest(wall_runs(layout))
    assert run is not None
    push = at_rest_push(run)
    assert push is not None
    closed = [m.points for m in figure.marks if isinstance(m, Line) and m.points[0] == m.points[-1]]
    dry, wet = (p for p in closed[-2:])
    for rim in (dry, wet):
        ys = [y for _, y in rim]
        assert max(ys) - min(ys) == pytest.approx(run.fill_to_foot_m * scale.per_metre)
    spans = [max(x for x, _ in rim) - min(x for x, _ in rim) for rim in (dry, wet)]
    # Both triangles: their bases stand as their thrusts do.
    assert spans[1] / spans[0] == pytest.approx(push.force_ratio)


def test_the_resultant_ends_on_the_diagram_at_its_height() -> None:
    layout = example("l-basement")
    figure = drawn(layout)
    heads = [m.shape for m in figure.marks if isinstance(m, Fill)]
    assert len(heads) == 2
    # A triangle's resultant stands at a third of its height.
    run = highest(wall_runs(layout))
    assert run is not None
    for head in heads:
        third = run.fill_to_foot_m / 3 * SCALES[1].per_metre
        assert head.centroid.y == pytest.approx(third)


def test_it_says_its_numbers_and_whom_to_ask() -> None:
    # Lean clay at rest 0.75 x 100 lb/ft3 over 7 ft 8 in: 575 lb/ft2, 575 x 7.667 / 2 = 2,204 lb
    # at 2.556 ft: 5,633 lb ft. Flooded (0.75 x 66.9 + 62.43) x 7.667 = 863 lb/ft2.
    said = words(drawn(example("l-basement")))
    assert "At foot 575 lb/ft²" in said
    assert "R = 2,204 lb per ft" in said
    assert "Moment 5,633 lb·ft per ft" in said
    assert any(line.startswith("At foot 863 lb/ft²") for line in said)
    assert "an engineer" in REMARK
    metric = words(drawn(example("metric-house")))
    assert any("kPa" in line for line in metric)
    assert not any("lb" in line for line in metric)


def test_the_wall_is_drawn_in_outline_alone() -> None:
    figure = drawn(example("l-basement"))
    assert not [m for m in figure.marks if m.layer == "cut"]
    assert [m for m in figure.marks if isinstance(m, Line) and m.weight == CUT]
    assert [m for m in figure.marks if isinstance(m, Strokes)]
