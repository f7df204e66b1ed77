"""Shots: places and levels read off the site, and what is wrong with a file of them."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any, Literal

import numpy as np
from numpy.typing import NDArray

from geometry.errors import BedcourseError

Floats = NDArray[np.float64]
Ints = NDArray[np.integer[Any]]
Marks = NDArray[np.bool_]

Kind = Literal["ground", "footing", "pad"]
Weight = Literal["file", "row", "doubt", "note"]

# Of one kind of fault no more than this are said one by one.
MOST_SAID = 20


class SurveyError(BedcourseError):
    """Shots that make no surface."""


@dataclass(frozen=True)
class ShotFault:
    """One thing wrong with a file of shots; row: its line in the file, where one is meant.

    weight: "file": nothing can be read; "row": that row is left out; "doubt": it is used, but
    looks wrong; "note": what was done with it.
    """

    sentence: str
    row: int | None = None
    weight: Weight = "row"

    def __str__(self) -> str:
        """Row and sentence in one line."""
        return self.sentence if self.row is None else f"row {self.row}: {self.sentence}"


@dataclass(frozen=True)
class What:
    """What a shot stands on: the ground, the top of a footing, or a pier's pad by name."""

    kind: Kind
    pad: str = ""

    def __str__(self) -> str:
        """As it stands in the file."""
        return f"pad {self.pad}" if self.kind == "pad" else self.kind


GROUND, FOOTING = What("ground"), What("footing")


@dataclass(frozen=True, eq=False)
class Shots:
    """n shots. x, y: (n,) metres on the plan. level: (n,) metres against the project's TOF.

    row: (n,) line of each in its file. code: (n,) index into `whats`. names: (n,) or none.
    """

    x: Floats
    y: Floats
    level: Floats
    row: Ints
    code: Ints
    whats: tuple[What, ...] = (GROUND,)
    names: tuple[str, ...] = ()
    faults: tuple[ShotFault, ...] = ()

    def __len__(self) -> int:
        """Count of shots."""
        return len(self.x)

    def of(self, kind: Kind) -> Ints:
        """Return the indices of the shots on one kind of thing."""
        codes = [n for n, what in enumerate(self.whats) if what.kind == kind]
        if len(codes) == len(self.whats):
            return np.arange(len(self))
        return np.flatnonzero(np.isin(self.code, codes))

    def name(self, index: int) -> str:
        """Return a shot's name: its own, or its row's number."""
        own = self.names[index] if self.names else ""
        return own.strip() or str(self.row[index])

    def kept(self, keep: Marks, faults: Sequence[ShotFault]) -> "Shots":
        """Return the marked shots alone, with faults added."""
        said = (*self.faults, *faults)
        if bool(keep.all()):
            return replace(self, faults=said)
        names = tuple(n for n, k in zip(self.names, keep.tolist(), strict=False) if k)
        return Shots(
            self.x[keep], self.y[keep], self.level[keep], self.row[keep], self.code[keep],
            self.whats, names, said,
        )  # fmt: skip


def ground_shots(x: Floats, y: Floats, level: Floats) -> Shots:
    """Return shots of the ground alone, numbered from 1; (n,) each, metres."""
    count = len(x)
    return Shots(x, y, level, np.arange(1, count + 1), np.zeros(count, np.int64))


def no_shots(faults: Sequence[ShotFault]) -> Shots:
    """Return no shots, and why."""
    none = np.zeros(0)
    return Shots(none, none, none, np.zeros(0, np.int64), np.zeros(0, np.int64), (), (),
                 tuple(faults))  # fmt: skip


def some(faults: Sequence[ShotFault], what: str) -> list[ShotFault]:
    """Return the first of many like faults, and how many more there are."""
    rest = len(faults) - MOST_SAID
    if rest <= 1:  # One more takes no more room than its count.
        return list(faults)
    more = ShotFault(f"... and {rest:,} more rows {what}", weight=faults[0].weight)
    return [*faults[:MOST_SAID], more]
