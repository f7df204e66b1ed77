"""What presses on the drain's pipe, on the walls besides their fill, and on the floor."""

from typing import Annotated

from geometry.formulas.buried_pipe import USUAL_LIMIT
from geometry.materials.reaction import Compaction
from geometry.parts.fields import Record, Span
from geometry.parts.graded import Share
from geometry.parts.measured import Measure
from geometry.units import INCH

Wheel = Annotated[float, Measure("force", "0", "40000 lbf")]
Surcharge = Annotated[float, Measure("pressure", "0", "2000 psf")]
Point = Annotated[float, Measure("force", "0", "40000 lbf")]
Footprint = Annotated[float, Span("1/2 in", "4 ft", "4 1/2 in")]
FlattenedShare = Annotated[float, Share("1 %", "10 %")]


class Loads(Record):
    """Loads on the ground, and how the drain's pipe is bedded against them; newtons, pascals.

    bedding: how the stone beside the pipe is worked in: dumped, or tamped to under 85 % (slight),
    85 to 95 % (moderate), above 95 % (high) of the standard Proctor density. wheel: one that can
    drive over the drain; none unless given. surcharge: an even load on the ground outside, over
    the drain and beside the outer walls. deflection_limit: the most the pipe may flatten, as a
    share of its diameter.
    floor: an even live load on the floor; unless given, that of rooms. point: one that stands on a
    small square of the slab, a post or a wheel; none unless given. point_side: of that square.
    """

    bedding: Compaction = "dumped"
    wheel: Wheel = 0.0
    surcharge: Surcharge = 0.0
    deflection_limit: FlattenedShare = USUAL_LIMIT
    floor: Surcharge | None = None
    point: Point = 0.0
    point_side: Footprint = 4.5 * INCH
