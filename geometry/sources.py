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


# Signs in a printed source of how sure it is, the least sure first, and what each means.
_SURE = (
    ("from memory", "from memory, to be confirmed against the text"),
    ("(second-hand)", "second-hand, as told by others who read the text"),
    ("no source", "common practice, without a published source"),
    ("(computed)", "computed"),
)


def how_sure(printed: str) -> str:
    """Return how sure a printed source is, in words; of several joined, what the weakest is."""
    said = next((words for sign, words in _SURE if sign in printed), "")
    if not said:
        return "read in the place named"
    return f"in part {said}" if "; " in printed else said


PRACTICE = Source("common practice, no source", sure="practice")
GEOMETRY = Source("plane and solid geometry", sure="computed")
