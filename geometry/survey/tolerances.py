"""What a survey is held against, each figure with its source."""

from dataclasses import dataclass

from geometry.parts.footing import Wall
from geometry.sources import Source
from geometry.units import INCH


@dataclass(frozen=True)
class Tolerance:
    """How far above and below the plan a level may lie, metres, and who says so."""

    above: float
    below: float
    source: Source

    def holds(self, off_m: float) -> bool:
        """Tell whether a difference from the plan, metres, is allowed; a micrometre is rounding."""
        return -self.below - 1e-6 <= off_m <= self.above + 1e-6


_ACI = "ACI 117"
FINE_GRADE = Tolerance(
    0.75 * INCH, 0.75 * INCH,
    Source(f"{_ACI}, fine grade under slabs", "2010", "4.4.5", "second-hand"),
)  # fmt: skip
FOOTING_TOP = Tolerance(
    0.5 * INCH, 2 * INCH,
    Source(f"{_ACI}, top of footing", "edition not stated", "3.3", "second-hand"),
)  # fmt: skip
UNDER_MASONRY = Tolerance(
    0.5 * INCH, 0.5 * INCH,
    Source(f"{_ACI}, top of footing under masonry", "edition not stated", "3.3", "second-hand"),
)  # fmt: skip
# Boards rock on what is less flat than this; from memory, common practice.
BOARD_M = 0.25 * INCH
BOARD_SOURCE = Source(
    'stone under boards flat to about 1/4" under one board (common practice)', sure="memory"
)

_MASONRY = ("masonry", "block", "brick", "cmu")


def footing_tolerance(wall: Wall) -> Tolerance:
    """Return what holds for the top of a footing under this wall."""
    kind = wall.kind.lower()
    return UNDER_MASONRY if any(word in kind for word in _MASONRY) else FOOTING_TOP
