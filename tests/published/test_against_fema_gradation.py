"""Grain sizes off a printed curve: a published test report by the FEMA (2011) filter procedure."""

import pytest

from geometry.formulas.gradation import passing_at, size_at, uniformity

# Sieve mm: percent passing.
SAND = {
    4.75: 99.1593, 2.0: 87.4700, 0.85: 66.2930, 0.425: 43.8951, 0.25: 26.2210, 0.106: 7.3259,
    0.075: 4.1633,
}  # fmt: skip
CURVE = [(mm / 1000, percent / 100) for mm, percent in SAND.items()]
# Printed sizes in mm, read between the sieves by plain proportion; by logarithm they lie a
# little lower, nowhere by more than 6 %.
PRINTED = {0.60: 0.7306, 0.30: 0.2874, 0.10: 0.1264}


@pytest.mark.parametrize(("share", "mm"), PRINTED.items())
def test_sizes(share: float, mm: float) -> None:
    found = size_at(CURVE, share) * 1000
    assert 0.94 * mm < found <= mm


def test_uniformity() -> None:
    assert uniformity(CURVE) == pytest.approx(0.7306 / 0.1264, rel=0.06)


@pytest.mark.parametrize(("mm", "percent"), SAND.items())
def test_the_sieves_give_back_what_they_pass(mm: float, percent: float) -> None:
    assert passing_at(CURVE, mm / 1000) * 100 == pytest.approx(percent)
