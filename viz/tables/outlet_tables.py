"""Tables of the outlet to daylight: what it comes to, its levels to set out, a pump beside it."""

from collections.abc import Iterator

from geometry.measures import show_flow
from geometry.units import (
    System,
    show_elevation,
    show_fall,
    show_length,
    show_level,
    show_rod,
    show_volume,
)
from geometry.water.outlet_figures import OutletFigures, RunFigures
from geometry.water.outlets import over_words, show_far, show_ground
from viz.tables.table import Table
from viz.words import material_name


def run_table(run: RunFigures, system: System) -> Table:
    """Return what the outlet's pipe comes to, a line each."""
    return Table(("Outlet to daylight", "Here"), tuple(_lines(run, system)))


def _lines(run: RunFigures, system: System) -> Iterator[tuple[str, str]]:
    yield "Pipe, solid to its end", material_name(run.pipe)
    fall, least = run.fall_m_per_m, show_fall(run.least_fall_m_per_m, system)
    yield "Fall", f"{show_fall(fall, system) if fall else 'level'} (asked {least} or more)"
    yield "Invert at the drain, from TOF", show_level(run.start_invert_m, system)
    yield from _end(run, system)
    metric = system == "metric"
    sticks = f"{run.sticks_3_m} of 3 m" if metric else f"{run.sticks_10_ft} of 10 ft"
    yield "Pipe to lay", f"{show_far(run.length_m, system)}, sticks: {sticks}"
    yield "Ground over the pipe", _cover(run, system)
    trench, deep = show_volume(run.trench_m3, system), show_far(run.trench_deepest_m, system)
    yield "Trench, upright sides", f"{trench}, up to {deep} deep"
    flow = run.full_flow_m3_per_s
    yield "Flow, pipe full", "laid level: not known" if flow is None else show_flow(flow, system)


def _end(run: RunFigures, system: System) -> Iterator[tuple[str, str]]:
    if run.end_at_m is not None:
        yield "Comes out, from the drain", show_far(run.end_at_m, system)
        over = show_length(run.end_above_ground_m, system)
        guard = "with a guard" if run.guard else "without a guard"
        at = show_level(run.end_invert_m, system)
        yield "Invert at the open end, from TOF", f"{at}, {over} over the ground, {guard}"
    if run.lacking is None:
        return
    short = show_length(run.lacking.at_last_point_m, system)
    yield "Comes out", f"no: {short} lacking at the last point of the ground"
    raised = show_length(run.lacking.raise_drain_m, system)
    yield "It would, with the drain higher by", raised
    steepest, longer = run.lacking.steepest_fall_m_per_m, run.lacking.longer_m
    flat = "no fall will do" if steepest is None else show_fall(steepest, system)
    yield "It would, with the pipe at most at", flat
    words = "never" if longer is None else f"{show_far(longer, system)} (ground falls on, assumed)"
    yield "It would, farther out by", words


def _cover(run: RunFigures, system: System) -> str:
    wanted = show_length(run.cover_wanted_m, system)
    if run.least_cover_m is None:
        return f"nowhere the {wanted} wanted"
    least = f"{over_words(run.least_cover_m, system)} at the least, {wanted} wanted"
    if run.thin_end is None:
        return least
    last = show_far(run.thin_end.end_m - run.thin_end.start_m, system)
    return f"{least}; less on the last {last}"


def stations(
    run: RunFigures, top_of_footing_m: float, instrument_m: float | None, system: System
) -> Table:
    """Return the levels to set out, every 10 ft; rod readings only where a laser is given.

    top_of_footing_m, instrument_m: elevations.
    """
    head = ["From the drain", "Invert from TOF", "Invert, elevation"]
    head += [] if instrument_m is None else ["Rod reading"]
    rows = []
    for row in run.stations:
        elevation = top_of_footing_m + row.invert_m
        cells = [
            show_far(row.distance_m, system),
            show_level(row.invert_m, system),
            show_elevation(elevation, system),
        ]
        if instrument_m is not None:
            reading = instrument_m - elevation
            cells.append("above the laser" if reading < 0 else show_rod(reading, system))
        cells += [show_ground(row.ground_m, system), over_words(row.over_pipe_m, system)]
        rows.append(tuple(cells))
    return Table((*head, "Ground from TOF", "Over the pipe"), tuple(rows))


def side_by_side(figures: OutletFigures) -> Table:
    """Return the pit with its pump beside the outlet to daylight, matter by matter."""
    rows = tuple((row.matter, row.pump, row.daylight) for row in figures.beside)
    return Table(("Matter", "Pit with a pump", "Outlet to daylight"), rows)
