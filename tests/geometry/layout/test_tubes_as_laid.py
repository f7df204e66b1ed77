"""Tubes of whole floors: turned on the plan, off their manifold, and in parts."""

from itertools import pairwise
from math import cos, hypot, pi, radians, sin

import pytest
import shapely
from shapely import Point

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.layout.tubing.lay import Tubes, lay_tubes

ROOM = """
[project]
name = "Invented room"
units = "metric"
[[area]]
name = "room"
corners = [{corners}]
[wall]
thickness = "0.2 m"
[grade]
at_wall = "1.8 m"
[floor.tubing]
spacing = "0.3 m"
edge = "{edge}"
{keys}
"""
Place = tuple[float, float]
# Two rooms of 4 and 3 m, a passage of 0.6 m between walls, field of 0.3 m in it.
PAIR = [(0.0, 0.0), (4.4, 0.0), (4.4, 1.0), (6.0, 1.0), (6.0, 0.0), (9.4, 0.0), (9.4, 4.4),
        (6.0, 4.4), (6.0, 2.0), (4.4, 2.0), (4.4, 4.4), (0.0, 4.4)]  # fmt: skip


def floor(corners: list[Place], keys: str, edge: str = "0.15 m") -> Tubes:
    words = ", ".join(f'"{x:.6f} m, {y:.6f} m"' for x, y in corners)
    (tubes,) = lay_tubes(lay_out(read_design(ROOM.format(corners=words, keys=keys, edge=edge))))
    return tubes


def turned(corners: list[Place], degrees: float) -> list[Place]:
    c, s = cos(radians(degrees)), sin(radians(degrees))
    return [(x * c - y * s, x * s + y * c) for x, y in corners]


@pytest.mark.parametrize("degrees", [25.0, 90.0, 160.0])
def test_a_house_turned_on_the_plan_has_the_same_tubes(degrees: float) -> None:
    shape = [(0.0, 0.0), (7.4, 0.0), (7.4, 3.2), (4.0, 3.2), (4.0, 6.0), (0.0, 6.0)]
    at = (3.0, 0.4)
    keys = 'manifold = "{:.6f} m, {:.6f} m"\nloop = "50 m"\nway = "1 m"'
    straight = floor(shape, keys.format(*at))
    askew = floor(turned(shape, degrees), keys.format(*turned([at], degrees)[0]))
    assert len(askew.loops) == len(straight.loops) > 1
    lengths = [sorted(x.whole_m for x in t.loops) for t in (straight, askew)]
    assert lengths[1] == pytest.approx(lengths[0], rel=0.02)
    assert askew.covered == pytest.approx(straight.covered, abs=0.01)
    (one,), (other,) = straight.parts, askew.parts
    assert turned([one.taps], degrees)[0] == pytest.approx(other.taps, abs=0.05)
    assert turned([one.inward], degrees)[0] == pytest.approx(other.inward, abs=1e-6)
    for part in (one, other):
        assert hypot(*part.inward) == pytest.approx(1)
        x, y = (a + 0.3 * b for a, b in zip(part.taps, part.inward, strict=True))
        assert part.field.contains(Point(x, y))
        assert all(part.field.buffer(1e-3).contains(loop.line) for loop in part.loops)


def test_the_way_to_a_manifold_off_the_field_is_laid_twice() -> None:
    room = [(0.0, 0.0), (6.4, 0.0), (6.4, 5.4), (0.0, 5.4)]
    # Of the last more loops are laid than where it stands nearer, and they start elsewhere.
    for at, loop in (((3.2, 0.3), 61), ((3.2, -4.0), 61), ((9.0, 2.0), 61), ((3.2, -4.65), 52)):
        tubes = floor(room, f'manifold = "{at[0]} m, {at[1]} m"\nway = "1.5 m"\nloop = "{loop} m"')
        (part,) = tubes.parts
        far = Point(part.taps).distance(Point(at))
        for loop in tubes.loops:
            # What lies within a foot of the taps is a part of the loop's own ends.
            assert loop.way_m == pytest.approx(3.0 + 2 * (far if far > 0.3 else 0.0))
            assert loop.whole_m == pytest.approx(loop.length_m + loop.way_m)
        assert not tubes.too_long
        assert tubes.length_m == pytest.approx(sum(x.length_m for x in tubes.loops))


def test_rooms_that_no_tube_passes_between_are_numbered_on() -> None:
    """Edges of 40 cm close the passage: the larger room is laid first."""
    keys = 'loop = "30 m"\nway = "1 m"'
    assert len(floor(PAIR, keys).parts) == 1
    apart = floor(PAIR, keys, edge="0.4 m")
    assert len(apart.parts) == 2
    assert apart.parts[0].field.area > apart.parts[1].field.area
    assert [loop.number for loop in apart.loops] == list(range(1, len(apart.loops) + 1))
    assert len(apart.loops) > 2
    for part in apart.parts:
        assert all(part.field.buffer(1e-3).contains(loop.line) for loop in part.loops)
    lines = shapely.union_all([x.line for x in apart.loops])
    near = lines.buffer(0.3).intersection(apart.slab).area / apart.slab.area
    assert apart.covered == pytest.approx(near)


