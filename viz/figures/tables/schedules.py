"""Schedules of one design as tables: floors, footings, walls, piers, the drain and its points."""

from collections.abc import Iterator

from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.drain_stone import developed_width
from geometry.layout.footings import column_prism, pad_prism, pier_name
from geometry.layout.lay import Layout
from geometry.parts.drain import DrainStone
from geometry.parts.pier import Pier
from geometry.units import (
    System,
    show_elevation,
    show_fall,
    show_length,
    show_level,
    show_rod,
    show_thickness,
)
from viz.figures.plan.grid import grid_name
from viz.figures.wording import (
    NONE,
    ROLES,
    across,
    bars_words,
    corners,
    holes,
    outlet,
    pipe_words,
    strength,
)
from viz.tables import Cell, Table
from viz.words import material_name, size

Row = tuple[Cell, ...]


def floor_layers(layout: Layout) -> Table:
    """Return every floor's layers from the top down, with the level and elevation of each top."""
    head = ("Area", "Layer", "Material", "For", "Thick", "Top from TOF", "Elevation")
    return Table(head, tuple(row for area in layout.areas for row in _layers(layout, area)))


def _layers(layout: Layout, area: AreaLayout) -> Iterator[Row]:
    system, tops = layout.design.project.units, area.stack.levels[1:]
    for layer, top in reversed(list(zip(area.floor.layers, tops, strict=True))):
        name, made = layer.name, material_name(layer.material)
        thick = show_thickness(layer.thickness, system)
        yield (area.name, name, made, ROLES[layer.role], thick, *_level(layout, top))
    board = area.floor.edge_board
    if board:
        made, thick = material_name(board.material), show_length(board.thickness, system)
        top = area.level(board.top)
        yield (area.name, "edge board", made, "floor's edge", thick, *_level(layout, top))


def _level(layout: Layout, level: float) -> tuple[str, str]:
    """Return a level against the project's top of footing, and as elevation."""
    system, datum = layout.design.project.units, layout.design.datum
    return show_level(level, system), show_elevation(datum.top_of_footing + level, system)


def footings(layout: Layout) -> Table:
    """Return each area's strip footing: size, levels, bars, concrete."""
    head = ("Area", "Width × thick", "Top from TOF", "Bottom from TOF", "Bottom elev.",
            "Bars, continuous", "Clear cover", "Concrete f'c")  # fmt: skip
    system = layout.design.project.units
    rows = []
    for area in layout.areas:
        strip = area.footing
        wide = across((strip.width, strip.thickness), system)
        bars = bars_words(strip.bars, system)
        cover = show_length(strip.bars.cover, system) if strip.bars.count else "–"
        bottom = _level(layout, area.footing_bottom)
        fc = strength(strip.material, system)
        rows.append((area.name, wide, show_level(area.tof, system), *bottom, bars, cover, fc))
    return Table(head, tuple(rows))


def walls(layout: Layout) -> Table:
    """Return each area's foundation wall: kind, size, top, and the grade above its floor."""
    head = ("Area", "Wall", "Thick", "Height", "Top from TOF", "Top elev.", "Concrete f'c",
            "Grade above floor")  # fmt: skip
    system = layout.design.project.units
    rows = []
    for area in layout.areas:
        wall = area.wall
        sizes = size(wall.thickness, system), show_length(wall.height, system)
        above = show_length(max(0.0, layout.ground.at_wall - area.finished_floor), system)
        top, fc = _level(layout, area.wall_top), strength(wall.material, system)
        rows.append((area.name, wall.kind, *sizes, *top, fc, above))
    return Table(head, tuple(rows))


def piers(layout: Layout) -> Table:
    """Return every pier: place on the plan's grid and from its origin, pad, column, levels."""
    head = (
        "Pier",
        "Area",
        "Grid",
        "x",
        "y",
        "Pad",
        "Column",
        "Pad top",
        "Pad bottom",
        "Column top",
    )
    rows = tuple(
        _pier(layout, area, number, pier)
        for area in layout.areas
        for number, pier in enumerate(area.area.piers)
    )
    return Table(head, rows)


def _pier(layout: Layout, area: AreaLayout, number: int, pier: Pier) -> Row:
    system = layout.design.project.units
    pad, column = pad_prism(area, pier), column_prism(area, pier)
    slab = across((pier.width, pier.pad_depth, pier.thickness), system)
    post = NONE if column is None else f"{size(pier.column_size, system)} {pier.column}"
    tops = [pad.top, pad.bottom, column.top if column else None]
    levels = ("–" if z is None else show_level(z, system) for z in tops)
    place = (show_length(metres, system) for metres in pier.at)
    grid = grid_name(layout, pier.at)
    return (pier_name(area, number), area.name, grid, *place, slab, post, *levels)


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
    yield "stone", _stone(given.stone, system)
    lap, wide = show_length(given.wrap.overlap, system), show_length(developed_width(laid), system)
    yield "wrap", f"{material_name(given.wrap.material)}, {wide} developed, lapped {lap} on top"
    yield "cleanouts", corners(given.cleanouts)
    yield "outlet", outlet(layout)


def _stone(stone: DrainStone, system: System) -> str:
    sizes = (stone.width, stone.bedding, stone.cover)
    wide, under, over = (show_length(metres, system) for metres in sizes)
    return (
        f"{material_name(stone.material)}: {wide} wide from the footing, at least {under} under "
        f"the pipe and {over} over pipe and footing"
    )


def _both(layout: Layout, level: float) -> str:
    against, elevation = _level(layout, level)
    return f"{against} ({elevation})"


def drain_points(layout: Layout) -> Table:
    """Return inverts along the drain, from the low point up one way and down the other.

    Distances are those on the plan along the pipe's way from the low point.
    """
    laser = layout.design.datum.instrument is not None
    head = ("Point", "From low point", "Invert from TOF", "Elevation")
    rows = [_point(layout, *point) for point in _points(layout)]
    if laser:
        return Table((*head, "Rod reading"), tuple(rows))
    return Table(head, tuple(row[:-1] for row in rows))


def _point(layout: Layout, name: str, along: float, level: float) -> Row:
    system, datum = layout.design.project.units, layout.design.datum
    elevation = datum.top_of_footing + level
    rod = "" if datum.instrument is None else show_rod(datum.instrument - elevation, system)
    return name, show_length(along, system), *_level(layout, level), rod


def _points(layout: Layout) -> Iterator[tuple[str, float, float]]:
    laid = layout.drain
    if laid is None:
        return
    if layout.lead:
        lead = layout.lead
        yield "entry to the sump", lead.end, lead.end_invert
    for run, name, station in sorted(_named(laid)):
        ahead, behind = laid.branches()
        away = run if run <= ahead + 1e-6 else ahead + behind - run
        yield name, away, laid.invert(station)


def _named(laid: DrainLayout) -> Iterator[tuple[float, str, float]]:
    """Yield (way from the low point, round a closed drain), name and station of the points."""
    cleanouts = {laid.corner_station(number) for number in laid.drain.cleanouts}
    for number, station in enumerate(laid.route.stations[: len(laid.route.points)].tolist()):
        words = [f"corner {laid.outline_corner(number)}"]
        words += ["cleanout"] * (station in cleanouts)
        yield _run(laid, station), ", ".join(words), station
    yield 0.0, "low point", laid.low
    yield _run(laid, laid.high), "high point", laid.high


def _run(laid: DrainLayout, station: float) -> float:
    if laid.route.closed:
        return float((station - laid.low) % laid.route.length)
    return abs(station - laid.low)
