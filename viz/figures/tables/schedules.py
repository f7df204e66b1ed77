"""Schedules of one design as tables: floors, footings, walls, piers."""

from collections.abc import Iterator

from geometry.layout.areas import AreaLayout
from geometry.layout.footings import column_prism, pad_prism, pier_name
from geometry.layout.lay import Layout
from geometry.parts.pier import Pier
from geometry.units import (
    show_elevation,
    show_length,
    show_level,
    show_thickness,
)
from viz.figures.plan.grid import grid_name
from viz.figures.wording import (
    NONE,
    ROLES,
    across,
    bars_words,
    strength,
)
from viz.tables.table import Cell, Table
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
