"""Highs and lows along a drain's route: metres, one in a hundred, worked by hand."""

from math import hypot

import pytest

from geometry.layout.falls import Falls, open_falls, round_falls


def turns(falls: Falls) -> dict[float, float]:
    return dict(zip(falls.stations, falls.rises, strict=True))


def test_a_loop_with_one_outlet_is_high_half_way_round_or_where_it_is_asked() -> None:
    half = round_falls([10], 40, 0.01)
    assert turns(half) == pytest.approx({10: 0, 30: 0.2})
    assert [half.rise(s) for s in (0, 10, 25, 35, 50, -10)] == pytest.approx(
        [0.1, 0, 0.15, 0.15, 0, 0.2]
    )
    near = round_falls([10], 40, 0.01, high=20)
    assert turns(near) == pytest.approx({10: 0, 20: 0.3})
    assert (near.top, near.branches(10)) == ((20, pytest.approx(0.3)), (10, 30))
    assert near.slant == pytest.approx(hypot(10, 0.3) + hypot(30, 0.3))
    assert near.turns(0, 40) == (10, 20)
    # A stick that passes the loop's end counts on.
    assert near.turns(15, 55) == (20, 50)
    assert near.turns(10, 20) == ()


def test_a_loop_with_several_outlets_is_high_half_way_between_each_two() -> None:
    falls = round_falls([30, 5], 40, 0.01)
    assert turns(falls) == pytest.approx({5: 0, 17.5: 0.125, 30: 0, 37.5: 0.075})
    assert falls.top == (17.5, pytest.approx(0.125))
    assert (falls.branches(30), falls.branches(5)) == ((7.5, 12.5), (12.5, 7.5))
    # Half way from the last round to the first may lie past the loop's end.
    late = round_falls([35, 38], 40, 0.01)
    assert turns(late) == pytest.approx({16.5: 0.185, 35: 0, 36.5: 0.015, 38: 0})


@pytest.mark.parametrize(
    ("lows", "expected"),
    [
        ([0], {0: 0, 20: 0.2}),
        ([20], {0: 0.2, 20: 0}),
        ([8], {0: 0.08, 8: 0, 20: 0.12}),
        ([16, 4], {0: 0.04, 4: 0, 10: 0.06, 16: 0, 20: 0.04}),
    ],
)
def test_an_open_run_rises_from_each_outlet_to_its_ends_and_between(
    lows: list[float], expected: dict[float, float]
) -> None:
    falls = open_falls(lows, 20, 0.01)
    assert turns(falls) == pytest.approx(expected)
    assert falls.rise(2) == pytest.approx(0.01 * min(abs(2 - low) for low in lows))


def test_branches_of_an_open_run_end_at_its_ends() -> None:
    both = open_falls([4, 16], 20, 0.01)
    assert (both.branches(4), both.branches(16)) == ((6, 4), (4, 6))
    assert open_falls([0], 20, 0.01).branches(0) == (20, 0)
    assert open_falls([20], 20, 0.01).branches(20) == (0, 20)
    assert both.turns(1, 12) == (4, 10)
    assert both.turns(0, 21) == (4, 10, 16, 20)
