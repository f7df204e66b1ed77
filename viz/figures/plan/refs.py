"""What a plan points to on other sheets: cutting lines and details."""

from dataclasses import dataclass


@dataclass(frozen=True)
class SectionRef:
    """A cutting line on the plan, the drawing it leads to, and the sheet that drawing is on.

    points: two or more (x, y) in metres; jogs where there are more. The drawing looks to the left
    of the way from the first point to the last.
    """

    points: tuple[tuple[float, float], ...]
    number: str
    sheet: str


@dataclass(frozen=True)
class DetailRef:
    """A circle round a place of the plan, metres, the detail it leads to, and that one's sheet."""

    at: tuple[float, float]
    radius_m: float
    number: str
    sheet: str
