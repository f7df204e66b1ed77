"""The rational method against worked examples."""

import pytest

from geometry.formulas.inflow import rational

INCH, FOOT = 0.0254, 0.3048
ACRE = 43560 * FOOT**2


def cfs(coefficient: float, inches_per_hour: float, acres: float) -> float:
    return rational(coefficient, inches_per_hour * INCH / 3600, acres * ACRE) / FOOT**3


def test_printed_example() -> None:
    # engineeringprep.com, problem 79: C 0.11, 1.25 in/h, 30 acres: 4.125 cfs, without the 1.008.
    assert cfs(0.11, 1.25, 30) == pytest.approx(1.008 * 4.125, rel=5e-4)


def test_factor_that_practice_drops() -> None:
    # Oregon DOT Hydraulics Manual, chapter 7, appendix F: 1 in/h on an acre is 1.008 cfs.
    assert cfs(1.0, 1.0, 1.0) == pytest.approx(1.008, abs=5e-4)
