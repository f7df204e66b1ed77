"""Tables of this house's water: what comes, what carries it, the pit over the storm, uplift."""

from collections.abc import Iterator

from geometry.measures import (
    show_conductivity,
    show_flow,
    show_intensity,
    show_time,
    show_water,
)
from geometry.units import (
    System,
    show_area,
    show_length,
    show_level,
    show_volume,
)
from geometry.water.capacity import PUMP, TO_PIT
from geometry.water.reported import (
    CapacityFigures,
    InflowFigures,
    PitFigures,
    WaterFigures,
)
from viz.tables.table import Cell, Table

FINDINGS = (
    "roof-in-drain", "pit-below-water-table", "pump-throws-peak", "pump-starts", "pump-dead",
    "floor-floats", "water-not-given",
)  # fmt: skip
"""Names of the findings that speak of water."""

_NOT_GIVEN = "not given"
_OPEN = "–"
Row = tuple[Cell, ...]


def inflow(water: WaterFigures, system: System) -> Table:
    """Return what comes to the drain at the storm's peak, and by what it was reckoned."""
    coming = water.inflow
    rows = list(_inflow(coming, system)) if coming else []
    return Table(("Water to the drain", "At the peak", "Reckoned by"), tuple(rows))


def _inflow(coming: InflowFigures, system: System) -> Iterator[Row]:
    share = coming.share_soaking_in
    strip = (
        f"{show_area(coming.strip_area_m2, system)} of backfill "
        f"({show_length(coming.strip_width_m, system)} wide)"
    )
    soaks = "share that soaks in not given" if share is None else f"{share:.0%} of it soaks in"
    yield "Rain through the backfill", _flow(coming.rain_m3_per_s, system), (
        f"{_rain(coming, system)}; {strip}, {soaks}"
    )  # fmt: skip
    yield "Ground's water", _ground(coming, system), _ground_by(coming, system)
    if coming.roof_area_m2:
        yield "Roof led in wrongly", _flow(coming.roof_m3_per_s, system), (
            f"all rain on {show_area(coming.roof_area_m2, system)}"
        )  # fmt: skip
    yield "In all, as far as known", _flow(coming.peak_m3_per_s, system), (
        "delay in the ground not counted"
    )  # fmt: skip


def _rain(coming: InflowFigures, system: System) -> str:
    if coming.rain_depth_m is None or coming.rain_duration_s is None:
        return "rain not given"
    return (
        f"{show_length(coming.rain_depth_m, system)} in {show_time(coming.rain_duration_s)}, "
        f"at most {show_intensity(coming.peak_intensity_m_per_s, system)}"
    )


def _ground(coming: InflowFigures, system: System) -> str:
    low, high = coming.ground_low_m3_per_s, coming.ground_high_m3_per_s
    if low is None:
        return _NOT_GIVEN
    if high is None:
        return f"{show_flow(low, system)} or more"
    if low == high:
        return show_flow(high, system)
    return f"{show_flow(low, system)} to {show_flow(high, system)}"


def _ground_by(coming: InflowFigures, system: System) -> str:
    k = coming.ground_conductivity_m_per_s
    if k is None or coming.ground_reach_m is None:
        return "water table or conductivity not given"
    speeds = " to ".join(show_conductivity(v) for v in dict.fromkeys(k) if v is not None)
    reach = show_length(coming.ground_reach_m, system)
    presumed = "; ".join(coming.ground_presumed)
    return f"Dupuit, {speeds}, reach {reach}" + (f"; {presumed}" if presumed else "")


def capacities(water: WaterFigures, system: System) -> Table:
    """Return what each element carries; the one that governs is named."""
    head = ("Element", "Carries", "Passes", "Allows in all", "Reckoned by")
    word = "governs" if _all_known(water) else "least known"
    rows = tuple(
        _capacity(row, word if row.element == water.governs else "", system)
        for row in water.capacities
    )
    return Table(head, rows)


def _all_known(water: WaterFigures) -> bool:
    """Tell whether everything the water must pass has its figure, a pit its pump."""
    line = {row.element: row.flow_m3_per_s for row in water.capacities if row.in_line}
    pumped = PUMP in line or TO_PIT not in line
    return pumped and None not in line.values()