@pytest.mark.parametrize(
    ("away", "loop", "count", "too_long"),
    [
        # 89 m of tube in the floor, 3 m of ways: two loops of 49 m where the manifold stands.
        (0.0, 52, 2, 0),
        # 5 m off: 60 m each; three are needed where 52 m are asked, two are enough for 62 m.
        (5.0, 52, 3, 0),
        (5.0, 62, 2, 0),
        # So far off that ways would be most of each loop no more are laid: all are too long.
        (20.0, 62, 2, 2),
    ],
)
def test_a_manifold_farther_off_takes_more_loops(
    away: float, loop: int, count: int, too_long: int
) -> None:
    room = [(0.0, 0.0), (6.4, 0.0), (6.4, 5.4), (0.0, 5.4)]
    keys = f'manifold = "3.2 m, {0.35 - away} m"\nway = "1.5 m"\nloop = "{loop} m"'
    tubes = floor(room, keys)
    assert (len(tubes.loops), len(tubes.too_long)) == (count, too_long)


def test_a_hand_more_than_allowed_is_too_long() -> None:
    """A passage with room for one start: its loop cannot be parted."""
    passage = [(0.0, 0.0), (9.4, 0.0), (9.4, 1.0), (0.0, 1.0)]
    (loop,) = floor(passage, 'way = "1 m"').loops
    assert len(floor(passage, f'way = "1 m"\nloop = "{loop.whole_m - 0.1} m"').too_long) == 1
    assert len(floor(passage, f'way = "1 m"\nloop = "{loop.whole_m + 1e-4} m"').too_long) == 0


def test_the_smallest_floor_holds_three_sides_of_a_square() -> None:
    """A field of 32 cm square: sides of 30 cm, two corners rounded off with half of that."""
    (loop,) = floor([(0.0, 0.0), (1.02, 0.0), (1.02, 1.02), (0.0, 1.02)], 'tube = "pex-3/8"').loops
    assert loop.length_m == pytest.approx(0.9 - 2 * (2 - pi / 2) * 0.15)
    none = floor([(0.0, 0.0), (0.99, 0.0), (0.99, 1.03), (0.0, 1.03)], "")
    assert (none.loops, len(none.left_out), none.covered) == ((), 1, 0.0)


def test_without_a_manifold_loops_start_nearest_to_the_middle_of_the_floor() -> None:
    """41 m2 about 4.7, 2.2 m and an alcove of 9 m2 about 1.5, -1.5 m have theirs at 4.1, 1.5 m."""
    alcove = [(0.0, -3.0), (3.0, -3.0), (3.0, 0.0), (9.4, 0.0), (9.4, 4.4), (0.0, 4.4)]
    (part,) = floor(alcove, "").parts
    assert part.inward == pytest.approx((0, 1), abs=1e-9)
    assert part.taps == pytest.approx((4.1, 0.4), abs=0.4)


@pytest.mark.parametrize(
    ("at", "inward"),
    [
        ((4.7, 0.3), (0, 1)), ((4.7, 4.1), (0, -1)), ((0.3, 2.2), (1, 0)), ((9.1, 2.2), (-1, 0)),
        # In the middle of the floor, and told nowhere: at the nearer wall, a long one.
        ((4.7, 2.0), (0, 1)), (None, None),
    ],
)  # fmt: skip
def test_loops_start_at_the_wall_nearest_to_the_manifold(
    at: Place | None, inward: Place | None
) -> None:
    room = [(0.0, 0.0), (9.4, 0.0), (9.4, 4.4), (0.0, 4.4)]
    tubes = floor(room, f'manifold = "{at[0]} m, {at[1]} m"' if at else "")
    (part,) = tubes.parts
    x, y = part.taps
    assert part.field.exterior.distance(Point(x, y)) < 0.3
    if inward:
        assert part.inward == pytest.approx(inward, abs=1e-9)
    else:
        assert abs(part.inward[1]) == pytest.approx(1)
    across = y if part.inward[0] else x
    assert across == pytest.approx(2.2 if part.inward[0] else 4.7, abs=0.35)


def test_a_floor_without_a_slab_takes_no_tube() -> None:
    keys = 'name = "stone", material = "stone-57", thickness = "0.15 m", role = "base"'
    corners = '"0, 0", "6 m, 0", "6 m, 5 m", "0, 5 m"'
    text = ROOM.format(corners=corners, keys="", edge="0.15 m")
    text = text.replace("[floor.tubing]", f"[floor]\nlayer = [{{{keys}}}]\n[floor.tubing]")
    (tubes,) = lay_tubes(lay_out(read_design(text)))
    assert (tubes.loops, tubes.left_out, tubes.covered, tubes.slab.area) == ((), (), 0.0, 0.0)


def test_leads_are_the_straight_ways_through_the_fan() -> None:
    """Four loops: outlets 2 in apart spread to 0.3 m over one row of cells, 0.6 m deep."""
    tubes = floor([(0.0, 0.0), (9.4, 0.0), (9.4, 6.4), (0.0, 6.4)], 'loop = "55 m"\nway = "1 m"')
    (part,) = tubes.parts
    assert len(tubes.loops) == 4
    for loop in tubes.loops:
        lead = 0.0
        for tap, after in (loop.points[:2], loop.points[:-3:-1]):
            dx, dy = after[0] - tap[0], after[1] - tap[1]
            deep = dx * part.inward[0] + dy * part.inward[1]
            lead += 0.6 * hypot(dx, dy) / deep
        assert loop.lead_m == pytest.approx(lead)
    ends = sorted(tap for loop in tubes.loops for tap in (loop.points[0], loop.points[-1]))
    gaps = [hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(ends)]
    assert gaps == pytest.approx([0.0508] * 7)
