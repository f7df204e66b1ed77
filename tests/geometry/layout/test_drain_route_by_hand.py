"""Which way a drain runs round a box, where it is low, how long its sides are; in metres."""

import math

import pytest

from geometry.designfile import read_design
from geometry.layout.drain import DrainLayout
from geometry.layout.drain_route import side_lengths
from geometry.layout.lay import lay_out
from geometry.materials.catalogue import FABRICS, PIPES

# 9 x 7 m outside walls of 0.2 m; strips 0.2 m farther out and 0.4 m farther in. The pipe's centre
# lies 0.25 m off the strip. The first wall is drawn in two sides, of 4 and 5 m.
TEXT = """
[project]
name = "A way round (invented)"
units = "metric"
numbers = "m"
[footing]
width = 0.6
thickness = 0.3
[wall]
thickness = 0.2
height = 2.4
[floor]
tie = "slab top at TOF +0.5 m"
layer = [
    {layers}
    {{ name = "slab", material = "concrete", thickness = 0.1, role = "slab" }},
]
[[area]]
name = "room"
step = 0.5
corners = [[0, 0], [4, 0], [9, 0], [9, 7], [0, 7]]
[drain]
pipe = "en1401-110"
fall = "1:100"
offset = 0.25
stone = {{ width = 0.45, bedding = 0.1 }}
{more}
"""
STONE = '{ name = "stone", material = "stone-57", thickness = 0.2, role = "base" },'
PIPE, WRAP = PIPES["en1401-110"], FABRICS["nonwoven-6oz"].thickness_m


def drain(more: str, layers: str = STONE) -> DrainLayout:
    (found,) = lay_out(read_design(TEXT.format(more=more, layers=layers))).drains
    return found


@pytest.mark.parametrize(
    ("more", "points", "sides"),
    [
        (
            'line = "outside"',
            [(-0.45, -0.45), (9.45, -0.45), (9.45, 7.45), (-0.45, 7.45)],
            [(2, 9.9), (3, 7.9), (4, 9.9), (5, 7.9)],
        ),
        (
            'line = "inside"',
            [(0.65, 0.65), (8.35, 0.65), (8.35, 6.35), (0.65, 6.35)],
            [(2, 7.7), (3, 5.7), (4, 7.7), (5, 5.7)],
        ),
        # Along part of a wall the run ends where that side does.
        ("sides = [2, 3]", [(4, -0.45), (9.45, -0.45), (9.45, 7.45)], [(2, 5.45), (3, 7.9)]),
        # Past the last side it goes on with the first.
        ("sides = [1, 5]", [(-0.45, 7.45), (-0.45, -0.45), (4, -0.45)], [(5, 7.9), (1, 4.45)]),
    ],
)
def test_a_run_keeps_its_distance_along_the_chosen_sides(
    more: str, points: list[tuple[float, float]], sides: list[tuple[int, float]]
) -> None:
    found = drain(more)
    assert found.route.closed == ("sides" not in more)
    start = [tuple(round(x, 9) for x in point) for point in found.route.points]
    first = start.index(min(points)) if found.route.closed else 0
    turned = start[first:] + start[:first]
    assert turned == [pytest.approx(point) for point in points]
    lengths = side_lengths(found)
    assert sorted(lengths) == [(n, pytest.approx(length)) for n, length in sorted(sides)]
    assert sum(length for _, length in lengths) == pytest.approx(found.route.length)


def test_a_turned_house_is_drained_along_the_same_sides() -> None:
    """Turned by 30 degrees; its first wall still goes straight on at the second corner."""
    cos, sin = math.cos(math.pi / 6), math.sin(math.pi / 6)
    corners = [(0, 0), (4, 0), (9, 0), (9, 7), (0, 7)]
    turned = [[x * cos - y * sin, x * sin + y * cos] for x, y in corners]
    text = TEXT.replace("[[0, 0], [4, 0], [9, 0], [9, 7], [0, 7]]", str(turned))
    (found,) = lay_out(read_design(text.format(more="sides = [2, 3]", layers=STONE))).drains
    assert side_lengths(found) == [(2, pytest.approx(5.45)), (3, pytest.approx(7.9))]


def test_water_gathers_at_the_first_corner_unless_another_is_given() -> None:
    for more, corner in (("", 1), ("low_corner = 4", 4)):
        found = drain(more)
        (x, y), at = found.area.area.corners[corner - 1], found.route.at(found.low)
        assert at == pytest.approx((x + math.copysign(0.45, x - 4), y + math.copysign(0.45, y - 3)))


def test_the_outlets_level_hangs_on_the_areas_own_footing() -> None:
    given, usual = drain("outlet_invert = -0.1"), drain("")
    assert given.outlet_invert == pytest.approx(0.5 - 0.1)
    assert usual.outlet_invert == pytest.approx(0.5 - 0.3 + WRAP + 0.1 + PIPE.wall_m)
    assert usual.stone_bottom == pytest.approx(0.5 - 0.3)


def test_stone_inside_ends_under_the_lowest_layers_that_are_base() -> None:
    """The slab's top lies 0.5 m over the strip: two layers of stone end 0.1 m under that."""
    sand = STONE.replace('"stone"', '"sand"').replace("stone-57", "sand-c33")
    blinding = sand.replace('"base"', '"blinding"')
    assert drain("", STONE + sand).ceiling == pytest.approx(0.5 + 0.4)
    assert drain("", STONE + blinding).ceiling == pytest.approx(0.5 + 0.2)
    # Base over a layer that is none does not count; without any it is the subgrade.
    assert drain("", blinding + STONE).ceiling == pytest.approx(0.5)
    inside = 'line = "inside"\noutlet_invert = {}\n'
    high, low = drain(inside.format(-0.1), STONE + sand), drain(inside.format(-0.4), STONE + sand)
    assert high.stone_top == pytest.approx(high.crown + 6 * 0.0254 + WRAP)
    assert low.stone_top < high.stone_top
    tight = drain(inside.format(0.12), STONE + sand)
    assert tight.stone_top == pytest.approx(0.9 - WRAP)
    assert tight.stone_top < tight.crown + 6 * 0.0254 + WRAP
