"""The surface through shots: its sides and rim, the order of shots, and what spans none."""

import numpy as np
import pytest
from shapely import MultiPoint, Polygon

from geometry.survey import surface
from geometry.survey.shots import Floats, SurveyError
from geometry.survey.surface import neighbourly, triangulate


def flat(x: Floats, y: Floats) -> Floats:
    return 0 * x * y


def test_sides_come_once_and_the_rim_is_the_hull() -> None:
    """Triangles of n points with h on their hull: 2 n - 2 - h, their sides 3 n - 3 - h."""
    x, y = np.random.default_rng(5).uniform(0, 9, (2, 200))
    found = triangulate(x, y, flat(x, y))
    hull = MultiPoint(found.points).convex_hull
    assert isinstance(hull, Polygon)
    count = len(hull.exterior.coords) - 1
    sides = {frozenset(pair) for pair in zip(*(e.tolist() for e in found.edges), strict=True)}
    of_triangles = {
        frozenset((int(t[n]), int(t[n - 1]))) for t in found.triangles for n in range(3)
    }
    assert sides == of_triangles
    assert len(found.edges[0]) == len(sides) == 3 * 200 - 3 - count
    assert len(found.triangles) == 2 * 200 - 2 - count
    walk = Polygon(found.points[found.rim[:, 0]])
    assert walk.exterior.is_ccw
    assert walk.equals(hull)
    assert found.rim[:, 1].tolist() == np.roll(found.rim[:, 0], -1).tolist()


def test_shots_are_ordered_by_the_bits_of_both_places_in_turn() -> None:
    """Morton's curve: with sides of 65535 steps a step is a place of the curve's finest square."""
    x, y = np.random.default_rng(6).integers(0, 65536, (2, 300))
    # Some of them all within sixteen steps, which differ by the last bits alone.
    x[2:100], y[2:100] = x[2:100] % 16, y[2:100] % 16
    x[:2], y[:2] = (0, 65535), (0, 65535)
    bits = ["".join(v + u for u, v in zip(f"{a:016b}", f"{b:016b}", strict=True))
            for a, b in zip(x, y, strict=True)]  # fmt: skip
    wanted = sorted(range(300), key=lambda n: bits[n])
    assert neighbourly(x - 1000.0, y + 70000.0).tolist() == wanted


@pytest.mark.parametrize(("off_mm", "spans"), [(0.8, False), (1.2, True)])
@pytest.mark.parametrize("turn", [0.0, 0.7])
def test_shots_within_a_millimetre_of_a_line_span_nothing(
    off_mm: float, spans: bool, turn: float
) -> None:
    along, beside = np.arange(40) / 4, off_mm / 1000 * np.tile([1, -1, -1, 1], 10)
    x = 500 + along * np.cos(turn) - beside * np.sin(turn)
    y = -800 + along * np.sin(turn) + beside * np.cos(turn)
    if spans:
        assert len(triangulate(x, y, flat(x, y)).triangles) > 30
    else:
        with pytest.raises(SurveyError, match="all shots lie on one line"):
            triangulate(x, y, flat(x, y))


@pytest.mark.parametrize(("count", "word"), [(0, "no shot"), (1, "one shot"), (2, "two shots")])
def test_fewer_than_three_shots_are_named(count: int, word: str) -> None:
    with pytest.raises(SurveyError, match=f"^{word}; a surface needs three"):
        triangulate(*np.zeros((3, count)))


def test_three_shots_span_one_triangle() -> None:
    found = triangulate(np.array([0.0, 1.0, 0.0]), np.array([0.0, 0.0, 1.0]), np.arange(3.0))
    assert sorted(found.triangles[0].tolist()) == [0, 1, 2]
    assert len(found.triangles) == 1


def test_a_rim_of_more_shots_than_are_walked_round_is_refused(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(surface, "MOST_RIM", 12)
    turn = np.arange(13) * 2 * np.pi / 13
    x, y = np.append(20 * np.cos(turn), 0.0), np.append(20 * np.sin(turn), 0.0)
    with pytest.raises(SurveyError, match="more than 12 shots stand on their outer rim"):
        triangulate(x, y, flat(x, y))
    assert len(triangulate(x[1:], y[1:], flat(x[1:], y[1:])).rim) == 12
