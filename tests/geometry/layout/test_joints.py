"""The slab's joints: none farther apart than asked, through corners that look inward and piers."""

import cmath
import math

import numpy as np
import pytest
import shapely
from shapely import affinity

from geometry.designfile import read_design
from geometry.layout.joints import Joints, lay_joints
from geometry.layout.lay import lay_out
from geometry.units import FOOT, INCH
from tests.designs import design_of, seeded_raw

L_SHAPE = """
[project]
name = "Invented L"
[floor]
joints = "{apart}"
[[area]]
name = "room"
corners = ["0, 0", "40 ft, 0", "40 ft, 16 ft", "24 ft, 16 ft", "24 ft, 32 ft", "0, 32 ft"]
{more}
"""
PIER = '[[area.pier]]\nname = "P1"\nat = "12 ft, 7 ft"\n'


def joints(apart: str, more: str = "") -> Joints:
    (found,) = lay_joints(lay_out(read_design(L_SHAPE.format(apart=apart, more=more))))
    return found


def test_cuts_run_through_the_inward_corner_and_the_pier() -> None:
    """Walls 8 in thick: the slab's inward corner lies at 23 ft 4 in, 15 ft 4 in."""
    laid = joints("10 ft", PIER)
    corner = shapely.Point(24 * FOOT - 8 * INCH, 16 * FOOT - 8 * INCH)
    assert sum(cut.distance(corner) < 2e-3 for cut in laid.cuts) == 2
    pier = shapely.Point(12 * FOOT, 7 * FOOT)
    near = sorted(cut.distance(pier) for cut in laid.cuts)
    assert near[1] <= 8 * INCH
    assert len(laid.apart) == 1


@pytest.mark.parametrize("apart", ["6 ft", "10 ft", "15 ft"])
def test_panels_are_the_slab_and_none_is_longer_than_asked(apart: str) -> None:
    laid = joints(apart)
    assert laid.largest[0] <= float(apart.split()[0]) * FOOT + 1e-6
    # Panels of an L cut through its inward corner are rectangles that make up the slab.
    assert sum(a * b for a, b in laid.panels) == pytest.approx(laid.slab.area)


def test_cuts_and_panels_of_the_l_by_hand() -> None:
    """Across: 22'-8" to the corner in three, 16' in two; up: 14'-8" in two, 16' in two."""
    laid = joints("10 ft")
    wide, tall = [(22 + 8 / 12) / 3] * 3 + [8.0] * 2, [(14 + 8 / 12) / 2] * 2 + [8.0] * 2
    by_hand = [(x, y) for x in wide for y in tall[:2]] + [
        (x, y) for x in wide[:3] for y in tall[2:]
    ]
    panels = sorted(tuple(side / FOOT for side in panel) for panel in laid.panels)
    assert panels == [pytest.approx(panel) for panel in sorted((max(p), min(p)) for p in by_hand)]
    assert [side / FOOT for side in laid.slenderest] == pytest.approx([8, 22 / 3])
    assert [side / FOOT for side in laid.largest] == pytest.approx([8, 68 / 9])
    # Two cuts through all 30'-8", two of 14'-8"; one through all 38'-8", two of 22'-8".
    cut = 2 * (30 + 8 / 12) + 2 * (14 + 8 / 12) + (38 + 8 / 12) + 2 * (22 + 8 / 12)
    assert laid.cut_m == pytest.approx(cut * FOOT, abs=0.02)


def test_rolled_floors_are_cut_within_their_slabs() -> None:
    count = 0
    for seed in (0, 3, 6):
        raw = seeded_raw(seed)
        assert raw is not None
        raw["floor"]["joints"] = "8 ft"
        for laid in lay_joints(lay_out(design_of(raw))):
            count += len(laid.cuts)
            assert all(laid.slab.buffer(1e-6).contains(cut) for cut in laid.cuts)
            assert laid.largest[0] <= 8 * FOOT + 0.01
    assert count > 5


def test_without_a_spacing_nothing_is_cut() -> None:
    text = L_SHAPE.format(apart="10 ft", more="").replace('joints = "10 ft"', "")
    assert lay_joints(lay_out(read_design(text))) == ()


# Metres: 10.4 x 6.4 m outside a wall of 0.2 m, so a slab of 10 x 6 m, its corner at (0, 0).
ROOM = """
[project]
name = "Invented room"
units = "metric"
[wall]
thickness = "0.2 m"
[floor]
joints = "4 m"
{more}
[[area]]
name = "room"
corners = {corners}
"""


