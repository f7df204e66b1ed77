"""Rules of the builder's own on how high the drain may lie."""

from geometry.parts.fields import Level, Name, Record
from geometry.rules.height_rule import DrainPoint, Sense


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
