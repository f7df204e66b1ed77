"""What presses and what comes: walls run by run, the drain's pipe, foam, heat, water."""

from collections.abc import Iterator

from geometry.checks.wall_rules import answer, outer_walls
from geometry.edge_heat import edge_heats
from geometry.materials.catalogue import SOILS
from geometry.units import show_length
from geometry.water.loadwords import show_pressure, show_thrust, show_unit_weight
from geometry.water.wall import ASK_SOURCE, OUTSIDE, WallRun
from viz.findings.document import Block, Grid, Paragraph, Section, filled, grid
from viz.job import Job
from viz.tables import drain_tables, outlet_tables, soil_tables, warmth_tables, water_tables

_PUSHED = (
    "Pushes by Rankine (active), Jaky (at rest) and the fluid weight by which the code's wall "
    "tables are entered (sources with the soil, under the materials); per length of wall, the "
    "ground level and the wall smooth; water at 62.4 lb/ft³ (9.81 kN/m³). Soil figures are "
    "presumptive. Nothing here says that a wall is strong enough."
)
_DEEP = "By the modified Iowa equation, with the prism's load and a wheel by Boussinesq."
_FOAM = (
    "Held to the stress at 1 % strain where it is known (ASTM D6817, second-hand), else to a third "
    "of the strength for dead load and a fifth for live (an extruded foam maker's design guide). "
    "The plate's share by Westergaard's slab on springs; 45 degrees where the slab is cracked."
)
_STORM = (
    "Rain by the storm that is named (SCS type curves, or steady); the ground's water by Dupuit; "
    "pipes by Manning, holes as orifices, the pit by its volume step by step."
)


def loads(work: Job) -> Section:
    """Return the loads and flows of a design."""
    return Section(
        "loads", "Loads, heat and water",
        (),
        tuple(part for part in _parts(work) if part.blocks),
    )  # fmt: skip


def _parts(work: Job) -> Iterator[Section]:
    report, system = work.report, work.system
    yield Section("walls", "Walls, run by run", tuple(_walls(work)))
    yield Section("pipe", "Drain pipe under its load", tuple(_pipes(work)))
    boards = grid("Foam under the slab", warmth_tables.boards(report.boards, system), _FOAM)
    yield Section("foam", "Foam under its load", filled(boards))
    yield Section("heat", "Heat and resistance", tuple(_heat(work)))
    yield Section("water", "Water: inflow, drain, pit", tuple(_water(work)))
    yield Section("heights", "Heights of the drain", tuple(_heights(work)))


def wall_grid(work: Job) -> Grid:
    """Return the walls run by run: fill, soil as a fluid, load, push, and the code's table."""
    head = (
        "Wall run", "Length", "Unbalanced fill", "Free height before slab", "Soil",
        "Equivalent fluid", "Load beside it", "Push, drained", "Push, flooded", "By the code",
    )  # fmt: skip
    outer = {id(run) for run in outer_walls(work.layout)}
    rows = tuple(_run(work, run, id(run) in outer) for run in work.report.walls)
    return Grid("Wall runs", head, rows, f"{_PUSHED} Table or engineer: {ASK_SOURCE}.")


def _run(work: Job, run: WallRun, outer: bool) -> tuple[str, ...]:
    system, soil = work.system, SOILS[run.soil]
    name = run.area if run.behind == OUTSIDE else f"{run.area}, to {run.behind}"
    length, fill, free = (
        show_length(round(m, 3), system)
        for m in (run.length_m, run.fill_to_floor_m, run.unbraced_without_slab_m)
    )
    fluids = [
        f"{word} {show_unit_weight(load, system)}"
        for word, load in (
            ("table", soil.wall_table_load_n_m3),
            ("at rest", soil.at_rest_load_n_m3),
        )
        if load is not None
    ]
    load = show_pressure(run.surcharge_pa, system) if run.surcharge_pa else "none given"
    drained = [f"{p.case} {show_thrust(p.drained_thrust.force_n_m, system)}" for p in run.pushes]
    flooded = [f"{p.case} {show_thrust(p.flooded_thrust.force_n_m, system)}" for p in run.pushes]
    unknown = "not known"
    return (
        name, length, fill, free, soil.name, "; ".join(fluids) or unknown, load,
        "; ".join(drained) or unknown, "; ".join(flooded) or unknown, _by_code(work, run, outer),
    )  # fmt: skip


def _by_code(work: Job, run: WallRun, outer: bool) -> str:
    if run.fill_to_floor_m <= 0:
        return "no fill to hold"
    if not outer:
        return "needs an engineer: fill under a floor" if run.asks else "ask: fill under a floor"
    said = answer(work.layout, run)
    return f"{said.answer}: {said.words} ({said.source})"


def _walls(work: Job) -> Iterator[Block]:
    report, system = work.report, work.system
    yield from filled(wall_grid(work))
    pushes = soil_tables.pushes(report.walls, system)
    states = soil_tables.states(report.walls, report.backfill_state)
    yield from filled(
        grid("Each case of the push, its height and its moment about the foot", pushes),
        grid("What the fill meets on the day it goes in", states, str(ASK_SOURCE)),
    )


def _pipes(work: Job) -> Iterator[Block]:
    several = len(work.report.drains) > 1
    for drain in work.report.drains:
        if drain.strength:
            of = f": {drain.name}" if several else ""
            note = f"{soil_tables.counted(drain.strength, work.system)} {_DEEP}"
            table = soil_tables.pipes(drain.strength, work.system)
            yield grid(f"The chosen pipe and others of its size{of}", table, note)


def _heat(work: Job) -> Iterator[Block]:
    report, system = work.report, work.system
    edges = edge_heats(work.layout.design)
    notes = " ".join(warmth_tables.NOTES)
    yield from filled(
        grid("Resistance of the floor's layers", warmth_tables.layers(report.warmth, system)),
        grid("Heat to the ground", warmth_tables.heat(report.warmth, system), notes),
        grid("Ways to make the edge", warmth_tables.ways(edges, system)),
    )


def _water(work: Job) -> Iterator[Block]:
    tables = water_tables.tables(work.report.water, work.system)
    if tables:
        yield Paragraph(_STORM, "note")
    yield from (grid(title, table) for title, table in tables)
    for outlet in work.report.outlets:
        if outlet.run is not None:
            table = outlet_tables.run_table(outlet.run, work.system)
            yield grid(f"Outlet to daylight {outlet.drain}".strip(), table)


def _heights(work: Job) -> Iterator[Block]:
    several = len(work.report.drains) > 1
    for drain in work.report.drains:
        of = f": {drain.name}" if several else ""
        if drain.heights is not None:
            yield grid(f"Against top of footing{of}",
                       drain_tables.heights(drain.heights, work.system))  # fmt: skip
        table = drain_tables.inverts(drain, work.system)
        yield from filled(grid(f"Inverts along the drain{of}", table))
