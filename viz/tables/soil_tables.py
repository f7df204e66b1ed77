"""Tables of soil against the drain and the wall: filter, wrap, pipe, wall, cleanouts."""

from collections.abc import Iterator

from geometry.parts.ground import BackfillState
from geometry.report import Report
from geometry.units import System, show_area, show_length, show_level
from geometry.water.cleanouts import Cleaning
from geometry.water.filter import SoilFabric
from geometry.water.filtering import Filters
from geometry.water.loadwords import (
    show_force,
    show_modulus,
    show_moment,
    show_pressure,
    show_thrust,
    show_unit_weight,
)
from geometry.water.strength import DrainStrength
from geometry.water.wall import OUTSIDE, WallRun, state_words
from geometry.water.wrapping import WrapSheet
from viz.tables.table import Cell, Table
from viz.words import material_name

_OPEN = "–"
Row = tuple[Cell, ...]
# States in which the fill may meet a wall, as a table tells them apart.
STATES = (
    ("nothing in place", BackfillState(deck=False, slab=False, braced=False)),
    ("braced, no deck, no slab", BackfillState(deck=False, slab=False, braced=True)),
    ("slab in, no deck", BackfillState(deck=False, slab=True, braced=False)),
    ("deck on, no slab", BackfillState(deck=True, slab=False, braced=False)),
    ("deck on, slab in", BackfillState(deck=True, slab=True, braced=False)),
)


def tables(report: Report, system: System) -> Iterator[tuple[str, Table]]:
    """Yield every table that has rows, with its title."""
    drain = report.drain
    for title, table in (
        ("The soil's own grading", grading(report.filter)),
        ("Fabric against soil", fabric(report.filter)),
        ("Stone at the pipe's holes", holes(report.filter)),
        ("Finer layers straight on coarser ones", sand(report.filter)),
        ("Wrap", wrap(report.filter.wrap, system)),
        ("Pieces of the wrap to cut", pieces(report.filter.wrap, system)),
        ("Pipes under the fill", pipes(drain.strength if drain else None, system)),
        ("Fill on the walls", walls(report.walls, system)),
        ("Push on the walls, drained and flooded", pushes(report.walls, system)),
        ("What the fill meets on the day it goes in", states(report.walls, report.backfill_state)),
        (
            "Runs between places to enter the drain",
            cleanouts(drain.cleanouts if drain else None, system),
        ),
        ("Risers of the cleanouts", risers(drain.cleanouts if drain else None, system)),
    ):
        if table.rows:
            yield title, table


def grading(filters: Filters) -> Table:
    """Return the sample's sieves, and the sizes read between them."""
    head, found = ("Sieve, or share", "Passing, or size"), filters.grading
    if found is None:
        return Table(head, ())
    rows = [(_size(p.sieve_m), f"{p.passing:.0%}") for p in found.points]
    named = ("D85", found.d85_m), ("D50", found.d50_m), ("D15", found.d15_m)
    rows += [(name, _OPEN if size is None else _size(size)) for name, size in named]
    spread = found.uniformity
    rows.append(("D60 over D10", _OPEN if spread is None else f"{spread:.1f}"))
    rows.append(("Passing No. 200", _span([share * 100 for share in found.fines], "%")))
    for row in filters.fabric:
        if row.curve is not None:
            rows.append(("Fabric's opening, at most", _size(row.curve.most_opening_m)))
            least = row.curve.least_opening_m
            rows.append(("Fabric's opening, at least", _OPEN if least is None else _size(least)))
    return Table(head, tuple(rows))


def _size(metres: float) -> str:
    return f"{metres * 1000:.3g} mm"


def fabric(filters: Filters) -> Table:
    """Return the drain's fabric against each soil beside it."""
    head = (
        "Soil",
        "Where",
        "Fabric",
        "Opening",
        "At most",
        "Flow",
        "At least",
        "Verdict",
        "Ask for",
    )
    return Table(head, tuple(_fabric(row) for row in filters.fabric))


def _fabric(row: SoilFabric) -> Row:
    most = row.most_opening_m and [size * 1000 for size in row.most_opening_m]
    if most and row.curve:
        most = [min(size, row.curve.most_opening_m * 1000) for size in most]
    return (
        material_name(row.soil), row.place, material_name(row.fabric),
        _size(row.opening_m), _span(most, "mm"), f"{row.permittivity_per_s:.3g} per s",
        _span(row.least_permittivity, "per s"), row.verdict, "; ".join(row.ask) or _OPEN,
    )  # fmt: skip


