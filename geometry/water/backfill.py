"""What lies beside the wall and over the drain: its soil, and what that weighs."""

from geometry.formulas.constants import GRAVITY
from geometry.materials.catalogue import AGGREGATES, SOILS
from geometry.materials.kinds import Aggregate, Soil
from geometry.project import Design
from geometry.sources import Source
from geometry.units import to_unit

USUAL_WEIGHT = to_unit(120.0, "lbf/ft**3", "N/m**3")
"""Weight of fill over a pipe where its soil is not known, N/m3."""

USUAL_WEIGHT_SOURCE = Source("common practice, no source: 120 lb/ft3 of fill", sure="practice")


def ground_soil(design: Design) -> Soil:
    """Return the row of the undisturbed ground, that of unknown soil included."""
    return SOILS[design.soil.group]


def backfill(design: Design) -> Soil | Aggregate:
    """Return what goes back into the hole: the material named, else the soil dug."""
    key = design.backfill.material
    return AGGREGATES[key] if key in AGGREGATES else SOILS[key or design.soil.group]


def pushing_soil(design: Design) -> Soil:
    """Return the soil that pushes on the wall.

    Washed stone in the hole leans on the ground behind it, so the ground decides there.
    """
    row = backfill(design)
    return row if isinstance(row, Soil) else ground_soil(design)


def weight(row: Soil | Aggregate) -> float | None:
    """Return unit weight, N/m3: moist soil, or stone as laid loose; None for unknown soil."""
    if isinstance(row, Aggregate):
        return GRAVITY * (row.loose_density_low + row.loose_density_high) / 2
    return None if row.density_kg_m3 is None else GRAVITY * row.density_kg_m3


def saturated_weight(soil: Soil) -> float | None:
    """Return the middle of a soil's weights with its voids full of water, N/m3; None unknown."""
    if soil.saturated_density_kg_m3 is None:
        return None
    return GRAVITY * sum(soil.saturated_density_kg_m3) / 2
