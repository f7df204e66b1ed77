"""Schedules of the drain in view: item by item, and its inverts place by place."""

from collections.abc import Iterator

from geometry.layout.bleeders import bleeder_invert
from geometry.layout.drain import DrainLayout
from geometry.layout.drain_stone import developed_width
from geometry.layout.inverts import InvertRow, invert_rows
from geometry.layout.lay import Layout
from geometry.parts.drain import DrainStone
from geometry.units import System, show_elevation, show_fall, show_length, show_level, show_rod
from viz.figures.drainwords import ToDaylight, to_daylight
from viz.figures.wording import corners, holes, outlets, pipe_words
from viz.tables.table import Cell, Table
from viz.words import material_name, size

Row = tuple[Cell, ...]
_STEP = "–"


def drain(layout: Layout) -> Table:
    """Return the drain item by item; without rows where the design has none."""
    head = ("Drain", "As drawn")
    return Table(head, tuple(_drain(layout, layout.drain)) if layout.drain else ())


def _drain(layout: Layout, laid: DrainLayout) -> Iterator[Row]:
    given, system = laid.drain, layout.design.project.units
    name, standard = pipe_words(given.pipe)
    yield "pipe", f"{name} ({standard})"
    yield "holes", holes(given.holes, system)
    yield "fall", show_fall(given.fall, system) if given.fall else "laid level"
    yield "length", show_length(laid.run_length, system)
    yield (
        "invert",
        f"{_both(layout, laid.high_invert)} high, {_both(layout, laid.outlet_invert)} low",
    )
    yield "stone", _stone(given.stone, laid.inside, system)
    lap, wide = show_length(given.wrap.overlap, system), show_length(developed_width(laid), system)
    yield "wrap", f"{material_name(given.wrap.material)}, {wide} developed, lapped {lap} on top"
    yield "cleanouts", corners(given.cleanouts)
    for words in outlets(layout):
        yield "outlet", words
    for out in to_daylight(layout, laid):
        yield f"pipe to {out.name}", _outward(layout, out)
    if layout.bleeders_of(laid):
        yield "bleeders", _bleeders(layout, laid)


def _stone(stone: DrainStone, inside: bool, system: System) -> str:
    sizes = (stone.width, stone.bedding, stone.cover)
    wide, under, over = (show_length(metres, system) for metres in sizes)
    what = "the pipe as far as the floor leaves room" if inside else "pipe and footing"
    return (
        f"{material_name(stone.material)}: {wide} wide from the footing, at least {under} under "
        f"the pipe and {over} over {what}"
    )


def _outward(layout: Layout, out: ToDaylight) -> str:
    system, run = layout.design.project.units, out.run
    name, standard = pipe_words(out.lead.pipe.key)
    ends = f"open end {show_length(run.reach_m, system, 4)} from the drain"
    if run.end_at_m is None:
        ends = f"no open end within {show_length(run.reach_m, system, 4)}"
    return (
        f"{name} ({standard}), solid, falls {show_fall(out.lead.fall, system)}; {ends}, invert "
        f"there {_both(layout, run.end_invert_m)}"
    )


def _bleeders(layout: Layout, laid: DrainLayout) -> str:
    found, system = layout.bleeders_of(laid), layout.design.project.units
    name, standard = pipe_words(found[0].pipe.key)
    apart = size(laid.drain.bleeders.spacing, system)
    return (
        f"{len(found)} of {name} ({standard}), each {show_length(found[0].length, system)} long, "
        f"at most {apart} apart, level, invert {_both(layout, bleeder_invert(laid))}"
    )


def _level(layout: Layout, level: float) -> tuple[str, str]:
    """Return a level against the project's top of footing, and as elevation."""
    system, datum = layout.design.project.units, layout.design.datum
    return show_level(level, system), show_elevation(datum.top_of_footing + level, system)


def _both(layout: Layout, level: float) -> str:
    against, elevation = _level(layout, level)
    return f"{against} ({elevation})"


def inverts(layout: Layout) -> Table:
    """Return the inverts to set out along the drain, those of its solid pipes' ends after them.

    Distances run along the pipe on the plan, from the main outlet round a drain that goes round,
    else from its first end; even steps between have no name. Rod readings only where a laser is.
    """
    laser = layout.design.datum.instrument is not None
    head = ("Place", "Along the pipe", "Invert from TOF", "Elevation", "Rod reading")
    rows = tuple(_inverts(layout, layout.drain)) if layout.drain else ()
    if laser:
        return Table(head, rows)
    return Table(head[:-1], tuple(row[:-1] for row in rows))


def _inverts(layout: Layout, laid: DrainLayout) -> Iterator[Row]:
    for row in invert_rows(layout, laid):
        yield _invert(layout, row)
    if layout.lead:
        yield _end(layout, "entry to the sump", layout.lead.end, layout.lead.end_invert)
    for out in to_daylight(layout, laid):
        if out.run.end_at_m is not None:
            yield _end(layout, f"open end, {out.name}", out.run.reach_m, out.run.end_invert_m)


def _invert(layout: Layout, row: InvertRow) -> Row:
    system = layout.design.project.units
    along = show_length(round(row.along, 4), system, 4)
    name = ", ".join(row.names) or _STEP
    return name, along, *_level(layout, row.level), _rod(row.rod, system)


def _end(layout: Layout, name: str, far: float, level: float) -> Row:
    system, datum = layout.design.project.units, layout.design.datum
    elevation = datum.top_of_footing + level
    rod = None if datum.instrument is None else datum.instrument - elevation
    beyond = f"{show_length(far, system, 4)} off it"
    return name, beyond, *_level(layout, level), _rod(rod, system)


def _rod(rod: float | None, system: System) -> str:
    if rod is None:
        return ""
    return "above the laser" if rod < 0 else show_rod(rod, system)
