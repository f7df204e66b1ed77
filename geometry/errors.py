"""The few errors, each a sentence a builder can act on."""

from dataclasses import dataclass


class BedcourseError(Exception):
    """Anything the user can put right; its text is one clear sentence."""


class LengthError(BedcourseError):
    """A length, fall or angle that cannot be read."""


@dataclass(frozen=True)
class Fault:
    """One thing wrong in a design file: where it is, and what is wrong and would be right."""

    place: str
    sentence: str
    line: int | None = None

    def __str__(self) -> str:
        """Line, place and sentence in one line."""
        where = f"line {self.line}, {self.place}" if self.line else self.place
        return f"{where}: {self.sentence}"


class DesignError(BedcourseError):
    """A design that cannot be built, with all its faults at once."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        """Keep the faults; the text lists one a line."""
        self.faults = faults
        super().__init__("\n".join(map(str, faults)))
