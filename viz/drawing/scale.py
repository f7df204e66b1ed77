"""Named scales, from the greatest down."""

from dataclasses import dataclass

from geometry.errors import BedcourseError
from geometry.units import System


@dataclass(frozen=True)
class Scale:
    """A scale by its name on the sheet; one mm on paper is `ratio` mm of the job."""

    name: str
    ratio: int

    @property
    def per_metre(self) -> float:
        """Millimetres of paper for one metre of the job."""
        return 1000 / self.ratio


SCALES: dict[System, tuple[Scale, ...]] = {
    "ft-in": (
        Scale('3" = 1\'-0"', 4),
        Scale('1 1/2" = 1\'-0"', 8),
        Scale('1" = 1\'-0"', 12),
        Scale('3/4" = 1\'-0"', 16),
        Scale('1/2" = 1\'-0"', 24),
        Scale('3/8" = 1\'-0"', 32),
        Scale('1/4" = 1\'-0"', 48),
        Scale('3/16" = 1\'-0"', 64),
        Scale('1/8" = 1\'-0"', 96),
        Scale('3/32" = 1\'-0"', 128),
        Scale('1/16" = 1\'-0"', 192),
        Scale('1" = 20\'-0"', 240),
        Scale('1" = 40\'-0"', 480),
    ),
    "metric": tuple(Scale(f"1:{ratio}", ratio) for ratio in (5, 10, 20, 25, 50, 100, 200, 500)),
}


def named_scale(name: str, system: System) -> Scale:
    """Return the scale of this name. Raises BedcourseError for a name not in the list."""
    for scale in SCALES[system]:
        if scale.name == name:
            return scale
    names = ", ".join(scale.name for scale in SCALES[system])
    raise BedcourseError(f"{name!r} is not a scale; choose one of: {names}")
