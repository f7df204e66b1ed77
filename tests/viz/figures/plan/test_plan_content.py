"""What the plan says and where it draws it, against the design."""

from math import cos, hypot, radians, sin

import numpy as np
import pytest
import shapely
from shapely import LineString

from geometry.units import show_elevation, show_fall, show_length, show_level
from tests.viz.figures.plan.reading import (
    EXAMPLES,
    FOOT,
    SCALES,
    cut_bounds,
    drawn,
    example,
    of_layer,
    plain,
    rolled,
    texts,
    words,
)
from viz.drawing.figure import Figure
from viz.drawing.marks import Circle, Fill, Line
from viz.drawing.scale import Scale

RECTANGLE = ((0, 0), (30, 0), (30, 20), (0, 20))


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("name", EXAMPLES)
def test_every_corner_tells_its_invert(name: str, scale: Scale) -> None:
    layout = example(name)
    drain, system = layout.drain, layout.design.project.units
    assert drain is not None
    said = words(drawn(layout, scale))
    bends = [f for f in drain.fittings if f.kind == "bend"]
    assert len(bends) >= 4
    for bend in bends:
        level = drain.invert(bend.station)
        elevation = layout.design.datum.top_of_footing + level
        assert f"INV {show_level(level, system)}" in said
        assert f"El. {show_elevation(elevation, system)}" in said
        corner = f"orner {drain.outline_corner(bend.corner or 0)}"
        assert any(corner in line for line in said)
    for corner in drain.drain.cleanouts:
        assert any(f"orner {corner}, CO" in line for line in said)
    for station in (drain.low, drain.high):
        assert f"INV {show_level(drain.invert(station), system)}" in said


def test_open_drains_tell_the_inverts_of_their_ends() -> None:
    layout = rolled(16)
    assert layout is not None
    assert layout.drain is not None
    assert not layout.drain.route.closed
    said = words(drawn(layout))
    system = layout.design.project.units
    for station in (0.0, layout.drain.route.length):
        assert f"INV {show_level(layout.drain.invert(station), system)}" in said
    assert len([w for w in said if "nd at corner" in w]) == 2


@pytest.mark.parametrize("name", EXAMPLES)
def test_each_area_tells_its_levels(name: str) -> None:
    layout = example(name)
    system, datum = layout.design.project.units, layout.design.datum.top_of_footing
    said = " ".join(words(drawn(layout)))
    for area in layout.areas:
        assert area.name.upper() in said
        levels = (("TOF", area.tof), ("Finished floor", area.finished_floor),
                  ("Subgrade", area.subgrade))  # fmt: skip
        for word, level in levels:
            elevation = show_elevation(datum + level, system)
            assert f"{word} {show_level(level, system)} (El. {elevation})" in said


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("name", EXAMPLES)
def test_walls_are_drawn_to_scale_and_dimensioned(name: str, scale: Scale) -> None:
    layout = example(name)
    figure = drawn(layout, scale)
    left, low, right, high = layout.ground.house.bounds
    assert cut_bounds(figure) == pytest.approx(
        tuple(v * 1000 / scale.ratio for v in (left, low, right, high)), abs=1e-5
    )
    said, system = words(figure), layout.design.project.units
    assert show_length(right - left, system) in said
    assert show_length(high - low, system) in said


def strings_of(figure: Figure) -> list[LineString]:
    """The lines of the strings: the longest level and upright ones among the dimensions."""
    lines = [LineString(m.points) for m in of_layer(figure, "dimensions") if isinstance(m, Line)]
    return [line for line in lines if line.length > 20]


def test_a_string_is_as_long_as_what_it_measures() -> None:
    figure = drawn(plain(*RECTANGLE))
    # A string runs on 1.2 mm past its first and last stop.
    lengths = [line.length - 2.4 for line in strings_of(figure)]
    for feet in (30, 20):
        wanted = feet * FOOT * 1000 / 48
        assert any(length == pytest.approx(wanted, abs=1e-6) for length in lengths)