def _capacity(row: CapacityFigures, word: str, system: System) -> Row:
    name = f"{row.element} ({word})" if word else row.element
    known = row.flow_m3_per_s is not None
    note = row.note if row.in_line else f"{row.note}; for comparison"
    return (
        name,
        show_flow(row.flow_m3_per_s or 0.0, system) if known else _OPEN,
        f"{row.share_of_inflow:.0%}",
        show_flow(row.allows_inflow_m3_per_s or 0.0, system) if known else _OPEN,
        note,
    )


def depths(water: WaterFigures, system: System) -> Table:
    """Return how deep the drain pipe runs at the peak."""
    rows = tuple(
        (
            f"Drain pipe, {row.roughness}",
            "runs over full, or lies level"
            if row.depth_m is None
            else show_length(row.depth_m, system),
            show_length(row.bore_m, system),
        )
        for row in water.depths
    )
    return Table(("At the peak", "Depth of water", "Inside of the pipe"), rows)


def pit(water: WaterFigures, system: System) -> Table:
    """Return the pit over the storm, with the pump and with it dead from the peak on."""
    rows = list(_pit(water.pit, system)) if water.pit else []
    return Table(("Pit over the storm", "Figure", "Level, from TOF"), tuple(rows))


def _pit(pit: PitFigures, system: System) -> Iterator[Row]:
    yield "Held from pit's bottom to rim", show_volume(pit.stored_to_rim_m3, system), ""
    if pit.stored_on_to_off_m3 is not None:
        held = pit.stored_on_to_off_m3
        yield "Held between pump on and off", show_water(held, system), ""
    yield "Pump throws", _flow(pit.pump_m3_per_s, system), ""
    if pit.highest_level_m is not None:
        yield "Highest water, pump working", "", show_level(pit.highest_level_m, system)
        yield "Starts in the busiest hour", str(pit.most_starts_in_an_hour), ""
    if pit.starts_per_hour_at_worst_inflow is not None:
        yield "Starts an hour at the worst inflow", f"{pit.starts_per_hour_at_worst_inflow:.0f}", ""
    for row in pit.pump_dead:
        when = "not in the storm and a day" if row.after_s is None else show_time(row.after_s)
        yield f"Pump dead at the peak: to {row.level}", when, show_level(row.level_m, system)


def uplift(water: WaterFigures, system: System) -> Table:
    """Return the water level at which each floor floats."""
    head = ("Area", "Part of the floor", "Underside", "Floats at", "Highest water", "Safety")
    rows = tuple(
        (
            row.area,
            row.body,
            show_level(row.underside_m, system),
            show_level(row.floats_at_m, system),
            _NOT_GIVEN if row.water_table_m is None else show_level(row.water_table_m, system),
            "" if row.water_table_m is None else _safety(row.safety),
        )
        for row in water.floating
    )
    return Table(head, rows)


def table_levels(water: WaterFigures, system: System) -> Table:
    """Return the water table's highest and lowest level of the year, as far as they are given."""
    known = (
        ("Highest, by which all is reckoned", water.water_table_m),
        ("Lowest in a year", water.low_water_table_m),
    )
    rows = tuple((name, show_level(m, system)) for name, m in known if m is not None)
    return Table(("Water table", "Level, from the project's TOF"), rows)


def _safety(safety: float | None) -> str:
    return "water stays below" if safety is None else f"{safety:.2f}"


def _flow(flow: float | None, system: System) -> str:
    return _NOT_GIVEN if flow is None else show_flow(flow, system)


def tables(water: WaterFigures, system: System) -> list[tuple[str, Table]]:
    """Return all tables with rows, each under its title."""
    named = [
        ("Water table", table_levels(water, system)),
        ("Inflow", inflow(water, system)),
        ("Capacities", capacities(water, system)),
        ("Depth in the drain", depths(water, system)),
        ("The pit", pit(water, system)),
        ("Uplift: no help counted from walls, piers or loads", uplift(water, system)),
    ]
    return [(title, table) for title, table in named if table.rows]
