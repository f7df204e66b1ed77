"""Ties that disagree, piers against the floor, subgrade against the footing, drain against the floor."""

from collections.abc import Iterator

from geometry.checks.finding import Finding, Severity
from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout
from geometry.layout.footings import column_prism, pad_prism, pier_name
from geometry.layout.lay import Layout
from geometry.sources import GEOMETRY, PRACTICE, Source
from geometry.units import INCH, System, show_length, show_level

# Two levels nearer than this agree on site (common practice, no source).
AGREE_M = INCH / 8


def level_findings(layout: Layout) -> Iterator[Finding]:
    """Yield the findings on levels of every area and the drain."""
    system = layout.design.project.units
    for area in layout.areas:
        yield from tie_findings(area, system)
        yield from pier_findings(area, system)
        yield from _subgrade(area, system)
    if layout.drain:
        yield from drain_findings(layout.drain, system)


def tie_findings(area: AreaLayout, system: System) -> Iterator[Finding]:
    """Yield a finding for every tie after the first: where it would put its face, and the difference."""
    first = area.floor.ties[0]
    for tie in area.floor.ties[1:]:
        lands = area.stack.interfaces[tie.interface.lower()]
        wanted = area.fixed_level(tie.at)
        off = lands - wanted
        agree = abs(off) <= AGREE_M
        severity: Severity = "fine" if agree else "stop"
        way = "higher" if off > 0 else "lower"
        yield Finding(
            "ties-agree",
            severity,
            f"{area.name}, {tie.interface}",
            f'Tied by "{first.interface}", {tie.interface} lands at {show_level(lands - area.tof, system)} against TOF; '
            f"its own tie asks {show_level(wanted - area.tof, system)}: "
            + ("they agree." if agree else f"{show_length(abs(off), system)} {way}."),
            f"ties within {show_length(AGREE_M, system)} of each other",
            GEOMETRY,
            "Keep both."
            if agree
            else f"Change a layer's thickness by {show_length(abs(off), system)}, or drop one tie.",
        )


def pier_findings(area: AreaLayout, system: System) -> Iterator[Finding]:
    """Yield how each pier's column ends against the finished floor."""
    for number, pier in enumerate(area.area.piers):
        column = column_prism(area, pier)
        top = column.top if column else pad_prism(area, pier).top
        off = top - area.finished_floor
        flush = abs(off) <= AGREE_M
        where = (
            "flush with"
            if flush
            else f"{show_length(abs(off), system)} {'above' if off > 0 else 'below'}"
        )
        yield Finding(
            "pier-flush",
            "fine" if flush else "look",
            f"{area.name}, pier {pier_name(area, number)}",
            f"Top of pier at {show_level(top - area.tof, system)} against TOF, {where} the finished floor at "
            f"{show_level(area.finished_floor - area.tof, system)}.",
            "pier flush with the finished floor, unless a post stands on it lower",
            PRACTICE,
            "Pour it so."
            if flush
            else "Set column_top to the finished floor, or keep it where the post needs it.",
        )


def _subgrade(area: AreaLayout, system: System) -> Iterator[Finding]:
    below = area.footing_bottom - area.subgrade
    deep = below > AGREE_M
    yield Finding(
        "subgrade-above-footing",
        "stop" if deep else "fine",
        f"{area.name}, subgrade",
        f"Cut the floor to {show_level(area.subgrade - area.tof, system)} against TOF; the footing's bottom is at "
        f"{show_level(area.footing_bottom - area.tof, system)}"
        + (f": the dig would go {show_length(below, system)} below it." if deep else "."),
        "no dig below the bottom of a footing beside it",
        PRACTICE,
        "Thin the base or raise the floor; digging beside and below a footing can undermine it, ask an engineer."
        if deep
        else "Cut so.",
    )


_CROWN = Source(
    "Ontario-type rule: crown of the pipe below the underside of the floor slab", sure="second-hand"
)


def drain_findings(drain: DrainLayout, system: System) -> Iterator[Finding]:
    """Yield how pipe and trench lie against the floor's slab and the footing."""
    area = drain.area
    slabs = [n for n, layer in enumerate(area.floor.layers) if layer.role == "slab"]
    if slabs:
        underside = area.stack.levels[slabs[-1]]
        crown = drain.high_invert + drain.bore + drain.radius
        over = crown - underside
        yield Finding(
            "drain-below-slab",
            "stop" if over > AGREE_M else "fine",
            "drain, high point",
            f"Crown at {show_level(crown - area.tof, system)} against TOF after a rise of {show_length(drain.rise, system)} "
            f"over {show_length(max(drain.branches()), system)}; slab underside at {show_level(underside - area.tof, system)}.",
            "crown below the underside of the slab",
            _CROWN,
            f"Lessen the fall, lower the outlet or add a second low point: {show_length(over, system)} too high."
            if over > AGREE_M
            else "Lay it so.",
        )
    under = area.footing_bottom - drain.stone_bottom
    deep = under > AGREE_M
    yield Finding(
        "drain-trench-above-footing-bottom",
        "look" if deep else "fine",
        "drain, trench",
        f"Trench bottom at {show_level(drain.stone_bottom - area.tof, system)} against TOF, footing bottom at "
        f"{show_level(area.footing_bottom - area.tof, system)}.",
        "trench not below the footing, unless outside its bearing splay",
        PRACTICE,
        f"The trench goes {show_length(under, system)} below the footing beside it: keep it outside a 1:1 splay, or ask an engineer."
        if deep
        else "Dig it so.",
    )
