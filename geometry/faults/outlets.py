"""Faults of what each drain empties into, and of drains that meet each other."""

from collections.abc import Iterator, Sequence
from itertools import combinations

import shapely
from shapely.geometry.base import BaseGeometry

from geometry.faults.common import At, Words
from geometry.faults.drains import CLEAR_M, drained_area
from geometry.faults.lines import Path
from geometry.layout.areas import AreaLayout
from geometry.layout.bleeders import lay_bleeders
from geometry.layout.drain import DrainLayout
from geometry.layout.footings import pad_prism, pier_name
from geometry.layout.lay import across, empties_into_pit, lower_drain
from geometry.layout.leads import daylight_leads
from geometry.parts.drain import Drain
from geometry.parts.ground import Excavation
from geometry.project import Design


def outlet_faults(design: Design) -> Iterator[At]:
    """Yield outlets that are not there, or that two drains would share."""
    into = [n for n, d in enumerate(design.drains) if design.sump and empties_into_pit(d)]
    for number in into[1:]:
        yield At(
            ("drain", number, "outlet"),
            "another drain empties into the pit already; give this one outlet = "
            '"bleeders", "daylight" or "lower stone"',
        )
    for number, drain in enumerate(design.drains):
        yield from _outlet(("drain", number), design, drain)


def _outlet(path: Path, design: Design, drain: Drain) -> Iterator[At]:
    here = (*path, "outlet")
    if drain.outlet == "pit" and design.sump is None:
        yield At(here, "there is no pit to empty into; add a table [sump]")
    if drain.outlet == "daylight" and not drain.daylight:
        yield At(here, "no daylight is given; add a table [drain.daylight] with toward and ground")
    if drain.outlet in {"bleeders", "lower stone"} and drain.daylight:
        yield At(here, f'empties into "{drain.outlet}" and to daylight; leave one of them out')
    if drain.line == "inside" and drain.daylight:
        yield At(
            (*path, "daylight"),
            "a drain under the floor reaches daylight through bleeders and the drain outside; "
            'give this one outlet = "bleeders" and the other one daylight',
        )
    mine = drained_area(design, drain)
    others = [d for d in design.drains if drained_area(design, d) is mine and d.line != drain.line]
    if drain.outlet == "bleeders" and not others:
        side = "inside" if drain.line == "outside" else "outside"
        yield At(here, f"no drain runs along the other face of the footing; add one {side}")
    if drain.outlet == "bleeders" and any(d.outlet == "bleeders" for d in others):
        yield At(here, "both drains empty into each other; give one of them another outlet")
    if drain.line == "outside" and others and design.sump and empties_into_pit(drain):
        yield At(
            here,
            "the pipe to the pit would cross the drain inside the footing; "
            'give this one outlet = "bleeders" and the inside one outlet = "pit"',
        )
    if drain.outlet == "lower stone":
        yield from _lower(path, design, drain)


def _lower(path: Path, design: Design, drain: Drain) -> Iterator[At]:
    mine = drained_area(design, drain)
    if drain.sides == "all":
        yield At((*path, "sides"), "a drain that empties into lower stone needs an open end there")
    if not any(drained_area(design, d).step < mine.step for d in design.drains):
        yield At(
            (*path, "outlet"), f'no drain runs round an area lower than "{mine.name}"; add one'
        )


def inside_faults(path: Path, drain: DrainLayout, words: Words) -> Iterator[At]:
    """Yield what a drain under the floor has no room for: its pipe in the base, pads, risers."""
    if not drain.inside:
        return
    least = drain.crown + 2 * drain.wrap_m
    if least > drain.ceiling + 1e-9:
        yield At(
            (*path, "outlet_invert"),
            f"the wrapped pipe would reach {words.level(least)}, above the top of the floor's "
            f"base at {words.level(drain.ceiling)}; lower it, lessen its fall or thicken the base",
        )
    for number, pier in enumerate(drain.area.area.piers):
        pad = pad_prism(drain.area, pier)
        if pad.bottom < drain.stone_top and pad.region.intersects(drain.low_space):
            name = pier_name(drain.area, number)
            yield At((*path, "stone", "width"), f"the pad of pier {name} stands in the drain stone")


