"""Gradings and filters: properties, and what an expert asks of our own stones and holes."""

import pytest

from geometry.formulas.fabric_filter import (
    CLOGGING_NOTE,
    corps_opening,
    fhwa_opening,
    m288_limits,
    retention_factor,
)
from geometry.formulas.gradation import passing_at, size_at, uniformity
from geometry.formulas.granular_filter import (
    PERMEABILITY,
    RETENTION,
    ROUND_HOLES,
    hole_ratio,
    largest_d15,
    largest_d90,
    largest_hole,
    least_d15,
    permeability_ratio,
    retention_ratio,
)
from geometry.materials.catalogue import AGGREGATES

INCH = 0.0254
STONE, SAND = AGGREGATES["stone-57"], AGGREGATES["sand-c33"]
# Worked by hand on the bands: share: finest, coarsest, mm.
SIZES = {
    ("stone-57", 0.15): (5.23, 8.49), ("stone-57", 0.50): (10.3, 16.0),
    ("stone-57", 0.85): (19.3, 22.6), ("sand-c33", 0.15): (0.178, 0.424),
    ("sand-c33", 0.50): (0.476, 1.18), ("sand-c33", 0.85): (1.18, 2.98),
}  # fmt: skip


@pytest.mark.parametrize(("asked", "sizes"), SIZES.items())
def test_sizes_of_a_band(asked: tuple[str, float], sizes: tuple[float, float]) -> None:
    row, share = AGGREGATES[asked[0]], asked[1]
    assert size_at(row.fine_edge, share) * 1000 == pytest.approx(sizes[0], rel=0.006)
    assert size_at(row.coarse_edge, share) * 1000 == pytest.approx(sizes[1], rel=0.006)


@pytest.mark.parametrize("key", ["stone-57", "stone-67", "stone-8", "sand-c33"])
@pytest.mark.parametrize("share", [0.15, 0.3, 0.5, 0.7, 0.85])
def test_size_and_passing_undo_each_other(key: str, share: float) -> None:
    row = AGGREGATES[key]
    for edge in (row.fine_edge, row.coarse_edge):
        assert passing_at(edge, size_at(edge, share)) == pytest.approx(share)
    assert size_at(row.fine_edge, share) <= size_at(row.coarse_edge, share)


def test_order_of_the_sieves_does_not_matter() -> None:
    assert size_at(STONE.fine_edge[::-1], 0.5) == size_at(STONE.fine_edge, 0.5)


def test_level_stretch_gives_the_smaller_sieve() -> None:
    found = size_at([(0.01, 1.0), (0.004, 0.5), (0.002, 0.5), (0.001, 0.0)], 0.5)
    assert found == pytest.approx(0.002)


def test_grading_that_does_not_reach() -> None:
    with pytest.raises(ValueError, match="does not reach 15%"):
        size_at(AGGREGATES["sand-0-4"].fine_edge, 0.15)
    with pytest.raises(ValueError, match="larger sieve"):
        size_at([(0.001, 0.5), (0.002, 0.4)], 0.45)
    with pytest.raises(ValueError, match="outside the sieves"):
        passing_at(STONE.fine_edge, 1.0)


def test_straight_curve_has_the_uniformity_of_its_slope() -> None:
    # A straight line over one decade of size: D60/D10 is half a decade.
    assert uniformity([(0.001, 0.0), (0.01, 1.0)]) == pytest.approx(10**0.5)


def test_rules_for_round_holes() -> None:
    # FAA and Corps ask D85 (1.0; 1.0 to 1.2), the dam agencies D50, critical drains D15.
    rules = [(rule.share, rule.least) for rule in ROUND_HOLES]
    assert rules == [(0.85, 1.0), (0.85, 1.2), (0.50, 1.0), (0.15, 1.0)]


def test_half_inch_holes_fail_d50_against_the_fine_edge_of_no_57() -> None:
    for rule in ROUND_HOLES:
        fine = hole_ratio(size_at(STONE.fine_edge, rule.share), INCH / 2)
        assert (fine >= rule.least) == (rule.share == 0.85), rule
    assert hole_ratio(size_at(STONE.fine_edge, 0.50), INCH / 2) == pytest.approx(0.81, abs=0.005)
    assert hole_ratio(size_at(STONE.coarse_edge, 0.50), INCH / 2) == pytest.approx(1.26, abs=0.005)


