"""The drain pipe's detail: holes at their angles, sizes, levels, and that it can be read."""

from itertools import pairwise
from math import asin, cos, degrees, radians, sin

import numpy as np
import pytest
from shapely import MultiPolygon, Point, Polygon
from shapely.geometry.base import BaseGeometry

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout, lay_out
from geometry.solids.drilled import Section, module
from geometry.units import show_length, show_level
from tests.viz.figures.drain_figures import assert_legible, example, layouts, words
from viz.drawing.figure import Figure
from viz.drawing.marks import Fill, Line, Text
from viz.drawing.scale import Scale
from viz.figures.pipe.pipe import pipe_figure
from viz.figures.pipe.words import clock, lowest_water
from viz.style.lines import INK
from viz.style.materials import look

SCALES = [Scale("1:5", 5), Scale('3" = 1\'-0"', 4), Scale("half size", 2), Scale("full size", 1)]
QUARTER = SCALES[1]


def drawn(layout: Layout, scale: Scale = QUARTER, text: float = 2.5) -> Figure:
    figure = pipe_figure(layout, scale, text)
    assert figure is not None
    return figure


def drain_of(layout: Layout) -> DrainLayout:
    assert layout.drain is not None
    return layout.drain


def drained() -> list[Layout]:
    return [layout for layout in layouts() if layout.drain]


def drilled(rows: list[float], diameter: float = 0.0127) -> Layout:
    """The demo with other holes."""
    design = example("l-basement").design
    assert design.drains
    holes = design.drains[0].holes.model_copy(update={"rows": tuple(rows), "diameter": diameter})
    drain = design.drains[0].model_copy(update={"holes": holes})
    return lay_out(design.model_copy(update={"drains": (drain,)}))


def wall(figure: Figure) -> BaseGeometry:
    ink = look("pipe").ink
    found = [m for m in figure.marks if isinstance(m, Fill) and m.colour == ink]
    assert len(found) == 1
    return found[0].shape


def test_no_drain_no_detail() -> None:
    assert all(pipe_figure(x, QUARTER, 2.5) is None for x in layouts() if x.drain is None)


@pytest.mark.parametrize("scale", SCALES, ids=lambda scale: scale.name)
@pytest.mark.parametrize("text", [2.5, 3.0])
def test_words_of_many_details_can_be_read(scale: Scale, text: float) -> None:
    assert len(drained()) > 12
    for layout in drained():
        assert_legible(drawn(layout, scale, text))


@pytest.mark.parametrize(
    "rows",
    [[180], [150, 180, -150], [90, -90], [-60, 60, 180], [-5, 0, 5], list(range(-165, 181, 15))],
    ids=str,
)
@pytest.mark.parametrize("scale", SCALES, ids=lambda scale: scale.name)
def test_unusual_holes_can_be_read_too(rows: list[float], scale: Scale) -> None:
    assert_legible(drawn(drilled(rows), scale))


def test_holes_go_through_the_wall_at_their_angles_and_diameter() -> None:
    for layout in drained():
        drain, shape = drain_of(layout), wall(drawn(layout))
        per_metre = QUARTER.per_metre
        middle = (drain.radius + drain.bore) / 2 * per_metre
        half = drain.drain.holes.diameter / 2 * per_metre
        for row in drain.drain.holes.rows:
            out = np.array((-sin(radians(row)), -cos(radians(row))))
            along = np.array((out[1], -out[0]))
            for side in (-1, 1):
                edge = out * np.sqrt(middle**2 - half**2) + side * half * along
                assert not shape.contains(Point(edge - side * 0.01 * along))
                assert shape.contains(Point(edge + side * 0.01 * along))


def test_the_wall_is_whole_but_for_its_holes() -> None:
    for layout in drained():
        drain, shape = drain_of(layout), wall(drawn(layout))
        rows = drain.drain.holes.rows
        pieces = len(shape.geoms) if isinstance(shape, MultiPolygon) else 1
        assert pieces == max(1, len(rows))
        assert isinstance(shape, MultiPolygon) or len(shape.interiors) == (0 if rows else 1)
        far = np.hypot(*np.concatenate([np.array(p.exterior.coords) for p in parts(shape)]).T)
        assert far.max() == pytest.approx(drain.radius * QUARTER.per_metre, abs=1e-6)


def apart(places: list[float]) -> list[float]:
    """Sorted places, those that are one but for rounding said once."""
    ordered = sorted(places)
    return [b for a, b in pairwise([-np.inf, *ordered]) if b - a > 1e-6]


def parts(shape: BaseGeometry) -> list[Polygon]:
    return list(shape.geoms) if isinstance(shape, MultiPolygon) else [shape]


def test_rows_toward_the_house_are_drawn_on_the_house_side() -> None:
    # The model drills in (left, up, along); the route runs with the house at its left.
    solid = module(Section(0.055, 0.05, (45.0,), 0.006), 0.1, True)
    inner = [p for p in solid.points if abs(p[2]) > 1e-9]
    assert np.mean([left for left, _, _ in inner]) > 0
    figure = drawn(drilled([45.0]))
    house = next(m for m in figure.marks if isinstance(m, Text) and m.words == "house side")
    earth = next(m for m in figure.marks if isinstance(m, Text) and m.words == "earth side")
    assert house.at[0] < earth.at[0]
    drain = drain_of(drilled([45.0]))
    middle = (drain.radius + drain.bore) / 2 * QUARTER.per_metre
    left_hole = Point(-middle * sin(radians(45)), -middle * cos(radians(45)))
    right_hole = Point(middle * sin(radians(45)), -middle * cos(radians(45)))
    assert wall(figure).distance(left_hole) > 0.5
    assert wall(figure).distance(right_hole) < 0.3


