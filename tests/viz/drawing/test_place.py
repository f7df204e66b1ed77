"""Labels in a column: apart, in order, and moved as little as can be."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import isotonic_regression

from tests.rolls import rolls
from viz.drawing.place import Item, NoRoomError, spread

SIZES = st.lists(
    st.tuples(st.floats(0, 200), st.floats(2.5, 15), st.floats(0.1, 1e4)), min_size=1, max_size=14
)


@settings(max_examples=rolls(50), deadline=None)
@given(SIZES)
def test_no_two_labels_overlap_and_all_stay_in_the_column(sizes: list[tuple[float, ...]]) -> None:
    items = [Item(*size) for size in sorted(sizes)]
    middles = spread(items, 0.0, 300.0, 2.0)
    edges = [(m - i.height / 2, m + i.height / 2) for m, i in zip(middles, items, strict=True)]
    assert edges[0][0] >= -1e-6
    assert edges[-1][1] <= 300 + 1e-6
    assert all(above[0] - below[1] >= 2.0 - 1e-6 for below, above in pairwise(edges))


@settings(max_examples=rolls(50), deadline=None)
@given(SIZES)
def test_movement_is_the_least_by_an_independent_isotonic_regression(
    sizes: list[tuple[float, ...]],
) -> None:
    items = [Item(*size) for size in sorted(sizes)]
    heights = np.array([i.height for i in items])
    stacked = np.concatenate([[0.0], np.cumsum((heights[1:] + heights[:-1]) / 2 + 2.0)])
    wanted = np.array([i.wanted for i in items]) - stacked
    best = isotonic_regression(wanted, weights=np.array([i.weight for i in items])).x
    assert spread(items, -1e4, 1e4, 2.0) == pytest.approx(best + stacked, abs=1e-6)


def test_labels_with_room_do_not_move() -> None:
    assert spread([Item(10, 4), Item(30, 4)], 0, 40, 2) == pytest.approx((10, 30))


def test_too_many_labels_say_so() -> None:
    with pytest.raises(NoRoomError, match="larger paper"):
        spread([Item(10, 8), Item(10, 8)], 0, 15, 2)
