"""Notes on drain and sump."""

from collections.abc import Iterator

from geometry.layout.lay import Layout
from geometry.units import show_fall, show_length, show_level
from viz.figures.wording import corners, holes, plain_pipe, within
from viz.words import size


def drain(layout: Layout) -> Iterator[str]:
    """Yield the notes on the drain, its stone and its cleanouts."""
    laid, system = layout.drain, layout.design.project.units
    if laid is None:
        yield "No foundation drain is part of this design."
        return
    given = laid.drain
    low, high = (show_level(z, system) for z in (laid.outlet_invert, laid.high_invert))
    falls = (
        f"falls {show_fall(given.fall, system)}, invert from {high} at the high point to {low} "
        "at the low point"
        if given.fall
        else f"laid level, invert {low} throughout"
    )
    yield (
        f"Drain: {plain_pipe(laid.pipe)} ({laid.pipe.standard}), {falls}. "
        f"Perforations: {holes(given.holes, system)}."
    )
    yield (
        f"Drain stone: {within(given.stone.material)}, "
        f"{size(given.stone.width, system)} wide, at least "
        f"{show_length(given.stone.bedding, system)} under the pipe and "
        f"{show_length(given.stone.cover, system)} over pipe and footing, wrapped in "
        f"{within(given.wrap.material)}, lapped {size(given.wrap.overlap, system)} on top."
    )
    if given.cleanouts:
        yield f"Drain cleanouts at {corners(given.cleanouts)}, brought up to finished grade."
    else:
        yield "No drain cleanouts are given."


def sump(layout: Layout) -> Iterator[str]:
    """Yield the notes on the drain's outlet, the sump and its pump."""
    pit, system = layout.sump, layout.design.project.units
    if pit is None:
        if layout.drain:
            yield "Where the drain's water goes from its low point is not stated: to be added."
        return
    if pit.lead:
        fall, sleeve = show_fall(pit.lead.fall, system), pit.lead.sleeve
        cast = f" through a sleeve ({plain_pipe(sleeve)}) cast into the footing," if sleeve else ""
        yield (
            f"Drain outlet: {plain_pipe(pit.lead.pipe)}, solid, falls {fall}{cast} to the sump; "
            f"invert at the sump {show_level(pit.lead.end_invert, system)}."
        )
    yield (
        f"Sump: pit {size(pit.sump.diameter, system)} inside, bottom at "
        f"{show_level(pit.floor, system)}, lid at the finished floor.{_pump(layout)}"
    )


def _pump(layout: Layout) -> str:
    pit, system = layout.sump, layout.design.project.units
    pump = pit.sump.pump if pit else None
    if pump is None:
        return " Pump and discharge are not part of these drawings."
    levels = f" Pump on at {size(pump.on, system)}, off at {size(pump.off, system)}"
    alarm = "" if pump.alarm is None else f", alarm at {size(pump.alarm, system)}"
    return f"{levels}{alarm} above the pit's bottom; discharge is not part of these drawings."
