"""Faults of the water record: storms that do not exist, levels the water cannot have."""

from collections.abc import Iterator

from geometry.faults.common import At, Words
from geometry.faults.floors import far_faults, unknown_level
from geometry.formulas.scs_tables import TABLES
from geometry.formulas.storms import DAY, HOUR
from geometry.layout.areas import AreaLayout
from geometry.layout.ground import GroundLayout
from geometry.parts.water import Water


def storm_faults(water: Water) -> Iterator[At]:
    """Yield a length that an SCS storm cannot have: a day's middle part lies within its day."""
    if water.storm is None or water.storm == "steady" or water.duration == DAY:
        return
    peak = next(t.peak_h for kind, t in TABLES.items() if water.storm == f"SCS {kind}")
    most = int(2 * min(peak, 24 - peak))
    if water.duration > most * HOUR:
        yield At(
            ("water", "duration"),
            f"the storm {water.storm} lasts 24 h, or its middle part up to {most} h; "
            'write one of these, or storm = "steady"',
        )


def water_level_faults(
    water: Water, area: AreaLayout, land: GroundLayout, words: Words
) -> Iterator[At]:
    """Yield levels of water that are no levels, or that lie over the ground or under its base."""
    found: list[At] = []
    for key in ("water_table", "low_water_table", "tight_base"):
        at = getattr(water, key)
        if at is not None:
            found += unknown_level(("water", key), area, at)
            found += far_faults(("water", key), at, words)
    yield from found
    if found:
        return
    yield from _range_faults(water, area, words)
    if water.water_table is None:
        return
    table, ground = area.level(water.water_table), max(land.at_wall, land.existing)
    if table > ground + 1e-9:
        yield At(
            ("water", "water_table"),
            f"the water table at {words.level(table)} would stand over the ground at "
            f"{words.level(ground)}; check the sign and the datum",
        )
    if water.tight_base is not None and area.level(water.tight_base) >= table:
        yield At(
            ("water", "tight_base"),
            f"the tight ground at {words.level(area.level(water.tight_base))} is not below the "
            f"water table at {words.level(table)}; lower it or leave it out",
        )


def _range_faults(water: Water, area: AreaLayout, words: Words) -> Iterator[At]:
    """Yield a lowest water table without, or above, the highest."""
    if water.low_water_table is None:
        return
    path, low = ("water", "low_water_table"), area.level(water.low_water_table)
    if water.water_table is None:
        yield At(path, "the lowest water table stands alone; add water_table, the highest seen")
    elif low > area.level(water.water_table) + 1e-9:
        yield At(
            path,
            f"the lowest water table at {words.level(low)} lies above the highest at "
            f"{words.level(area.level(water.water_table))}; swap the two",
        )
