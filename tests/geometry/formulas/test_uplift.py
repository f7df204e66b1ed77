"""Floating floors."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.formulas.uplift import (
    Lying,
    floating_head,
    floating_level,
    mass_per_area,
    safety,
    water_pressure,
)

SLAB, FOAM = Lying(0.1, 2400.0), Lying(0.05, 30.0)


def test_a_build_up_floats_from_its_own_underside() -> None:
    bare, both = floating_level(0.05, [SLAB]), floating_level(0.0, [FOAM, SLAB])
    assert bare == pytest.approx(0.05 + 0.24)
    assert both == pytest.approx(0.0015 + 0.24)
    assert both < bare, "foam lifts the slab at a lower level than the bare slab's"


@given(st.floats(0.0, 0.5), st.floats(0.0, 3000.0), st.floats(0.0, 500.0))
def test_at_the_floating_level_weight_is_uplift(
    thickness: float, density: float, load: float
) -> None:
    layers = [Lying(thickness, density), FOAM]
    level = floating_level(-0.3, layers, load)
    weight = 9.80665 * mass_per_area(layers, load)
    assert water_pressure(level + 0.3) == pytest.approx(weight)
    assert safety(level, -0.3, layers, load) == pytest.approx(1.0)
    assert safety(level + 0.2, -0.3, layers, load) < 1.0  # type: ignore[operator]
    assert safety(-0.3, -0.3, layers, load) is None


def test_lighter_water_lifts_less_and_nothing_floats_at_once() -> None:
    assert floating_head([SLAB], water_kgm3=500.0) == pytest.approx(2 * floating_head([SLAB]))
    assert floating_head([]) == 0
    with pytest.raises(ValueError, match="zero or more"):
        Lying(-0.1, 2400.0)
    with pytest.raises(ValueError, match="zero or more"):
        floating_head([SLAB], -1.0)
