"""Levels of the ground, and outlines moved outward: notches too narrow are dug straight across."""

import numpy as np
import pytest
import shapely
from shapely import Polygon

from geometry.layout.ground import grown
from tests.houses import house

FOOT = 0.3048


def test_the_ground_lies_where_the_grades_fall_ends_unless_given() -> None:
    """7 ft at the wall, 5 in a hundred over 10 ft: 6 ft 6 in."""
    assert house().ground.existing == pytest.approx(6.5 * FOOT)
    steep = house(
        ('fall = "5 %"', 'fall = "10 %"'), ('fall_length = "10 ft"', 'fall_length = "4 ft"')
    )
    assert steep.ground.existing == pytest.approx(6.6 * FOOT)
    assert steep.ground.at_wall == pytest.approx(7 * FOOT)
    assert house(('at_wall = "7 ft"\n', "")).ground.at_wall == pytest.approx((8 - 8 / 12) * FOOT)


def notched(wide: float) -> Polygon:
    """10 x 8 m with a notch 3 m deep in the middle of its upper side."""
    left, right = 5 - wide / 2, 5 + wide / 2
    return Polygon([(0, 0), (10, 0), (10, 8), (right, 8), (right, 5), (left, 5), (left, 8), (0, 8)])


@pytest.mark.parametrize(("wide", "kept"), [(3.0, True), (2.2, True), (1.8, False), (0.5, False)])
def test_a_notch_narrower_than_twice_the_growth_is_closed(wide: float, kept: bool) -> None:
    low, high = grown(notched(wide), 1.0)
    assert len(low) == len(high) == (8 if kept else 4)
    inner = notched(wide) if kept else shapely.box(0, 0, 10, 8)
    assert Polygon(low).symmetric_difference(inner).area < 1e-9
    outer = notched(wide).buffer(1.0, join_style="mitre") if kept else shapely.box(-1, -1, 11, 9)
    assert Polygon(high).symmetric_difference(outer).area < 1e-9


def test_corners_grown_stand_on_their_own_mitres() -> None:
    low, high = grown(notched(3.0), 0.5)
    assert np.abs(high - low) == pytest.approx(np.full((8, 2), 0.5))
