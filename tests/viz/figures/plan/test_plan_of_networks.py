"""Plans of houses with several drains, inside drains, bleeders and outlets to daylight."""

from functools import cache

import pytest
import shapely
from shapely import LineString

from geometry.layout.lay import Layout, lay_out
from geometry.units import show_level
from tests.viz.figures.plan.reading import (
    SCALES,
    all_finite,
    clashes,
    drawn,
    light,
    of_layer,
    referred,
    words,
)
from tests.whole import networks
from viz.drawing.figure import Figure
from viz.drawing.marks import Fill, Line
from viz.figures.plan.dashes import BLEEDER
from viz.figures.plan.pipes import flows

SOME = ("both to the pit", "pit and two to daylight")
NAMES = [
    pytest.param(name, marks=() if name in SOME else pytest.mark.slow) for name in networks.TEXTS
]


@cache
def network(name: str) -> Layout:
    return lay_out(networks.network(name))


@pytest.mark.parametrize("name", NAMES)
def test_words_stand_free(name: str) -> None:
    layout = network(name)
    refs = referred(layout)
    for figure in (drawn(layout, SCALES[0], 2.5, *refs), light(layout, SCALES[1], 250.0, *refs)):
        assert clashes(figure) == []
        assert all_finite(figure)


@pytest.mark.slow
@pytest.mark.parametrize("name", networks.TEXTS)
def test_words_stand_free_at_every_scale(name: str) -> None:
    layout = network(name)
    for scale in SCALES:
        for text in (2.5, 3.0):
            assert clashes(drawn(layout, scale, text, *referred(layout))) == []
        for widest in (150.0, 250.0):
            assert clashes(light(layout, scale, widest, *referred(layout))) == []


def arrows(figure: Figure) -> list[shapely.Geometry]:
    return [m.shape for m in of_layer(figure, "drain") if isinstance(m, Fill)]


def bleeders(figure: Figure) -> list[LineString]:
    lines = [m for m in of_layer(figure, "drain") if isinstance(m, Line) and m.dash == BLEEDER]
    return [LineString(m.points) for m in lines]


@pytest.mark.parametrize("name", ["both to the pit", "upper to lower stone"])
def test_every_drain_is_drawn_and_told_apart(name: str) -> None:
    layout = network(name)
    for figure in (drawn(layout), light(layout)):
        said = words(figure)
        for drain in layout.drains:
            assert f"{drain.title[0].upper()}{drain.title[1:]}" in said
        pipes = [m for m in of_layer(figure, "drain") if isinstance(m, Line) and m.weight > 0.6]
        drawn_lines = shapely.union_all([LineString(m.points) for m in pipes])
        per = (SCALES[0] if figure.scale == SCALES[0] else SCALES[1]).per_metre
        for drain in layout.drains:
            middle = shapely.Point(drain.route.at(drain.route.length / 2))
            assert drawn_lines.distance(shapely.Point(middle.x * per, middle.y * per)) < 1e-6


def test_every_leg_has_an_arrow_down_its_fall() -> None:
    layout, scale = network("pit and two to daylight"), SCALES[0]
    (drain,) = layout.drains
    found = arrows(drawn(layout, scale))
    # Three outlets and three high points between them: six falls over six corners.
    long = [f for f in flows(drain) if (f.end - f.start) * scale.per_metre >= 9.0]
    for flow in long:
        low = flow.end if flow.ahead else flow.start
        high = flow.start if flow.ahead else flow.end
        assert drain.falls.rise(low) < drain.falls.rise(high)
        x, y = drain.route.at((flow.start + flow.end) / 2)
        at = shapely.Point(x * scale.per_metre, y * scale.per_metre)
        assert min(arrow.distance(at) for arrow in found) < 1e-6
    # One arrow more on the pipe to the pit and on each to daylight.
    assert len(found) == len(long) + 3


def test_outlets_say_where_they_lead() -> None:
    said = words(drawn(network("pit and two to daylight")))
    for line in ("Low point, tee to the pit", "Low point, tee to daylight 1",
                 "Low point, tee to daylight 2", "To daylight 1, see outlet"):  # fmt: skip
        assert line in said
    assert said.count("High point") == 3
    upper = words(drawn(network("upper to lower stone")))
    assert "Garage: low point, end at corner 2, over lower stone" in upper


def test_a_pipe_to_daylight_runs_on_beyond_the_hole() -> None:
    layout = network("daylight")
    figure, per = drawn(layout), SCALES[0].per_metre
    (drain,) = layout.drains
    (lead,) = layout.leads(drain)
    hole = layout.ground.hole(layout.areas[0])
    assert hole is not None
    foot = shapely.transform(shapely.Polygon(hole.low), lambda xy: xy * per)
    start = shapely.Point(lead.tee[0] * per, lead.tee[1] * per)
    solid = [m for m in of_layer(figure, "drain") if isinstance(m, Line) and not m.dash]
    out = [m for m in solid if shapely.Point(m.points[0]).distance(start) < 1e-6]
    assert any(not foot.contains(shapely.Point(m.points[1])) for m in out)


def test_bleeders_cross_the_footing_and_are_told_once() -> None:
    layout = network("both to the pit")
    figure, system = drawn(layout), layout.design.project.units
    per = SCALES[0].per_metre
    strip = shapely.transform(layout.areas[0].footings, lambda xy: xy * per)
    found = bleeders(figure)
    assert len(found) == len(layout.bleeders) > 10
    assert all(line.crosses(strip) for line in found)
    said = words(figure)
    assert said.count(f"{len(found)} bleeders through the footing") == 1
    assert any(line.startswith(f"INV {show_level(-7 * 0.0254, system)}") for line in said)


def test_a_level_drain_beside_another_has_its_one_invert_told_once() -> None:
    layout = network("both to the pit")
    said = words(drawn(layout))
    for drain in layout.drains:
        level = show_level(drain.outlet_invert, layout.design.project.units)
        assert said.count(f"INV {level} throughout") == 1
    assert not any("orner 2" in line for line in said)


def test_cleanouts_go_to_the_floor_inside_and_to_grade_outside() -> None:
    def about(name: str) -> str:
        return " ".join(words(drawn(network(name))))

    assert "CO: cleanout to finished floor." in about("inside")
    assert "CO: cleanout to finished floor or grade." in about("both to the pit")
