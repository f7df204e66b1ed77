"""Outlines by themselves: sides that cross, corners that repeat, offsets, rectangles, circles."""

from math import pi, radians, tan

import pytest
from shapely import GeometryCollection, LineString, MultiPolygon, Polygon, box

from geometry.plan.outline import (
    both,
    circle,
    crossing_sides,
    minus,
    multi,
    offset,
    polygon,
    polygons,
    rectangle,
    repeated_corners,
    signed_area,
)

SQUARE = [(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)]


def test_sides_of_a_sound_outline_meet_at_corners_alone() -> None:
    assert crossing_sides(SQUARE) is None
    assert crossing_sides(SQUARE[:3]) is None
    assert crossing_sides([*SQUARE, (0.0, 1.0)]) is None


@pytest.mark.parametrize(
    ("corners", "pair"),
    [
        ([(0, 0), (4, 3), (4, 0), (0, 3)], (1, 3)),
        # The last corner lies on the first side; the third side runs back along the first.
        ([(0, 0), (4, 0), (4, 3), (2, 3), (2, 0)], (1, 4)),
        # The first two that cross are told, not the last.
        ([(0, 0), (9, 0), (9, 2), (7, -1), (5, 2), (3, -1), (0, 2)], (1, 3)),
        ([(0, 0), (9, 0), (9, 4), (3, 8), (3, 4), (8, 8), (0, 9)], (3, 5)),
    ],
)
def test_the_first_two_sides_that_cross_are_told(corners: list, pair: tuple) -> None:
    assert crossing_sides(corners) == pair


def test_corners_a_hair_apart_are_one_and_the_first_pair_is_told() -> None:
    assert repeated_corners(SQUARE) is None
    assert repeated_corners([*SQUARE, (0.0, 3.0009)]) == (4, 5)
    assert repeated_corners([*SQUARE, (0.0, 3.0011)]) is None
    assert repeated_corners([*SQUARE, (4.0, 0.0), (0.0, 0.0)]) == (1, 6)


def test_area_has_the_sign_of_the_way_round() -> None:
    assert signed_area(SQUARE) == pytest.approx(12.0)
    assert signed_area(SQUARE[::-1]) == pytest.approx(-12.0)
    assert polygon(SQUARE[::-1]).exterior.is_ccw


def test_offsets_keep_corners_square_and_nothing_is_moved_by_nothing() -> None:
    shape = Polygon(SQUARE)
    assert offset(shape, 0.0).equals(shape)
    assert offset(shape, 0.5).equals(box(-0.5, -0.5, 4.5, 3.5))
    assert offset(shape, -0.5).equals(box(0.5, 0.5, 3.5, 2.5))
    assert offset(Polygon(), 1.0).is_empty


def test_a_rectangle_stands_about_its_middle_and_a_circle_has_its_area() -> None:
    assert rectangle((10.0, 20.0), 4.0, 6.0).bounds == (8.0, 17.0, 12.0, 23.0)
    round_one = circle((1.0, 2.0), 0.5)
    assert round_one.area == pytest.approx(pi * 0.25, rel=1e-12)
    assert (round_one.centroid.x, round_one.centroid.y) == pytest.approx((1.0, 2.0))
    assert circle((1.0, 2.0), 0.0).is_empty


def test_what_is_taken_away_is_gone_and_crumbs_are_no_areas() -> None:
    left = minus(Polygon(SQUARE), [box(1, -1, 2, 4), Polygon()])
    assert sorted(round(p.area, 9) for p in polygons(left)) == [3.0, 6.0]
    assert minus(Polygon(SQUARE), [Polygon()]).equals(Polygon(SQUARE))
    assert polygons(box(0, 0, 1e-7, 1e-7)) == []


def test_what_is_left_keeps_its_corners_to_the_last_digit() -> None:
    third = 1 / 3  # on no grid
    left = minus(box(0, 0, 1, third), [box(0.5, -1, 2, 2)])
    assert left.bounds == (0.0, 0.0, 0.5, third)


@pytest.mark.parametrize(("degrees", "reach"), [(60.0, 2.0), (25.0, 4.6202), (21.0, 5.0)])
def test_corners_sharper_than_the_limit_are_cut_off(degrees: float, reach: float) -> None:
    # A mitre of half angle a reaches 1 / sin a of the distance: 5.49 times at 21 degrees, cut at 5.
    slope = tan(radians(degrees / 2))
    wedge = Polygon([(0, 0), (10, 10 * slope), (10, -10 * slope)])
    assert -offset(wedge, 1.0).bounds[0] == pytest.approx(reach, abs=1e-4)


def test_a_region_moves_by_a_whole_metre_as_well() -> None:
    assert offset(Polygon(SQUARE), 1.0).equals(box(-1, -1, 5, 4))


def test_all_areas_of_a_mixed_geometry_are_found_and_lines_are_not() -> None:
    one, two, three = box(0, 0, 1, 1), box(2, 0, 3, 1), box(4, 0, 5, 1)
    mixed = GeometryCollection([one, LineString([(0, 0), (9, 9)]), MultiPolygon([two, three])])
    assert polygons(mixed) == [one, two, three]
    assert multi(mixed).equals(MultiPolygon([one, two, three]))


def test_a_strip_along_a_house_is_not_taken_for_the_house() -> None:
    """An edge that all but coincides (1e-16 m) once cost a drain its stone above the footing."""
    strip = Polygon(
        [(5.4594125, 3.13055), (5.717785080812317, 2.881020065062756),
         (-2.249801184338094, 2.741981530535764), (-2.00025, 3.000375)]
    )  # fmt: skip
    house = Polygon(
        [(-2.00025, 3.000375), (5.4594125, 3.13055), (5.40385, 6.3293625),
         (1.1445875, 6.2563375), (1.0874375, 9.45515), (-2.111375, 9.3995875)]
    )  # fmt: skip
    # By the shoelace formula: half the sum of x y' - x' y over the four sides, 1.9596 m2.
    assert minus(strip, [house]).area == pytest.approx(1.95956, abs=1e-5)
    assert both(strip, house).area == pytest.approx(0.0, abs=1e-6)


def test_an_offset_of_nothing_but_rounding_leaves_the_region() -> None:
    """A footing flush with its wall, 2.6e-18 m out by rounding, once vanished."""
    for distance in (2.6e-18, -2.6e-18):
        assert offset(Polygon(SQUARE), distance).equals(Polygon(SQUARE))


def test_lines_that_hang_on_a_region_are_no_part_of_it() -> None:
    mixed = GeometryCollection([box(0, 0, 2, 1), LineString([(2, 0), (5, 0)])])
    assert minus(mixed, [box(1, 0, 5, 1)]).equals(box(0, 0, 1, 1))
    assert both(mixed, box(1, -1, 5, 1)).equals(box(1, 0, 2, 1))
