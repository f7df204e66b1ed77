"""The outlet to daylight: closed forms, and what holds of any ground and pipe."""

from dataclasses import replace
from math import ceil, inf, pi, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.materials.catalogue import PIPES
from geometry.parts.outlet import Daylight
from geometry.water.daylight import DaylightRun
from geometry.water.outlet_figures import run_figures
from tests.rolls import rolls

FOOT, INCH = 0.3048, 0.0254
PIPE = PIPES["sdr35-4"]
OUTSIDE, WALL = 4.215 * INCH, 0.120 * INCH


def asked(*ground: tuple[float, float], **more: object) -> Daylight:
    """Ground in feet; the open end level with the ground unless said otherwise."""
    points = tuple((x * FOOT, z * FOOT) for x, z in ground)
    return Daylight.model_validate(
        {"toward": (30.0, 0.0), "ground": points, "above_ground": 0.0, **more}
    )


def run(*ground: tuple[float, float], start: float = 0.0, **more: object) -> DaylightRun:
    return DaylightRun(start * FOOT, PIPE, asked(*ground, **more))


# Invented hillside: ground falls 7 ft in 100, pipe 1/4 in per ft.
@pytest.mark.parametrize("deep", [4.0, 1.0])
def test_a_hillside_of_seven_in_a_hundred(deep: float) -> None:
    found = run((0, deep), (200, deep - 14))
    assert found.end_at_m == pytest.approx(deep / (0.07 - 0.25 / 12) * FOOT)
    assert found.end_at_m == pytest.approx({4.0: 81.36, 1.0: 20.34}[deep] * FOOT, abs=0.01 * FOOT)
    assert found.lacking is None
    # Over the pipe's top the ground lies (deep - top) at the drain and loses 4.9167 ft in 100.
    top = (OUTSIDE - WALL) / FOOT
    thin = (deep - top - 1.0) / (0.07 - 0.25 / 12) * FOOT
    end = found.thin_end
    assert end is not None
    assert end.start == pytest.approx(max(0.0, thin))
    assert end.least == pytest.approx(-top * FOOT)
    assert found.thin_before == ()
    assert (found.least_cover is None) == (thin < 0)


def test_a_height_over_the_ground_takes_the_end_farther_out() -> None:
    found = run((0, 4), (200, -10), above_ground=4 * INCH)
    assert found.end_at_m == pytest.approx((4 + 4 / 12) / (0.07 - 0.25 / 12) * FOOT)


def test_length_sticks_and_trench() -> None:
    # Level ground 10 ft over the drain ends after 36 ft in a bank 30 ft high and 0.01 ft wide.
    found = run((0, 10), (36, 10), (36.01, -20), (50, -20), fall="1:4")
    end = 36 + 0.01 * 19 / 30  # the bank is 19 ft down where the pipe is 9 ft down
    assert found.end_at_m == pytest.approx(end * FOOT, rel=1e-5)
    assert found.length_m == pytest.approx(end * sqrt(17) / 4 * FOOT, rel=1e-5)
    assert found.sticks(10 * FOOT) == ceil(36 * sqrt(17) / 4 / 10) == 4
    assert found.sticks(3.0) == 4
    # Trench: 10 ft at the drain, 19 ft at the bank, and bedding and wall under the invert.
    under = (2 * INCH + WALL) / FOOT
    assert found.trench_m3 == pytest.approx((14.5 + under) * 36 * 1.5 * FOOT**3, rel=5e-4)
    assert found.deepest_trench_m == pytest.approx((19 + under) * FOOT, rel=1e-4)


def test_a_dip_before_the_end_is_a_stretch_of_its_own() -> None:
    top = (OUTSIDE - WALL) / FOOT
    ground = ((0, 4.0), (20, 1.0), (40, 4.0), (60, -4.0))
    found = run(*ground, fall="level", above_ground=0.1)
    (dip,) = found.thin_before
    assert dip.least == pytest.approx((1 - top) * FOOT)
    assert dip.least_at == pytest.approx(20 * FOOT)
    # Down 3 ft in 20, up 3 in 20: a foot over the pipe's top is passed at equal distances.
    assert (dip.start + dip.end) / 2 == pytest.approx(20 * FOOT)
    assert dip.length == pytest.approx(2 * top * 20 / 3 * FOOT)
    assert found.least_cover == pytest.approx((20 * FOOT, dip.least))
    assert found.capacity_m3s is None


def test_the_least_cover_may_lie_at_the_drain_itself() -> None:
    found = run((0, 1.2), (20, 4), (60, -4), fall="level")
    top = (OUTSIDE - WALL) / FOOT
    assert found.least_cover == pytest.approx((0.0, (1.2 - top) * FOOT))


def test_distances_to_set_out_end_at_the_open_end_and_not_just_before_it() -> None:
    found = run((0, 4), (200, -10))
    feet = [x / FOOT for x in found.stations(30 * FOOT)]
    assert feet == pytest.approx([0, 30, 60, 81.356], abs=1e-3)
    # 81 ft would all but meet it.
    assert [x / FOOT for x in found.stations(27 * FOOT)] == pytest.approx(
        [0, 27, 54, 81.356], abs=1e-3
    )
    assert list(run((0, -1), (100, -3)).stations(FOOT)) == [0.0]
    figures = run_figures(found)
    assert (figures.sticks_10_ft, figures.sticks_3_m) == (9, 9)  # 81.37 ft or 24.80 m


