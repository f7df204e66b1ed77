"""Paper sizes, and a drawing: marks on one sheet of paper."""

from dataclasses import dataclass
from typing import Literal

from viz.drawing.marks import Mark

PaperName = Literal["ARCH D", "ARCH C", "ANSI B", "letter", "A1", "A3", "A4"]


@dataclass(frozen=True)
class Paper:
    """A sheet laid on its long side: width, height and border in mm, and its size in words."""

    name: str
    width: float
    height: float
    border: float
    size: str


# ARCH and letter sizes are whole inches; A sizes are those of ISO 216.
PAPERS: dict[PaperName, Paper] = {
    "ARCH D": Paper("ARCH D", 914.4, 609.6, 15.0, "36 × 24 in"),
    "ARCH C": Paper("ARCH C", 609.6, 457.2, 12.0, "24 × 18 in"),
    "ANSI B": Paper("ANSI B", 431.8, 279.4, 9.0, "17 × 11 in"),
    "letter": Paper("Letter", 279.4, 215.9, 8.0, "11 × 8.5 in"),
    "A1": Paper("A1", 841.0, 594.0, 15.0, "841 × 594 mm"),
    "A3": Paper("A3", 420.0, 297.0, 9.0, "420 × 297 mm"),
    "A4": Paper("A4", 297.0, 210.0, 8.0, "297 × 210 mm"),
}


@dataclass(frozen=True)
class Box:
    """An upright rectangle on paper, mm."""

    left: float
    low: float
    right: float
    high: float

    @property
    def width(self) -> float:
        """Width in mm."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Height in mm."""
        return self.high - self.low

    def overlaps(self, other: "Box") -> bool:
        """Tell whether the two share some area."""
        across = self.left < other.right and other.left < self.right
        return across and self.low < other.high and other.low < self.high


@dataclass(frozen=True)
class Drawing:
    """One sheet: its size in mm, its title, the ratio it is drawn at and its marks."""

    width: float
    height: float
    title: str
    ratio: float
    marks: tuple[Mark, ...]
