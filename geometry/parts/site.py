"""What the place and the house over it ask of footing and floor, as far as it is known."""

from typing import Annotated, Literal

from pydantic import Field, StrictBool

from geometry.parts.fields import Clear, Record
from geometry.parts.measured import Measure

Termites = Literal["none", "slight", "moderate", "heavy", "very heavy"]


class Site(Record):
    """Figures of the local office; whatever is not given is asked for and not guessed.

    frost_depth: below the finished grade. termites: probability on the code's map. radon_vent:
    whether a pipe from the stone up through the roof is to draw off soil gas. stories: on the
    footing, above the basement. snow: ground snow load.
    """

    frost_depth: Clear | None = None
    termites: Termites | None = None
    radon_vent: StrictBool | None = None
    stories: Annotated[int | None, Field(ge=1, le=3)] = None
    snow: Annotated[float, Measure("pressure", "0", "300 psf")] | None = None
