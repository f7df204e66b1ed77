"""This house's water in one: what comes, what carries it, how the pit rises, what floats."""

from dataclasses import dataclass
from functools import lru_cache

from geometry.layout.lay import Layout
from geometry.water.capacity import Capacities, capacities
from geometry.water.inflow import Inflow, inflow
from geometry.water.pit import PitStorm, pit_storm
from geometry.water.pumping import middle_flow
from geometry.water.store import stone_porosity
from geometry.water.uplift import Floating, floating, low_water_table, water_table


@dataclass(frozen=True, eq=False)
class Study:
    """Everything reckoned of the water; lacking: in words, what would have to be given for more.

    table_m, low_table_m: the year's highest and lowest water table against the project's TOF.
    """

    inflow: Inflow | None
    capacities: Capacities | None
    pit: PitStorm | None
    floating: tuple[Floating, ...]
    table_m: float | None
    low_table_m: float | None
    lacking: tuple[str, ...]


@lru_cache(maxsize=8)
def study(layout: Layout) -> Study:
    """Return the study of a laid-out design's water."""
    coming = inflow(layout)
    carried = capacities(layout, coming.peak_m3s if coming else None)
    pit = pit_storm(layout, coming)
    return Study(
        coming, carried, pit, floating(layout), water_table(layout), low_water_table(layout),
        tuple(_lacking(layout, coming)),
    )  # fmt: skip


def _lacking(layout: Layout, coming: Inflow | None) -> list[str]:
    if coming is None:
        return []
    found = list(coming.lacking)
    if layout.sump is None:
        return found
    if layout.sump.sump.pump is None:
        found.append("the pump (sump.pump)")
    elif middle_flow(layout.sump) is None:
        found.append("the pump's flow (sump.pump.flow, or curve and lift)")
    if stone_porosity(layout) is None:
        found.append("the drain stone's voids (another stone)")
    return found
