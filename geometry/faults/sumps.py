"""Faults of the sump pit, and of the solid pipe that leads to it."""

from collections.abc import Iterator, Sequence

import shapely

from geometry.faults.common import At, Words
from geometry.faults.lines import Path
from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.footings import pad_prism, pier_name
from geometry.layout.lay import empties_into_pit
from geometry.layout.leads import LeadLayout
from geometry.layout.sump import SumpLayout, lay_sump
from geometry.materials.kinds import Pipe
from geometry.parts.drain import Sump


def sump_faults(
    sump: Sump, area: AreaLayout, drains: Sequence[DrainLayout], words: Words
) -> Iterator[At]:
    """Yield faults of the pit's place and depth, and of the pipe that leads to it."""
    number, drain = next(
        ((n, d) for n, d in enumerate(drains) if empties_into_pit(d.drain)), (0, None)
    )
    if drain and drain.area is not area:
        yield At(
            ("sump", "area"),
            f'the pit lies in area "{area.name}", but the drain runs round "{drain.area.name}"; '
            "put both to the same area",
        )
        return
    if not area.room.contains(shapely.Point(sump.at)):
        yield At(
            ("sump", "at"),
            f'the pit stands outside the floor of area "{area.name}"; move it inside the walls',
        )
        return
    pit = lay_sump(sump, area, drain)
    around = pit.pocket.region
    if not area.core.buffer(1e-6).contains(around):
        yield At(
            ("sump", "at"),
            "the pit and the stone round it run into the footing; "
            "move it inward or narrow the stone",
        )
        return
    for number, pier in enumerate(area.area.piers):
        if pad_prism(area, pier).region.intersects(around):
            name = pier_name(area, number)
            yield At(("sump", "at"), f"the pit runs into the pad of pier {name}; move one of them")
    for other in drains:
        if other.inside and other.area is area and around.intersects(other.low_space):
            yield At(
                ("sump", "at"),
                f"the pit and the stone round it run into the {other.title}; move it inward",
            )
    yield from _depth_faults(pit, words)
    if pit.lead and drain:
        yield from _lead_faults(("drain", number), pit.lead, drain, words)
        yield from _way_faults(pit, pit.lead)


def pump_faults(sump: Sump, words: Words) -> Iterator[At]:
    """Yield float levels out of order, or not below the lid."""
    pump = sump.pump
    if pump is None:
        return
    path = ("sump", "pump")
    if pump.on <= pump.off:
        yield At(
            (*path, "on"),
            f"the pump would start at {words.size(pump.on)}, not above {words.size(pump.off)} "
            "where it stops; raise on or lower off",
        )
    if pump.alarm is not None and pump.alarm <= pump.on:
        yield At(
            (*path, "alarm"),
            f"the alarm at {words.size(pump.alarm)} is not above {words.size(pump.on)} where the "
            "pump starts; raise alarm or lower on",
        )
    key, highest = ("on", pump.on) if pump.alarm is None else ("alarm", pump.alarm)
    room = sump.depth - sump.lid
    if highest > room + 1e-9:
        yield At(
            (*path, key),
            f"{words.size(highest)} above the pit's bottom is not below its lid; "
            f"set it to at most {words.most(room)} or make the pit deeper",
        )


def _depth_faults(pit: SumpLayout, words: Words) -> Iterator[At]:
    below_layers = pit.rim - pit.area.subgrade - pit.sump.wall
    below_pipe = pit.rim - pit.lead.end_invert if pit.lead else 0.0
    if pit.lead and pit.sump.depth < below_pipe:
        yield At(
            ("sump", "depth"),
            f"the pipe would enter at {words.level(pit.lead.end_invert)}, below the pit's bottom "
            f"at {words.level(pit.floor)}; "
            f"make the pit at least {words.least(max(below_pipe, below_layers))} deep",
        )
    elif pit.sump.depth <= below_layers:
        yield At(
            ("sump", "depth"),
            f"a pit {words.size(pit.sump.depth)} deep does not reach below the floor's layers; "
            f"make it more than {words.least(below_layers)}",
        )


def _lead_faults(path: Path, lead: LeadLayout, drain: DrainLayout, words: Words) -> Iterator[At]:
    if lead.sleeve is None:
        return
    yield from _sleeve_faults(lead, lead.sleeve, drain.area, words)
    if lead.sleeve.outside_diameter_m / 2 > 2 * drain.drain.offset:
        yield At(
            (*path, "offset"),
            "there is no room for the tee beside the footing; move the drain outward",
        )


def _way_faults(pit: SumpLayout, lead: LeadLayout) -> Iterator[At]:
    """Yield what stands in the way of the solid pipe and its trench under the floor."""
    area, radius = pit.area, lead.outer
    line = shapely.LineString((lead.at(lead.back)[:2], lead.at(lead.end)[:2]))
    way = pit.trench.region if pit.trench else line.buffer(radius, cap_style="flat")
    if not area.core.buffer(1e-6).contains(way):
        yield At(
            ("sump", "at"),
            "the pipe to the sump would run through another side's footing; "
            "move the pit along its own side, away from the corner",
        )
    low, high = lead.at(lead.end)[2] - radius, lead.at(lead.back)[2] + radius
    if pit.trench:
        low, high = min(low, pit.trench.bottom), max(high, pit.trench.top)
    for number, pier in enumerate(area.area.piers):
        pad = pad_prism(area, pier)
        if pad.region.intersects(way) and pad.bottom < high and pad.top > low:
            name = pier_name(area, number)
            yield At(
                ("sump", "at"),
                f"the pipe to the sump would run through the pad of pier {name}; move one of them",
            )


def _sleeve_faults(lead: LeadLayout, sleeve: Pipe, area: AreaLayout, words: Words) -> Iterator[At]:
    if sleeve.inside_diameter_m < lead.pipe.outside_diameter_m:
        yield At(
            ("sump", "sleeve"),
            f"the sleeve's bore of {words.size(sleeve.inside_diameter_m)} is smaller than the "
            f"pipe of {words.size(lead.pipe.outside_diameter_m)} in it; choose a larger sleeve",
        )
    radius = sleeve.outside_diameter_m / 2
    levels = [lead.at(d)[2] + side * radius for d in (lead.face, lead.back) for side in (-1, 1)]
    over, under = max(levels) - area.tof, area.footing_bottom - min(levels)
    if max(over, under) <= 0:
        return
    if max(levels) - min(levels) > area.footing.thickness:
        advice = "choose a smaller sleeve or a thicker footing"
    elif over > under:
        advice = f"lower the drain's outlet_invert by {words.least(over)}"
    else:
        advice = f"raise the drain's outlet_invert by {words.least(under)}"
    yield At(
        ("sump", "sleeve"),
        f"the sleeve does not lie wholly within the footing's thickness; {advice}",
    )
