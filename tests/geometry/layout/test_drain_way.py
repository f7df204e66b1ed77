"""What another area's strip leaves of a drain's stone, worked by hand where the two meet.

Both outlines begin on y = 0 and share the side x = 9 m. The other's strip stands out 0.4 m, this
one's 0.2 m, so that it runs over the drain's last 0.6 to 0.8 m, as far as the mitre at the corner.
"""

import pytest
import shapely

from geometry.designfile import read_design
from geometry.errors import DesignError
from geometry.layout.bodies import without
from geometry.layout.drain_stone import stone_bodies
from geometry.layout.lay import lay_out

TEXT = """
[project]
name = "A strip in a drain's way (invented)"
units = "metric"
numbers = "m"
[footing]
width = 0.6
thickness = 0.3
[wall]
thickness = 0.2
height = 2.4
[floor]
tie = "slab top at TOF +0.1 m"
layer = [
    { name = "stone", material = "stone-57", thickness = 0.1, role = "base" },
    { name = "slab", material = "concrete", thickness = 0.1, role = "slab" },
]
[drain]
area = "room"
pipe = "en1401-110"
fall = "level"
offset = 0.25
sides = [1]
stone = { width = 0.45, bedding = 0.1, cover = 0.1 }
wrap = { overlap = 0 }
[[area]]
name = "room"
corners = [[0, 0], [9, 0], [9, 7], [0, 7]]
[[area]]
name = "other"
step = STEP
corners = [[9, 0], [13, 0], [13, 7], [9, 7]]
footing = { width = 1.0, thickness = THICK }
"""
# Plan of the strip over trench and stone, from the drain's own strip or wall out to 0.4 m.
IN_TRENCH = 0.2 * (0.6 + 0.8) / 2
IN_STONE = 0.4 * (0.4 + 0.8) / 2


def design(step, thick):
    return read_design(TEXT.replace("STEP", str(step)).replace("THICK", str(thick)))


def made(step, thick):
    layout = lay_out(design(step, thick))
    (drain,) = layout.drains
    return layout, drain


def taken(layout, drain):
    whole = sum(p.volume for p in drain.space())
    return whole - sum(p.volume for p in drain.space(layout.steps(drain)))


def test_the_stone_stays_under_a_strip_that_hangs_over_the_pipe():
    layout, drain = made(0.25, 0.3)
    by_hand = IN_TRENCH * 0.05 + IN_STONE * drain.stone_top
    assert taken(layout, drain) == pytest.approx(by_hand)


def test_the_stone_lies_on_a_strip_under_the_pipe():
    layout, drain = made(-0.25, 0.3)
    assert taken(layout, drain) == pytest.approx(IN_TRENCH * (-0.25 - drain.stone_bottom))


@pytest.mark.parametrize(("step", "low", "high"), [(0.25, -0.05, 0.25), (-0.25, -0.55, -0.25)])
def test_the_wrap_keeps_its_thickness_against_the_strip(step, low, high):
    layout, drain = made(step, 0.3)
    steps, t = layout.steps(drain), drain.wrap_m
    stone, wrap = stone_bodies(drain, steps, "")
    filled = sum(p.volume for p in (*stone.prisms, *wrap.prisms))
    assert filled == pytest.approx(sum(p.volume for p in drain.space(steps)))
    # In the middle of the strip over the trench, far from every side of it.
    x, y = 8.9, -0.3
    column = [p for p in stone.prisms if p.region.contains(shapely.Point(x, y))]
    there = [(drain.stone_bottom + t, low - t), (high + t, drain.stone_top - t)]
    heights = [(a, b) for a, b in there if b > a]
    assert min(p.bottom for p in column) == pytest.approx(heights[0][0])
    assert max(p.top for p in column) == pytest.approx(heights[-1][1])
    assert sum(p.top - p.bottom for p in column) == pytest.approx(sum(b - a for a, b in heights))


def test_a_strip_at_the_height_of_pipe_and_wrap_is_a_fault():
    """Half a millimetre decides, over the wrap on the crown and under the one below the pipe."""
    _, drain = made(0.25, 0.3)
    over, t = drain.crown + drain.wrap_m, drain.wrap_m
    under = drain.crown - drain.pipe.outside_diameter_m - t
    made(0.25, 0.25 - over - 0.0005)
    made(under - 0.0005, 0.3)
    for step, thick in ((0.25, 0.25 - over + 0.0005), (under + 0.0005, 0.3), (0.25, 0.5)):
        with pytest.raises(DesignError, match='through the footing or wall of area "other"'):
            design(step, thick)


# Beyond the pipe's end, where the trench ends at 45 degrees: a house apart, whose strip begins at
# x = 9.5 m, and a neighbour round the corner, its strip from 9.35 m, its wall from 9.55 m.
APART = "[[9.7, -3], [13, -3], [13, 7], [9.7, 7]]"
ROUND = "[[9, 1], [9.55, 1], [9.55, -3], [13, -3], [13, 7], [9, 7]]"


@pytest.mark.parametrize(
    ("corners", "step", "thick", "cut", "levels"),
    [
        (APART, 0, 0.3, 0.15**2 / 2, []),  # stands in the pipe's way
        (APART, 0.25, 0.5, 0.15**2 / 2, [(-0.25, 0.25)]),  # and over the drain's strip as well
        (APART, 0.25, 0.3, 0, [(-0.05, 0.25)]),  # hangs over the pipe
        (APART, 0.8, 0.3, 0, []),  # lies over all stone
        (APART, -0.25, 0.3, 0, [(-0.55, -0.25)]),  # lies under the pipe, in the stone
        (APART, -0.4, 0.3, 0, []),  # lies under the stone
        (ROUND, 0, 0.3, 0.3**2 / 2, []),
        (ROUND, -0.25, 0.3, 0.1**2 / 2, [(-0.55, -0.25)]),  # the stone lies on the strip
    ],
)
def test_a_trench_gives_way_to_a_strip_at_the_pipes_height_and_to_a_lower_wall(
    corners, step, thick, cut, levels
):
    """Of the trench's end, a right-angled triangle; 9.4 to 10.3 m long, 0.45 m wide without."""
    text = TEXT.replace("STEP", str(step)).replace("THICK", str(thick))
    text = text.replace("[[9, 0], [13, 0], [13, 7], [9, 7]]", corners).replace("1.0,", "0.6,")
    head, room, other = text.split("[[area]]")
    layout = lay_out(read_design("[[area]]".join((head, other, room))))
    (drain,) = layout.drains
    assert drain.low_space.area == pytest.approx((9.4 + 10.3) / 2 * 0.45 - cut)
    found = [(p.bottom, p.top) for p in layout.steps(drain)]
    assert found == [pytest.approx(level) for level in levels]


def test_what_touches_no_prism_leaves_it_whole():
    _, drain = made(0.25, 0.3)
    prisms = drain.space()
    far = [p._replace(region=shapely.box(50, 50, 51, 51)) for p in prisms]
    assert without(prisms, far) == prisms
