"""Ties that disagree, piers against the floor, subgrade against the footing, the pump's float."""

from collections.abc import Iterator

from geometry.checks.finding import Finding
from geometry.layout.areas import AreaLayout
from geometry.layout.footings import column_prism, pad_prism, pier_name
from geometry.layout.lay import Layout
from geometry.layout.sump import SumpLayout
from geometry.sources import GEOMETRY, PRACTICE
from geometry.units import INCH, System, show_length, show_level

# Two levels nearer than this agree on site (common practice, no source).
AGREE_M = INCH / 8


def level_findings(layout: Layout) -> Iterator[Finding]:
    """Yield the findings on levels of every area and the pit."""
    system = layout.design.project.units
    for area in layout.areas:
        yield from tie_findings(area, system)
        yield from pier_findings(area, system)
        yield subgrade_finding(area, system)
    if layout.sump:
        yield from pump_finding(layout.sump, system)


def tie_findings(area: AreaLayout, system: System) -> Iterator[Finding]:
    """Yield, for every tie after the first, where its face lands and how far off its level is."""
    first = area.floor.ties[0]
    for tie in area.floor.ties[1:]:
        lands = area.stack.interfaces[tie.interface.lower()]
        off = lands - area.fixed_level(tie.at)
        agree = abs(off) <= AGREE_M
        by = show_length(abs(off), system)
        outcome = "they agree" if agree else f"{by} too {'high' if off > 0 else 'low'}"
        yield Finding(
            "ties-agree",
            "fine" if agree else "stop",
            f"{area.name}, {tie.interface}",
            f"With {first.interface} at its tie, {tie.interface} lands at "
            f"{show_level(lands - area.tof, system)} against TOF; its own tie asks "
            f"{show_level(lands - off - area.tof, system)}: {outcome}.",
            f"ties within {show_length(AGREE_M, system)} of each other",
            GEOMETRY,
            "Keep both." if agree else f"Change a layer by {by}, or drop one tie.",
        )


def pier_findings(area: AreaLayout, system: System) -> Iterator[Finding]:
    """Yield how each pier's column ends against the finished floor."""
    for number, pier in enumerate(area.area.piers):
        column = column_prism(area, pier)
        top = column.top if column else pad_prism(area, pier).top
        off = top - area.finished_floor
        flush = abs(off) <= AGREE_M
        away = f"{show_length(abs(off), system)} {'above' if off > 0 else 'below'}"
        yield Finding(
            "pier-flush",
            "fine" if flush else "look",
            f"{area.name}, pier {pier_name(area, number)}",
            f"Top of pier at {show_level(top - area.tof, system)} against TOF, "
            f"{'flush with' if flush else away} the finished floor at "
            f"{show_level(area.finished_floor - area.tof, system)}.",
            "pier flush with the finished floor, unless a post stands on it lower",
            PRACTICE,
            "Pour it so."
            if flush
            else "Set column_top to the finished floor, or keep it where the post needs it.",
        )


def subgrade_finding(area: AreaLayout, system: System) -> Finding:
    """Return whether the floor's cut goes below the footing beside it."""
    below = area.footing_bottom - area.subgrade
    deep = below > AGREE_M
    over = f": the dig would go {show_length(below, system)} below it" if deep else ""
    return Finding(
        "subgrade-above-footing",
        "stop" if deep else "fine",
        f"{area.name}, subgrade",
        f"Cut the floor to {show_level(area.subgrade - area.tof, system)} against TOF; the "
        f"footing's bottom is at {show_level(area.footing_bottom - area.tof, system)}{over}.",
        "no dig below the bottom of a footing beside it",
        PRACTICE,
        "Thin the base or raise the floor; a dig beside and below a footing can undermine it: "
        "ask an engineer."
        if deep
        else "Cut it so.",
    )


def pump_finding(pit: SumpLayout, system: System) -> Iterator[Finding]:
    """Yield whether the pump starts before water stands in the pipe that feeds the pit."""
    if pit.pump_on is None or pit.lead is None:
        return
    over = pit.pump_on - pit.lead.end_invert
    high = over > 1e-9
    yield Finding(
        "pump-below-inlet",
        "look" if high else "fine",
        "sump, pump",
        f"Pump starts at {show_level(pit.pump_on - pit.area.tof, system)} against TOF; "
        f"the pipe's invert enters the pit at "
        f"{show_level(pit.lead.end_invert - pit.area.tof, system)}.",
        "pump on below the invert of the pipe that enters the pit",
        PRACTICE,
        f"Water would stand {show_length(over, system)} over that invert, back into the drain, "
        "before the pump starts: lower on, or make the pit deeper."
        if high
        else "Set the float so.",
    )
