"""Hooghoudt's drain equation and equivalent depth against his table and its special cases.

Equivalent depths for drains of 0.1 m radius: table in ILRI Publication 16, Drainage Principles and
Applications (1994), chapter 8, from memory. On a deep tight base the closed form is the table; on
a shallow one it is up to 6 % below, since the table's own approximation differs.
"""

import pytest

from geometry.formulas.inflow import equivalent_depth, hooghoudt

RADIUS = 0.1
# spacing m: equivalent depth m over a base of no end
DEEP = {5: 0.71, 7.5: 0.93, 10: 1.14, 15: 1.53, 20: 1.89, 25: 2.24, 30: 2.58, 50: 3.88}
# (depth of base m, spacing m): equivalent depth m
SHALLOW = {
    (1.0, 5): 0.67, (1.0, 10): 0.80, (1.0, 20): 0.89, (1.0, 30): 0.93,
    (2.0, 20): 1.41, (2.0, 50): 1.72,
}  # fmt: skip


@pytest.mark.parametrize(("spacing", "depth"), DEEP.items())
def test_equivalent_depth_over_a_deep_base(spacing: float, depth: float) -> None:
    assert equivalent_depth(1000.0, spacing, RADIUS) == pytest.approx(depth, abs=0.011)


@pytest.mark.parametrize(("case", "depth"), SHALLOW.items())
def test_equivalent_depth_over_a_shallow_base(case: tuple[float, float], depth: float) -> None:
    found = equivalent_depth(*case, RADIUS)
    assert 0.93 * depth < found < 1.01 * depth


def test_special_cases() -> None:
    # Equations 9.16 and 9.17 of Practices of Irrigation and On-farm Water Management (Springer
    # 2011): drains on the tight base, 4 ka h2 / L2; flow above the drains left out, 8 kb d h / L2.
    above_only = hooghoudt(0.6, 0.0, 20.0, 1e-6, 2e-6)
    assert above_only == pytest.approx(4 * 2e-6 * 0.6**2 / 20**2)
    below_only = hooghoudt(0.6, 1.89, 20.0, 1e-6, 1e-30)
    assert below_only == pytest.approx(8 * 1e-6 * 1.89 * 0.6 / 20**2)
