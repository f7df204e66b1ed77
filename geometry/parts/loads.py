"""What presses on the drain's pipe and on the walls besides their fill."""

from typing import Annotated

from geometry.formulas.buried_pipe import USUAL_LIMIT
from geometry.materials.reaction import Compaction
from geometry.parts.fields import Record
from geometry.parts.graded import Share
from geometry.parts.measured import Measure

Wheel = Annotated[float, Measure("force", "0", "40000 lbf")]
Surcharge = Annotated[float, Measure("pressure", "0", "2000 psf")]
FlattenedShare = Annotated[float, Share("1 %", "10 %")]


class Loads(Record):
    """Loads on the ground, and how the drain's pipe is bedded against them; newtons, pascals.

    bedding: how the stone beside the pipe is worked in: dumped, or tamped to under 85 % (slight),
    85 to 95 % (moderate), above 95 % (high) of the standard Proctor density. wheel: one that can
    drive over the drain; none unless given. surcharge: an even load on the ground outside, over
    the drain and beside the outer walls. deflection_limit: the most the pipe may flatten, as a
    share of its diameter.
    """

    bedding: Compaction = "dumped"
    wheel: Wheel = 0.0
    surcharge: Surcharge = 0.0
    deflection_limit: FlattenedShare = USUAL_LIMIT
