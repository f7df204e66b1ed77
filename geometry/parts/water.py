"""Water that comes to this house: the rain it is held against, the ground's, the roof's."""

from typing import Annotated, Literal

from pydantic import Field

from geometry.parts.fields import Clear, Level, Record, Span
from geometry.parts.measured import Conductivity, Duration, Surface

StormName = Literal["SCS I", "SCS IA", "SCS II", "SCS III", "steady"]
RainDepth = Annotated[float, Span("0", "60 in", "4 in")]
Reach = Annotated[float, Span("1 ft", "3000 ft", "100 ft")]

DAY_S = 86400.0


class Water(Record):
    """What is known of the water; whatever is not given stays open and is said to be.

    storm, rain, duration: how the rain falls, its whole depth, how long (a day unless given).
    strip: width of the backfill, from the wall outward, whose rain gets in; unless given, all that
    was dug open at the top. share: part of that rain that soaks down to the drain, 0 to 1.
    roof: plan area whose downspouts wrongly end in the drain; none unless given.
    water_table: highest level seen, by name or against TOF. low_water_table: the lowest in a year;
    all that is reckoned goes by the highest. conductivity: of the ground; unless
    given, the range of the soil's group. tight_base: level of the tight ground under it; unless
    given, the underside of the drain stone. reach: how far from the drain the water table stands
    undisturbed; unless given, Sichardt's rule.
    """

    storm: StormName | None = None
    rain: RainDepth | None = None
    duration: Duration = DAY_S
    strip: Clear | None = None
    share: Annotated[float | None, Field(ge=0, le=1)] = None
    roof: Surface = 0.0
    water_table: Level | None = None
    low_water_table: Level | None = None
    conductivity: Conductivity | None = None
    tight_base: Level | None = None
    reach: Reach | None = None
