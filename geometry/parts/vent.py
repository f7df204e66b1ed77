"""The vent pipe for soil gas (radon): from the stone up through the slab."""

from typing import Annotated

from geometry.parts.fields import Name, PlanPoint, Record, Span
from geometry.units import INCH


class Vent(Record):
    """A pipe that stands in the floor's stone and goes on up through the roof.

    at: its middle on the plan. area: whose floor it passes; the lowest unless given. pipe: of the
    catalogue, 3 or 4 in. stub: how far it is set above the finished floor before the house goes on.
    """

    at: PlanPoint
    area: Name = ""
    pipe: Name = "sch40-3"
    stub: Annotated[float, Span("2 in", "8 ft", "12 in")] = 12 * INCH
