"""How stiffly soil beside a buried pipe holds it: E', by kind of soil and compaction."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

from geometry.materials.kinds import ReactionClass
from geometry.sources import Source
from geometry.units import to_unit

Compaction = Literal["dumped", "slight", "moderate", "high"]
"""Dumped; under 85 %; 85 to 95 %; above 95 % of the standard Proctor density."""

COMPACTIONS: tuple[Compaction, ...] = ("dumped", "slight", "moderate", "high")

HOWARD = Source(
    "Bureau of Reclamation REC-ERC-77-01 (Howard)",
    "1977",
    "E' table; its range 0 to 3000 psi seen, the rows",
    sure="memory",
)

_PSI: dict[ReactionClass, tuple[float, float, float, float]] = {
    "crushed rock": (1000, 3000, 3000, 3000),
    "clean coarse": (200, 1000, 2000, 3000),
    "coarse with fines": (100, 400, 1000, 2000),
    "lean fine": (50, 200, 400, 1000),
    "none": (0, 0, 0, 0),
}
REACTION_PA: Mapping[ReactionClass, Mapping[Compaction, float]] = MappingProxyType(
    {
        soil: MappingProxyType(
            {
                compaction: to_unit(psi, "psi", "Pa")
                for compaction, psi in zip(COMPACTIONS, row, strict=True)
            }
        )
        for soil, row in _PSI.items()
    }
)
"""E' in Pa. "lean fine" is ML or CL with less than a quarter coarse; sandier ones count as
"coarse with fines". "none" is fat or organic soil (CH, MH, OL): the table has no figure, none may
be counted on."""

ACCURACY: Mapping[Compaction, float] = MappingProxyType(
    {"dumped": 0.02, "slight": 0.02, "moderate": 0.01, "high": 0.005}
)
"""How far the measured deflection strayed from that with E', as a share of the diameter."""


def reaction_modulus(soil: ReactionClass, compaction: Compaction) -> float:
    """Return E' in Pa; 0 where the soil may not be counted on."""
    return REACTION_PA[soil][compaction]
