"""How far places lie from an outline whose slopes meet in hips and valleys."""

import numpy as np
import pytest
import shapely

from geometry.plan.sides import Sides

BOX = Sides(shapely.box(0, 0, 9, 7))
# An L: its inward corner at (5, 4).
ELL = Sides(shapely.Polygon([(0, 0), (9, 0), (9, 4), (5, 4), (5, 7), (0, 7)]))


@pytest.mark.parametrize(("over", "up"), [(3.0, 2.0), (2.0, 3.0), (0.5, 0.5)])
def test_beyond_a_corner_the_farther_side_counts(over: float, up: float) -> None:
    places = np.array([(-over, -up), (9 + over, -up), (9 + over, 7 + up), (-over, 7 + up)])
    assert BOX.away(places) == pytest.approx([max(over, up)] * 4)


def test_beside_a_side_it_is_the_distance_square_to_it_and_none_inside() -> None:
    places = np.array([(4.0, -2.0), (9.5, 3.0), (4.0, 10.0), (-1.0, 6.9), (4.0, 3.0)])
    assert BOX.away(places) == pytest.approx([2.0, 0.5, 3.0, 1.0, 0.0])


def test_in_an_inward_corner_the_nearer_side_counts() -> None:
    assert ELL.away(np.array([(7.0, 5.0), (5.5, 6.0), (10.0, 5.0), (6.0, 8.0)])) == pytest.approx(
        [1.0, 0.5, 1.0, 1.0]
    )


def test_round_an_outline_without_inward_corners_the_farthest_of_all_its_sides_counts() -> None:
    corners = np.array([(0.0, 0.0), (8.0, -1.0), (11.0, 4.0), (5.0, 9.0), (-2.0, 5.0)])
    places = np.stack(np.meshgrid(np.arange(-6.0, 16), np.arange(-6.0, 16)), axis=-1).reshape(-1, 2)
    run = np.roll(corners, -1, axis=0) - corners
    outward = np.column_stack((run[:, 1], -run[:, 0])) / np.linalg.norm(run, axis=1)[:, None]
    gaps = np.einsum("nij,ij->ni", places[:, None] - corners, outward)
    found = Sides(shapely.Polygon(corners)).away(places)
    assert found == pytest.approx(np.maximum(gaps.max(axis=1), 0.0), abs=1e-9)