def test_a_house_without_drain_sump_and_piers() -> None:
    figure = drawn(plain(*RECTANGLE))
    said = words(figure)
    assert not of_layer(figure, "drain") + of_layer(figure, "pit") + of_layer(figure, "grid")
    assert said.count("30'-0\"") == 1
    assert said.count("20'-0\"") == 1
    assert "HUT" in said
    assert any("outside face of foundation wall" in line for line in said)
    assert not any("INV" in line or "CO:" in line or "ier pads" in line for line in said)


def test_a_slanted_side_tells_its_own_length() -> None:
    layout = plain((0, 0), (30, 0), (30, 12), (22, 20), (0, 20))
    figure = drawn(layout)
    length = show_length(hypot(8, 8) * FOOT, "ft-in")
    (found,) = [t for t in texts(figure) if t.words == length]
    middle = np.array((26, 16)) * FOOT * 1000 / 48
    assert hypot(found.at[0] - middle[0], found.at[1] - middle[1]) < 25
    said = words(figure)
    for feet in ("22'-0\"", "12'-0\"", "8'-0\""):
        assert feet in said


def test_a_side_hidden_in_a_notch_tells_its_own_length() -> None:
    layout = plain((0, 0), (40, 0), (40, 20), (26, 20), (26, 9), (14, 9), (14, 24), (0, 24))
    said = words(drawn(layout))
    for feet in (11, 15, 14, 12, 20, 24, 40):
        assert f"{feet}'-0\"" in said


def test_a_court_within_a_house_is_cut_round_and_told() -> None:
    more = """
[[area]]
name = "wing"
corners = ["0, 20 ft", "10 ft, 20 ft", "10 ft, 32 ft", "30 ft, 32 ft", "30 ft, 20 ft",
           "40 ft, 20 ft", "40 ft, 44 ft", "0, 44 ft"]
"""
    layout = plain((0, 0), (40, 0), (40, 20), (0, 20), more=more)
    figure = drawn(layout)
    assert words(figure).count("12'-0\"") >= 1
    court = shapely.Point(20 * FOOT * 1000 / 48, 26 * FOOT * 1000 / 48)
    cut = [m.shape for m in of_layer(figure, "cut") if isinstance(m, Fill)]
    assert not any(shape.intersects(court) for shape in cut)


def test_piers_stand_at_their_places_on_lettered_and_numbered_lines() -> None:
    layout = example("l-basement")
    figure = drawn(layout)
    per = 1000 / 48
    bubbles = {t.words: t for t in of_layer(figure, "grid") if hasattr(t, "words")}
    assert sorted(bubbles) == ["1", "2", "A", "B"]
    for name, x in (("1", 13), ("2", 26)):
        assert bubbles[name].at[0] == pytest.approx(x * FOOT * per)
    for name, y in (("A", 10), ("B", 21)):
        assert bubbles[name].at[1] == pytest.approx(y * FOOT * per - 1.5)
    columns = shapely.union_all(
        [m.shape for m in of_layer(figure, "cut") if isinstance(m, Fill) and m.shape.area < 60]
    )
    for pier in layout.areas[0].area.piers:
        assert columns.contains(shapely.Point(pier.at[0] * per, pier.at[1] * per))
    assert {"P1", "P2", "P3", "13'-0\"", "10'-0\"", "11'-0\""} <= set(words(figure))


def test_grid_bubbles_keep_apart_where_piers_are_close() -> None:
    layout = rolled(30)
    assert layout is not None
    discs = [m for m in of_layer(drawn(layout), "grid") if isinstance(m, Circle)]
    assert len(discs) == 12
    for number, one in enumerate(discs):
        for two in discs[:number]:
            apart = hypot(one.centre[0] - two.centre[0], one.centre[1] - two.centre[1])
            assert apart >= one.radius + two.radius - 1e-6


