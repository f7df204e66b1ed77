"""Which known sets of rules count for a job, and the builder's own on the drain's height."""

from typing import Annotated, Literal

from pydantic import Field

from geometry.parts.fields import Level, Name, Record
from geometry.rules.height_rule import DrainPoint, Sense

RuleSetName = Literal[
    "irc", "ibc", "canada", "din", "wayne", "henrico", "veterans",
    "irc-2012", "irc-2018", "irc-2021", "irc-2024",
]  # fmt: skip
"""Keys of the known rule sets that a job can be held to."""


class OwnRule(Record):
    """A rule of the local office or of the builder: a point of the drain against a level.

    point: which point of the drain. at: on which side of the level it must lie, everywhere along
    the drain. level: a level of the drained area. why: who asks it, and where it is written.
    """

    name: Name
    point: DrainPoint
    at: Sense
    level: Level
    why: Name = ""


class Rules(Record):
    """Which known sets of rules on drain, footing, wall and floor this job is held to.

    sets: their names; an edition, such as irc-2021, brings its code along. Without any, all that
    are not of one town or agency, and all editions. Other sets are shown beside them and bring no
    finding; the design's own rules and the footing's bearing always count.
    """

    sets: Annotated[tuple[RuleSetName, ...], Field(max_length=20)] = ()

    @property
    def codes(self) -> frozenset[str]:
        """The names, and the codes whose editions are named."""
        return frozenset(self.sets) | {name.split("-")[0] for name in self.sets}
