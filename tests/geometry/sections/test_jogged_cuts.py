"""Jogged cuts: legs unrolled, steps without width, seams that do not show."""

import math
from itertools import combinations

import numpy as np
import pytest
import shapely
from shapely import affinity

from geometry.designfile import read_design
from geometry.errors import BedcourseError
from geometry.layout.lay import Layout, lay_out
from geometry.sections.bars import bar_marks
from geometry.sections.cut import cut
from geometry.sections.face import CutLine
from geometry.solids.foundation import Foundation, build
from tests.designs import design_of, seeded_raw

BOX = """
[project]
name = "A box (invented)"
numbers = "m"
[[area]]
name = "cellar"
corners = [[0, 0], [10, 0], [10, 8], [0, 8]]
[[area.pier]]
at = [3, 4]
width = 1.0
column = "square"
column_size = 0.4
[wall]
thickness = 0.25
height = 2.5
[footing]
width = 0.65
thickness = 0.3
[floor]
tie = "slab bottom at TOF"
layer = [{ name = "slab", material = "concrete", thickness = 0.2, role = "slab" }]
"""


@pytest.fixture(scope="module")
def box() -> tuple[Layout, Foundation]:
    layout = lay_out(read_design(BOX))
    return layout, build(layout)


def shown(foundation: Foundation, line: CutLine) -> dict[str, shapely.MultiPolygon]:
    faces = cut((*foundation.solids, foundation.excavation), line)
    assert all(face.shape.is_valid for face in faces)
    return {face.label.part: face.shape for face in faces}


def test_a_step_takes_no_width() -> None:
    line = CutLine((0, 0), (10, 3), ((4, 0), (4, 3)))
    assert [leg.length for leg in line.legs] == [4, 6]
    assert (line.length, line.steps, line.bends) == (10, (4,), ())
    assert line.place(3) == (3, 0)
    assert line.place(4) == (4, 0)
    assert line.place(5) == (5, 3)
    assert line.place(-1) == (-1, 0)


def test_a_step_may_be_a_degree_off_square_and_no_more() -> None:
    near = CutLine((0, 0), (10, 3), ((4, 0), (4 + 3 * math.tan(math.radians(0.9)), 3)))
    assert near.steps == (4,)
    off = CutLine((0, 0), (10, 3), ((4, 0), (4 + 3 * math.tan(math.radians(1.2)), 3)))
    assert off.steps == ()
    assert len(off.legs) == 3


def test_other_legs_are_unrolled_end_to_end() -> None:
    line = CutLine((0, 0), (7, 3), ((4, 0),))
    assert line.length == pytest.approx(4 + math.sqrt(18))
    assert (line.steps, line.bends) == ((), (4,))
    assert line.place(4 + math.sqrt(18) / 3) == pytest.approx((5, 1))


def test_corners_that_coincide_are_one_corner() -> None:
    line = CutLine((0, 0), (10, 3), ((0, 0), (4, 0), (4, 0), (4, 3), (4, 3.0005)))
    assert line.path == ((0, 0), (4, 0), (4, 3), (10, 3))
    same = CutLine((0, 0), (10, 3), ((4, 0), (4, 3)))
    assert line.legs == same.legs


@pytest.mark.parametrize(
    ("line", "words"),
    [
        (((1, 1), (1, 1)), "no length"),
        (((1, 1), (1, 1), ((1, 1),)), "no length"),
        (((0, 0), (2, 0), ((4, 0),)), "leg 2 of the cut runs back"),
        (((0, 0), (2, 3), ((4, 0), (4, 3))), "leg 3 of the cut runs back"),
    ],
)
def test_cuts_that_cannot_be_drawn_are_refused(line: tuple, words: str) -> None:
    with pytest.raises(BedcourseError, match=words):
        CutLine(*line)


def test_a_jogged_cut_through_a_box_house_by_hand(box: tuple[Layout, Foundation]) -> None:
    _, foundation = box
    # In at x = 6, clear of the pier; at y = 2 over to x = 3, through the pier and out.
    faces = shown(foundation, CutLine((6, -3), (3, 11), ((6, 2), (3, 2))))
    assert faces["cellar/wall"].area == pytest.approx(2 * 0.25 * 2.5)
    assert faces["footing"].area == pytest.approx(2 * 0.65 * 0.3)
    # 7.5 m from wall to wall, less the column's 0.4 m.
    assert faces["cellar/slab"].area == pytest.approx((7.5 - 0.4) * 0.2)
    # The step does not show in the slab: it is cut into two by the column alone.
    assert len(faces["cellar/slab"].geoms) == 2
    # The walls' outside faces stand 3 m and 11 m along the cut.
    assert faces["cellar/wall"].bounds[::2] == pytest.approx((3, 11))
    assert faces["cellar/pier P1 column"].bounds[::2] == pytest.approx((6.8, 7.2))


