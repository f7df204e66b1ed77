"""A rule that is one figure: at least, or at most."""

from dataclasses import dataclass
from math import inf

from geometry.sources import Source
from geometry.units import INCH

# What a tape is read to: nearer than this a size cannot be told from its limit.
MET_WITHIN_M = INCH / 16


@dataclass(frozen=True)
class Limit:
    """One figure that is asked for.

    key: the id of the finding where it is broken. title: what is asked, short. why: one sentence
    a builder understands. least, most: SI, lengths in metres. code: the code it stands in, which
    `[rules] sets` may leave out; empty for what holds anywhere.
    """

    key: str
    title: str
    why: str
    source: Source
    least: float = 0.0
    most: float = inf
    code: str = "irc"

    def met(self, value: float) -> bool:
        """Whether a size keeps to it, to the sixteenth of an inch; a ratio to as little."""
        return self.least - MET_WITHIN_M <= value <= self.most + MET_WITHIN_M
