"""Hole, pockets, grade and fill of a plain box, worked by hand in metres."""

import pytest
import shapely

from geometry.designfile import read_design
from geometry.layout.bodies import Prism
from geometry.layout.ground import Loft, occupied
from geometry.layout.lay import Layout, lay_out

# 9 x 7 m outside walls of 0.2 m; strips 0.2 m farther out, 0.4 m farther in, 0.3 m thick. The floor
# is 0.35 m thick and ends 0.1 m over the strips unless said otherwise.
TEXT = """
[project]
name = "A hole (invented)"
units = "metric"
numbers = "m"
[footing]
width = 0.6
thickness = 0.3
[wall]
thickness = 0.2
height = 2.4
[floor]
tie = "slab top at TOF {floor} m"
layer = [
    {{ name = "stone", material = "stone-57", thickness = 0.25, role = "base" }},
    {{ name = "slab", material = "concrete", thickness = 0.1, role = "slab" }},
]
[excavation]
working_space = 0.6
slope = 0.5
existing = {existing}
[grade]
at_wall = 2.0
fall = "10 %"
{more}
[[area]]
name = "room"
corners = [[0, 0], [9, 0], [9, 7], [0, 7]]
"""


def laid(more: str = "", floor: str = "+0.1", existing: float = 1.7) -> Layout:
    return lay_out(read_design(TEXT.format(more=more, floor=floor, existing=existing)))


def out(by: float) -> tuple[float, ...]:
    """Bounds of the house grown by so much."""
    return (-by, -by, 9 + by, 7 + by)


def levels(prism: Prism | Loft | None) -> tuple[float, float]:
    assert prism is not None
    return prism.bottom, prism.top


def test_the_hole_starts_a_working_space_from_the_strip_and_leans_back_to_the_ground() -> None:
    layout = laid()
    hole = layout.ground.hole(layout.areas[0])
    assert hole is not None
    assert levels(hole) == pytest.approx((-0.3, 1.7))
    assert shapely.Polygon(hole.low).bounds == pytest.approx(out(0.8))
    assert shapely.Polygon(hole.high).bounds == pytest.approx(out(0.8 + 0.5 * 2.0))
    # A strip whose underside is the ground itself needs no hole.
    high = '[[area]]\nname = "high"\nstep = 2\ncorners = [[9, 0], [12, 0], [12, 7], [9, 7]]\n'
    layout = laid(high)
    assert [layout.ground.hole(a) is None for a in layout.areas] == [False, True]


def test_the_grade_falls_from_the_wall_to_the_ground_as_it_was() -> None:
    ground = laid().ground
    grading, block = ground.grading(), ground.house_block()
    assert grading is not None
    assert levels(grading) == pytest.approx((1.7, 2.0))
    assert shapely.Polygon(grading.high).bounds == pytest.approx(out(0))
    assert shapely.Polygon(grading.low).bounds == pytest.approx(out(3))
    assert block.bottom == 1.7
    assert block.top > 2.0
    assert block.region.bounds == out(0)
    places = [(-1, 3), (4, 8.5), (-2.9, 3), (-4, 3), (-1, -2)]
    assert [ground.finished(*place) for place in places] == pytest.approx(
        [1.9, 1.85, 1.71, 1.7, 1.8]
    )
    assert (ground.fill_top, laid(existing=2.5).ground.fill_top) == (1.7, 2.0)
    assert laid(existing=2.0).ground.grading() is None
    assert laid(existing=2.5).ground.grading() is None
    level = lay_out(
        read_design(TEXT.replace("10 %", "level").format(more="", floor="+0.1", existing=1.7))
    )
    assert level.ground.grading() is None


def test_washed_stone_goes_up_the_wall_no_higher_than_the_fill() -> None:
    stone = laid("[backfill]\nstone_top = 0.5\nstone_width = 0.3").ground.wall_stone()
    assert stone is not None
    assert stone.region.bounds == pytest.approx(out(0.3))
    assert stone.top == 0.5
    assert stone.bottom < -0.55  # under all that is dug
    high = laid("[backfill]\nstone_top = 1.9\nstone_width = 0.3").ground.wall_stone()
    assert levels(high)[1] == 1.7
    assert laid().ground.wall_stone() is None
    assert laid("[backfill]\nstone_top = 0.5\nstone_width = 0").ground.wall_stone() is None


def test_ground_inside_the_strips_stays_up_to_the_subgrade() -> None:
    layout = laid()
    (area,) = layout.areas
    core = layout.ground.core(area, -0.5)
    assert core is not None
    assert core.region.bounds == pytest.approx(out(-0.4))
    assert levels(core) == pytest.approx((-0.5, -0.25))
    assert layout.ground.core(area, area.subgrade) is None
    low = laid(existing=-0.28)
    assert levels(low.ground.core(low.areas[0], -0.5)) == pytest.approx((-0.5, -0.28))


def test_pockets_are_dug_below_the_hole_for_what_reaches_deeper() -> None:
    assert laid().ground.pockets() == []
    (deep,) = laid(floor="-0.2").ground.pockets()
    assert levels(deep) == pytest.approx((-0.55, -0.3))
    assert deep.region.bounds == pytest.approx(out(-0.4))
    trench = '[drain]\nfall = "level"\noutlet_invert = {}\nsides = [1]'
    low = laid(trench.format(-0.3))
    assert [levels(p) for p in low.ground.pockets()] == [(low.drains[0].stone_bottom, -0.3)]
    assert laid(trench.format(-0.1)).ground.pockets() == []
    # Inside, the trench is dug down from the subgrade; so are the pit and its pipe's own trench.
    wet = laid(trench.format(-0.4) + '\nline = "inside"\n[sump]\nat = [4, 3]\n')
    pit = wet.sump
    assert pit is not None
    assert pit.trench is not None
    assert [levels(p) for p in wet.ground.pockets()] == [
        (wet.drains[0].stone_bottom, pytest.approx(-0.25)), levels(pit.pocket), levels(pit.trench),
    ]  # fmt: skip


def test_house_and_floor_keep_their_place_free_of_fill() -> None:
    block, floor = occupied(laid().areas, 1.0)
    assert (levels(block), levels(floor)) == (
        pytest.approx((0, 2.4)), pytest.approx((-0.25, 0))
    )  # fmt: skip
    assert (block.region.bounds, floor.region.bounds) == (out(0), pytest.approx(out(-0.4)))
    assert occupied(laid().areas, 3.0)[0].top == 3.0
    # Under a floor that lies over the strip the fill goes on between the walls.
    walls, room = occupied(laid(floor="+0.5").areas, 1.0)
    assert (levels(walls), levels(room)) == (
        pytest.approx((0, 2.4)), pytest.approx((0.15, 2.4))
    )  # fmt: skip
    assert walls.region.area == pytest.approx(9 * 7 - 8.6 * 6.6)
    assert room.region.bounds == pytest.approx(out(-0.2))