def _span(values: list[float] | tuple[float, ...] | None, unit: str) -> str:
    if values is None:
        return "not known"
    low, high = f"{min(values):.3g}", f"{max(values):.3g}"
    return f"{low} {unit}" if low == high else f"{low} to {high} {unit}"


def holes(filters: Filters) -> Table:
    """Return the drain stone against the pipe's holes, by each rule in force."""
    head = ("Stone over hole", "Fine edge", "Coarse edge", "At least", "Fits", "Source")
    rows = tuple(
        (
            f"D{fit.share * 100:.0f}", _ratio(fit.fine_edge), _ratio(fit.coarse_edge),
            f"{fit.least:.1f}", _fits(fit.fails, fit.judged, fit.known), fit.source,
        )
        for fit in filters.holes
    )  # fmt: skip
    return Table(head, rows)


def _fits(fails: bool, judged: bool, known: bool) -> str:
    if not judged:
        return "told, not judged"
    if not known:
        return "not known"
    return "not at the fine edge" if fails else "yes"


def _ratio(ratio: float | None) -> str:
    return "not known" if ratio is None else f"{ratio:.2f}"


def sand(filters: Filters) -> Table:
    """Return layers of finer aggregate straight on coarser ones."""
    head = ("Area", "Upper", "Lower", "D15 over D85, best", "Worst", "At most")
    rows = tuple(
        (row.area, material_name(row.upper), material_name(row.lower), _ratio(row.best),
         _ratio(row.worst), f"{row.limit:.0f}")
        for row in filters.sand
    )  # fmt: skip
    return Table(head, rows)


def wrap(sheet: WrapSheet | None, system: System) -> Table:
    """Return the wrap's width, length and area, and how it stands to a sock on the pipe."""
    if sheet is None:
        return Table(("Wrap", "Amount"), ())
    rows: tuple[Row, ...] = (
        ("Developed width", show_length(sheet.width_m, system)),
        ("of it lap on top", show_length(sheet.lap_m, system)),
        ("Length of all pieces", show_length(sheet.length_m, system)),
        ("Area to cut", show_area(sheet.area_m2, system)),
        ("Area of a sock on the same pipe", show_area(sheet.sock_area_m2, system)),
        ("Sheet over sock, all round the stone", f"{sheet.girth_ratio:.1f} times"),
        ("Sheet over sock, against soil alone", f"{sheet.soil_ratio:.1f} times"),
    )
    return Table(("Wrap", "Amount"), rows)


def pieces(sheet: WrapSheet | None, system: System) -> Table:
    """Return the pieces to cut: one for each straight, with its lap at the bend."""
    found = sheet.pieces if sheet else ()
    rows = tuple((f"side {p.side}", show_length(p.length_m, system)) for p in found)
    return Table(("Along", "Length, lap at the bend in it"), rows)


def pipes(shown: DrainStrength | None, system: System) -> Table:
    """Return this pipe and others of its size at the deepest and the shallowest place."""
    head = ("Pipe", "Stiffness", "Place", "Cover", "Fill", "Wheel", "Flattens", "With wheel",
            "At most")  # fmt: skip
    if shown is None:
        return Table(head, ())
    rows = tuple(
        (
            f"{material_name(pipe.pipe)}{' (chosen)' if pipe.chosen else ''}",
            show_modulus(pipe.stiffness_pa, system), at.place,
            show_length(round(at.cover_m, 3), system), show_pressure(at.soil_pa, system),
            show_pressure(at.wheel_pa, system) if shown.wheel_n else _OPEN,
            f"{at.flattened:.1%}", f"{at.with_wheel:.1%}" if shown.wheel_n else _OPEN,
            f"{shown.limit * 100:.3g} %",
        )
        for pipe in shown.pipes
        for at in pipe.places
    )  # fmt: skip
    return Table(head, rows)


