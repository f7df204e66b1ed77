"""Ways of tube with their corners rounded off, each worked by hand. Metres."""

from itertools import pairwise
from math import hypot, pi, sqrt, tan

import pytest
import shapely
from shapely import Polygon, box

from geometry.layout.tubing.bends import Bent, Point, bent

FREE = box(-10, -10, 10, 10)


def way(*corners: Point, least: float = 0.1, edge: float = 0.05, room: Polygon = FREE) -> Bent:
    shapely.prepare(room)
    return bent(list(corners), 0.3, least, edge, room)


def on_arc(found: Bent, centre: Point, radius: float) -> list[Point]:
    """The points on an arc, each an eighth of a right angle after the one before at most."""
    points = [p for p in found.points if hypot(p[0] - centre[0], p[1] - centre[1]) < radius + 1e-9]
    for one, other in pairwise(points):
        assert hypot(one[0] - centre[0], one[1] - centre[1]) == pytest.approx(radius)
        assert hypot(one[0] - other[0], one[1] - other[1]) <= radius * pi / 16
    return points


@pytest.mark.parametrize("way_up", [1, -1])
@pytest.mark.parametrize(
    ("least", "radius", "tight"),
    [
        (0.10, 0.15, 0),  # Half the spacing of 0.3,
        (0.20, 0.20, 0),  # or what the tube bends to,
        (0.30, 0.30, 0),
        (0.35, 0.30, 1),  # but no more than the spacing: tighter than it bends.
    ],
)
def test_a_square_corner(least: float, radius: float, tight: int, way_up: int) -> None:
    found = way((0, 0), (2, 0), (2, 1.5 * way_up), least=least)
    assert found.points[0] == (0, 0)
    assert found.points[-1] == (2, 1.5 * way_up)
    assert found.length_m == pytest.approx(3.5 - 2 * radius + radius * pi / 2)
    assert found.tight == tight
    arc = on_arc(found, (2 - radius, radius * way_up), radius)
    assert arc[0] == pytest.approx((2 - radius, 0))
    assert arc[-1] == pytest.approx((2, radius * way_up))
    assert len(arc) == len(found.points) - 2


def test_a_turn_of_an_eighth_and_places_passed_straight_on() -> None:
    """The tangent's length is r tan(pi/8), the arc's r pi/4; (0.5, 0) is no corner."""
    found = way((0, 0), (0.5, 0), (1, 0), (2, 1), least=0.2)
    assert found.length_m == pytest.approx(1 + sqrt(2) - 2 * 0.2 * tan(pi / 8) + 0.2 * pi / 4)
    assert (0.5, 0) not in found.points
    assert found.points[1] == pytest.approx((1 - 0.2 * tan(pi / 8), 0))


@pytest.mark.parametrize(("least", "tight"), [(0.0999, 0), (0.10005, 0), (0.102, 2)])
def test_runs_side_by_side_turn_back_in_a_half_circle(least: float, tight: int) -> None:
    """0.2 m apart: two bends of 0.1 m that meet; a tenth of a millimetre is no matter."""
    found = way((0, 0), (1, 0), (1, 0.2), (0, 0.2), least=least)
    assert found.length_m == pytest.approx(2 * 0.9 + pi * 0.1)
    assert found.tight == tight
    arc = on_arc(found, (0.9, 0.1), 0.1)
    assert arc[0] == pytest.approx((0.9, 0))
    assert arc[-1] == pytest.approx((0.9, 0.2))
    assert all(hypot(a[0] - b[0], a[1] - b[1]) > 1e-3 for a, b in pairwise(found.points))


def test_a_bend_may_take_half_of_the_shorter_leg_alone() -> None:
    """Legs of 1, 0.12 and 1 m: the bends between have 6 cm of leg each."""
    found = way((0, 0), (1, 0), (1, 0.12), (2, 0.12))
    assert found.length_m == pytest.approx(2 + 0.12 - 4 * 0.06 + 2 * 0.06 * pi / 2)
    assert found.tight == 2


def test_a_bend_that_would_cut_the_rooms_corner_keeps_to_the_edge() -> None:
    """Round a corner that stands into the room the radius is the edge's, 5 cm."""
    room = box(-1, -1, 3, 3).difference(box(-1, 0.0, 1, 3)).buffer(1e-5, join_style="mitre")
    assert isinstance(room, Polygon)
    found = way((0, 0), (1, 0), (1, 2), room=room, least=0.2)
    assert found.length_m == pytest.approx(3 - 2 * 0.05 + 0.05 * pi / 2)
    assert found.tight == 1
    # On the outside of a corner there is room for the whole bend, and where the edge is wider.
    free = way((0, -0.5), (2, -0.5), (2, 2), room=room, least=0.2)
    assert free.length_m == pytest.approx(4.5 - 2 * 0.2 + 0.2 * pi / 2)
    wide = way((0, 0), (1, 0), (1, 2), room=room, least=0.2, edge=0.25)
    assert wide.length_m == pytest.approx(3 - 2 * 0.2 + 0.2 * pi / 2)


def test_a_way_without_corners_is_straight() -> None:
    found = way((0, 0), (1, 1))
    assert found == Bent(((0, 0), (1, 1)), pytest.approx(sqrt(2)), 0)
