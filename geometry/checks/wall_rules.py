"""Walls against the rules on grade, table, water and what holds the foot."""

from collections.abc import Iterator
from dataclasses import replace

from geometry.checks.finding import Finding
from geometry.checks.rulings import Ruling, in_area, ruling_findings
from geometry.layout.areas import AreaLayout
from geometry.layout.floors import edge_prism
from geometry.layout.lay import Layout
from geometry.rules.limit import Limit
from geometry.rules.walls import ABOVE_GRADE, BRACE_SLAB, WATERPROOF, WallAnswer, wall_answer
from geometry.units import System, show_length
from geometry.water.uplift import water_table
from geometry.water.wall import OUTSIDE, WallRun, wall_runs


def wall_rule_findings(layout: Layout) -> Iterator[Finding]:
    """Yield what the rules on walls find."""
    rulings = [
        in_area(layout, run.area, one)
        for run in outer_walls(layout)
        for one in _rulings(layout, run)
    ]
    yield from ruling_findings(layout, "wall-rules", "walls", rulings)


def outer_walls(layout: Layout) -> tuple[WallRun, ...]:
    """Return the walls to the ground outside."""
    return tuple(run for run in wall_runs(layout) if run.behind == OUTSIDE)


def _rulings(layout: Layout, run: WallRun) -> Iterator[Ruling]:
    area, system = layout.area(run.area), layout.design.project.units
    above = area.wall_top - layout.ground.at_wall
    yield Ruling(
        ABOVE_GRADE, ABOVE_GRADE.met(above),
        f"top of wall {show_length(round(above, 4), system)} above grade",
        "Raise the wall or lower the grade.",
    )  # fmt: skip
    if run.fill_to_floor_m > 0:
        yield from _table(layout, run)
    if run.asks:
        yield from _foot(area, system)
    yield from _coating(layout, area, system)


def answer(layout: Layout, run: WallRun) -> WallAnswer:
    """Return what the code's table says of a wall, as far as it is at hand."""
    area, table = layout.area(run.area), water_table(layout)
    water = table is not None and table > area.finished_floor
    wall = area.wall
    return wall_answer(wall.kind, wall.thickness, wall.height, run.fill_to_floor_m, water=water)


def _table(layout: Layout, run: WallRun) -> Iterator[Ruling]:
    """Yield a table's value or that an engineer must speak; what is not at hand is asked for."""
    said = answer(layout, run)
    if said.answer == "table not at hand":
        return
    limit = Limit(
        "wall-table", "wall by the code's table, or by an engineer",
        "How much fill a wall bears hangs on its thickness, its height, the soil and its bars.",
        said.source,
    )  # fmt: skip
    met = said.answer == "table value"
    yield Ruling(limit, met, f"{said.answer}: {said.words}", "Have an engineer design the wall.")


def _foot(area: AreaLayout, system: System) -> Iterator[Ruling]:
    """Yield whether slab, keyway or dowels hold the foot: a board at the slab's edge lets it go."""
    slabs = [x.thickness for x in area.floor.layers if x.role == "slab"]
    edge, foot = edge_prism(area), area.wall.foot
    if foot in ("keyway", "dowels"):
        yield Ruling(BRACE_SLAB, True, f"foot held by {foot}, so the slab's edge is free")
        return
    if edge is None and slabs:
        thick = show_length(slabs[-1], system)
        yield Ruling(
            BRACE_SLAB, BRACE_SLAB.met(slabs[-1]), f"{thick} of slab poured tight to the wall",
            "Thicken the slab, or have a keyway or dowels in the footing.",
        )  # fmt: skip
        return
    board = show_length(area.floor.edge_board.thickness, system) if area.floor.edge_board else ""
    what = f"{board} of board stands between slab and wall" if board else "no slab holds the foot"
    yield Ruling(
        BRACE_SLAB, False, f"{what}, and no keyway or dowel is said to (wall.foot)",
        "Either pour the slab tight, and its edge is cold; or keep the board, and have keyway or "
        "dowels hold the foot: say which in [wall] foot.",
    )  # fmt: skip


def _coating(layout: Layout, area: AreaLayout, system: System) -> Iterator[Ruling]:
    """Yield the kind of coating against the highest water table; nothing where either is open."""
    table, coating = water_table(layout), area.wall.coating
    if table is None:
        return
    high = table > area.subgrade
    over = show_length(round(abs(table - area.subgrade), 3), system)
    where = f"highest water table {over} {'above' if high else 'below'} the cut under the floor"
    limits = "From the footing's top up to the grade."
    if not high:
        coat = coating or "damp-proofing"
        yield Ruling(
            replace(WATERPROOF, title="damp-proofing at least"), True, f"{where}: {coat} is enough"
        )
        return
    words = f"{where}, wall with {coating or 'no coating that is said (wall.coating)'}"
    yield Ruling(WATERPROOF, coating == "waterproofing", words, f"Waterproof it. {limits}")
