"""The same figures by an independent library (fluids, by Caleb Bell)."""

import fluids
import pytest
from fluids.geometry import A_partial_circle
from fluids.packed_bed import Ergun
from hypothesis import given
from hypothesis import strategies as st

from geometry.formulas import friction, pipe_flow, stone_flow


@given(st.floats(0.02, 0.98), st.floats(0.05, 0.6), st.floats(1e-4, 0.1))
def test_manning_part_full(share: float, diameter: float, slope: float) -> None:
    depth = share * diameter
    area = A_partial_circle(diameter, depth)
    assert pipe_flow.flow_area(depth, diameter) == pytest.approx(area, rel=1e-6)
    radius = area / pipe_flow.wetted_perimeter(depth, diameter)
    speed = fluids.V_Manning(radius, slope, 0.010)
    assert pipe_flow.velocity(depth, diameter, slope, 0.010) == pytest.approx(speed, rel=1e-6)
    flow = pipe_flow.flow(depth, diameter, slope, 0.010)
    assert flow == pytest.approx(speed * area, rel=1e-6)


@given(st.floats(4000.0, 1e6), st.floats(0.0, 0.02))
def test_friction_factor(reynolds: float, roughness: float) -> None:
    theirs = fluids.friction_factor(reynolds, roughness)
    assert friction.friction_factor(reynolds, roughness) == pytest.approx(theirs, rel=1e-4)


@given(st.floats(1e-6, 0.5), st.floats(1e-4, 0.04), st.floats(0.3, 0.5))
def test_ergun(speed: float, grain: float, porosity: float) -> None:
    viscosity = 1.307e-6
    pressure = Ergun(grain, porosity, speed, 1000.0, 1000.0 * viscosity)
    gradient = stone_flow.ergun_gradient(speed, grain, porosity, viscosity)
    assert gradient * 1000.0 * 9.80665 == pytest.approx(pressure)
