"""How the bands of thickness look and what they say.

From yellow to blue, darker with every step: the order holds for eyes that do not tell colours
apart and in a grey copy; what must be put right is hatched besides.
"""

from dataclasses import dataclass

from geometry.survey.bands import Band, Meaning
from geometry.units import System
from viz.style.materials import HatchName
from viz.tables.survey_tables import thick

HATCH_INK = "#5a4a12"
EDGE = "#5f6468"
WATER = "#1f5f8b"


@dataclass(frozen=True)
class BandLook:
    """Tint, hatch where there is one, and what the band means."""

    fill: str
    hatch: HatchName | None
    words: str


LOOKS: dict[Meaning, BandLook] = {
    "none": BandLook("#fff6d2", "cross", "ground over the top of the base: cut"),
    "thin": BandLook("#fbe8a4", "diagonal", "thinner than the least: cut"),
    "high": BandLook("#f0d98a", None, "ground high, base still thick enough"),
    "rather high": BandLook("#cfcf9f", None, "a little high, within the tolerance"),
    "rather low": BandLook("#abbcb8", None, "a little low, within the tolerance"),
    "low": BandLook("#86a8c2", None, "ground low: more base"),
    "deep": BandLook("#5f8aba", None, "ground far too low: fill"),
}


def span_words(band: Band, system: System) -> str:
    """Return the thicknesses of a band: `4" to 5 1/4"`, `under 4"`, `none`."""
    low, high = (None if x is None else thick(x, system) for x in (band.low, band.high))
    if band.meaning == "none":
        return "none"
    if high is None:
        return f"over {low}"
    return f"under {high}" if band.meaning == "thin" else f"{low} to {high}"
