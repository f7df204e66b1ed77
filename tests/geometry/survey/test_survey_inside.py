"""Triangles of a surface against a region: the same as each one asked by itself."""

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import MultiPoint, Point, box
from shapely.geometry.base import BaseGeometry

from geometry.survey.inside import sort_triangles
from geometry.survey.surface import Surface, triangulate
from tests.rolls import rolls


def regions(seed: int) -> BaseGeometry:
    """A room with a pad left out, a round pit, and now and then a second room or a sliver."""
    dice = np.random.default_rng(seed)
    corners = dice.uniform(1, 9, (int(dice.integers(3, 9)), 2))
    room = MultiPoint(corners).convex_hull.buffer(0.2, join_style="mitre")
    x, y = room.representative_point().coords[0]
    holes = [box(x - 0.4, y - 0.3, x + 0.4, y + 0.3), Point(*corners[0]).buffer(0.5)]
    more = [box(11, 2, 13, 2.02), box(12, 6, 14, 9)][: int(dice.integers(0, 3))]
    return shapely.union_all([room.difference(shapely.union_all(holes)), *more])


def asked_one_by_one(surface: Surface, region: BaseGeometry) -> tuple[set[int], set[int]]:
    """Triangles wholly inside and those that the region's edge meets."""
    shapes = shapely.polygons(surface.points[surface.triangles])
    cut = set(np.flatnonzero(shapely.intersects(region.boundary, shapes)).tolist())
    within = set(np.flatnonzero(shapely.contains(region, shapes)).tolist())
    return within - cut, cut


@settings(max_examples=rolls(20), deadline=None)
@given(
    st.integers(0, 10**6), st.sampled_from([12, 60, 500]), st.sampled_from([0.0, 0.5]),
    st.booleans(),
)  # fmt: skip
def test_triangles_are_sorted_as_one_by_one(
    seed: int, count: int, grid: float, gathered: bool
) -> None:
    """On a grid too, where shots and whole sides stand on the region's edge; and close to it."""
    dice = np.random.default_rng(seed)
    x, y = dice.uniform(-1, 16, count), dice.uniform(-1, 11, count)
    region = regions(seed)
    if gathered:
        along = region.boundary.interpolate(dice.uniform(0, 1, count), normalized=True)
        near = shapely.get_coordinates(along) + dice.normal(0, 0.05, (count, 2))
        x, y = np.concatenate((near, np.column_stack((x[:9], y[:9])))).T
    if grid:
        x, y = np.unique(np.round(np.column_stack((x, y)) / grid) * grid, axis=0).T
        region = shapely.set_precision(region, grid)
    surface = triangulate(x, y, np.zeros(len(x)))
    found = sort_triangles(surface, region)
    whole, cut = asked_one_by_one(surface, region)
    assert set(found.whole.tolist()) == whole
    assert set(found.cut.tolist()) == cut
    np.testing.assert_array_equal(found.points, shapely.intersects_xy(region, x, y))


@pytest.mark.parametrize("turn", [0.0, 0.3, 45.0, 90.0])
def test_a_comb_of_narrow_gaps_is_seen_through(turn: float) -> None:
    """Gaps of 2 cm in a floor of 10 m, narrower than any cell, whichever way they run."""
    gaps = [box(k, 1, k + 0.02, 9) for k in (2.31, 5.0, 7.77)]
    region = shapely.union_all([box(0, 0, 10, 10)]).difference(shapely.union_all(gaps))
    region = shapely.affinity.rotate(region, turn, origin=(5, 5))
    x, y = (v.ravel() for v in np.meshgrid(np.linspace(-3, 13, 30), np.linspace(-3, 13, 30)))
    surface = triangulate(x, y, np.zeros(len(x)))
    found = sort_triangles(surface, region)
    whole, cut = asked_one_by_one(surface, region)
    assert set(found.whole.tolist()) == whole
    assert set(found.cut.tolist()) == cut


@pytest.mark.parametrize("flip", [1, -1])
def test_shots_in_a_tooth_one_cell_wide_lie_inside(flip: int) -> None:
    """30 x 30 cells of 1/3 m on 10 m: of a tooth from 2.3 m to 2.9 m one cell has no edge in it."""
    region = box(0, 0, 10, 1).union(box(2.3, 1, 2.9, 10))
    region = shapely.affinity.scale(region, flip, flip, origin=(5, 5))
    dice = np.random.default_rng(1)
    spots = np.concatenate(
        (dice.uniform(0, 10, (880, 2)), dice.uniform((2.35, 2), (2.65, 9), (40, 2)))
    )
    spots = 5 + flip * (spots - 5)
    surface = triangulate(*spots.T, np.zeros(len(spots)))
    found = sort_triangles(surface, region)
    whole, cut = asked_one_by_one(surface, region)
    assert set(found.whole.tolist()) == whole
    assert set(found.cut.tolist()) == cut
    assert found.points[880:].all()
