"""When the box's floor floats, by weights an American builder knows."""

import pytest
from drained_box import box

from geometry.layout.lay import Layout
from geometry.water.uplift import Floating, floating

INCH = 0.0254


def of(layout: Layout, body: str) -> Floating:
    (row,) = (f for f in floating(layout) if f.body == body)
    return row


def test_four_inches_of_concrete_float_on_nine_and_a_half_of_water() -> None:
    # 4 in of 150 pcf against 62.4 pcf: 9.6 in over the slab's underside, which lies at TOF.
    slab = of(box(), "bare slab")
    assert slab.underside_m == pytest.approx(0.0, abs=1e-9)
    assert slab.floats_at_m == pytest.approx(9.6 * INCH, rel=2e-3)


def test_foam_lowers_the_level_at_which_the_floor_floats() -> None:
    # 2 in of foam, hardly heavier than air, lie lower: floats about 2 in earlier.
    whole, slab = of(box(), "build-up"), of(box(), "bare slab")
    assert whole.underside_m == pytest.approx(-2 * INCH)
    assert whole.floats_at_m == pytest.approx(slab.floats_at_m - 2 * INCH, abs=0.15 * INCH)


@pytest.mark.parametrize(("table", "safety"), [("TOF", None), ("4.8 in", 2.0), ("9.6 in", 1.0)])
def test_weight_over_uplift_at_the_highest_water_table(table: str, safety: float | None) -> None:
    slab = of(box(more=f'[water]\nwater_table = "{table}"'), "bare slab")
    assert slab.safety == (None if safety is None else pytest.approx(safety, rel=2e-3))


def test_without_a_water_table_nothing_is_held_against_it() -> None:
    assert of(box(), "bare slab").safety is None
    assert of(box(), "bare slab").table_m is None
