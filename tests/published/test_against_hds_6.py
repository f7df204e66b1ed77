"""Granular filters against FHWA HDS-6, 6.11, problems 1 and 2, and the FAA's rules (Horonjeff)."""

import pytest

from geometry.formulas.granular_filter import (
    FAA,
    PARALLEL,
    PERMEABILITY,
    RETENTION,
    ROUND_HOLES,
    permeability_ratio,
    retention_ratio,
)

MM = 1e-3


def test_problem_1_riprap_is_its_own_filter() -> None:
    # Base 1.5/0.75/0.38 mm, riprap 24/12/6 mm (D85/D50/D15): published 16, 16 and 4.
    assert permeability_ratio(6 * MM, 0.38 * MM) == pytest.approx(16, abs=0.5)
    assert permeability_ratio(12 * MM, 0.75 * MM) == pytest.approx(16)
    assert retention_ratio(6 * MM, 1.5 * MM) == pytest.approx(4)
    assert retention_ratio(6 * MM, 1.5 * MM) < RETENTION


def test_problem_2_riprap_is_too_coarse() -> None:
    # Base 1.5/0.5/0.17 mm, riprap 400/200/100 mm: published 600 (rounded) and 67.
    assert permeability_ratio(100 * MM, 0.17 * MM) == pytest.approx(600, rel=0.025)
    assert retention_ratio(100 * MM, 1.5 * MM) == pytest.approx(67, abs=0.5)
    assert retention_ratio(100 * MM, 1.5 * MM) > RETENTION


def test_problem_2_band_of_the_filter() -> None:
    # D15 above 5 x 0.17 = 0.85 mm and below 5 x 1.5 = 7.5 mm; from the riprap's side above
    # 100/40 = 2.5 mm; D50 over 40 times 0.5 = 20 mm is too much.
    assert pytest.approx(0.85) == PERMEABILITY * 0.17
    assert pytest.approx(7.5) == RETENTION * 1.5
    assert permeability_ratio(0.85 * MM, 0.17 * MM) == pytest.approx(PERMEABILITY)
    assert retention_ratio(7.5 * MM, 1.5 * MM) == pytest.approx(RETENTION)


def test_faa_rules() -> None:
    # Horonjeff, p. 379: D15F/D85B <= 5, D50F/D50B <= 25, D15F/D15B >= 5, D85F over hole > 1.
    assert (RETENTION, PARALLEL, PERMEABILITY) == (5, 25, 5)
    assert [(r.share, r.least) for r in ROUND_HOLES if r.source is FAA] == [(0.85, 1.0)]
