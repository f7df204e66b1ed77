"""Where a figure comes from, carried beside the figure."""

from dataclasses import dataclass
from typing import Literal

Sureness = Literal["seen", "second-hand", "memory", "computed", "practice"]

_SAID = {
    "seen": "",
    "second-hand": " (second-hand)",
    "memory": " (from memory, to be confirmed)",
    "computed": " (computed)",
    "practice": "",
}


@dataclass(frozen=True)
class Source:
    """A published place: title, edition, clause or table, and how sure we are of the figure."""

    title: str
    edition: str = ""
    clause: str = ""
    sure: Sureness = "seen"

    def __str__(self) -> str:
        """One line for a report."""
        place = ", ".join(filter(None, (self.title, self.edition, self.clause)))
        return place + _SAID[self.sure]


PRACTICE = Source("common practice, no source", sure="practice")
GEOMETRY = Source("plane and solid geometry", sure="computed")