def room(piers: list[tuple[float, float]], degrees: float = 0.0, more: str = "") -> Joints:
    """Joints of the room, turned about its slab's corner."""
    turn = cmath.rect(1, math.radians(degrees))

    def at(x: float, y: float) -> str:
        place = complex(x, y) * turn
        return f"{place.real:.9f} m, {place.imag:.9f} m"

    outside = [at(-0.2, -0.2), at(10.2, -0.2), at(10.2, 6.2), at(-0.2, 6.2)]
    text = ROOM.format(corners=outside, more=more)
    for x, y in piers:
        text += f'[[area.pier]]\nat = "{at(x, y)}"\ncolumn = "none"\npad_top = "TOF -0.5 m"\n'
    (found,) = lay_joints(lay_out(read_design(text)))
    return found


def places(laid: Joints) -> tuple[list[float], list[float]]:
    """Where cuts stand along the room and across it."""
    ends = [np.asarray(cut.coords) for cut in laid.cuts]
    middles = [(*np.abs(b - a), *((a + b) / 2)) for a, b in ends]
    return (
        sorted(x for run, rise, x, _ in middles if rise > run),
        sorted(y for run, rise, _, y in middles if run > rise),
    )


@pytest.mark.parametrize(
    ("piers", "along", "across"),
    [
        ([], [10 / 3, 20 / 3], [3]),  # ten metres in three, six in two
        ([(5, 2)], [2.5, 5, 7.5], [2]),  # from there to the wall four metres are left
        ([(1.5, 1.5)], [10 / 3, 20 / 3], [3]),  # nearer to the walls than 1.6 m
        ([(1.7, 1.7)], [1.7, 1.7 + 8.3 / 3, 1.7 + 16.6 / 3], [1.7, 1.7 + 4.3 / 2]),
        # Of piers nearer together than 1.6 m the first counts.
        ([(5, 2), (6.5, 2)], [2.5, 5, 7.5], [2]),
        ([(5, 2), (6.7, 2)], [2.5, 5, 6.7], [2]),
    ],
)
def test_cuts_run_through_piers_and_evenly_between_but_leave_no_slivers(
    piers: list[tuple[float, float]], along: list[float], across: list[float]
) -> None:
    laid = room(piers)
    assert places(laid) == (pytest.approx(along, abs=1e-6), pytest.approx(across, abs=1e-6))
    assert laid.cut_m == pytest.approx(6 * len(along) + 10 * len(across), abs=0.02)


def test_cuts_of_a_slab_round_a_yard_run_through_both_its_inward_corners() -> None:
    """A yard 3 m wide between wings of 5 and 4 m, 9 and 7 m long; the slab's foot is 3 m deep."""
    outside = [
        (-0.2, -0.2), (12.2, -0.2), (12.2, 7.2), (7.8, 7.2),
        (7.8, 3.2), (5.2, 3.2), (5.2, 9.2), (-0.2, 9.2),
    ]  # fmt: skip
    corners = [f"{x} m, {y} m" for x, y in outside]
    (laid,) = lay_joints(lay_out(read_design(ROOM.format(corners=corners, more=""))))
    along, across = places(laid)
    assert along == pytest.approx([2.5, 5, 8], abs=2e-3)
    # Both cuts across pass the yard: one piece in either wing.
    assert across == pytest.approx([3, 3, 6, 6], abs=2e-3)
    assert laid.cut_m == pytest.approx(9 + 3 + 3 + 2 * (5 + 4), abs=0.03)
    by_hand = [(x, 3) for x in (2.5, 2.5, 3, 4)] + [(2.5, 3)] * 4 + [(4, 3), (4, 1)]
    assert sorted(laid.panels) == [
        pytest.approx(panel) for panel in sorted((max(p), min(p)) for p in by_hand)
    ]


def test_joints_turn_with_the_house() -> None:
    straight, turned = room([(5, 2)]), room([(5, 2)], 30)
    assert sorted(turned.panels) == [pytest.approx(p, abs=1e-4) for p in sorted(straight.panels)]
    back = [affinity.rotate(cut, -30, origin=(0, 0)) for cut in turned.cuts]
    for cut in straight.cuts:
        assert min(cut.hausdorff_distance(other) for other in back) < 1e-4


def test_the_slab_is_kept_apart_along_a_wall_with_a_board() -> None:
    board = 'edge_board = { material = "xps-300", thickness = "30 mm" }'
    (line,) = room([], more=board).apart
    assert line.length == pytest.approx(2 * (9.94 + 5.94))
    assert room([]).apart == ()
