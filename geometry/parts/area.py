"""An area of the house: an outline with its own top of footing, footing, wall, floor and piers."""

from typing import Annotated

from pydantic import Field

from geometry.parts.fields import Name, PlanPoint, Record, Step
from geometry.parts.floor import Floor
from geometry.parts.footing import Footing, Wall
from geometry.parts.pier import Pier


class Area(Record):
    """A simple polygon: the outside face of the foundation wall, in order round the house.

    step: this area's top of footing above the project's. Footing, wall and floor follow the
    house's unless the area states its own.
    """

    name: Name
    corners: Annotated[tuple[PlanPoint, ...], Field(min_length=3, max_length=400)]
    step: Step = 0.0
    footing: Footing | None = None
    wall: Wall | None = None
    floor: Floor | None = None
    piers: Annotated[tuple[Pier, ...], Field(max_length=200)] = Field((), alias="pier")
