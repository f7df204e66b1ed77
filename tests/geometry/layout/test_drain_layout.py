"""The drain's inverts, fittings, holes and wrap, re-derived by hand on an invented box."""

import numpy as np
import pytest
from shapely import Point

from geometry.designfile import read_design
from geometry.layout.drain import DrainLayout
from geometry.layout.drain_stone import developed_width
from geometry.layout.fittings import turn_at
from geometry.layout.lay import lay_out
from geometry.layout.pipework import caps_volume
from geometry.materials.catalogue import FABRICS, PIPES
from geometry.solids.pipes import perforated_pipe

INCH, FOOT = 0.0254, 0.3048

BOX = """
[project]
name = "A box (invented)"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[drain]
fall = "{fall}"
sides = {sides}
{more}
"""


def drain(fall: str = "1/16 in per ft", sides: str = '"all"', more: str = "") -> DrainLayout:
    laid = lay_out(read_design(BOX.format(fall=fall, sides=sides, more=more))).drain
    assert laid is not None
    return laid


def test_the_loop_runs_offset_from_the_footing() -> None:
    # Footing 6 in outside the wall, pipe's centre 8 in further, at both ends of every side.
    assert drain().route.length == pytest.approx(2 * (30 + 20 + 4 * 14 / 12) * FOOT, rel=1e-12)


def test_inverts_rise_from_the_low_corner_both_ways() -> None:
    laid = drain(more="low_corner = 1")
    half = laid.route.length / 2
    fall = 1 / 16 / 12
    assert laid.high_invert - laid.outlet_invert == pytest.approx(fall * half)
    for away in (0.5, 3.0, 9.0):
        for way in (1, -1):
            level = laid.invert(laid.low + way * away)
            assert level == pytest.approx(laid.outlet_invert + fall * away)


def test_the_trench_starts_at_the_footings_bottom() -> None:
    laid = drain()
    pipe, wrap = PIPES["d2729-4"], FABRICS["nonwoven-6oz"]
    bottom = -10 * INCH
    assert laid.stone_bottom == pytest.approx(bottom)
    bed = 2 * INCH + pipe.wall_m + wrap.thickness_m
    assert laid.outlet_invert == pytest.approx(bottom + bed)


def test_a_high_corner_off_the_middle_steepens_the_short_way() -> None:
    laid = drain(more="low_corner = 1\nhigh_corner = 2")
    ahead, behind = laid.branches()
    assert ahead < behind
    assert laid.rise == pytest.approx(behind / 16 / 12)
    assert laid.invert(laid.high) == pytest.approx(laid.high_invert)
    assert laid.rise / ahead > 1 / 16 / 12


def test_holes_look_down_on_every_side_of_the_house() -> None:
    laid = drain(fall="1/8 in per ft", more="holes = { rows = [0], diameter = '3/8 in' }")
    mesh = perforated_pipe(laid)
    corners = mesh.vertices[mesh.faces]
    normal = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    area = np.linalg.norm(normal, axis=1)
    middle = corners.mean(axis=1)
    # Walls of holes: upright faces right under the pipe's centre line, between its two skins.
    route = laid.route
    aside = np.array([route.line.distance(Point(x, y)) for x, y in middle[:, :2]])
    stations = [route.station_of((x, y)) for x, y in middle[:, :2]]
    down = np.array([laid.centre(s) for s in stations]) - middle[:, 2]
    between = (down > laid.bore) & (down < laid.radius) & (aside < 0.3 * INCH)
    upright = np.abs(normal[:, 2]) < 0.02 * area
    walls = between & upright
    assert laid.hole_count == sum(s.holes for stick in laid.sticks for s in stick)
    assert walls.sum() >= 16 * laid.hole_count
    drilled = {
        int(s // laid.drain.holes.spacing) for s, w in zip(stations, walls, strict=True) if w
    }
    assert len(drilled) > 0.9 * laid.hole_count


def test_chosen_sides_make_an_open_run_with_capped_ends() -> None:
    laid = drain(sides="[1, 2]")
    assert not laid.route.closed
    assert len(laid.route.points) == 3
    assert [f.kind for f in laid.fittings] == ["bend"]


def test_pipe_lies_between_fittings_that_reach_six_inches_each_way() -> None:
    laid = drain("level")
    sides = sorted((b - a) / INCH for a, b in laid.gaps)
    assert sides == pytest.approx([20 * 12 + 28 - 12] * 2 + [30 * 12 + 28 - 12] * 2)


def test_an_open_ends_pipe_stops_four_inches_short_of_the_stones_mitre_under_a_cap() -> None:
    laid = drain("level", sides="[1, 2]")
    (begin, _), (_, end) = laid.gaps[0], laid.gaps[-1]
    short = 4 * INCH + laid.radius  # the mitre of a square corner takes the radius
    assert (begin, laid.route.length - end) == (pytest.approx(short), pytest.approx(short))
    assert caps_volume(laid) == pytest.approx(2 * np.pi * laid.radius**2 * 0.5 * INCH)
    assert caps_volume(drain("level")) == 0


def test_a_corner_turns_by_the_angle_between_its_sides() -> None:
    chamfered = np.array([(0.0, 0.0), (9.0, 0.0), (12.0, 3.0), (12.0, 8.0), (0.0, 8.0)])
    turns = [np.degrees(turn_at(chamfered, n)) for n in range(5)]
    assert turns == pytest.approx([90, 45, 45, 90, 90])


def test_all_sides_by_number_are_an_open_run_from_the_first_corner_round_to_it() -> None:
    laid = drain(sides="[1, 2, 3, 4]")
    assert not laid.route.closed
    assert [laid.outline_corner(n) for n in range(5)] == [1, 2, 3, 4, 1]


def test_the_wrap_laid_flat() -> None:
    laid = drain(fall="level")
    # Round the stone: 16 in beside the footing and 6 in over its shelf, twice, both upright
    # sides, and the overlap of 12 in.
    tall = laid.stone_top - laid.stone_bottom
    assert developed_width(laid) == pytest.approx(2 * (16 + 6) * INCH + 2 * tall + 12 * INCH)
