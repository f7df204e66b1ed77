"""The footing's bearing line, by hand on squared paper."""

import pytest

from geometry.formulas.bearing import (
    deepest_bottom,
    in_splay,
    least_distance,
    splay_depth,
    trench_intrusion,
)


@pytest.mark.parametrize(
    ("distance", "depth", "inside"),
    [
        (0.30, 0.31, True),
        (0.30, 0.30, False),
        (0.30, 0.29, False),
        (0.0, 0.01, True),
        (0.0, 0.0, False),
        (-0.2, 0.01, True),
        (-0.2, 0.0, False),
        (0.1, -0.3, False),
    ],
)
def test_points(distance: float, depth: float, inside: bool) -> None:
    assert in_splay(distance, depth) is inside


def test_one_to_one() -> None:
    assert splay_depth(0.4) == least_distance(0.4) == deepest_bottom(0.4) == 0.4
    assert splay_depth(-1.0) == least_distance(-1.0) == 0


def test_steeper_line_lets_a_trench_come_nearer() -> None:
    assert least_distance(0.4, fall=2.0) == 0.2
    assert not in_splay(0.25, 0.4, fall=2.0)
    assert in_splay(0.25, 0.4)


@pytest.mark.parametrize(("edge", "depth", "off"), [(0.1, 0.3, 0.2), (0.3, 0.3, 0), (0, -0.1, 0)])
def test_how_far_a_trench_must_move(edge: float, depth: float, off: float) -> None:
    assert trench_intrusion(edge, depth) == pytest.approx(off)
    assert not in_splay(edge + off + 1e-9, depth)


def test_nonsense_is_refused() -> None:
    with pytest.raises(ValueError, match="fall"):
        splay_depth(1.0, fall=0)
    with pytest.raises(ValueError, match="near_edge_m"):
        deepest_bottom(-0.1)
