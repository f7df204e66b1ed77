"""What is asked of a drain's outlet: its least fall by size, and where its water may go."""

from dataclasses import dataclass

from geometry.sources import Source
from geometry.units import FOOT, INCH


@dataclass(frozen=True)
class SizeFall:
    """Least fall of pipes up to an inside diameter, as a share."""

    most_bore_m: float
    least: float
    source: Source


@dataclass(frozen=True)
class Apart:
    """Least distance of an open end from something, asked somewhere."""

    what: str
    least_m: float
    source: Source


_SLOPES = Source(
    "Plumbing code, slope of horizontal drainage pipe", "as Chicago prints it", "Table 18-29-704.1"
)

# The table names sizes; between 2 1/2 and 3 in, and 6 and 8 in, the bore tells which is meant.
LEAST_FALLS = (
    SizeFall(2.75 * INCH, 1 / 48, _SLOPES),
    SizeFall(7.0 * INCH, 1 / 96, _SLOPES),
    SizeFall(1e9, 1 / 192, _SLOPES),
)

GRAVITY_OR_PUMP = Source("IRC", "2000, as reprinted by a city", "R405.1")
DITCH = Source("Michigan State University Extension, subsurface drainage outlets")
HENRICO = Source("Henrico County, Virginia", "inspection requirements, drain tile")

ABOVE_DITCH_M = 1 * FOOT
"""Least height of a drain's open end over a ditch's bottom, source DITCH."""

APART = (
    Apart("any building", 30 * FOOT, Source("St. Johns, Michigan", "codified ordinances")),
    Apart("any neighbour", 10 * FOOT, HENRICO),
)


def least_fall(bore_m: float) -> SizeFall:
    """Return the least fall of a pipe of an inside diameter, m."""
    return next(row for row in LEAST_FALLS if bore_m <= row.most_bore_m)
