"""Heating tubes: sizes by their standard, how tight they bend, how long a loop is usual."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from geometry.sources import PRACTICE, Source
from geometry.units import FOOT, INCH

BEND_TIMES = 8
"""Least radius of a bend, in outside diameters of the tube, source BEND_SOURCE."""

BEND_SOURCE = Source(
    "Modern Plumbing", "2010", "figure 20-23: 8 times the outside diameter, 5 in for 1/2 in"
)
LOOP_SOURCE = PRACTICE
_F876 = Source("ASTM F876", clause="table of dimensions, SDR 9", sure="memory")
_EN15875 = Source("EN ISO 15875-2", clause="table of dimensions", sure="memory")


@dataclass(frozen=True)
class Tube:
    """One size. outside, wall: metres. loop: longest that is usual, metres (LOOP_SOURCE)."""

    key: str
    name: str
    outside: float
    wall: float
    loop: float
    source: Source

    @property
    def bend(self) -> float:
        """Least radius of a bend to the tube's middle, metres."""
        return BEND_TIMES * self.outside


_ROWS = (
    Tube("pex-3/8", "PEX tube, 3/8 in", 0.500 * INCH, 0.070 * INCH, 200 * FOOT, _F876),
    Tube("pex-1/2", "PEX tube, 1/2 in", 0.625 * INCH, 0.070 * INCH, 300 * FOOT, _F876),
    Tube("pex-5/8", "PEX tube, 5/8 in", 0.750 * INCH, 0.083 * INCH, 400 * FOOT, _F876),
    Tube("pex-3/4", "PEX tube, 3/4 in", 0.875 * INCH, 0.097 * INCH, 500 * FOOT, _F876),
    Tube("pex-16", "PEX tube, 16 x 2 mm", 0.016, 0.002, 90.0, _EN15875),
    Tube("pex-20", "PEX tube, 20 x 2 mm", 0.020, 0.002, 120.0, _EN15875),
)
TUBES: Mapping[str, Tube] = MappingProxyType({row.key: row for row in _ROWS})
