"""What the floor's heat is reckoned by: temperatures, the ground, the walls, rooms without heat."""

from typing import Annotated, Any

from pydantic import BeforeValidator, Field

from geometry.parts.fields import Name, Record
from geometry.parts.warm import Conducted, Resistance, Temperature
from geometry.rules.energy import Zone


def _zone(value: Any) -> Any:
    """Read `5A` as zone 5: moist or dry makes no difference to what is asked of floors."""
    text = str(value).strip().upper() if isinstance(value, str | int) else value
    return text[:1] if isinstance(text, str) and text[1:] in {"A", "B"} else text


class Climate(Record):
    """Inside and outside, and what keeps the heat besides the floor.

    inside, outside: temperatures; outside the year's mean for a year's heat. Without both the loss
    is told for each degree alone. ground_conductivity: of the ground; unless given, by the
    soil's group. zone: of the energy code, such as 5A or 4C. wall_resistance: of what insulates
    the basement's walls; nothing unless given. unheated: names of areas that are not heated.
    """

    inside: Temperature | None = None
    outside: Temperature | None = None
    ground_conductivity: Conducted | None = None
    wall_resistance: Resistance | None = None
    zone: Annotated[Zone | None, BeforeValidator(_zone)] = None
    unheated: Annotated[tuple[Name, ...], Field(max_length=20)] = ()