@pytest.mark.parametrize("hole", [3 / 8, 5 / 16, 1 / 4])
def test_smaller_holes_pass_d50_on_no_57(hole: float) -> None:
    assert hole_ratio(size_at(STONE.fine_edge, 0.50), hole * INCH) >= 1
    assert largest_hole(size_at(STONE.fine_edge, 0.50)) > hole * INCH


def test_finer_stones_need_smaller_holes() -> None:
    largest = [largest_hole(size_at(AGGREGATES[k].fine_edge, 0.5))
               for k in ("stone-57", "stone-67", "stone-8")]  # fmt: skip
    assert largest == sorted(largest, reverse=True)
    assert largest_hole(0.012, 1.2) == pytest.approx(0.010)


def test_concrete_sand_on_no_57_fails_at_its_worst() -> None:
    worst = retention_ratio(size_at(STONE.coarse_edge, 0.15), size_at(SAND.fine_edge, 0.85))
    best = retention_ratio(size_at(STONE.fine_edge, 0.15), size_at(SAND.coarse_edge, 0.85))
    assert worst == pytest.approx(7.19, abs=0.01)
    assert best == pytest.approx(1.76, abs=0.01)
    assert best < RETENTION < worst


def test_concrete_sand_on_no_8_holds() -> None:
    stone = AGGREGATES["stone-8"]
    assert retention_ratio(size_at(stone.coarse_edge, 0.15), size_at(SAND.fine_edge, 0.85)) < 5


def test_stone_drains_concrete_sand() -> None:
    worst = permeability_ratio(size_at(STONE.fine_edge, 0.15), size_at(SAND.coarse_edge, 0.15))
    assert worst > PERMEABILITY


def test_retention_meets_itself_where_categories_meet() -> None:
    # At 40 % fines category 3 ends at category 2's 0.7 mm, at 15 % at category 4's 4 d85.
    assert largest_d15(0.39999, 1e-3) == pytest.approx(0.7e-3, rel=1e-3)
    assert largest_d15(0.15, 1e-3) == pytest.approx(largest_d15(0.1499, 1e-3), rel=1e-3)


@pytest.mark.parametrize("fines", [0.0, 0.2, 0.5, 0.9])
def test_dispersive_soil_asks_for_a_finer_filter_or_the_same(fines: float) -> None:
    assert largest_d15(fines, 1e-4, dispersive=True) <= largest_d15(fines, 1e-4)


def test_coarser_filter_may_be_coarser_throughout() -> None:
    limits = [largest_d90(d10 / 1000) for d10 in (0.1, 0.7, 1.5, 3, 7, 20)]
    assert limits == sorted(limits)


def test_factor_of_fabric_runs_on_without_a_jump() -> None:
    for corner in (2.0, 4.0, 8.0):
        below, above = retention_factor(0.1, corner - 1e-9), retention_factor(0.1, corner + 1e-9)
        assert below == pytest.approx(above, abs=1e-6)


def test_more_fines_ask_for_smaller_openings() -> None:
    openings = [m288_limits(fines).opening_m for fines in (0.05, 0.3, 0.7)]
    assert openings == sorted(openings, reverse=True)
    assert corps_opening(0.2e-3, 0.3) == pytest.approx(fhwa_opening(0.2e-3, 0.3, 1.5))


def test_note_names_the_test_that_proves() -> None:
    assert "D5101" in CLOGGING_NOTE


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: largest_d15(1.2, 1e-3),
        lambda: largest_d15(0.2, 0),
        lambda: least_d15(1e-3, 6),
        lambda: hole_ratio(1e-3, 0),
        lambda: m288_limits(-0.1),
        lambda: retention_factor(0.1, 0.5),
        lambda: size_at(STONE.fine_edge, 1.5),
    ],
)
def test_nonsense_is_refused(wrong: object) -> None:
    assert callable(wrong)
    with pytest.raises(ValueError, match="must"):
        wrong()
