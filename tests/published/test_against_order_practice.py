"""Figures of orders as printed by yards, suppliers and rules; values typed from those pages.

Short tons for a cubic yard: washed stone 3/8 to 1-1/2 in 1.35, dense graded 3/4 in 1.70 and
1-1/2 in 1.75, washed stone sand 1.30 (a stone yard's list); crushed stone 2,700 lb/yd3 (US EPA
conversion list, 2006, second-hand). Laps of sheet: 6 in (IRC R506), 12 in (soil-gas rules).
Mixers 9 to 11 yd3 (NRMCA); 1/8 in on a 4 in slab is 3.1 %.
"""

import pytest

from geometry.materials.catalogue import AGGREGATES
from geometry.measures import read_measure
from geometry.parts.usual import USUAL
from geometry.takeoff.usual import densities
from geometry.units import INCH, to_unit


def tons(kg_m3: float) -> float:
    return to_unit(kg_m3, "kg/m**3", "short_ton/yd**3")


@pytest.mark.parametrize(
    ("key", "printed"),
    [("stone-57", 1.35), ("stone-67", 1.42), ("crusher-run", 1.70), ("crusher-run", 1.75),
     ("sand-c33", 1.30), ("sand-c33", 1.35)],
)  # fmt: skip
def test_printed_weights_lie_in_the_range(key: str, printed: float) -> None:
    low, high, source = densities(AGGREGATES[key])
    assert tons(low) - 1e-9 <= printed <= tons(high) + 1e-9
    assert source


def test_weights_are_read_as_yards_write_them() -> None:
    # 2,700 lb/yd3 = 1.35 short ton/yd3 = 100 lb/ft3 (2,700 / 27).
    kilograms = [read_measure(t, "density") for t in ("2700 lb/yd3", "1.35 ton/yd3", "100 pcf")]
    assert kilograms == pytest.approx([kilograms[0]] * 3)
    assert kilograms[0] == pytest.approx(1601.85, abs=0.01)
    assert read_measure("20 tons", "mass") == pytest.approx(18143.6948)
    assert read_measure("20 t", "mass") == 20_000.0


def test_usual_figures_stand_in_what_is_printed() -> None:
    lap = USUAL["sheet.lap"].feet
    assert lap in (pytest.approx(6 * INCH), pytest.approx(12 * INCH))
    assert 8 <= to_unit(USUAL["concrete.truck"].feet, "m**3", "yd**3") <= 11
    assert to_unit(USUAL["concrete.step"].feet, "m**3", "yd**3") == pytest.approx(0.25)
    body, load = USUAL["truck.volume"].feet, USUAL["truck.weight"].feet
    assert 10 <= to_unit(body, "m**3", "yd**3") <= 18
    assert 15 <= to_unit(load, "kg", "short_ton") <= 25
    # A 4 in slab a quarter inch thicker, and its loss: within the 4 to 10 % that are allowed.
    over = (1 + USUAL["concrete.slab_variation"].feet / (4 * INCH)) * (
        1 + USUAL["concrete.loss"].feet
    ) - 1
    assert 0.04 <= over <= 0.10


def test_a_pour_that_fell_short_would_have_been_enough() -> None:
    # A barn floor reckoned at 8.8 yd3, 9 ordered, took 9.5 (a builder's account).
    over = (1 + USUAL["concrete.slab_variation"].feet / (4 * INCH)) * (
        1 + USUAL["concrete.loss"].feet
    )
    assert 8.8 * over >= 9.5
