"""Geometry of a part-full circle against the printed table.

Chow, Open-Channel Hydraulics (1959), and FHWA HDS-4, as reprinted second-hand on engdatabase.com
("open channel geometry, circular"): area/D2, hydraulic radius/D and surface width/D by depth/D.
"""

from math import pi

import pytest

from geometry.formulas import pipe_flow

TABLE = {
    0.05: (0.014681, 0.032551, 0.435890),
    0.10: (0.040875, 0.063520, 0.600000),
    0.60: (0.492028, 0.277644, 0.979796),
    0.70: (0.587230, 0.296235, 0.916515),
    0.75: (0.631852, 0.301687, 0.866025),
    0.80: (0.673574, 0.304193, 0.800000),
}
# From memory of the same books: most flow at 0.938 D is 1.076 of full, greatest velocity at 0.81 D
# is 1.140 of full, half full runs as fast as full.


@pytest.mark.parametrize(("depth", "row"), TABLE.items())
@pytest.mark.parametrize("diameter", [1.0, 0.1])
def test_circle_is_the_table_s(
    depth: float, row: tuple[float, float, float], diameter: float
) -> None:
    area, radius, width = row
    at = depth * diameter
    assert pipe_flow.flow_area(at, diameter) / diameter**2 == pytest.approx(area, abs=1e-6)
    assert pipe_flow.hydraulic_radius(at, diameter) / diameter == pytest.approx(radius, abs=1e-6)
    assert pipe_flow.surface_width(at, diameter) / diameter == pytest.approx(width, abs=1e-6)


def test_greatest_flow_and_velocity_are_the_books() -> None:
    full = pipe_flow.capacity(0.1, 0.01, 0.010)
    assert pytest.approx(0.938, abs=5e-4) == pipe_flow.MOST_FLOW_DEPTH
    assert pipe_flow.greatest_flow(0.1, 0.01, 0.010) / full == pytest.approx(1.076, abs=5e-4)
    assert pytest.approx(0.81, abs=5e-3) == pipe_flow.MOST_VELOCITY_DEPTH
    fastest = pipe_flow.velocity(0.1 * pipe_flow.MOST_VELOCITY_DEPTH, 0.1, 0.01, 0.010)
    assert fastest / (full / (pi * 0.1**2 / 4)) == pytest.approx(1.140, abs=5e-4)
