"""Storms: no water is lost, whatever is done with them."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.formulas.scs_tables import TABLES
from geometry.formulas.storms import DAY, HOUR, Storm, block_storm, scs_storm, steady_storm

BLOCKS = st.lists(st.tuples(st.floats(1.0, 7200.0), st.floats(0.0, 0.05)), min_size=1, max_size=20)


@given(BLOCKS, st.floats(1.0, 5000.0))
def test_steps_keep_the_water(blocks: list[tuple[float, float]], step: float) -> None:
    storm = block_storm(blocks)
    assert storm.depth_m == pytest.approx(sum(depth for _, depth in blocks))
    even = storm.in_steps(step)
    assert even.depth_m == pytest.approx(storm.depth_m)
    assert even.duration_s == storm.duration_s
    fell = float(np.sum(even.intensities() * np.diff(even.times_s)))
    assert fell == pytest.approx(storm.depth_m, abs=1e-12)
    at = np.array(even.times_s)
    assert even.fallen(at) == pytest.approx(storm.fallen(at))


@given(BLOCKS, st.floats(1.0, 7200.0))
def test_no_window_holds_more_than_the_wettest(
    blocks: list[tuple[float, float]], window: float
) -> None:
    storm = block_storm(blocks)
    starts = np.linspace(-window, storm.duration_s, 400)
    most = storm.most_in(window)
    assert np.max(storm.fallen(starts + window) - storm.fallen(starts)) <= most + 1e-12
    assert most <= storm.depth_m + 1e-12


@pytest.mark.parametrize("kind", list(TABLES))
def test_a_day_s_storm(kind: str) -> None:
    storm = scs_storm(kind, 0.1)  # type: ignore[arg-type]
    assert (storm.duration_s, storm.depth_m) == (DAY, pytest.approx(0.1))
    intensities = storm.intensities()
    hardest = storm.times_s[int(np.argmax(intensities))] / HOUR
    assert abs(hardest - TABLES[kind].peak_h) <= 0.5  # type: ignore[index]
    assert np.all(intensities > 0)


@pytest.mark.parametrize("kind", list(TABLES))
def test_shorter_storms_are_the_middle_of_the_day(kind: str) -> None:
    day = scs_storm(kind, 1.0)  # type: ignore[arg-type]
    most = [
        scs_storm(kind, 1.0, hours * HOUR).most_in(600.0)  # type: ignore[arg-type]
        for hours in (24, 12, 6, 3, 1)
    ]
    assert all(less < more for less, more in pairwise(most)), "shorter with the same depth: harder"
    six = scs_storm(kind, 1.0, 6 * HOUR)  # type: ignore[arg-type]
    peak = TABLES[kind].peak_h * HOUR  # type: ignore[index]
    ends = day.fallen(np.array([peak - 3 * HOUR, peak + 3 * HOUR, peak]))
    middle = (ends[2] - ends[0]) / (ends[1] - ends[0])
    assert six.fallen(np.array([3 * HOUR]))[0] == pytest.approx(middle, abs=2e-3)


def test_steady_rain() -> None:
    storm = steady_storm(0.036, 3600.0)
    assert storm.intensities() == pytest.approx([1e-5])
    assert storm.most_in(600.0) == pytest.approx(0.006)
    assert storm.fallen(np.array([-5.0, 1800.0, 9000.0])) == pytest.approx([0.0, 0.018, 0.036])


@pytest.mark.parametrize(
    ("times", "depths"),
    [((0.0,), (0.0,)), ((0.0, 1.0), (0.0,)), ((1.0, 2.0), (0.0, 1.0)), ((0.0, 1.0), (0.1, 1.0)),
     ((0.0, 1.0, 1.0), (0.0, 1.0, 2.0)), ((0.0, 1.0, 2.0), (0.0, 1.0, 0.5)),
     ((0.0, float("inf")), (0.0, 1.0))],
)  # fmt: skip
def test_what_is_no_storm_is_refused(times: tuple[float, ...], depths: tuple[float, ...]) -> None:
    with pytest.raises(ValueError, match=r"storm|must"):
        Storm(times, depths)


def test_a_part_that_passes_the_day_is_refused() -> None:
    with pytest.raises(ValueError, match="within its day"):
        scs_storm("IA", 0.1, 20 * HOUR)