def test_capacity_is_manning_s() -> None:
    found = run((0, 4), (200, -10))
    bore = OUTSIDE - 2 * WALL
    full = pi * bore**2 / 4 * (bore / 4) ** (2 / 3) * sqrt(1 / 48) / 0.010
    assert found.capacity_m3s == pytest.approx(full)


def test_flat_ground_never_lets_it_out() -> None:
    found = run((0, 4), (100, 4))
    lacking = found.lacking
    assert lacking is not None
    assert lacking.at_last_m == pytest.approx((4 + 100 / 48) * FOOT)
    assert lacking.steepest is None
    assert lacking.longer_m is None


def test_what_is_lacking_on_a_gentle_slope_in_closed_form() -> None:
    # Ground falls 3 in 100 from 4 ft over the drain, known for 150 ft: -0.5 ft there, the pipe
    # at -3.125 ft; it gains 0.9167 ft in 100.
    found = run((0, 4), (150, -0.5))
    lacking = found.lacking
    assert lacking is not None
    assert lacking.at_last_m == pytest.approx(2.625 * FOOT)
    assert lacking.raise_m == pytest.approx(2.625 * FOOT)
    assert lacking.steepest == pytest.approx(0.5 / 150)
    assert lacking.longer_m == pytest.approx(2.625 / (0.03 - 1 / 48) * FOOT)


def test_backwater_and_a_hollow_at_the_end() -> None:
    found = run((0, 4), (100, -3), (140, 1), high_water=-1.0 * FOOT)
    end = found.end_invert_m
    assert found.rises_beyond_m == pytest.approx(1 * FOOT - end)
    assert found.water_over_end_m == pytest.approx(-1 * FOOT - end)
    assert found.water_over_start_m == pytest.approx(-1 * FOOT)


def test_a_drain_that_lies_over_the_ground_needs_no_pipe() -> None:
    found = run((0, -1), (100, -3))
    assert found.at_once
    assert (found.length_m, found.sticks(3.0), found.trench_m3, found.thin) == (0, 0, 0, ())


LEVELS = st.floats(-20, 20, allow_nan=False)
GROUNDS = st.lists(st.tuples(st.floats(1, 60), LEVELS), min_size=1, max_size=6)


@st.composite
def runs(draw: st.DrawFn) -> DaylightRun:
    far, points = 0.0, [(0.0, draw(LEVELS))]
    for step, level in draw(GROUNDS):
        far += step
        points.append((far, level))
    fall = draw(st.sampled_from(["level", "1/16 in per ft", "1:96", "2 %", "10 %"]))
    above = draw(st.sampled_from([0.0, 4 * INCH]))
    raw = {"toward": (1.0, 0.0), "ground": points, "fall": fall, "above_ground": above}
    return DaylightRun(draw(LEVELS), PIPE, Daylight.model_validate(raw))


def free(found: DaylightRun, distance: float) -> float:
    """Height of the invert over the ground and the wanted height of the open end."""
    return found.invert(distance) - found.ground.at(distance) - found.asked.above_ground


@settings(max_examples=rolls(60), deadline=None)
@given(runs())
def test_it_comes_out_where_it_first_stands_free_or_what_lacks_would_let_it_out(
    found: DaylightRun,
) -> None:
    end = found.end_at_m
    if end is not None:
        assert free(found, end) == pytest.approx(0.0, abs=1e-6) or (end == 0 < free(found, 0))
        tried = [end * k / 20 for k in range(20)]
        assert end == 0 or all(free(found, x) < 1e-6 for x in tried)
        assert found.end_invert_m == pytest.approx(found.start_m - found.asked.fall * end)
        return
    lacking = found.lacking
    assert lacking is not None
    last = found.ground.end
    assert free(found, last) == pytest.approx(-lacking.at_last_m)
    raised = replace(found, start_m=found.start_m + lacking.raise_m + 1e-6)
    assert (raised.end_at_m or inf) <= lacking.raised_end_m + 1e-6 or raised.at_once
    lower = replace(found, start_m=found.start_m + lacking.raise_m - 1e-3)
    # Beyond the drain itself a raise smaller than that comes out nowhere.
    assert all(free(lower, x) < 0 for x, _ in found.asked.ground[1:])
    if lacking.steepest is not None:
        less = found.asked.model_copy(update={"fall": lacking.steepest - 1e-9})
        assert replace(found, asked=less).end_at_m is not None
    if lacking.longer_m is not None and lacking.longer_m < 1e5:
        far = last + lacking.longer_m + 1e-3
        level = found.asked.ground[-1][1] - lacking.ground_fall * (far - last)
        longer = found.asked.model_copy(update={"ground": (*found.asked.ground, (far, level))})
        assert replace(found, asked=longer).end_at_m == pytest.approx(far, abs=2e-3)
