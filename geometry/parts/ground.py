"""Excavation, backfill, the soil and the finished grade."""

from typing import Annotated

from pydantic import Field, StrictBool

from geometry.parts.fields import Clear, Fall, LevelValue, Name, Record, Small
from geometry.parts.graded import SieveShare
from geometry.units import FOOT


class Excavation(Record):
    """The hole: working space beside the footing, slope of its sides, level of the ground before.

    slope: metres outward per metre up (1.0 is 45 degrees). existing: against the project's TOF;
    unless given, the finished grade meets the ground at the far end of its fall.
    """

    working_space: Clear = 2 * FOOT
    slope: float = Field(1.0, ge=0, le=3)
    existing: LevelValue | None = None


class BackfillState(Record):
    """What holds the walls on the day the fill goes in, true or false; not known unless said.

    deck: the floor above is on and fixed. slab: the floor's slab is in. braced: by braces inside.
    """

    deck: StrictBool | None = None
    slab: StrictBool | None = None
    braced: StrictBool | None = None

    @property
    def said(self) -> bool:
        """Whether anything is said of it."""
        return any(known is not None for known in (self.deck, self.slab, self.braced))


class Backfill(Record):
    """What goes back against the wall: washed stone of a width up to a level, else soil.

    stone_top: against the project's TOF; none unless given. material: the soil dug unless given.
    water_depth: of the water under the fill's top, in the case in which the drain has failed.
    state: what holds the walls on the day of backfill.
    """

    stone_width: Small = 1 * FOOT
    stone_top: LevelValue | None = None
    stone: Name = "stone-57"
    material: Name = ""
    water_depth: Clear = 0.0
    state: BackfillState = BackfillState()


class Soil(Record):
    """The undisturbed ground, by Unified Soil Classification group where known.

    grading: of a sample, sieves with the share of its mass that passes them, in any order.
    """

    group: Name = "unknown"
    grading: Annotated[tuple[SieveShare, ...], Field(max_length=40)] = ()
    note: str = ""


class Delivered(Record):
    """A stone's or sand's own grading, as tested: it stands for its standard's band.

    material: the catalogue's stone or sand it was delivered as. sieves: with the share of its mass
    that passes them, in any order.
    """

    material: Name
    sieves: Annotated[tuple[SieveShare, ...], Field(max_length=40)]


class Grade(Record):
    """Finished grade: level at the wall against the project's TOF, and its fall from the house.

    at_wall: unless given, 8 in below the top of the lowest area's wall.
    """

    at_wall: LevelValue | None = None
    fall: Fall = 0.05
    fall_length: Clear = 10 * FOOT
