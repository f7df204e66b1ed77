"""The wrap's lap on the plan, and the fabric bought for it, worked by hand on a plain box."""

from math import pi

import pytest

from geometry.designfile import read_design
from geometry.layout.drain_stone import developed_width, stone_bodies
from geometry.layout.lay import lay_out
from geometry.plan.outline import offset
from geometry.takeoff.order import order
from geometry.water.wrapping import wrap_sheet

# Metres: 9 x 7 m outside, strips 0.2 m farther out, the stone 0.45 m beside them.
TEXT = """
[project]
name = "A wrap (invented)"
units = "metric"
[footing]
width = "0.6 m"
thickness = "0.3 m"
[wall]
thickness = "0.2 m"
height = "2.4 m"
[floor]
tie = "slab top at TOF +0.1 m"
layer = [
    { name = "stone", material = "stone-57", thickness = "0.15 m", role = "base" },
    { name = "slab", material = "concrete", thickness = "0.1 m", role = "slab" },
]
[[area]]
name = "room"
corners = ["0, 0", "9 m, 0", "9 m, 7 m", "0, 7 m"]
[drain]
fall = "level"
offset = "0.25 m"
sides = SIDES
stone = { width = "0.45 m" }
wrap = { overlap = "OVERLAP" }
"""


def laid(overlap="0.3 m", sides='"all"'):
    return lay_out(read_design(TEXT.replace("OVERLAP", overlap).replace("SIDES", sides)))


def within(distance):
    """Area inside a line so far outside the strips' outer face."""
    return (9.4 + 2 * distance) * (7.4 + 2 * distance)


@pytest.mark.parametrize(
    ("overlap", "near", "far"),
    [
        ("0.3 m", 0.075, 0.375),  # in the middle of the stone's width
        ("0.6 m", -0.075, 0.45),  # over the footing's shelf, and no farther out than the stone
        ("0.9 m", -0.2, 0.45),  # no farther in than the wall
    ],
)
def test_the_lap_lies_over_the_middle_of_the_stone(overlap, near, far):
    (drain,) = laid(overlap).drains
    assert drain.lap.area == pytest.approx(within(far) - within(near))


def test_inside_the_longer_edge_is_the_footings_inner_face_and_there_is_no_shelf():
    text = TEXT.replace("[drain]", '[drain]\nline = "inside"').replace("TOF +0.1 m", "TOF +0.3 m")
    text = text.replace('thickness = "0.15 m"', 'thickness = "0.4 m"')
    layout = lay_out(read_design(text.replace("OVERLAP", "0.3 m").replace("SIDES", '"all"')))
    (drain,) = layout.drains
    tall = drain.stone_top - drain.stone_bottom
    assert developed_width(drain) == pytest.approx(2 * 0.45 + 2 * tall + 0.3)
    sheet = wrap_sheet(layout, 0.0)
    assert sheet.length_m == pytest.approx(2 * (8.2 + 6.2))
    sock = pi * drain.pipe.outside_diameter_m
    assert sheet.soil_ratio == pytest.approx((2 * 0.45 + tall) / sock)
    (row,) = (r for r in order(layout).rows if r.item == "Fabric wrap")
    assert row.in_place == pytest.approx(2 * (8.2 + 6.2) * developed_width(drain))


@pytest.mark.parametrize(("sides", "metres"), [('"all"', 2 * (10.3 + 8.3)), ("[1, 2]", 10.3 + 8.3)])
def test_fabric_is_as_long_as_the_trenchs_longer_edge_and_as_wide_as_the_wrap_laid_flat(
    sides, metres
):
    layout = laid(sides=sides)
    (drain,) = layout.drains
    tall = drain.stone_top - drain.stone_bottom
    assert developed_width(drain) == pytest.approx(2 * (0.45 + 0.2) + 2 * tall + 0.3)
    (row,) = (r for r in order(layout).rows if r.item == "Fabric wrap")
    assert row.in_place == pytest.approx(metres * developed_width(drain))


@pytest.mark.parametrize("line", ["outside", "inside"])
def test_stone_and_wrap_fill_the_trench_and_neither_the_others_room(line):
    """The wrap lies all round the stone, as thick as it is, and once more over its lap."""
    text = TEXT.replace("[drain]", f'[drain]\nline = "{line}"').replace("TOF +0.1 m", "TOF +0.3 m")
    text = text.replace('thickness = "0.15 m"', 'thickness = "0.4 m"')
    layout = lay_out(read_design(text.replace("OVERLAP", "0.3 m").replace("SIDES", '"all"')))
    (drain,) = layout.drains
    stone, wrap = stone_bodies(drain, (), "")
    t, bottom, top = drain.wrap_m, drain.stone_bottom, drain.stone_top
    assert (wrap.bottom, wrap.top) == pytest.approx((bottom, top + t))
    assert (stone.bottom, stone.top) == pytest.approx((bottom + t, top - t))
    whole = sum(p.volume for p in drain.space())
    filled = sum(p.volume for p in (*stone.prisms, *wrap.prisms))
    assert filled == pytest.approx(whole, rel=1e-9)
    if line == "inside":
        low = offset(drain.low_space, -t).area
        assert sum(p.volume for p in stone.prisms) == pytest.approx(low * (top - bottom - 2 * t))
    else:
        # Over the footing the stone is wider by the shelf; the wrap keeps its thickness there too.
        low, high = offset(drain.low_space, -t).area, offset(drain.high_space, -t).area
        by_hand = low * (0.0 + t - bottom - t) + high * (top - t - t)
        assert sum(p.volume for p in stone.prisms) == pytest.approx(by_hand)


def test_a_drain_over_the_top_of_the_footing_stands_against_the_wall_alone():
    text = TEXT.replace('width = "0.45 m" }', 'width = "0.45 m" }\noutlet_invert = "0.2 m"')
    layout = lay_out(read_design(text.replace("OVERLAP", "0.3 m").replace("SIDES", '"all"')))
    (drain,) = layout.drains
    stone, wrap = stone_bodies(drain, layout.steps(drain), "")
    t, (whole,) = drain.wrap_m, stone.prisms
    assert (whole.bottom, whole.top) == (drain.stone_bottom + t, drain.stone_top - t)
    assert drain.stone_bottom > 0
    assert whole.region.area == pytest.approx(within(0.45 - t) - (9 + 2 * t) * (7 + 2 * t))
    assert wrap.bottom == drain.stone_bottom
