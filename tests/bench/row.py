"""One line of a table of timings, and one curve of times against a size."""

from dataclasses import dataclass
from math import log

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

    @property
    def held(self) -> str:
        """The aim and whether it is met; nothing without one."""
        if self.aim is None:
            return ""
        met = self.value >= self.aim if self.at_least else self.value <= self.aim
        sign = ">=" if self.at_least else "<="
        return f"aim {sign} {self.aim:g}: {'met' if met else 'NOT MET'}"

    def __str__(self) -> str:
        """The line as printed."""
        return f"{self.what:<58}{self.value:>10.2f} {self.unit:<5}{self.held:<24}{self.note}"


@dataclass(frozen=True)
class Curve:
    """Best milliseconds, and peak memory of a fresh process in MB, for each size of one thing."""

    what: str
    sizes: tuple[int, ...]
    ms: tuple[float, ...]
    mb: tuple[float, ...]

    def __str__(self) -> str:
        """The curve as printed, one size a line."""
        rows = zip(self.sizes, self.ms, self.mb, strict=True)
        lines = [f"  {size:>8,} {ms:>10.1f} ms {mb:>8.0f} MB" for size, ms, mb in rows]
        return "\n".join([f"against {self.what}; last step grows as n^{self.power:.2f}", *lines])

    @property
    def power(self) -> float:
        """Power of the size that the time grows with over the last step; 1 is linear."""
        return log(self.ms[-1] / self.ms[-2]) / log(self.sizes[-1] / self.sizes[-2])
