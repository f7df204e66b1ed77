"""Runoff coefficients of the rational method, each row with its source."""

from dataclasses import dataclass

from geometry.sources import Source

_ILLINOIS = Source("University of Illinois, TSM 352", clause="table of runoff coefficients")
_TEXTBOOK = Source("textbook table of rational coefficients", sure="second-hand")


@dataclass(frozen=True)
class Runoff:
    """One surface: the share of the rain that runs off, as a range."""

    key: str
    name: str
    low: float
    high: float
    source: Source


ROWS = (
    Runoff("lawn-sandy-flat", "lawn, sandy soil, flat to 2 %", 0.05, 0.10, _ILLINOIS),
    Runoff("lawn-sandy-average", "lawn, sandy soil, 2 to 7 %", 0.10, 0.15, _ILLINOIS),
    Runoff("lawn-sandy-steep", "lawn, sandy soil, over 7 %", 0.15, 0.20, _ILLINOIS),
    Runoff("lawn-heavy-flat", "lawn, heavy soil, flat to 2 %", 0.13, 0.17, _ILLINOIS),
    Runoff("lawn-heavy-average", "lawn, heavy soil, 2 to 7 %", 0.18, 0.22, _ILLINOIS),
    Runoff("lawn-heavy-steep", "lawn, heavy soil, over 7 %", 0.25, 0.35, _ILLINOIS),
    Runoff("asphalt", "asphalt", 0.70, 0.95, _ILLINOIS),
    Runoff("roof", "roof", 0.75, 0.95, _TEXTBOOK),
)
