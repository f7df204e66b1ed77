"""What pit and drain stone hold by level: prisms of the layout times the stone's porosity.

Counted is what surely fills with the pit: the basin's inside, and the drain stone from the
outlet's invert up, through the pipe that joins them. The room of the pipe counts as stone, and
stone under the floor is left out: both hold more, so the true rise is slower.
"""

from geometry.formulas.storage import StoneBed, Storage, pit_and_stone
from geometry.formulas.wet_well import round_pit_area
from geometry.layout.lay import Layout
from geometry.layout.sump import SumpLayout
from geometry.materials.catalogue import AGGREGATES


def stone_porosity(layout: Layout) -> float | None:
    """Return the drain stone's share of voids; None where it is not known, or without a drain."""
    drain = layout.drain
    return AGGREGATES[drain.drain.stone.material].porosity if drain else None


def storage(layout: Layout, pit: SumpLayout) -> Storage:
    """Return the water held from the basin's inside bottom to its rim, by level."""
    area = round_pit_area(pit.sump.diameter)
    return pit_and_stone(pit.floor, pit.rim, area, stone_beds(layout))


def stone_beds(layout: Layout) -> list[StoneBed]:
    """Return the drain stone that fills with the pit; none where its voids are not known."""
    porosity = stone_porosity(layout)
    if layout.drain is None or porosity is None or layout.lead is None:
        return []
    low, (stone, _) = layout.drain.outlet_invert, layout.drain_beds[layout.in_view]
    return [
        StoneBed(max(p.bottom, low), p.top, float(p.region.area), porosity)
        for p in stone.prisms
        if p.top > max(p.bottom, low) + 1e-9
    ]
