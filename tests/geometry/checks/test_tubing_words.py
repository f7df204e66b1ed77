"""What is said of heating tubes: the lengths, shares and counts that are told, and when."""

import pytest

from geometry.checks.tubing import tubing_findings
from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.layout.tubing.lay import lay_tubes

FOOT = 0.3048
ROOM = """
[project]
name = "Invented room"
units = "{units}"
[[area]]
name = "room"
corners = [{corners}]
[grade]
at_wall = "6 ft"
[floor.tubing]
{keys}
"""
# Two rooms 16 ft square with a passage between, and a room of 20 ft with a hall of 30 ft.
BELL = [(0, 0), (16, 0), (16, 6), (30, 6), (30, 0), (46, 0), (46, 16), (30, 16), (30, 11),
        (16, 11), (16, 16), (0, 16)]  # fmt: skip
HALL = [(0, 0), (20, 0), (20, 8), (50, 8), (50, 13), (20, 13), (20, 20), (0, 20)]


def box(long: float, wide: float) -> list[tuple[float, float]]:
    return [(0, 0), (long, 0), (long, wide), (0, wide)]


def room(corners: list[tuple[float, float]], keys: str, units: str = "ft-in") -> Layout:
    words = ", ".join(f'"{x} ft, {y} ft"' for x, y in corners)
    return lay_out(read_design(ROOM.format(corners=words, keys=keys, units=units)))


def told(layout: Layout) -> dict[str, str]:
    return {f.id: f.found for f in tubing_findings(layout)}


def test_one_small_loop_is_told_in_feet_and_in_metres() -> None:
    """Field 3 x 1 ft: 7 ft and two bends of half a foot, 2 x 0.43 / 2 saved, 8 ft of ways."""
    length = 7 - 2 * (2 - 3.14159 / 2) * 0.5 + 8
    keys = 'way = "4 ft"\ntube = "pex-3/8"'
    small = box(5 + 1 / 3, 3 + 1 / 3)
    assert told(room(small, keys)) == {
        "tubing": f"1 loop, {length:.0f} ft each, 1'-0\" apart; 100% of the slab lies within a "
        "spacing of a tube. No tube crosses another."
    }
    metric = told(room(small, keys, "metric"))["tubing"]
    assert metric.startswith(f"1 loop, {length * FOOT:.1f} m each, 304.8 mm apart; ")


def test_several_loops_are_told_by_the_shortest_and_the_longest() -> None:
    layout = room(box(41 + 1 / 3, 25 + 1 / 3), 'loop = "200 ft"')
    (tubes,) = lay_tubes(layout)
    feet = sorted(loop.whole_m / FOOT for loop in tubes.loops)
    assert (
        f"{len(feet)} loops, {feet[0]:.0f} ft to {feet[-1]:.0f} ft each" in told(layout)["tubing"]
    )
    (finding,) = tubing_findings(layout)
    assert finding.asked == "loops of 200 ft at the most, alike within 10%"


@pytest.mark.parametrize(
    ("corners", "keys", "uneven", "long"),
    [
        (BELL, 'manifold = "8.6 ft, 34.7 ft"\ntube = "pex-1/2"', True, 0),
        (BELL, 'manifold = "33 ft, 17.1 ft"\nloop = "150 ft"\ntube = "pex-1/2"', True, 1),
        (HALL, 'manifold = "39.4 ft, 3.8 ft"\nloop = "100 ft"\npattern = "counterflow"', False, 5),
        (box(30, 20), 'spacing = "10 in"', False, 0),
    ],
)
def test_loops_too_long_or_more_than_a_tenth_apart(
    corners: list[tuple[float, float]], keys: str, uneven: bool, long: int
) -> None:
    layout = room(corners, keys)
    (tubes,) = lay_tubes(layout)
    feet = sorted(loop.whole_m / FOOT for loop in tubes.loops)
    assert (feet[-1] - feet[0] > 0.1 * feet[-1]) == uneven
    assert sum(x > tubes.tubing.longest / FOOT for x in feet) == long
    words = told(layout)
    assert ("tubing-uneven" in words) == uneven
    if uneven:
        assert words["tubing-uneven"] == f"Loops are {feet[0]:.0f} ft to {feet[-1]:.0f} ft long."
    assert ("tubing-long" in words) == (long > 0)
    if long:
        verb = "is" if long == 1 else "are"
        assert words["tubing-long"].startswith(
            f"{long} of {len(feet)} loops {verb} longer than allowed, up to {feet[-1]:.0f} ft: "
        )
    assert ("tubing" in words) == (not uneven and not long)


def test_bends_are_counted_over_all_loops() -> None:
    """1/2 in tube of 5/8 in outside bends to 8 x 5/8 = 5 in."""
    layout = room(box(30, 20), 'spacing = "6 in"\ntube = "pex-1/2"')
    (tubes,) = lay_tubes(layout)
    count = sum(loop.tight for loop in tubes.loops)
    assert len(tubes.loops) > 1
    assert told(layout)["tubing-bends"].startswith(
        f'{count} bends are tighter than 5": runs 6" apart turn back'
    )


def test_a_floor_that_a_seventh_of_lies_cold_is_told() -> None:
    """Slab 40 x 24 ft, tubes a foot apart reach a foot beyond themselves, rounded at corners.

    18 in from the edge they reach 39 x 23 of 960 ft2, 93 %. 24 in from it there is room for 37
    and 21 lines, but tubes run in pairs: 36 and 20 reach 37 x 21, 81 %.
    """
    for edge, share in (("18 in", 0.93), ("24 in", 0.81)):
        layout = room(box(41 + 1 / 3, 25 + 1 / 3), f'edge = "{edge}"\nspacing = "12 in"')
        (tubes,) = lay_tubes(layout)
        (finding,) = tubing_findings(layout)
        assert tubes.covered == pytest.approx(share, abs=0.015)
        assert finding.id == ("tubing-reach" if share < 0.85 else "tubing")
        assert f"{tubes.covered:.0%} of the slab lies within a spacing" in finding.found


def test_no_room_for_a_loop_is_told_alone() -> None:
    layout = room(box(3.5, 3.5), 'edge = "12 in"')
    (finding,) = tubing_findings(layout)
    assert (finding.id, finding.severity) == ("tubing-none", "look")
    assert finding.subject == "room, heating tubes"