def crossing_faults(
    drains: Sequence[DrainLayout], areas: Sequence[AreaLayout], dig: Excavation
) -> Iterator[At]:
    """Yield risers and pipes to daylight that would run through other drains or the house."""
    house = shapely.union_all([shape for a in areas for shape in (a.outline, a.footings)])
    for number, drain in enumerate(drains):
        others = [d for d in drains if d is not drain]
        for corner in drain.drain.cleanouts:
            at = shapely.Point(drain.route.at(drain.corner_station(corner)))
            if not drain.inside and any(_meets(at, drain, d) for d in others):
                yield At(
                    ("drain", number, "cleanouts"),
                    f"the cleanout at corner {corner} would come up through another drain; "
                    "choose another corner",
                )
        for place, lead in enumerate(daylight_leads(drain, dig)):
            line = shapely.LineString((lead.at(lead.begin)[:2], lead.at(lead.end)[:2]))
            if house.distance(line) < lead.outer or any(_meets(line, drain, d) for d in others):
                yield At(
                    ("drain", number, "daylight", place, "toward"),
                    "the pipe to daylight would run through the house or another drain; "
                    "let it head away from both",
                )


def _meets(shape: BaseGeometry, drain: DrainLayout, other: DrainLayout) -> bool:
    """Whether a pipe that starts in a drain meets the stone of another that lies higher."""
    if other.inside or other.lap_top < drain.outlet_invert:
        return False
    return bool(other.band_plan.distance(shape) < drain.radius + CLEAR_M)


def meeting_faults(drains: Sequence[DrainLayout], words: Words) -> Iterator[At]:
    """Yield drains in each other's ground, bleeders that do not fit, ends over no lower stone."""
    for (_, one), (number, two) in combinations(enumerate(drains), 2):
        shared = one.band_plan.intersection(two.band_plan).area > 1e-6
        apart = one.stone_bottom > two.lap_top or two.stone_bottom > one.lap_top
        if shared and not apart:
            yield At(
                ("drain", number, "sides"),
                f"it would lie in the same ground as the {one.title}; "
                "choose other sides or narrow their stone",
            )
    for number, drain in enumerate(drains):
        other = across(drain, drains)
        if drain.drain.outlet == "bleeders" and other:
            yield from _bleeder_faults(("drain", number, "bleeders"), drain, other, words)
        if drain.drain.outlet == "lower stone" and lower_drain(drain, drains) is None:
            yield At(
                ("drain", number, "low_corner"),
                "its low end does not lie over the stone of a lower drain; "
                "end it at the corner where the lower wall begins",
            )


def _bleeder_faults(
    path: Path, drain: DrainLayout, other: DrainLayout, words: Words
) -> Iterator[At]:
    laid = lay_bleeders(drain, other)
    if not laid:
        yield At((*path, "spacing"), "no side has room for a bleeder away from its corners")
        return
    pipe, centre = laid[0], laid[0].outer_end[2]
    low, high = centre - pipe.radius, centre + pipe.radius
    floor = max(drain.area.footing_bottom, *(d.stone_bottom + d.wrap_m for d in (drain, other)))
    roof = min(drain.area.tof, *(d.stone_top - d.wrap_m for d in (drain, other)))
    if low < floor - 1e-9 or high > roof + 1e-9:
        yield At(
            (*path, "invert"),
            f"the bleeder from {words.level(low)} to {words.level(high)} does not lie within the "
            f"footing and both drains' stone, {words.level(floor)} to {words.level(roof)}; "
            "set its invert or choose a smaller pipe",
        )