@pytest.mark.parametrize("name", ["l-basement", "metric-house"])
def test_arrows_point_down_the_fall(name: str) -> None:
    layout = example(name)
    drain, lead = layout.drain, layout.lead
    assert drain is not None
    assert lead is not None
    per = 1000 / 48
    figure = drawn(layout)
    arrows = [m.shape for m in of_layer(figure, "drain") if isinstance(m, Fill)]
    along = 0
    for arrow in arrows:
        tip, one, two = (np.asarray(p) / per for p in arrow.exterior.coords[:3])
        back = (one + two) / 2
        if drain.route.line.distance(shapely.Point(tip)) < 1e-6:
            stations = [drain.route.station_of((float(p[0]), float(p[1]))) for p in (tip, back)]
            assert drain.invert(stations[0]) < drain.invert(stations[1])
            along += 1
        else:
            assert np.dot(tip - back, lead.along) > 0
    assert along >= 4


def test_a_level_drain_has_no_arrows_and_says_so() -> None:
    layout = example("foam-stopped")
    figure = drawn(layout)
    assert "laid level" in words(figure)
    line = layout.drain.route.line if layout.drain else LineString()
    arrows = [m.shape for m in of_layer(figure, "drain") if isinstance(m, Fill)]
    pipe = shapely.transform(line, lambda xy: xy * 1000 / 48)
    assert not any(arrow.distance(pipe) < 0.1 for arrow in arrows)


def test_falls_are_told_as_they_are() -> None:
    layout = example("l-basement")
    said = words(drawn(layout))
    assert f"falls {show_fall(layout.drain.drain.fall if layout.drain else 0, 'ft-in')}" in said
    assert any("solid pipe falls 1/4 in per ft" in line for line in said)


def test_the_pit_is_two_circles_at_its_place() -> None:
    layout = example("l-basement")
    pit = layout.sump
    assert pit is not None
    circles = [m for m in of_layer(drawn(layout), "pit") if isinstance(m, Circle)]
    per = 1000 / 48
    assert [c.radius for c in circles] == pytest.approx([pit.outer * per, pit.inner * per], abs=0.5)
    for circle in circles:
        assert circle.centre == pytest.approx((pit.sump.at[0] * per, pit.sump.at[1] * per))
    said = words(drawn(layout))
    assert f"bottom {show_level(pit.floor, 'ft-in')} (El. 410.02 ft)" in said


def test_footings_say_where_they_step() -> None:
    assert "Footing steps 4'-2\"" in words(drawn(example("l-basement")))
    assert not any("steps" in line for line in words(drawn(example("metric-house"))))


@pytest.mark.parametrize("degrees", [0, 20, -15, 90, 200])
def test_north_points_where_the_datum_says(degrees: float) -> None:
    layout = plain(*RECTANGLE, more=f"[datum]\nnorth = {degrees}\n")
    figure = drawn(layout)
    ((circle,), (letter,)) = (
        [m for m in of_layer(figure, "north") if isinstance(m, Circle)],
        [t for t in texts(figure) if t.layer == "north"],
    )
    gap = np.array((letter.at[0], letter.at[1] + letter.height / 2)) - circle.centre
    assert gap / np.hypot(*gap) == pytest.approx((sin(radians(degrees)), cos(radians(degrees))))
    (dart,) = [m.shape for m in of_layer(figure, "north") if isinstance(m, Fill)]
    tip = max(dart.exterior.coords, key=lambda p: np.dot(np.asarray(p) - circle.centre, gap))
    way = np.asarray(tip) - circle.centre
    assert abs(way[0] * gap[1] - way[1] * gap[0]) < 1e-9
    assert letter.words == "N"


def test_the_house_in_feet_and_in_metres_is_one_and_the_same_drawing() -> None:
    feet, metric = plain(*RECTANGLE), plain(*RECTANGLE, more="")
    one, two = drawn(feet), drawn(metric, Scale("1:96", 96))
    assert cut_bounds(one) == pytest.approx([2 * v for v in cut_bounds(two)], abs=1e-4)
