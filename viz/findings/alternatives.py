"""What the trade does in more ways than one: alternatives with what each would change."""

from collections import Counter
from collections.abc import Iterator

from geometry.checks.wall_rules import outer_walls
from geometry.edge_heat import edge_heats
from geometry.layout.lay import lay_out
from geometry.options import EdgeOption, edge_options, moved
from geometry.report import Report, report
from geometry.rules.editions import EDITIONS, editions
from geometry.rules.slabs import GAS_LAP_M, GAS_SOURCE, LAP, SAND_OVER
from geometry.rules.walls import BRACE_SLAB
from geometry.units import System, show_area, show_length, show_volume
from viz.findings.document import Block, Grid, Items, Paragraph, Section, filled, grid
from viz.job import Job
from viz.tables import drain_tables, warmth_tables
from viz.tables.report_tables import EARTH
from viz.words import material_name

_STILL_M, _STILL_M3 = 1e-4, 1e-4
_NOTHING = "–"


def alternatives(work: Job) -> Section:
    """Return the ways that sources and trade leave open, each with its consequences."""
    said = (
        "Where sources or the trade do not agree, nothing is decided here: the ways stand side by "
        "side, with what each would change in this house."
    )
    return Section(
        "alternatives", "Where the trade does not agree",
        filled(Paragraph(said, "note"), *_edges(work), *_order(), *_foot(work), *_laps(work),
               *_sheets(work), *_drains(work)),
    )  # fmt: skip


def _edges(work: Job) -> Iterator[Block]:
    options, system = edge_options(work.layout.design), work.system
    if not options:
        return
    head = ("Way", "What it is", "Levels", "Amounts in place")
    yield Grid(
        "The floor's edge at the lowest footing",
        head, tuple(_way(work, option, system) for option in options),
    )  # fmt: skip
    heats = edge_heats(work.layout.design)
    note = f"Common practice, without a published source, for the ways. {warmth_tables.NOTES[0]}"
    yield grid("What each does to the floor's heat", warmth_tables.ways(heats, system), note)


def _way(work: Job, option: EdgeOption, system: System) -> tuple[str, ...]:
    if option.same:
        return f"{option.title} (as designed)", option.note, _NOTHING, _NOTHING
    if option.design is None:
        why = "; ".join(option.faults)
        return option.title, option.note, f"cannot be built here: {why}", _NOTHING
    # Neither counts the earthworks: they are moved, not bought.
    before, after = report(work.layout), report(lay_out(option.design))
    levels = "; ".join(_levels(before, after, system)) or "none move"
    amounts = "; ".join(_amounts(before, after, system)) or "none change"
    return option.title, option.note, levels, amounts


def _levels(before: Report, after: Report, system: System) -> Iterator[str]:
    what = moved(before, after)
    for name, by, more, less in (
        ("finished floor", what.finished_floor.by, "higher", "lower"),
        ("subgrade", what.subgrade.by, "higher", "lower"),
        ("headroom", what.headroom.by, "more", "less"),
        ("tops of pads", what.pad_top.by, "higher", "lower"),
    ):
        if abs(by) > _STILL_M:
            yield f"{name} {show_length(abs(by), system)} {more if by > 0 else less}"
    for name, cold in (
        ("cold ledge", what.cold_ledge), ("slab on pads, cold", what.cold_piers),
    ):  # fmt: skip
        if abs(cold.by) > _STILL_M:
            was, now = (show_area(area, system) for area in (cold.before, cold.after))
            yield f"{name} {now}, not {was}"


def _amounts(before: Report, after: Report, system: System) -> Iterator[str]:
    old, new = _in_all(before), _in_all(after)
    for key in dict.fromkeys((*old, *new)):
        by = new[key] - old[key]
        if abs(by) > _STILL_M3:
            size = show_volume(abs(by), system)
            yield f"{material_name(key)} {size} {'more' if by > 0 else 'less'}"


def _in_all(made: Report) -> Counter[str]:
    """Return each material in place, m3, earth left out."""
    sums: Counter[str] = Counter()
    for row in made.volumes:
        if row.part not in EARTH:
            sums[row.material] += row.volume_m3  # type: ignore[assignment]
    return sums


def _order() -> Iterator[Block]:
    yield Paragraph("The order of sheet and slab, and what each order brings:")
    yield Items((
        (
            "Sheet right under the slab",
            "The slab stays dry from below; it dries through its top alone, so it curls more and "
            f"wants a mix that does not bleed, and curing ({SAND_OVER.source}).",
        ),
        (
            "Sand or stone between sheet and slab",
            "The slab dries downward too and curls less; the layer holds rain and cure water under "
            f"the floor for years ({SAND_OVER.source}).",
        ),
    ))  # fmt: skip


def _foot(work: Job) -> Iterator[Block]:
    """Yield the ways to hold a wall's foot, where fill stands high enough to ask."""
    if not any(run.asks for run in outer_walls(work.layout)):
        return
    least = show_length(BRACE_SLAB.least, work.system)
    yield Paragraph("What holds the wall's foot against the fill, and what each way brings:")
    yield Items((
        (
            "Slab poured tight to the wall",
            f"{least} of slab or more is the foot's brace ({BRACE_SLAB.source}); its edge is cold, "
            "and the fill waits for the slab.",
        ),
        (
            "Keyway or dowels in the footing",
            "The slab's edge is free for a board and stays warm; the keyway is formed, or the "
            f"dowels are set, while the footing is poured ({BRACE_SLAB.source}).",
        ),
    ))  # fmt: skip


def _laps(work: Job) -> Iterator[Block]:
    """Yield both rules on the sheet's laps, where a sheet lies under a slab."""
    layers = (layer for area in work.layout.areas for layer in area.floor.layers)
    if not any(layer.role == "retarder" for layer in layers):
        return
    short, long = (show_length(m, work.system) for m in (LAP.least, GAS_LAP_M))
    yield Paragraph("How far the sheets lap, and what each way brings:")
    yield Items((
        (f"{short}", f"asked against damp ({LAP.source}); less sheet to buy."),
        (f"{long}, taped", f"asked against soil gas ({GAS_SOURCE}); more sheet, fewer leaks."),
    ))  # fmt: skip


def _sheets(work: Job) -> Iterator[Block]:
    held = editions(work.layout.design.rules.codes)
    rows = tuple(
        (
            one.title, one.sheet.words, show_length(one.sheet.lap_m, work.system),
            "yes" if one in held else "shown to compare", str(one.sheet.source),
        )
        for one in EDITIONS
    )  # fmt: skip
    head = ("Edition", "Vapor retarder asked", "Laps", "Held against here", "Source")
    yield Grid("Editions differ on the vapor retarder", head, rows)


def _drains(work: Job) -> Iterator[Block]:
    several = len(work.report.drains) > 1
    for drain in work.report.drains:
        if drain.heights is None:
            continue
        of = f": {drain.name}" if several else ""
        note = "Rules not asked here are in force elsewhere and are shown to compare."
        table = drain_tables.rules(drain.heights, work.system)
        yield grid(f"Rules on the drain's height{of}", table, note)
        clashes = tuple(
            ("", line.removeprefix("- ")) for line in drain_tables.clash_lines(drain.heights)
        )
        if clashes:
            yield Paragraph("Rules that no pipe of this size and fall can meet together here:")
        yield Items(clashes)
        if drain.slope:
            budget = drain_tables.budget_by_rule(drain.slope, work.system)
            yield grid(f"What each rule leaves for the fall{of}", budget)
            yield grid(f"What buys room for the fall{of}",
                       drain_tables.ways(drain.slope, work.system))  # fmt: skip
