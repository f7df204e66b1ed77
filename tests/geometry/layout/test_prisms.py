"""Bodies of prisms: layers split and opened, thin ones dropped, bores by closed forms."""

from math import pi, sqrt

import pytest
import shapely

from geometry.layout.bodies import Bore, Prism, bored, layered, merged

SMALL, LARGE = shapely.box(1, 1, 3, 3), shapely.box(0, 0, 4, 4)


def told(prisms):
    return [(p.region.area, p.bottom, p.top) for p in prisms]


def test_prisms_without_height_or_area_are_dropped_and_equal_ones_joined():
    rows = (
        Prism(SMALL, 0.0, 0.0), Prism(shapely.Polygon(), 0.0, 1.0), Prism(LARGE, 0.0, 1.0),
        Prism(LARGE, 1.0, 1.5), Prism(SMALL, 1.5, 2.0), Prism(SMALL, 2.1, 3.0),
    )  # fmt: skip
    assert told(merged(rows)) == [(16, 0.0, 1.5), (4, 1.5, 2.0), (4, 2.1, 3.0)]


def test_a_layer_is_narrow_below_the_change_and_opened_where_something_stands_in_it():
    post = Prism(shapely.box(2, 2, 2.5, 2.5), 0.5, 9.0)
    found = told(layered(0.0, 2.0, SMALL, LARGE, 1.0, [post]))
    assert found == [(4, 0.0, 0.5), (3.75, 0.5, 1.0), (15.75, 1.0, 2.0)]
    assert told(layered(1.0, 2.0, SMALL, LARGE, 1.0, [])) == [(16, 1.0, 2.0)]
    assert told(layered(0.0, 1.0, SMALL, LARGE, 1.0, [])) == [(4, 0.0, 1.0)]


@pytest.mark.parametrize(
    ("level", "share"),
    [(0.5, 1.0), (1.0, 0.5), (0.0, 0.5), (1.05, 1 / 3 - sqrt(3) / (4 * pi)), (1.2, 0.0)],
)  # fmt: skip
def test_a_level_bore_takes_the_part_of_its_circle_that_lies_in_the_prism(level, share):
    """Of a circle whose middle lies half a radius out, a segment: r² (pi / 3 - root 3 / 4)."""
    bore = Bore((-1, 2, level), (5, 2, level), 0.1)
    assert bored(Prism(LARGE, 0.0, 1.0), bore) == pytest.approx(
        share * pi * 0.01 * 4, rel=2e-3, abs=1e-12
    )


def test_a_sloping_bore_is_longer_by_its_slope():
    bore = Bore((-1, 2, 0.3), (5, 2, 0.9), 0.1)
    assert bored(Prism(LARGE, 0.0, 1.0), bore) == pytest.approx(
        pi * 0.01 * 4 * sqrt(1.01), rel=1e-3
    )
