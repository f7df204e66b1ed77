"""Stone, sand and concrete against gradings and yard weights, in their own units."""

from itertools import pairwise
from math import exp, log

import pytest

from geometry.materials.catalogue import AGGREGATES, CONCRETES
from geometry.materials.kinds import Passing

KG_M3_PER_PCF = 16.01846  # NIST SP 811
KG_M3_PER_TON_YD3 = 907.18474 / 0.764554857984  # NIST SP 811

# ASTM C33 (No. 57, 89 and sand seen or second-hand; No. 67 has the limits that UFGS-03701 prints
# for No. 4 to 3/4 in; No. 8 from memory):
# sieve mm: passing low, high in percent.
C33 = {
    "stone-57": {37.5: (100, 100), 25: (95, 100), 12.5: (25, 60), 4.75: (0, 10), 2.36: (0, 5)},
    "stone-67": {25: (100, 100), 19: (90, 100), 9.5: (20, 55), 4.75: (0, 10), 2.36: (0, 5)},
    "stone-8": {12.5: (100, 100), 9.5: (85, 100), 4.75: (10, 30), 2.36: (0, 10), 1.18: (0, 5)},
    "stone-89": {12.5: (100, 100), 9.5: (90, 100), 4.75: (20, 55), 2.36: (5, 30), 1.18: (0, 10)},
    "sand-c33": {
        9.5: (100, 100), 4.75: (95, 100), 2.36: (80, 100), 1.18: (50, 85),
        0.6: (25, 60), 0.3: (5, 30), 0.15: (0, 10), 0.075: (0, 3),
    },
}  # fmt: skip
CLEAN = ["stone-57", "stone-67", "stone-8", "stone-89"]


def size_at(share: float, curve: list[tuple[float, float]]) -> float:
    """Grain size in mm at a share, by log interpolation on a falling curve."""
    for (big, above), (small, below) in pairwise(curve):
        if below <= share <= above:
            part = (share - below) / (above - below)
            return exp(log(small) + part * (log(big) - log(small)))
    raise AssertionError(f"the curve does not reach {share}")


def edge(rows: tuple[Passing, ...], side: str) -> list[tuple[float, float]]:
    return [(row.sieve_m * 1000, getattr(row, side)) for row in rows]


@pytest.mark.parametrize(("key", "table"), C33.items())
def test_grading_is_the_table_s(key: str, table: dict[float, tuple[float, float]]) -> None:
    rows = {
        round(row.sieve_m * 1000, 4): (round(row.low * 100, 6), round(row.high * 100, 6))
        for row in AGGREGATES[key].grading
    }
    assert rows == table


def test_sizes_of_no_57() -> None:
    # Log interpolation of the band: D85 19.3 to 22.6 mm, D50 10.3 to 16.0 mm.
    rows = AGGREGATES["stone-57"].grading
    assert size_at(0.85, edge(rows, "high")) == pytest.approx(19.3, abs=0.1)
    assert size_at(0.85, edge(rows, "low")) == pytest.approx(22.6, abs=0.1)
    assert size_at(0.50, edge(rows, "high")) == pytest.approx(10.3, abs=0.1)
    assert size_at(0.50, edge(rows, "low")) == pytest.approx(16.0, abs=0.1)


def test_fineness_of_the_sand_band() -> None:
    # The two edges of the C33 sand band have fineness moduli 2.15 and 3.45.
    sieves = [row for row in AGGREGATES["sand-c33"].grading if 0.0001 < row.sieve_m < 0.005]
    assert len(sieves) == 6
    assert sum(1 - row.high for row in sieves) == pytest.approx(2.15)
    assert sum(1 - row.low for row in sieves) == pytest.approx(3.45)


@pytest.mark.parametrize("key", ["stone-57", "stone-67"])
def test_drain_stone_rule(key: str) -> None:
    # IBC 1805.4.2: drain stone with not more than 10 % passing No. 4.
    no_4 = [row for row in AGGREGATES[key].grading if row.sieve_m == pytest.approx(0.00475)]
    assert [row.high for row in no_4] == [0.10]


@pytest.mark.parametrize("key", CLEAN)
def test_washed_stone_range(key: str) -> None:
    # 95 to 105 pcf is 1.2825 to 1.4175 short ton/yd3 (pcf x 27/2000).
    stone = AGGREGATES[key]
    assert stone.loose_density_low / KG_M3_PER_PCF == pytest.approx(95, rel=1e-6)
    assert stone.loose_density_low / KG_M3_PER_TON_YD3 == pytest.approx(1.2825, abs=1e-4)
    assert stone.loose_density_high / KG_M3_PER_TON_YD3 == pytest.approx(1.4175, abs=1e-4)


