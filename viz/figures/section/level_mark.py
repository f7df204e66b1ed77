"""A level to be marked on a section."""

from dataclasses import dataclass


@dataclass(frozen=True)
class LevelMark:
    """A named level: metres against the project's top of footing, and as project elevation."""

    name: str
    level_m: float
    elevation_m: float | None = None
