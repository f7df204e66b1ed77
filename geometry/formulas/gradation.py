"""Grain sizes read off a grading curve.

A curve is pairs of (sieve in metres, share passing from 0 to 1). Between sieves size goes by its
logarithm and passing straight, as curves are drawn (ASTM D6913 plots; the Corps of Engineers'
filter manuals interpolate so).
"""

from collections.abc import Sequence
from itertools import pairwise
from math import exp, log

from geometry.formulas.given import positive, within

Curve = Sequence[tuple[float, float]]


def size_at(curve: Curve, share: float) -> float:
    """Grain size, m, that the given share of the mass is finer than: D15 is share 0.15.

    Where the curve stands level at the share, the smaller sieve. Raises ValueError when no two
    sieves of the curve enclose the share, or the curve falls with size.
    """
    within(0.0, 1.0, share=share)
    rising = _sorted(curve)
    for (small, below), (big, above) in pairwise(rising):
        if below <= share <= above:
            if above == below or share == below:
                return small
            return exp(log(small) + (share - below) / (above - below) * log(big / small))
    raise ValueError(f"the grading does not reach {share:.0%} passing")


def passing_at(curve: Curve, size_m: float) -> float:
    """Share finer than a size, read the same way; ValueError outside the sieves of the curve."""
    positive(size_m=size_m)
    rising = _sorted(curve)
    for (small, below), (big, above) in pairwise(rising):
        if small <= size_m <= big:
            return below + (above - below) * log(size_m / small) / log(big / small)
    raise ValueError("the size lies outside the sieves of the grading")


def uniformity(curve: Curve) -> float:
    """Coefficient of uniformity, D60/D10 (ASTM D2487)."""
    return size_at(curve, 0.60) / size_at(curve, 0.10)


def _sorted(curve: Curve) -> list[tuple[float, float]]:
    rising = sorted(curve)
    for size, share in rising:
        positive(sieve_m=size)
        within(0.0, 1.0, passing=share)
    if any(above < below for (_, below), (_, above) in pairwise(rising)):
        raise ValueError("a grading cannot pass less through a larger sieve")
    return rising
