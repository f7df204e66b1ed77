"""Part-full pipes: inverses, scaling and limits."""

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.formulas import pipe_flow

DIAMETERS = st.floats(0.05, 0.6)
SLOPES = st.floats(1e-4, 0.1)
SHARES = st.floats(0.01, 0.93)


@given(SHARES, DIAMETERS, SLOPES)
def test_depth_of_a_flow_is_the_depth_that_gave_it(
    share: float, diameter: float, slope: float
) -> None:
    flow = pipe_flow.flow(share * diameter, diameter, slope, 0.01)
    found = pipe_flow.depth_for_flow(flow, diameter, slope, 0.01)
    assert found == pytest.approx(share * diameter, rel=1e-6)


@given(SHARES, st.floats(0.0, 1.0), DIAMETERS)
def test_a_deeper_flow_is_wider_in_area_and_carries_more(
    deep: float, part: float, diameter: float
) -> None:
    low, high = deep * part * diameter, deep * diameter
    assert pipe_flow.flow_area(low, diameter) <= pipe_flow.flow_area(high, diameter)
    less = pipe_flow.flow(low, diameter, 0.01, 0.01)
    assert less <= pipe_flow.flow(high, diameter, 0.01, 0.01) * (1 + 1e-12)


@given(DIAMETERS, SLOPES)
def test_manning_scales_with_slope_roughness_and_diameter(diameter: float, slope: float) -> None:
    base = pipe_flow.capacity(diameter, slope, 0.01)
    assert pipe_flow.capacity(diameter, 2 * slope, 0.01) == pytest.approx(base * sqrt(2))
    assert pipe_flow.capacity(diameter, slope, 0.02) == pytest.approx(base / 2)
    assert pipe_flow.capacity(1.5 * diameter, slope, 0.01) == pytest.approx(base * 1.5 ** (8 / 3))
    assert pipe_flow.slope_for_flow(base, diameter, 0.01) == pytest.approx(slope)
    speed = base / pipe_flow.full_area(diameter)
    assert pipe_flow.slope_for_velocity(speed, diameter, 0.01) == pytest.approx(slope)


@given(st.floats(0.0, 1.0), DIAMETERS)
def test_no_depth_beats_the_named_ones(share: float, diameter: float) -> None:
    depth = share * diameter
    most = pipe_flow.greatest_flow(diameter, 0.01, 0.01)
    assert pipe_flow.flow(depth, diameter, 0.01, 0.01) <= most * (1 + 1e-9)
    fastest = pipe_flow.velocity(pipe_flow.MOST_VELOCITY_DEPTH * diameter, diameter, 0.01, 0.01)
    assert pipe_flow.velocity(depth, diameter, 0.01, 0.01) <= fastest * (1 + 1e-9)


def test_half_full_and_dry() -> None:
    assert pipe_flow.flow(0.05, 0.1, 0.01, 0.01) == pytest.approx(
        pipe_flow.capacity(0.1, 0.01, 0.01) / 2
    )
    assert pipe_flow.velocity(0.0, 0.1, 0.01, 0.01) == 0
    assert pipe_flow.depth_for_flow(0.0, 0.1, 0.01, 0.01) == pytest.approx(0, abs=1e-9)
    assert pipe_flow.capacity(0.1, 0.0, 0.01) == 0, "a level pipe has no uniform flow"


def test_more_than_the_pipe_carries_is_refused() -> None:
    most = pipe_flow.greatest_flow(0.1, 0.01, 0.01)
    assert pipe_flow.depth_for_flow(0.999 * most, 0.1, 0.01, 0.01) < 0.0939
    with pytest.raises(ValueError, match="not reached"):
        pipe_flow.depth_for_flow(1.01 * most, 0.1, 0.01, 0.01)


@pytest.mark.parametrize(
    ("depth", "diameter", "slope", "n"),
    [(0.2, 0.1, 0.01, 0.01), (-0.01, 0.1, 0.01, 0.01), (0.05, 0.0, 0.01, 0.01),
     (0.05, 0.1, -0.01, 0.01), (0.05, 0.1, 0.01, 0.0), (0.05, 0.1, float("nan"), 0.01)],
)  # fmt: skip
def test_impossible_pipes_are_refused(
    depth: float, diameter: float, slope: float, n: float
) -> None:
    with pytest.raises(ValueError, match="must"):
        pipe_flow.flow(depth, diameter, slope, n)
