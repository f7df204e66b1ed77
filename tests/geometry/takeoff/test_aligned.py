"""A region turned level: along its longest side, right way up, however it is drawn."""

import numpy as np
import pytest
import shapely
from shapely import affinity

from geometry.takeoff.aligned import Aligned

CORNERS = [(1.0, 2.0), (7.0, 2.0), (7.0, 6.0), (1.0, 6.0)]


@pytest.mark.parametrize("start", range(4))
@pytest.mark.parametrize("way", [1, -1])
def test_a_level_house_stays_as_it_lies_however_it_is_drawn(start: int, way: int) -> None:
    drawn = shapely.Polygon([*CORNERS[start:], *CORNERS[:start]][::way])
    assert Aligned(drawn).turned.bounds == (1.0, 2.0, 7.0, 6.0)
    # A quarter more: x runs up the plan, y to its left.
    assert Aligned(drawn, across=True).turned.bounds == (2.0, -7.0, 6.0, -1.0)


@pytest.mark.parametrize("start", range(4))
@pytest.mark.parametrize("way", [1, -1])
def test_an_upright_house_is_turned_with_its_foot_to_the_left(start: int, way: int) -> None:
    upright = [(-y, x) for x, y in CORNERS]
    drawn = shapely.Polygon([*upright[start:], *upright[:start]][::way])
    assert Aligned(drawn).turned.bounds == pytest.approx((1.0, 2.0, 7.0, 6.0))


@pytest.mark.parametrize("degrees", [20.0, -35.0, 80.0])
def test_a_house_askew_lies_level_and_comes_back(degrees: float) -> None:
    plain = shapely.Polygon(CORNERS)
    askew = affinity.rotate(plain, degrees, origin=(0, 0))
    for across, sides in ((False, (6.0, 4.0)), (True, (4.0, 6.0))):
        frame = Aligned(askew, across)
        west, south, east, north = frame.turned.bounds
        assert (east - west, north - south) == pytest.approx(sides)
        assert frame.turned.area == pytest.approx(24.0)
        (back,) = frame.back(np.array([frame.turned]))
        assert back.symmetric_difference(askew).area < 1e-9
    assert Aligned(askew).turned.symmetric_difference(plain).area < 1e-9


def test_the_largest_part_says_which_way_is_level() -> None:
    strip = affinity.rotate(shapely.box(20, 0, 22, 0.1), 30)
    both = shapely.MultiPolygon([strip, shapely.Polygon(CORNERS)])
    west, south, east, north = Aligned(both).turned.geoms[1].bounds
    assert (east - west, north - south) == pytest.approx((6.0, 4.0))
