"""Bodies of prisms: layers split and opened, thin ones dropped, bores by closed forms."""

from dataclasses import replace
from itertools import pairwise
from math import pi, sqrt

import pytest
import shapely

from geometry.label import Label
from geometry.layout.bodies import Body, Bore, Prism, bored, layered, merged

LABEL = Label("slab", "Slab", "slab", "concrete", "", 0)
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


def test_layers_share_a_sloping_bore_that_passes_from_one_to_the_next():
    """Half of it lies under the level its axis crosses half way, and every layer has its part."""
    bore = Bore((-1, 2, 0.7), (5, 2, 1.3), 0.1)
    whole = pi * 0.01 * 4 * sqrt(1.01)
    assert bored(Prism(LARGE, 0.0, 1.0), bore) == pytest.approx(whole / 2, rel=1e-3)
    levels = (0.0, 0.85, 0.97, 1.03, 9.0)
    parts = [bored(Prism(LARGE, a, b), bore) for a, b in pairwise(levels)]
    assert sum(parts) == pytest.approx(whole, rel=1e-3)
    assert parts[0] + parts[1] == pytest.approx(bored(Prism(LARGE, 0.0, 0.97), bore))
    assert parts[0] + parts[1] + parts[2] / 2 == pytest.approx(whole / 2, rel=1e-3)


def test_a_body_knows_which_bores_pass_through_it_by_plan_and_by_level():
    body = Body(LABEL, (Prism(LARGE, 0.0, 1.0), Prism(SMALL, 2.0, 3.0)))
    ends = [((-1, 2), (5, 2)), ((-1, 9), (5, 9))]
    bores = [Bore((*a, z), (*b, z), 0.1) for a, b in ends for z in (-0.2, 0.5, 1.05, 1.5, 2.5, 3.2)]
    assert [b.start[1:] for b in body.pierced(bores).bores] == [(2, 0.5), (2, 1.05), (2, 2.5)]
    assert body.pierced(bores[3:4]) is body
    assert (body.bottom, body.top) == (0.0, 3.0)
    # Less what stands in it and two bores, 4 m long through the lower and 2 m through the upper.
    stood = replace(body.pierced([bores[1], bores[4]]), taken=0.5)
    assert stood.volume == pytest.approx(16 + 4 - 0.5 - pi * 0.01 * (4 + 2), rel=1e-4)
