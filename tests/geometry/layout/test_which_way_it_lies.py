"""The angle a house lies at on the plan: that of most of its outline's length."""

from math import radians

import pytest
import shapely
from shapely import affinity

from geometry.layout.tubing.field import fields, turn_of

# 9 x 7 m with one corner cut at 45 degrees, 1.4 m long.
HOUSE = shapely.Polygon([(0, 0), (9, 0), (9, 6), (8, 7), (0, 7)])


@pytest.mark.parametrize("degrees", [0, 20, 55, 89, 90, 110, 180, -35])
def test_a_turned_house_lies_at_its_turn_within_a_quarter(degrees: float) -> None:
    turned = affinity.rotate(HOUSE, degrees, origin=(0, 0))
    assert turn_of(turned) == pytest.approx(radians(degrees % 90), abs=2e-6)


def test_the_longer_part_of_an_outline_says_it() -> None:
    kite = shapely.Polygon([(0, 0), (10, 10), (10, 11), (0, 11)])  # 14.1 m askew, 22 m level
    assert turn_of(kite) == 0
    assert turn_of(shapely.Polygon([(0, 0), (10, 10), (8, 12), (-2, 2)])) == pytest.approx(
        radians(45), abs=2e-6
    )


def test_parts_of_a_slab_by_size_an_edge_inside_it_and_none_too_small() -> None:
    slab = shapely.union_all([shapely.box(0, 0, 4, 3), shapely.box(10, 0, 18, 5)])
    assert [p.bounds for p in fields(slab, 0.5, 1.0)] == [
        (10.5, 0.5, 17.5, 4.5),
        (0.5, 0.5, 3.5, 2.5),
    ]
    assert [p.area for p in fields(slab, 0.5, 6.1)] == pytest.approx([28.0])
    assert fields(slab, 1.5, 1.0)[0].area == pytest.approx(10.0)
