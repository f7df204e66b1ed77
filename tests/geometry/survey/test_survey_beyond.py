"""Ground carried on beyond the shots, against the nearest place of their rim, point by point."""

import numpy as np
import pytest
import shapely
from shapely import LinearRing, Polygon, box

from geometry.survey.ground import on_floor
from geometry.survey.surface import triangulate

STEP_M = 0.05


@pytest.mark.parametrize(
    "corners",
    [
        # A sharp corner, a blunt one, a square one; and a rim of five.
        [(0.0, 0.0, 0.3), (4.0, 0.0, 0.9), (0.2, 0.8, -0.2)],
        [(0.0, 0.0, 0.0), (1.0, 0.0, 1.0), (1.0, 1.0, 0.5), (0.0, 1.0, 2.0)],
        # A side of two inches.
        [(0.0, 0.0, 0.3), (0.05, -0.02, 0.5), (4.0, 0.0, 0.9), (0.2, 0.8, -0.2)],
        [(1.0, 0.0, 0.1), (2.0, -1.0, 0.4), (3.0, 0.5, 0.2), (2.5, 1.5, 0.8), (0.5, 1.0, 0.5)],
    ],
)
def test_beyond_the_rim_the_level_is_that_of_its_nearest_place(
    corners: list[tuple[float, float, float]],
) -> None:
    x, y, level = np.array(corners).T
    region = box(-1.5, -2.0, 5.0, 2.5).difference(Polygon([(3, -1.5), (4, -1.5), (3.5, 2)]))
    beyond = on_floor(triangulate(x, y, level), region).beyond
    hull = Polygon(zip(x, y, strict=True))
    west, south = np.meshgrid(np.arange(-1.5, 5.0, STEP_M), np.arange(-2.0, 2.5, STEP_M))
    places = shapely.points(west.ravel() + STEP_M / 2, south.ravel() + STEP_M / 2)
    places = places[shapely.contains(region, places) & ~shapely.contains(hull, places)]
    ring = LinearRing(zip(x, y, strict=True))
    along = shapely.line_locate_point(ring, places)
    ends = np.append(0.0, np.cumsum(np.hypot(*np.diff(ring.coords, axis=0).T)))
    nearest = np.interp(along, ends, np.append(level, level[0]))
    area = region.difference(hull).area
    assert beyond.area_m2 == pytest.approx(area, rel=1e-9)
    for plane in (-0.3, 0.25, 0.6):
        over = area * float(np.maximum(nearest - plane, 0).mean())
        assert beyond.above(plane) == pytest.approx(over, rel=5e-3)
        under = area * float(np.maximum(plane - nearest, 0).mean())
        assert beyond.below(plane) == pytest.approx(under, rel=5e-3, abs=1e-9)
        part = area * float((nearest > plane).mean())
        assert beyond.area_above(plane) == pytest.approx(part, rel=1e-2)


def test_the_highest_place_beyond_the_rim_lies_where_it_is_said() -> None:
    """The rim's highest corner carries its level on into the corner of the floor beyond it."""
    surface = triangulate(
        np.array([0.0, 1.0, 1.0, 0.0]), np.array([0.0, 0.0, 1.0, 1.0]), np.array([0, 0, 3.0, 0])
    )
    whole = on_floor(surface, box(0, 0, 2, 2)).whole
    assert whole.highest.max() == pytest.approx(3.0)
    tops = [whole.corner(n) for n in np.flatnonzero(whole.level.ravel() > 3 - 1e-9)]
    assert {(round(x, 9), round(y, 9)) for x, y in tops} >= {(1, 1), (2, 1), (2, 2), (1, 2)}
    assert all(x > 1 - 1e-9 and y > 1 - 1e-9 for x, y in tops)


def test_a_floor_within_the_shots_has_nothing_beyond() -> None:
    surface = triangulate(*np.array([(0.0, 0, 1), (3, 0, 1), (0, 3, 1)]).T)
    found = on_floor(surface, box(0.1, 0.1, 1, 1))
    assert len(found.beyond.area) == 0
    assert len(on_floor(surface, box(0, 0, 1.5, 1.5)).beyond.area) == 0


@pytest.mark.parametrize("floor", [box(-10, 0, 10, 1), box(0, -10, 1, 10)])
def test_a_long_narrow_floor_is_covered_to_its_ends(floor: Polygon) -> None:
    """Shots of one level in its middle, which lies at the plan's origin."""
    surface = triangulate(*np.array([(0.1, 0.1, 2), (0.9, 0.1, 2), (0.1, 0.9, 2)]).T)
    beyond = on_floor(surface, floor).beyond
    assert beyond.area_m2 == pytest.approx(20 - 0.32)
    assert beyond.above(0.0) == pytest.approx(2 * (20 - 0.32))
