"""What the site's own grading curve says of the soil, and whether its group says the same.

Sizes in metres, shares from 0 to 1.
"""

from dataclasses import dataclass, replace

from geometry.formulas.gradation import Curve, passing_at, size_at
from geometry.materials.catalogue import AGGREGATES
from geometry.materials.kinds import Aggregate, Passing
from geometry.project import Design
from geometry.water.backfill import ground_soil

NO_200_M = 0.075e-3


@dataclass(frozen=True)
class SievePassing:
    """A sieve's opening and the share that passes it."""

    sieve_m: float
    passing: float


@dataclass(frozen=True)
class SoilGrading:
    """The grading of the site's soil, the largest sieve first; None where it does not reach.

    fines: the least and the most that can pass No. 200. uniformity: D60 over D10. group_fines:
    what the soil's group means, None where none is named.
    """

    points: tuple[SievePassing, ...]
    fines: tuple[float, float]
    d85_m: float | None
    d50_m: float | None
    d15_m: float | None
    uniformity: float | None
    group: str
    group_fines: tuple[float, float] | None

    @property
    def fits_group(self) -> bool:
        """Whether the soil's group, if one is named, means as many fines."""
        if self.group_fines is None:
            return True
        return self.fines[1] >= self.group_fines[0] and self.fines[0] <= self.group_fines[1]


def soil_grading(design: Design) -> SoilGrading | None:
    """Return what the site's grading says; None without one."""
    curve, soil = design.soil.grading, ground_soil(design)
    if not curve:
        return None
    sizes = {share: size_or_none(curve, share) for share in (0.85, 0.60, 0.50, 0.15, 0.10)}
    d60, d10 = sizes[0.60], sizes[0.10]
    return SoilGrading(
        tuple(SievePassing(size, share) for size, share in sorted(curve, reverse=True)),
        fines_of(curve), sizes[0.85], sizes[0.50], sizes[0.15],
        None if d60 is None or d10 is None else d60 / d10,
        soil.key, soil.fines,
    )  # fmt: skip


def delivered(design: Design, key: str) -> Aggregate | None:
    """Return a stone or sand, with its own grading where the design gives it; None for no such."""
    row = AGGREGATES.get(key)
    own = next((given.sieves for given in design.gradings if given.material == key), None)
    if row is None or own is None:
        return row
    return replace(row, grading=tuple(Passing(size, share, share) for size, share in sorted(own)))


def size_or_none(curve: Curve, share: float) -> float | None:
    """Return a grain size by the share passing, m; None where the grading does not reach it."""
    try:
        return size_at(curve, share)
    except ValueError:
        return None


def fines_of(curve: Curve) -> tuple[float, float]:
    """Return the least and the most that can pass No. 200: one figure within the sieves."""
    (small, least), (large, most) = min(curve), max(curve)
    if small > NO_200_M:
        return 0.0, least
    if large < NO_200_M:
        return most, 1.0
    share = passing_at(curve, NO_200_M)
    return share, share
