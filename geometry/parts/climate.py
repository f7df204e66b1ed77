"""What the floor's heat is reckoned by: temperatures, the ground, the walls, rooms without heat."""

from typing import Annotated

from pydantic import Field

from geometry.parts.fields import Name, Record
from geometry.parts.warm import Conducted, Resistance, Temperature


class Climate(Record):
    """Inside and outside, and what keeps the heat besides the floor.

    inside, outside: temperatures; outside the year's mean for a year's heat. Without both the loss
    is told for each degree alone. ground_conductivity: of the ground; unless given, by the
    soil's group. wall_resistance: of what insulates the basement's walls; nothing unless given.
    unheated: names of areas that are not heated.
    """

    inside: Temperature | None = None
    outside: Temperature | None = None
    ground_conductivity: Conducted | None = None
    wall_resistance: Resistance | None = None
    unheated: Annotated[tuple[Name, ...], Field(max_length=20)] = ()
