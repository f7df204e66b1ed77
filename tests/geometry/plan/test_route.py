"""Routes round an outline: places along them, sides moved outward, by rectangles and a 3-4-5."""

import numpy as np
import pytest

from geometry.plan.outline import polygon
from geometry.plan.route import Route, corners_of, lengths_along, parallel, straightened

SQUARE = ((0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0))
LOOP, LINE = Route(SQUARE, closed=True), Route(SQUARE, closed=False)
# Its inscribed circle has radius 1 about (1, 1).
TRIANGLE = polygon([(0, 0), (4, 0), (0, 3)])


def test_a_loop_ends_where_it_starts_and_a_line_does_not():
    assert LOOP.stations == pytest.approx([0, 4, 7, 11, 14])
    assert LINE.stations == pytest.approx([0, 4, 7, 11])
    assert (LOOP.length, LINE.length) == (14, 11)


@pytest.mark.parametrize(
    ("station", "place"),
    [(0, (0, 0)), (1, (1, 0)), (4, (4, 0)), (5, (4, 1)), (12.5, (0, 1.5)),
     # Round again, and the other way.
     (14, (0, 0)), (15, (1, 0)), (33, (4, 1)), (-1, (0, 1))],
)  # fmt: skip
def test_places_along_a_loop_wrap_round(station, place):
    assert LOOP.at(station) == pytest.approx(place)


@pytest.mark.parametrize(("station", "place"), [(0, (0, 0)), (5, (4, 1)), (11, (0, 3))])
def test_a_line_reaches_its_end(station, place):
    assert LINE.at(station) == pytest.approx(place)


@pytest.mark.parametrize(
    ("station", "way"), [(1, (0.8, 0.6)), (6, (0, -1)), (9, (-1, 0)), (13, (0.8, 0.6))]
)
def test_a_route_heads_along_its_leg(station, way):
    """Round a 3-4-5 triangle, from (1, 2) to (5, 5) and back by (5, 2)."""
    loop = Route(((1.0, 2.0), (5.0, 5.0), (5.0, 2.0)), closed=True)
    assert loop.heading(station) == pytest.approx(way)


def test_a_place_beside_the_route_has_the_station_of_the_nearest():
    assert LOOP.station_of((5.0, 1.0)) == pytest.approx(5)
    assert LOOP.station_of((-1.0, 1.0)) == pytest.approx(13)
    assert LINE.station_of((-1.0, 2.9)) == pytest.approx(11)


def test_corners_that_run_straight_on_are_left_out_and_slight_bends_are_not():
    with_more = [(0, 0), (0, 3), (2, 3), (4, 3), (4, 0), (2, 5e-7)]
    found = straightened(polygon(with_more))
    assert found.exterior.is_ccw
    assert sorted(map(tuple, corners_of(found))) == sorted(SQUARE)
    # A corner 10 mm out on a side of 4 m turns it by 2 x 0.01 / 2: a sine of 0.01.
    assert len(corners_of(straightened(polygon([*SQUARE[:1], (2, -0.01), *SQUARE[1:]])))) == 5


def test_the_sense_of_an_outline_is_set():
    clockwise = polygon(SQUARE).reverse()
    assert straightened(clockwise).exterior.is_ccw


def test_sides_move_outward_by_the_distance_with_sharp_corners():
    assert parallel(polygon(SQUARE), 0.5).tolist() == [
        [-0.5, -0.5], [4.5, -0.5], [4.5, 3.5], [-0.5, 3.5]
    ]  # fmt: skip
    # An inward corner moves into the corner: that of the L at (2, 1).
    ell = polygon([(0, 0), (4, 0), (4, 1), (2, 1), (2, 3), (0, 3)])
    assert [2.25, 1.25] in parallel(ell, 0.25).tolist()


def test_a_triangle_moved_inward_shrinks_about_its_inscribed_circle():
    half = parallel(TRIANGLE, -0.5)
    assert half == pytest.approx(np.array([[0.5, 0.5], [2.5, 0.5], [0.5, 2.0]]))
    assert lengths_along(TRIANGLE, half) == pytest.approx([2, 2.5, 1.5])
    # Past the circle's middle every side has turned round.
    assert lengths_along(TRIANGLE, parallel(TRIANGLE, -1.5)) == pytest.approx([-2, -2.5, -1.5])