@pytest.mark.parametrize(
    ("key", "tons"),
    [
        ("stone-57", 1.35),  # US EPA list 2006 and a yard list: washed stone
        ("stone-57", 27 / (77 * 0.25)),  # a yard chart: a ton of 3/4 rock covers 77 ft2 at 3 in
        ("stone-8", 27 / (83 * 0.25)),  # the same chart: pea gravel, 83 ft2
        ("sand-c33", 27 / (86 * 0.25) + 1e-3),  # the same chart: concrete sand, 86 ft2, rounded
        ("sand-c33", 1.30),  # a yard list: washed stone sand
        ("crusher-run", 1.70),  # a yard list: 3/4 in dense graded
        ("crusher-run", 1.75),  # a yard list: 1-1/2 in dense graded base
    ],
)
def test_yard_weights_fall_in_the_range(key: str, tons: float) -> None:
    row = AGGREGATES[key]
    low, high = (d / KG_M3_PER_TON_YD3 for d in (row.loose_density_low, row.loose_density_high))
    assert low - 1e-6 <= tons <= high + 1e-6
    assert low > 1.2, "no yard in the sources sells lighter than mason sand at 1.20"


@pytest.mark.parametrize("key", CLEAN)
def test_voids_follow_from_weight(key: str) -> None:
    # Solids at specific gravity 2.65: 95 pcf leaves 0.425 voids, 105 pcf 0.365.
    stone = AGGREGATES[key]
    assert stone.porosity is not None
    assert 1 - stone.loose_density_low / 2650 == pytest.approx(0.425, abs=0.002)
    assert 1 - stone.loose_density_high / 2650 < stone.porosity < 1 - stone.loose_density_low / 2650


def test_only_the_base_has_fines() -> None:
    assert [key for key, row in AGGREGATES.items() if row.with_fines] == ["crusher-run"]
    assert AGGREGATES["crusher-run"].porosity is None


@pytest.mark.parametrize("key", ["gravel-16-32", "gravel-8-16", "sand-0-4"])
def test_metric_grades_are_marked_from_memory_and_centred_on_their_name(key: str) -> None:
    row = AGGREGATES[key]
    smallest, largest = (int(part) for part in key.split("-")[1:])
    assert row.source.sure == "memory"
    # EN 12620 (from memory): all passes twice the upper size.
    assert row.grading[0].low == 1.0
    assert row.grading[0].sieve_m * 1000 == pytest.approx(2 * largest, rel=0.02)
    assert smallest < largest


@pytest.mark.parametrize(
    ("key", "d", "big_d"), [("gravel-16-32", 16, 31.5), ("gravel-8-16", 8, 16)]
)
def test_metric_stone_keeps_the_limits_of_d_and_big_d(key: str, d: float, big_d: float) -> None:
    # EN 12620 and EN 13242, category GC 85/20 (from memory): 1.4D 98 to 100 %, D 85 to 99 %,
    # d 0 to 20 %, d/2 0 to 5 %.
    band = {round(row.sieve_m * 1000, 1): (row.low, row.high) for row in AGGREGATES[key].grading}
    assert band[big_d] == (0.85, 0.99)
    assert band[d] == (0.0, 0.20)
    assert band[d / 2] == (0.0, 0.05)
    near = min(band, key=lambda mm: abs(mm - 1.4 * big_d))
    assert near == pytest.approx(1.4 * big_d, rel=0.03)
    assert band[near] == (0.98, 1.0)


def test_concrete_weight() -> None:
    # 150 pcf is 4,050 lb/yd3; the specified strengths are the key's psi.
    assert CONCRETES["concrete"].density_kg_m3 / KG_M3_PER_PCF == pytest.approx(150, rel=1e-6)
    pounds = CONCRETES["concrete"].density_kg_m3 * 0.764554857984 / 0.45359237
    assert pounds == pytest.approx(4050, rel=1e-6)
    assert CONCRETES["concrete"].strength_kpa is None


@pytest.mark.parametrize(
    ("key", "mpa"),
    [
        ("concrete-2500", 17.24),
        ("concrete-3000", 20.68),
        ("concrete-3500", 24.13),
        ("concrete-c25", 25.0),
    ],
)
def test_concrete_strength(key: str, mpa: float) -> None:
    # IRC Table R402.2 strengths in ACI 318M's print; EN 206 C25/30.
    strength = CONCRETES[key].strength_kpa
    assert strength is not None
    assert strength / 1000 == pytest.approx(mpa, abs=0.01)
