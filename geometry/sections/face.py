"""What a vertical cut shows: one labelled polygon set per solid."""

from dataclasses import dataclass

from shapely import MultiPolygon

from geometry.label import Label


@dataclass(frozen=True)
class CutLine:
    """A straight cut across the plan, from start to end, seen with the left hand towards start.

    start, end: (x, y) in metres. Distances along the cut run from start.
    """

    start: tuple[float, float]
    end: tuple[float, float]


@dataclass(frozen=True)
class CutFace:
    """The face a cut leaves in one solid: x = distance along the cut, y = level, both metres."""

    label: Label
    shape: MultiPolygon
