"""Bends, straight lengths and rings of holes along a drain, worked by hand in metres."""

from math import pi, radians, tan

import pytest

from geometry.designfile import read_design
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import lay_out
from geometry.materials.catalogue import PIPES

TEXT = """
[project]
name = "Pieces of a drain (invented)"
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
    {{ name = "stone", material = "stone-57", thickness = 0.1, role = "base" }},
    {{ name = "slab", material = "concrete", thickness = 0.1, role = "slab" }},
]
[[area]]
name = "room"
corners = {corners}
[drain]
pipe = "en1401-110"
fall = "1:100"
offset = 0.25
stone = {{ width = 0.45 }}
holes = {{ spacing = 0.2 }}
{more}
"""
BOX = "[[0, 0], [9, 0], [9, 7], [0, 7]]"
RADIUS = PIPES["en1401-110"].outside_diameter_m / 2
# A fitting reaches 6 in each way; the pipe stops 4 in short of an open end's mitre.
REACH, SHORT = 6 * 0.0254, 4 * 0.0254


def drain(more: str, corners: str = BOX) -> DrainLayout:
    (found,) = lay_out(read_design(TEXT.format(more=more, corners=corners))).drains
    return found


def test_pipe_is_parted_where_its_fall_turns_and_holed_evenly() -> None:
    """Low at a tee 0.6 m past the second corner, so high 0.6 m past the fourth."""
    found = drain(
        'daylight = { toward = [20, 0.15], fall = "1:50", ground = ["0, 0.5", "30, -9"] }'
    )
    assert found.low == pytest.approx(9.9 + 0.6)
    assert found.high == pytest.approx(2 * 9.9 + 7.9 + 0.6)
    assert found.longest == pytest.approx(17.8)
    assert (found.rise, found.run_length) == (
        pytest.approx(0.178), pytest.approx(2 * (17.8**2 + 0.178**2) ** 0.5)
    )  # fmt: skip
    ends = [[(s.start, s.end) for s in stick] for stick in found.sticks]
    parted = [stick for stick in ends if len(stick) == 2]
    assert parted == [
        [(pytest.approx(27.7 + REACH), pytest.approx(28.3)),
         (pytest.approx(28.3), pytest.approx(35.6 - REACH))]
    ]  # fmt: skip
    for straight in (s for stick in found.sticks for s in stick):
        length = straight.end - straight.start
        assert straight.holes == int(length / 0.2 + 1e-9)
        assert straight.plain == pytest.approx((length - 0.2 * straight.holes) / 2, abs=1e-9)
        assert 0 <= straight.plain < 0.1
    # Between the tee and the bends beside it: 0.6 m less twice 6 in hold one ring, in the middle.
    short = min((s for stick in found.sticks for s in stick), key=lambda s: s.end - s.start)
    assert (short.holes, short.plain) == (1, pytest.approx((0.6 - 2 * REACH - 0.2) / 2))
    plain = TEXT.replace("spacing = 0.2", "rows = []").format(more="", corners=BOX)
    assert lay_out(read_design(plain)).drains[0].hole_count == 0


def test_the_longest_way_is_the_longer_of_unequal_branches() -> None:
    found = drain("low_corner = 1\nhigh_corner = 2")
    assert sorted(found.branches()) == pytest.approx([9.9, 25.7])
    assert (found.longest, found.rise) == (pytest.approx(25.7), pytest.approx(0.257))


def test_a_bend_is_found_at_its_corner_alone() -> None:
    found = drain("")
    corners = [found.bend_at(station) for station in (0.0, 9.9, 17.8, 27.7)]
    assert [bend.corner if bend else None for bend in corners] == [0, 1, 2, 3]
    assert (found.bend_at(5.0), found.bend_at(9.8)) == (None, None)


def test_a_sharp_bend_reaches_farther_than_six_inches() -> None:
    """At 45 and 30 degrees the pipe's own mitre takes its radius times tan 67.5 or 75 degrees."""
    found = drain("", "[[0, 0], [9, 0], [0, 9]]")
    reaches = sorted(fitting.reach for fitting in found.fittings if fitting.kind == "bend")
    sharp = RADIUS * tan(radians(67.5)) + 2 * 0.0254
    assert sharp > REACH
    assert reaches == pytest.approx([REACH, sharp, sharp])
    turns = sorted(found.turn(n) for n in range(3))
    assert turns == pytest.approx([pi / 2, 3 * pi / 4, 3 * pi / 4])


def test_each_open_end_stops_short_of_its_own_mitre() -> None:
    """Beside a wall that leans out by 45 degrees at one end and stands square at the other."""
    found = drain("sides = [5, 1]", "[[0, 0], [9, 0], [13, 4], [13, 7], [0, 7]]")
    first, last = found.sticks[0][0], found.sticks[-1][-1]
    assert first.start == pytest.approx(SHORT + RADIUS)
    short = SHORT + RADIUS * tan(radians(22.5))
    assert found.route.length - last.end == pytest.approx(short)
