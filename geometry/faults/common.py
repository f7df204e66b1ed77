"""A fault at a path of the design, and small words for sentences."""

import math
from typing import NamedTuple

from geometry.faults.lines import Path
from geometry.units import (
    INCH,
    System,
    read_length,
    show_area,
    show_length,
    show_level,
    show_thickness,
)


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

    def least(self, metres: float) -> str:
        """A length rounded up, so that what the sentence asks for is enough."""
        step = INCH / 16 if self.system == "ft-in" else 0.001
        return self.size(math.ceil(metres / step - 1e-6) * step)

    def most(self, metres: float) -> str:
        """A length rounded down, so that what the sentence allows is not too much."""
        step = INCH / 16 if self.system == "ft-in" else 0.001
        return self.size(math.floor(metres / step + 1e-6) * step)

    def level(self, metres: float) -> str:
        """A level in words."""
        return show_level(metres, self.system)

    def area(self, square_metres: float) -> str:
        """An area in words."""
        return show_area(square_metres, self.system)

    def thickness(self, metres: float) -> str:
        """A thickness in words; sheets in mil."""
        return show_thickness(metres, self.system)

    def limit(self, text: str, up: bool) -> str:
        """A limit said in feet and inches, or in whole millimetres on the safe side."""
        if self.system == "ft-in":
            return text
        metres = read_length(text)
        if abs(metres) >= 10:
            return f"{metres:.1f} m"
        if abs(metres) < 0.01:
            return self.thickness(metres)
        return self.least(metres) if up else self.most(metres)

    def span(self, low: str, high: str) -> str:
        """Two limits in words."""
        return f"{self.limit(low, up=True)} to {self.limit(high, up=False)}"