def test_a_slanting_leg_shows_the_wall_thicker(box: tuple[Layout, Foundation]) -> None:
    _, foundation = box
    # In square, out at 45 degrees: the far wall is met over 0.25 m times the root of two.
    faces = shown(foundation, CutLine((5, -3), (9, 11), ((5, 7),)))
    assert faces["cellar/wall"].area == pytest.approx((0.25 + 0.25 * math.sqrt(2)) * 2.5)
    assert len(faces["cellar/slab"].geoms) == 1


def test_bars_follow_the_legs(box: tuple[Layout, Foundation]) -> None:
    layout, _ = box
    straight = bar_marks(layout, CutLine((6, -3), (6, 11)))
    jogged = bar_marks(layout, CutLine((6, -3), (3, 11), ((6, 2), (3, 2))))
    assert len(straight) == 4
    assert [m.distance for m in jogged] == pytest.approx([m.distance for m in straight])
    line = CutLine((5, -3), (9, 11), ((5, 7),))
    bars = bar_marks(layout, line)
    for mark in bars:
        x, y = line.place(mark.distance)
        on_strip = layout.areas[0].footings.buffer(-0.05).contains(shapely.Point(x, y))
        assert on_strip
    assert len(bars) == 4


def test_spans_and_crossings_count_along_the_drawn_legs() -> None:
    line = CutLine((0, 0), (10, 3), ((4, 0), (4, 3)))
    assert line.crossings(shapely.LineString([(2, -1), (2, 5)])) == pytest.approx((2,))
    # A line met by the step alone is not crossed; one along a leg is not either.
    assert line.crossings(shapely.LineString([(3, 1), (6, 1)])) == ()
    assert line.crossings(shapely.LineString([(5, 3), (8, 3)])) == ()
    assert line.spans(shapely.box(3, -1, 6, 5)) == (
        pytest.approx((3, 4)),
        pytest.approx((4, 6)),
    )
    ring = shapely.box(-1, -1, 2, 5).boundary.union(shapely.box(7, 2, 8, 4).boundary)
    assert line.crossings(ring) == pytest.approx((2, 7, 8))


def test_a_window_keeps_the_part_of_the_track() -> None:
    line = CutLine((0, 0), (10, 3), ((4, 0), (4, 3)))
    assert line.track().length == pytest.approx(10)
    part = line.track(3, 6)
    assert part.equals(shapely.MultiLineString([[(3, 0), (4, 0)], [(4, 3), (6, 3)]]))
    assert line.track(11, 12).is_empty


@pytest.mark.parametrize("seed", [6, 9, 12, 22, 58])
def test_a_jogged_cut_equals_the_pieces_of_straight_cuts(seed: int) -> None:
    raw = seeded_raw(seed)
    assert raw is not None
    foundation = build(lay_out(design_of(raw)))
    x0, y0, x1, y1 = lay_out(design_of(raw)).ground.house.bounds
    at = np.random.default_rng(seed).uniform(0.2, 0.8, 5)
    xs, ys = x0 + at[:3] * (x1 - x0), sorted(y0 + at[3:] * (y1 - y0))
    corners = [(xs[0], y0 - 5), (xs[0], ys[0]), (xs[1], ys[0]), (xs[1], ys[1]), (xs[2], y1 + 5)]
    places = [(float(x), float(y)) for x, y in corners]
    line = CutLine(places[0], places[-1], tuple(places[1:-1]))
    faces = cut((*foundation.solids, foundation.excavation), line)
    pieces: dict[str, list[shapely.MultiPolygon]] = {}
    for leg in line.legs:
        for face in cut((*foundation.solids, foundation.excavation), CutLine(leg.start, leg.end)):
            moved = affinity.translate(face.shape, leg.begin)
            pieces.setdefault(face.label.part, []).append(moved)
    assert {f.label.part for f in faces} == set(pieces)
    for face in faces:
        assert face.shape.is_valid
        whole = shapely.union_all(pieces[face.label.part])
        assert face.shape.symmetric_difference(whole).area < 1e-7 * (1 + whole.length)
    for one, two in combinations([f for f in faces if f.label.role != "excavation"], 2):
        assert one.shape.intersection(two.shape).area < 1e-8
