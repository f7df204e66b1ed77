"""Areas laid out: where footing, wall and floor lie, and which wall two areas share."""

import tomllib

import pytest
from shapely import box

from geometry.designfile import read_design
from geometry.layout.areas import lay_areas
from geometry.parts.fields import LevelAt
from geometry.project import Design

# A garage 0.4 mm off the basement's wall, its own footing and wall, a metre up; it comes first.
TEXT = """
[project]
name = "Two areas (invented)"
[footing]
width = "0.6 m"
thickness = "0.3 m"
offset = "0.05 m"
[wall]
thickness = "0.2 m"
height = "2.4 m"
[floor]
tie = "stone top at TOF -0.1 m"
layer = [
    { name = "Stone", material = "stone-57", thickness = "0.15 m", role = "base" },
    { name = "slab", material = "concrete", thickness = "0.1 m", role = "slab" },
]
[[area]]
name = "garage"
step = "1 m"
corners = ["8.0004 m, 0", "12 m, 0", "12 m, 6 m", "8.0004 m, 6 m"]
footing = { width = "0.4 m", thickness = "0.25 m", offset = "0 m" }
[[area]]
name = "basement"
corners = ["0, 0", "0, 6 m", "8 m, 6 m", "8 m, 0"]
"""


@pytest.fixture(scope="module")
def areas():
    return lay_areas(read_design(TEXT))


def same(shape, x0, y0, x1, y1):
    return shape.symmetric_difference(box(x0, y0, x1, y1)).area == pytest.approx(0, abs=1e-9)


def test_the_lowest_comes_first_and_levels_count_from_its_own_footing(areas):
    assert [a.name for a in areas] == ["basement", "garage"]
    low, high = areas
    assert (low.tof, low.footing_bottom, low.wall_top) == pytest.approx((0, -0.3, 2.4))
    assert (high.tof, high.footing_bottom, high.wall_top) == pytest.approx((1, 0.75, 3.4))
    # The tie is 0.1 m below the area's own top of footing.
    assert (low.subgrade, low.finished_floor) == pytest.approx((-0.25, 0.0))
    assert (high.subgrade, high.finished_floor) == pytest.approx((0.75, 1.0))


def test_a_footing_shifted_outward_stands_out_more_than_in(areas):
    # 0.6 m under a wall of 0.2 m: 0.2 m each way, shifted 0.05 m outward.
    assert (areas[0].projection_out, areas[0].projection_in) == pytest.approx((0.25, 0.15))
    assert (areas[1].projection_out, areas[1].projection_in) == pytest.approx((0.1, 0.1))


def test_a_lone_area_lies_inside_its_wall_and_its_footing(areas):
    low = areas[0]
    assert same(low.room, 0.2, 0.2, 7.8, 5.8)
    assert same(low.core, 0.35, 0.35, 7.65, 5.65)
    assert same(low.footing_outer, -0.25, -0.25, 8.25, 6.25)
    assert low.walls.area == pytest.approx(8 * 6 - 7.6 * 5.6)
    assert low.footings.area == pytest.approx(8.5 * 6.5 - 7.3 * 5.3)


def test_a_wall_that_two_areas_share_is_the_lower_ones(areas):
    low, high = areas
    assert high.outline.bounds[0] == 8.0
    assert high.earlier == (low.outline,)
    assert low.earlier == ()
    # No wall of its own on the shared side: its floor runs to the basement's wall.
    assert same(high.room, 8.0, 0.2, 11.8, 5.8)
    assert same(high.core, 8.0, 0.3, 11.7, 5.7)
    assert high.walls.area == pytest.approx(4 * 6 - 3.8 * 5.6)
    # Its strip ends at the basement's wall: the outline grown by 0.1 m less the core, and at both
    # corners of the basement the 0.1 m that lie outside its wall.
    assert high.footings.area == pytest.approx(4.1 * 6.2 - 3.7 * 5.4 + 2 * 0.1 * 0.1)


def test_areas_a_millimetre_apart_share_nothing():
    raw = tomllib.loads(TEXT.replace("8.0004 m", "8.001 m"))  # a fault: the footings would meet
    apart = lay_areas(Design.model_validate(raw))[1]
    assert apart.earlier == ()
    assert same(apart.room, 8.201, 0.2, 11.8, 5.8)


def test_levels_by_name_with_an_offset(areas):
    low, high = areas
    for name, level in {
        "TOF": 1, "footing bottom": 0.75, "subgrade": 0.75, "stone top": 0.9, "finished floor": 1.0
    }.items():  # fmt: skip
        assert high.level(LevelAt(base=name, offset_m=0.02)) == pytest.approx(level + 0.02)
        assert high.level(LevelAt(base=name)) == pytest.approx(level)
        assert name in high.level_names()
    assert low.fixed_level(LevelAt(base="footing bottom", offset_m=-0.1)) == pytest.approx(-0.4)
    with pytest.raises(KeyError):
        low.level(LevelAt(base="roof"))
