"""A line of straight pieces: heights, stretches under a value, areas, by hand and by summing."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.formulas.broken_line import BrokenLine

# Up to 4 at 2, down to -4 at 6, level to 8, up to 2 at 10.
LINE = BrokenLine(((0.0, 0.0), (2.0, 4.0), (6.0, -4.0), (8.0, -4.0), (10.0, 2.0)))


def test_heights_between_corners_and_ends_that_go_on_level() -> None:
    assert [LINE.at(x) for x in (0, 1, 2, 4, 7, 9, 10)] == pytest.approx([0, 2, 4, 0, -4, -1, 2])
    assert LINE.least() == (6.0, -4.0)
    assert (LINE.at(-1), LINE.at(11)) == (0.0, 2.0)
    assert LINE.negative().at(3) == pytest.approx(-2)
    # Over a line that starts at 1 and falls 1 in 2: at 4 that lies at -1.
    assert LINE.less_line(1.0, 0.5).at(4) == pytest.approx(1.0)


def test_stretches_below_a_value_begin_and_end_where_the_line_crosses_it() -> None:
    (low,) = LINE.below(0.0)
    assert (low.start, low.end) == pytest.approx((4.0, 8 + 4 / 3))
    assert (low.least, low.least_at) == pytest.approx((-4.0, 6.0))
    first, second = LINE.below(2.0)
    assert (first.start, first.end, second.start, second.end) == pytest.approx((0, 1, 3, 10))
    assert LINE.below(-4.0) == ()


def test_the_first_place_as_high_as_a_value() -> None:
    assert LINE.first_at_least(3.0) == pytest.approx(1.5)
    assert LINE.first_at_least(-1.0) == 0.0
    assert LINE.first_at_least(4.1) is None
    assert LINE.between(5.0, 10.0).first_at_least(1.0) == pytest.approx(8 + 5 / 3)


def test_the_area_above_zero_is_of_triangles_and_trapezoids() -> None:
    # 4 wide and 4 high; 2/3 wide and 2 high at the end.
    assert LINE.area_above() == pytest.approx(4 * 4 / 2 + 2 / 3 * 2 / 2)
    assert LINE.between(1.0, 3.0).area_above() == pytest.approx(2 * 3)
    assert LINE.negative().area_above() == pytest.approx(2 * 4 / 2 + 2 * 4 + 4 / 3 * 4 / 2)


@given(st.lists(st.floats(-5, 5), min_size=2, max_size=8))
def test_areas_above_and_below_make_the_whole(heights: list[float]) -> None:
    line = BrokenLine(tuple((float(n), h) for n, h in enumerate(heights)))
    whole = float(np.trapezoid(heights))
    assert line.area_above() - line.negative().area_above() == pytest.approx(whole, abs=1e-9)
