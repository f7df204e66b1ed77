"""Notes on drains, where each one's water goes, and the sump."""

from collections.abc import Iterator

from geometry.layout.bleeders import bleeder_invert
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout, across
from geometry.units import show_fall, show_length, show_level
from viz.figures.drainwords import ToDaylight, capital, to_daylight
from viz.figures.wording import corners, holes, plain_pipe, within
from viz.words import size


def drain(layout: Layout) -> Iterator[str]:
    """Yield the notes on the drains, their stone, their cleanouts and where their water goes."""
    if not layout.drains:
        yield "No foundation drain is part of this design."
    for laid in layout.drains:
        yield from _drain(layout, laid)
    for laid in layout.drains:
        yield from _outlets(layout, laid)


def _which(layout: Layout, laid: DrainLayout) -> str:
    """Return words that tell a drain from others, in brackets; empty for an only one."""
    return f" ({laid.title})" if len(layout.drains) > 1 else ""


def _drain(layout: Layout, laid: DrainLayout) -> Iterator[str]:
    given, system, which = laid.drain, layout.design.project.units, _which(layout, laid)
    low, high = (show_level(z, system) for z in (laid.outlet_invert, laid.high_invert))
    ends = "points" if len(laid.lows) > 1 else "point"
    falls = (
        f"falls {show_fall(given.fall, system)}, invert from {high} at the high point to {low} "
        f"at the low {ends}"
        if given.fall
        else f"laid level, invert {low} throughout"
    )
    name = capital(laid.title) if which else "Drain"
    yield (
        f"{name}: {plain_pipe(laid.pipe)} ({laid.pipe.standard}), {falls}. "
        f"Perforations: {holes(given.holes, system)}."
    )
    over = "over the pipe, where the floor leaves room" if laid.inside else "over pipe and footing"
    yield (
        f"Drain stone{which}: {within(given.stone.material)}, "
        f"{size(given.stone.width, system)} wide, at least "
        f"{show_length(given.stone.bedding, system)} under the pipe and "
        f"{show_length(given.stone.cover, system)} {over}, wrapped in "
        f"{within(given.wrap.material)}, lapped {size(given.wrap.overlap, system)} on top."
    )
    if given.cleanouts:
        top = "floor" if laid.inside else "grade"
        at = corners(given.cleanouts)
        yield f"Drain cleanouts{which} at {at}, brought up to finished {top}."
    else:
        yield f"No drain cleanouts are given{which}."


def _outlets(layout: Layout, laid: DrainLayout) -> Iterator[str]:
    """Yield where a drain's water goes, but for the pipe to the pit, which the pit's notes tell."""
    for out in to_daylight(layout, laid):
        yield _daylight(layout, laid, out)
    if layout.bleeders_of(laid):
        yield _bleeders(layout, laid)
    if laid.drain.outlet == "lower stone":
        yield (
            f"Drain outlet{_which(layout, laid)}: the open end at invert "
            f"{show_level(laid.outlet_invert, layout.design.project.units)} lies over the stone of "
            "the lower drain. Advice (common practice, no source): bring the water down in a "
            "solid pipe into that stone, not through the backfill."
        )
    if _base_vents(layout, laid):
        yield (
            "Through the outlet to daylight the stone under the floor is open to outside air. "
            "What the rules on radon ask of that way for air is not settled here."
        )


def _daylight(layout: Layout, laid: DrainLayout, out: ToDaylight) -> str:
    system, run, asked = layout.design.project.units, out.run, out.run.asked
    reach = show_length(run.reach_m, system, 4)
    ends = (
        f"does not come out within {reach}, as far as the ground is given"
        if run.end_at_m is None
        else f"open end {reach} from the drain at invert {show_level(run.end_invert_m, system)}, "
        f"at least {show_length(asked.above_ground, system)} over the ground there"
    )
    guard = "guarded against animals" if asked.guard else "no guard against animals is given"
    return (
        f"Drain outlet{_which(layout, laid)} to {out.name}: {plain_pipe(out.lead.pipe)}, solid, "
        f"falls {show_fall(asked.fall, system)}, at least {show_length(asked.cover, system)} of "
        f"ground wanted over it; {ends}; {guard}. Keep the open end free."
    )


def _bleeders(layout: Layout, laid: DrainLayout) -> str:
    found, system = layout.bleeders_of(laid), layout.design.project.units
    other = across(laid, layout.drains)
    into = f"; they end in the stone of the {other.title}" if other else ""
    many = f"{len(found)} pipes" if len(found) > 1 else "1 pipe"
    apart = size(laid.drain.bleeders.spacing, system)
    invert = show_level(bleeder_invert(laid), system)
    return (
        f"Bleeders: the {laid.title} empties through {many} {plain_pipe(found[0].pipe)} "
        f"({found[0].pipe.standard}), solid, level, at most {apart} apart, invert {invert}, set "
        f"in the footing's forms before the pour{into}."
    )


def _base_vents(layout: Layout, laid: DrainLayout) -> bool:
    """Tell whether a floor's base is open to outside air through this drain's outlet."""
    if not laid.drain.daylight:
        return False
    return laid.inside or any(d.inside for d in layout.drains if _joined(layout, laid, d))


def _joined(layout: Layout, one: DrainLayout, other: DrainLayout) -> bool:
    """Tell whether bleeders join two drains."""
    beside = across(one, layout.drains) is other
    return beside and bool(layout.bleeders_at(one))


def sump(layout: Layout) -> Iterator[str]:
    """Yield the notes on the pipe to the sump, the sump and its pump."""
    pit, system = layout.sump, layout.design.project.units
    yield from _unstated(layout)
    if pit is None:
        return
    if pit.lead:
        fall, sleeve = show_fall(pit.lead.fall, system), pit.lead.sleeve
        cast = f" through a sleeve ({plain_pipe(sleeve)}) cast into the footing," if sleeve else ""
        drained = layout.sump_drain
        under = ", straight under the floor," if drained and drained.inside else ""
        which = _which(layout, drained) if drained else ""
        yield (
            f"Drain outlet{which}: {plain_pipe(pit.lead.pipe)}, solid, falls {fall}{cast}"
            f"{under} to the sump; invert at the sump {show_level(pit.lead.end_invert, system)}."
        )
    yield (
        f"Sump: pit {size(pit.sump.diameter, system)} inside, bottom at "
        f"{show_level(pit.floor, system)}, lid at the finished floor.{_pump(layout)}"
    )


def _unstated(layout: Layout) -> Iterator[str]:
    """Yield which drains' water has nowhere to go."""
    for laid in layout.drains:
        if laid.drain.outlet is None and not layout.leads(laid):
            which = _which(layout, laid)
            whose = f"the water of the {laid.title}" if which else "the drain's water"
            yield f"Where {whose} goes from its low point is not stated: to be added."


def _pump(layout: Layout) -> str:
    pit, system = layout.sump, layout.design.project.units
    pump = pit.sump.pump if pit else None
    if pump is None:
        return " Pump and discharge are not part of these drawings."
    levels = f" Pump on at {size(pump.on, system)}, off at {size(pump.off, system)}"
    alarm = "" if pump.alarm is None else f", alarm at {size(pump.alarm, system)}"
    return f"{levels}{alarm} above the pit's bottom; discharge is not part of these drawings."
