"""One line of a table of timings."""

from dataclasses import dataclass

MS = 1000.0


@dataclass(frozen=True)
class Row:
    """One line of the table: what, milliseconds or a ratio, and the aim it is held against."""

    what: str
    value: float
    unit: str = "ms"
    aim: float | None = None
    at_least: bool = False
    note: str = ""

    def __str__(self) -> str:
        """The line as printed."""
        aim = ""
        if self.aim is not None:
            met = self.value >= self.aim if self.at_least else self.value <= self.aim
            sign = ">=" if self.at_least else "<="
            aim = f"aim {sign} {self.aim:g}: {'met' if met else 'NOT MET'}"
        return f"{self.what:<58}{self.value:>10.2f} {self.unit:<5}{aim:<24}{self.note}"
