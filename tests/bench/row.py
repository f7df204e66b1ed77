"""What a bench tells: a figure, a figure beside a peer's, a curve against a size."""

from dataclasses import dataclass
from itertools import zip_longest
from math import log

MS = 1000.0
Ms = tuple[float, float, float]


@dataclass(frozen=True)
class Row:
    """One figure: what, its value (a time is a median), the aim it is held against, its spread."""

    what: str
    value: float
    unit: str = "ms"
    aim: float | None = None
    at_least: bool = False
    note: str = ""
    least: float | None = None
    most: float | None = None

    @property
    def met(self) -> bool:
        """Whether the aim is met; true without one."""
        if self.aim is None:
            return True
        return self.value >= self.aim if self.at_least else self.value <= self.aim

    @property
    def held(self) -> str:
        """The aim and whether it is met; nothing without one."""
        if self.aim is None:
            return ""
        return f"{self.aimed}: {'met' if self.met else 'NOT MET'}"

    @property
    def aimed(self) -> str:
        """The aim; nothing without one."""
        if self.aim is None:
            return ""
        return f"{'≥' if self.at_least else '≤'} {self.aim:g} {self.unit}"

    @property
    def figure(self) -> str:
        """The value with its unit."""
        return shown(self.value, self.unit)

    @property
    def spread(self) -> str:
        """The least and the greatest; nothing where it was measured once."""
        if self.least is None or self.most is None or self.least == self.most:
            return ""
        return f"{shown(self.least, self.unit)} to {shown(self.most, self.unit)}"

    def __str__(self) -> str:
        """The line as printed."""
        return f"{self.what:<64}{self.figure:>10}  {self.spread:<22}{self.held:<20} {self.note}"


@dataclass(frozen=True)
class Beside:
    """The same work done by the engine and by a peer, in turns in one process.

    own, theirs: least, median and greatest milliseconds; the peer's are empty where its result is
    wrong and it is not timed. result: how far the two results agree. aim: how many times the
    engine's time the peer's shall be.
    """

    what: str
    peer: str
    own: Ms
    theirs: Ms | tuple[()]
    result: str
    aim: float | None = None

    @property
    def ratio(self) -> float | None:
        """The peer's median over the engine's; None where the peer is not timed."""
        return self.theirs[1] / self.own[1] if self.theirs else None

    @property
    def times(self) -> str:
        """The ratio as told, with its aim."""
        if self.ratio is None:
            return "not timed"
        return Row("", self.ratio, "x").figure + (f" ({self.row.held})" if self.aim else "")

    @property
    def row(self) -> Row:
        """The ratio as a figure with an aim."""
        what = f"{self.what}: times as fast as {self.peer}"
        return Row(what, self.ratio or 0.0, "x", self.aim, at_least=True)

    def __str__(self) -> str:
        """The line as printed."""
        theirs = shown(self.theirs[1]) if self.theirs else "-"
        return (
            f"{self.what:<64}{shown(self.own[1]):>10}  {self.peer} {theirs}: {self.times}; "
            f"{self.result}"
        )


@dataclass(frozen=True)
class Curve:
    """Least milliseconds, and peak memory of a fresh process in MB, for each size of one thing.

    work: what is timed; what: the thing whose number grows. mb: empty where it was not measured.
    """

    work: str
    what: str
    sizes: tuple[int, ...]
    ms: tuple[float, ...]
    mb: tuple[float, ...]

    def __str__(self) -> str:
        """The curve as printed, one size a line."""
        rows = zip_longest(self.sizes, self.ms, self.mb, fillvalue=0.0)
        lines = [f"  {size:>8,.0f} {ms:>10.1f} ms {mb:>8.0f} MB" for size, ms, mb in rows]
        return "\n".join([f"{self.work} against {self.what}: grows as n^{self.power:.2f}", *lines])

    @property
    def power(self) -> float:
        """Power of the size that the time grows with, fitted to the three largest; 1 is linear."""
        x = [log(size) for size in self.sizes[-3:]]
        y = [log(ms) for ms in self.ms[-3:]]
        mx, my = sum(x) / len(x), sum(y) / len(y)
        over = sum((a - mx) * (b - my) for a, b in zip(x, y, strict=True))
        return over / sum((a - mx) ** 2 for a in x)


def shown(value: float, unit: str = "ms") -> str:
    """Return a figure with three digits and the unit that suits it."""
    size, unit = _suiting(value, unit)
    return f"{_digits(value * size)} {unit}".strip()


def ranged(times: Ms) -> str:
    """Return a median, and least to greatest after it, in one unit that suits it."""
    size, unit = _suiting(times[1], "ms")
    least, middle, most = (_digits(ms * size) for ms in times)
    # A figure and its unit stay on one line.
    return f"{middle}\u00a0{unit} ({least}–{most})"


def _suiting(value: float, unit: str) -> tuple[float, str]:
    if unit == "ms" and value >= MS:
        return 1 / MS, "s"
    if unit in ("ms", "s") and 0 < value < 0.1:
        return MS, {"ms": "µs", "s": "ms"}[unit]
    return 1.0, unit


def _digits(value: float) -> str:
    return f"{value:,.{0 if value >= 100 else 1 if value >= 10 else 2}f}"
