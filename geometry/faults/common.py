"""A fault at a path of the design, and small words for sentences."""

from typing import NamedTuple

from geometry.faults.places import Path
from geometry.units import System, show_length, show_level


class At(NamedTuple):
    """A fault still without its line: path in the file, and the sentence."""

    path: Path
    sentence: str


class Words:
    """Lengths and levels in the design's own units."""

    def __init__(self, system: System) -> None:
        """Keep the system of units."""
        self.system: System = system

    def size(self, metres: float) -> str:
        """A length in words."""
        return show_length(metres, self.system)

    def level(self, metres: float) -> str:
        """A level in words."""
        return show_level(metres, self.system)