@pytest.mark.parametrize(
    ("row", "said"),
    [
        (0, "6 o'clock"), (60, "8 o'clock"), (-60, "4 o'clock"), (30, "7 o'clock"),
        (-30, "5 o'clock"), (90, "9 o'clock"), (-90, "3 o'clock"), (180, "12 o'clock"),
        (-180, "12 o'clock"), (45, "between 7 and 8 o'clock"), (-45, "between 4 and 5 o'clock"),
        (165, "between 11 and 12 o'clock"), (-165, "between 12 and 1 o'clock"),
        (-135, "between 1 and 2 o'clock"),
    ],
)  # fmt: skip
def test_rows_by_the_clock(row: float, said: str) -> None:
    assert clock(row) == said


def test_every_row_has_its_letter_angle_and_clock() -> None:
    said = words(drawn(example("l-basement")))
    for line in ("A: 4 o'clock", "B: 5 o'clock", "C: 7 o'clock", "D: 8 o'clock"):
        assert line in said
    assert said.count("60° from straight down") == 2
    assert said.count("30° from straight down") == 2
    assert {"A", "B", "C", "D"} <= set(said)


def test_water_runs_in_at_the_lowest_edge_of_the_lowest_hole() -> None:
    for layout in drained():
        drain = drain_of(layout)
        holes, water = drain.drain.holes, lowest_water(drain)
        if not holes.rows:
            assert water is None
            continue
        edges = [
            row + degrees(asin(holes.diameter / 2 / drain.bore * share))
            for row in holes.rows
            for share in np.linspace(-1, 1, 2001)
        ]
        heights = [drain.bore - drain.bore * cos(radians(edge)) for edge in edges]
        assert water == pytest.approx(min(heights), abs=1e-6)


def test_what_the_place_of_the_holes_means_is_said() -> None:
    cases = {(-60, 60): "Holes down", (180,): "Holes up", (-60, 60, 180): "Holes all round"}
    for rows, head in cases.items():
        layout = drilled(list(rows))
        water = lowest_water(drain_of(layout))
        assert water is not None
        line = next(w for w in words(drawn(layout)) if w.startswith(head + ":"))
        assert show_length(water, "ft-in") in line
    assert any(w.startswith("No holes:") for w in words(drawn(drilled([]))))
    at_once = next(w for w in words(drawn(drilled([0.0]))) if w.startswith("Holes down:"))
    assert "as soon as" in at_once


def test_levels_at_the_low_and_the_high_point() -> None:
    for layout in drained():
        drain, said = drain_of(layout), words(drawn(layout))
        system = layout.design.project.units
        for invert in {drain.outlet_invert, drain.high_invert}:
            assert show_level(invert, system) in said
            assert show_level(invert + drain.bore + drain.radius, system) in said
        assert ("high point" in said) == bool(drain.rise)


def test_sizes_are_said() -> None:
    for layout in drained():
        drain, said = drain_of(layout), words(drawn(layout))
        system, stone = layout.design.project.units, drain.drain.stone
        assert show_length(2 * drain.radius, system, 64) in said
        assert f"wall {show_length(drain.pipe.wall_m, system, 64)}" in said
        assert f"Bedding {show_length(stone.bedding, system)}" in said


def test_the_bedding_is_drawn_to_scale() -> None:
    for layout in drained():
        drain = drain_of(layout)
        lines = [m for m in drawn(layout).marks if isinstance(m, Line) and m.layer == "dimensions"]
        upright = [m.points for m in lines if len(m.points) == 2
                   and m.points[0][0] == m.points[1][0]]  # fmt: skip
        foot = -drain.radius * QUARTER.per_metre
        deep = drain.drain.stone.bedding * QUARTER.per_metre
        assert any(
            a[1] == pytest.approx(foot) and b[1] == pytest.approx(foot - deep) for a, b in upright
        )


def test_the_view_from_below_shows_spacing_and_rows_to_scale() -> None:
    for layout in drained():
        drain = drain_of(layout)
        holes, per_metre = drain.drain.holes, QUARTER.per_metre
        found = [
            m.shape.centroid
            for m in drawn(layout).marks
            if isinstance(m, Fill) and m.colour == INK and m.layer == "outline"
        ]
        if not holes.rows:
            assert not found
            continue
        xs = apart([p.x for p in found])
        assert np.diff(xs) == pytest.approx(holes.spacing * per_metre, abs=1e-6)
        ys = apart([p.y for p in found])
        expected = sorted(drain.radius * per_metre * sin(radians(row)) for row in holes.rows)
        assert np.diff(ys) == pytest.approx(np.diff(expected), abs=1e-6)


def test_the_view_from_below_has_the_house_side_up() -> None:
    marks = drawn(drilled([50.0, -10.0])).marks
    body = next(m for m in marks if isinstance(m, Fill) and m.colour == look("pipe").fill)
    middle = body.shape.centroid.y
    holes = [m.shape.centroid.y for m in marks
             if isinstance(m, Fill) and m.colour == INK and m.layer == "outline"]  # fmt: skip
    drain = drain_of(drilled([50.0, -10.0]))
    far = [drain.radius * QUARTER.per_metre * sin(radians(row)) for row in (-10.0, 50.0)]
    assert apart([y - middle for y in holes]) == pytest.approx(far, abs=1e-6)
    heights = {m.words: m.at[1] for m in marks if isinstance(m, Text) and m.words in ("A", "B")}
    assert heights["A"] > middle > heights["B"]
