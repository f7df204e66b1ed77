"""Plastic of basins and lids."""

from geometry.materials.kinds import Plastic
from geometry.sources import Source

ROWS = (
    Plastic(
        key="plastic",
        name="Polyethylene",
        source=Source("high-density polyethylene, 940 to 965 kg/m3", sure="memory"),
        density_kg_m3=950.0,
    ),
)