def counted(shown: DrainStrength, system: System) -> str:
    """Return what was counted for all pipes, in a sentence."""
    assumed = " (assumed: the soil is not known)" if shown.fill_assumed else ""
    even = f", {show_pressure(shown.surcharge_pa, system)} on it" if shown.surcharge_pa else ""
    wheel = show_force(shown.wheel_n, system) if shown.wheel_n else "none given"
    return (
        f"{material_name(shown.stone)} {shown.compaction}, {shown.embedment} of ASTM D2321: E' "
        f"{show_modulus(shown.soil_modulus_pa, system)}; fill "
        f"{show_unit_weight(shown.fill_weight_n_m3, system)}{assumed}{even}; "
        f"wheel over the drain: {wheel}."
    )


def walls(runs: tuple[WallRun, ...], system: System) -> Table:
    """Return the fill on each area's walls, and their unbraced height."""
    head = ("Wall", "Length", "Longest straight", "Fill to floor", "To slab's underside",
            "To foot", "Unbraced, slab in", "Before slab")  # fmt: skip
    rows = tuple(
        (_wall(run), *(show_length(round(m, 3), system) for m in (
            run.length_m, run.longest_m, run.fill_to_floor_m, run.fill_to_slab_m,
            run.fill_to_foot_m, run.unbraced_with_slab_m, run.unbraced_without_slab_m,
        )))
        for run in runs
    )  # fmt: skip
    return Table(head, rows)


def _wall(run: WallRun) -> str:
    return run.area if run.behind == OUTSIDE else f"{run.area}, to {run.behind}"


def pushes(runs: tuple[WallRun, ...], system: System) -> Table:
    """Return thrust, its height and moment, drained and flooded, by each case known."""
    head = ("Wall", "Soil", "Case", "K", "State", "At foot", "Thrust", "Height", "Moment",
            "Over drained")  # fmt: skip
    rows: list[Row] = []
    for run in runs:
        for push in run.pushes:
            named = (_wall(run), run.soil, push.case, f"{push.coefficient:.2f}")
            for state, diagram, thrust, times in (
                ("drained", push.drained, push.drained_thrust, _OPEN),
                ("flooded", push.flooded, push.flooded_thrust, f"{push.force_ratio:.2f}"),
            ):
                rows.append(
                    (*named, state, show_pressure(diagram.total_pa[-1], system),
                     show_thrust(thrust.force_n_m, system),
                     show_length(round(thrust.height_m, 3), system, 4),
                     show_moment(thrust.moment_n, system), times)
                )  # fmt: skip
    return Table(head, tuple(rows))


def states(runs: tuple[WallRun, ...], state: BackfillState) -> Table:
    """Return what the state said means for a wall that holds fill; each state, if none is said."""
    shown = (("as said", state),) if state.said else STATES
    filled = [run for run in runs if run.fill_to_floor_m > 0]
    rows = tuple(
        (_wall(run), name, " ".join(state_words(run, state)))
        for run in filled
        for name, state in shown
    )
    return Table(("Wall", "On the day", "What it means"), rows)


def risers(found: Cleaning | None, system: System) -> Table:
    """Return each cleanout's riser: its length, what it is brought up to, the plug's level."""
    head = ("Riser", "Length", "Up to", "Plug, from the project's TOF")
    rows = tuple(
        (
            place.name,
            show_length(round(place.riser_m, 3), system),
            place.ends_at,
            show_level(round(place.top_m, 3), system),
        )
        for place in (found.access if found else ())
        if place.riser_m is not None and place.top_m is not None and place.ends_at
    )
    return Table(head, rows)


def cleanouts(found: Cleaning | None, system: System) -> Table:
    """Return the runs between places to enter the drain."""
    head = ("From", "To", "Along the pipe", "Farthest", "Hose", "Bends", "In all", "Within reach")
    if found is None:
        return Table(head, ())
    rows = tuple(
        (
            run.start or "closed end", run.end or "closed end",
            show_length(round(run.length_m, 3), system),
            "no way in" if run.farthest_m is None
            else show_length(round(run.farthest_m, 3), system),
            _OPEN if run.hose_m is None else show_length(round(run.hose_m, 3), system),
            str(run.bends), f"{run.bends_deg:.0f}°",
            "no" if found.too_far(run) else "length yes, bends no" if found.too_bent(run)
            else "yes",
        )
        for run in found.runs
    )  # fmt: skip
    return Table(head, rows)
