"""The order of a whole design: in place, to buy, units sold, for every material."""

from collections.abc import Iterator
from functools import lru_cache

from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout
from geometry.takeoff.bars import bar_rows
from geometry.takeoff.bulk import bulk_rows
from geometry.takeoff.fabric import fabric_rows
from geometry.takeoff.foam import foam_rows
from geometry.takeoff.pipes import Drained, Outlet, piece_row, pipe_rows
from geometry.takeoff.pours import masonry_walls, pours
from geometry.takeoff.prices import priced, total, unused
from geometry.takeoff.row import CutList, Order, Row
from geometry.takeoff.sheet import sheet_rows
from geometry.takeoff.tubing import tube_rows
from geometry.takeoff.vents import vent_rows
from geometry.takeoff.volumes import part_volumes
from geometry.takeoff.waterproofing import wall_rows
from geometry.water.daylight import daylight_runs

Made = tuple[Row, CutList | None]


@lru_cache(maxsize=8)
def order(layout: Layout) -> Order:
    """Return all that is bought for a design, every factor told."""
    design = layout.design
    poured = list(pours(layout))
    made: list[Made] = [(row, None) for row in bulk_rows(layout, part_volumes(layout))]
    made += [(row, None) for row, _ in poured]
    made += [(row, None) for row in foam_rows(layout)]
    made += [*sheet_rows(layout), *_drain(layout), *bar_rows(layout)]
    made += [(row, None) for row in (*_pit(layout), *vent_rows(layout), *wall_rows(layout))]
    made += tube_rows(layout)
    rows = tuple(priced(row, design.order.prices) for row, _ in made)
    cuts = tuple(cut for _, cut in made if cut is not None)
    return Order(
        rows, tuple(pour for _, pour in poured), cuts,
        (*_left_out(layout), *unused(rows, design.order.prices)),
        design.order.currency, total(rows),
    )  # fmt: skip


def _drain(layout: Layout) -> Iterator[Made]:
    design = layout.design
    drains = drained(layout)
    yield from pipe_rows(design, drains)
    yield from fabric_rows(design, [d.drain for d in drains])


def drained(layout: Layout) -> tuple[Drained, ...]:
    """Return the drains laid out, each with what hangs on it."""
    return tuple(
        Drained(d, layout.risers(d), _outlets(layout, d), layout.bleeders_of(d))
        for d in layout.drains
    )


def _outlets(layout: Layout, drain: DrainLayout) -> tuple[Outlet, ...]:
    """Return the solid pipes from a drain's tees; to daylight as far as the open end."""
    runs = iter(daylight_runs(drain))
    found = []
    for lead in layout.leads(drain):
        pit = lead is layout.pit_lead
        length = lead.end * lead.stretch if pit else next(runs).length_m
        name = "to the pit" if pit else "to daylight"
        found.append(Outlet(name, lead, length - lead.begin * lead.stretch))
    return tuple(found)


def _pit(layout: Layout) -> Iterator[Row]:
    if layout.sump is None:
        return
    sump = layout.sump.sump
    yield piece_row("pit", "Sump basin with lid", sump.material, 1)
    if sump.pump:
        yield piece_row("pit", "Pump with float switch", "pump", 1)


def _left_out(layout: Layout) -> Iterator[str]:
    """Yield what is bought for a design and not counted here."""
    if not layout.design.backfill.material:
        yield "Backfill and grade are made of what was dug."
    for area in masonry_walls(layout):
        yield f"The wall of {area} is laid, not poured: its blocks and mortar are not counted."
    yield "Forms, protection board, floor reinforcement, discharge pipe, manifolds and tools."
