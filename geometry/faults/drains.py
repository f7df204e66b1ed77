"""Faults of the drain and the sump pit that would leave no pipe to lay."""

from collections.abc import Iterator

import numpy as np
import shapely

from geometry.faults.common import At, Words
from geometry.layout.areas import AreaLayout
from geometry.layout.drain import DrainLayout, lay_drain, side_lengths
from geometry.layout.ground import GroundLayout
from geometry.layout.sump import SumpLayout, lay_sump
from geometry.materials.catalogue import PIPES
from geometry.parts.drain import Drain
from geometry.plan.route import lengths_along, parallel
from geometry.project import Design

# Perforated pipe shorter than this between two fittings cannot be laid.
SHORTEST_STICK_M = 0.05
CLEAR_M = 0.005


def numbers_faults(design: Design) -> Iterator[At]:
    """Yield names, sides and corners that do not exist; what follows needs them."""
    names = [a.name for a in design.areas]
    for key, part in (("drain", design.drain), ("sump", design.sump)):
        if part and part.area and part.area not in names:
            yield At(
                (key, "area"), f'there is no area "{part.area}"; write one of {", ".join(names)}'
            )
    if design.drain:
        yield from _drain_numbers(design, design.drain)


def _drain_numbers(design: Design, drain: Drain) -> Iterator[At]:
    lowest = min(design.areas, key=lambda a: a.step)
    area = next((a for a in design.areas if a.name == drain.area), lowest)
    if area.step > lowest.step:
        yield At(
            ("drain", "area"),
            f'the drain lies round "{area.name}", above "{lowest.name}"; put it round the lowest area',
        )
    count = len(area.corners)
    if drain.sides != "all":
        wrong = sorted({s for s in drain.sides if not 1 <= s <= count})
        if wrong or not drain.sides:
            yield At(
                ("drain", "sides"),
                f'{list(drain.sides)} names sides that are not there; write "all" or numbers from 1 to {count}',
            )
    corners = [("high_corner", drain.high_corner), ("low_corner", drain.low_corner)]
    corners += [("cleanouts", c) for c in drain.cleanouts]
    for key, corner in corners:
        if corner is not None and not 1 <= corner <= count:
            yield At(("drain", key), f"there is no corner {corner}; number them from 1 to {count}")
    if len(set(drain.cleanouts)) < len(drain.cleanouts):
        yield At(
            ("drain", "cleanouts"), "a corner is listed twice; one cleanout stands at a corner"
        )
    if drain.high_corner and drain.high_corner == drain.low_corner:
        yield At(
            ("drain", "low_corner"),
            "the low point is the high point; leave one out or choose another corner",
        )


def section_faults(drain: Drain, wrap_m: float, footing_m: float, words: Words) -> Iterator[At]:
    """Yield faults of the pipe's own section and of its place in the stone."""
    pipe = PIPES[drain.pipe]
    radius, holes = pipe.outside_diameter_m / 2, drain.holes
    least = radius + wrap_m + CLEAR_M
    if drain.offset < least:
        yield At(
            ("drain", "offset"),
            f"the pipe's centre is {words.size(drain.offset)} from the footing and the pipe would run into it; "
            f"keep at least {words.size(least)}",
        )
    if drain.stone.width < drain.offset + least:
        yield At(
            ("drain", "stone", "width"),
            f"stone {words.size(drain.stone.width)} wide does not reach past the pipe; "
            f"make it at least {words.size(drain.offset + least)}",
        )
    if 0 < holes.spacing - holes.diameter < 1e-3 or holes.spacing <= holes.diameter:
        yield At(
            ("drain", "holes", "spacing"),
            f"holes of {words.size(holes.diameter)} every {words.size(holes.spacing)} run into each other",
        )
    if holes.diameter > 0.5 * pipe.inside_diameter_m:
        yield At(
            ("drain", "holes", "diameter"),
            f"{words.size(holes.diameter)} is more than half the pipe's bore of {words.size(pipe.inside_diameter_m)}",
        )
    elif _rows_meet(holes.rows, holes.diameter / 2, pipe.inside_diameter_m / 2):
        yield At(
            ("drain", "holes", "rows"),
            "two rows of holes run into each other; set their angles further apart",
        )


def _rows_meet(rows: tuple[float, ...], hole: float, bore: float) -> bool:
    apart = 2 * np.degrees(np.arcsin(min(1.0, 1.1 * hole / bore)))
    turned = sorted(r % 360 for r in rows)
    gaps = np.diff([*turned, turned[0] + 360]) if turned else np.array([])
    return bool(len(rows) > 1 and gaps.min() < apart)


def route_faults(design: Design, area: AreaLayout, words: Words) -> Iterator[At]:
    """Yield faults of the route: sides too short to turn round, sides not next to each other."""
    drain = design.drain
    if drain is None:
        return
    try:
        laid = lay_drain(drain, area, design.sump.at if design.sump else None)
    except (ValueError, IndexError, shapely.errors.GEOSException):
        yield At(
            ("drain", "sides"), "the drain finds no way round this outline; choose other sides"
        )
        return
    short = {side for side, length in side_lengths(laid) if length <= 0}
    outer = lengths_along(laid.base, parallel(laid.base, drain.stone.width))
    if short or outer.min() <= 0:
        where = ", ".join(str(s) for s in sorted(short)) or "a short side"
        yield At(
            ("drain", "offset"),
            f"the drain collapses at side {where}: it is too short to turn two bends; "
            "bring the drain nearer to the footing, narrow the stone, or leave that side off",
        )
        return
    if not shapely.Polygon(parallel(laid.base, drain.stone.width)).is_valid:
        yield At(
            ("drain", "stone", "width"),
            "the drain stone of two facing sides runs into each other; narrow it",
        )
        return
    if drain.sides != "all" and len(laid.route.points) - 1 < len(set(drain.sides)):
        yield At(
            ("drain", "sides"),
            "the sides do not follow each other; a drain is one run of neighbouring sides",
        )
        return
    tight = [gap for gap in laid.gaps if gap[1] - gap[0] < SHORTEST_STICK_M]
    if tight:
        side = (
            words.size(-min(b - a for a, b in tight))
            if min(b - a for a, b in tight) < 0
            else "no room"
        )
        yield At(
            ("drain", "offset"),
            f"two fittings of the drain meet on a short side ({side} between them); "
            "move the sump, the offset or the corner, or leave that side off",
        )


def conflict_faults(
    areas: tuple[AreaLayout, ...], drain: DrainLayout, ground: GroundLayout, words: Words
) -> Iterator[At]:
    """Yield places where higher areas stand in the drain's way, and risers under a floor."""
    top = drain.stone_top + 2 * drain.wrap_m
    for area in areas:
        if area is drain.area:
            continue
        low = min(area.footing_bottom, area.subgrade)
        over = area.outline.intersection(drain.high_space).area > 1e-6
        if over and low < top:
            yield At(
                ("drain", "stone", "cover"),
                f'area "{area.name}" reaches down to {words.level(low)} into the drain stone, whose top is at '
                f"{words.level(top)}; leave those sides off the drain, lower the stone or raise the area",
            )
    stations = {float(s) for s in drain.route.stations}
    for corner in drain.drain.cleanouts:
        station = drain.corner_station(corner)
        point = drain.route.at(station)
        if ground.house.distance(shapely.Point(point)) < drain.radius + CLEAR_M:
            yield At(
                ("drain", "cleanouts"),
                f"the cleanout at corner {corner} would come up under another area; choose another corner",
            )
        elif (
            not any(abs(station - f.station) < 1e-6 for f in drain.fittings) and station in stations
        ):
            yield At(
                ("drain", "cleanouts"),
                f"corner {corner} is no bend of the drain; choose a corner between two of its sides",
            )
    if drain.stone_top > ground.fill_top:
        yield At(
            ("drain", "fall"),
            f"the drain stone would reach {words.level(drain.stone_top)}, above the ground at {words.level(ground.fill_top)}; "
            "lower the outlet or lessen the fall",
        )


def working_faults(design: Design, areas: tuple[AreaLayout, ...], words: Words) -> Iterator[At]:
    """Yield a hole too narrow for the drain stone beside the footing."""
    if design.drain and design.excavation.working_space < design.drain.stone.width:
        yield At(
            ("excavation", "working_space"),
            f"{words.size(design.excavation.working_space)} beside the footing is narrower than the drain stone; "
            f"dig at least {words.size(design.drain.stone.width)}",
        )


def sump_faults(
    design: Design, area: AreaLayout, drain: DrainLayout | None, words: Words
) -> Iterator[At]:
    """Yield faults of the pit's place and depth, and of the pipe that leads to it."""
    if design.sump is None:
        return
    pit = lay_sump(design.sump, area, drain)
    around = pit.pocket.region
    if not area.room.contains(shapely.Point(design.sump.at)):
        yield At(
            ("sump", "at"),
            f'the pit stands outside the floor of area "{area.name}"; move it inside the walls',
        )
        return
    if not area.core.buffer(1e-6).contains(around):
        yield At(
            ("sump", "at"),
            "the pit and the stone round it run into the footing; move it inward or narrow the stone",
        )
        return
    from geometry.layout.footings import pad_prism

    for pier in area.area.piers:
        if pad_prism(area, pier).region.intersects(around):
            yield At(("sump", "at"), "the pit runs into a pier's pad; move one of them")
    if pit.floor - design.sump.wall >= area.subgrade:
        yield At(
            ("sump", "depth"),
            f"a pit {words.size(design.sump.depth)} deep does not reach below the floor's stone; make it deeper",
        )
    if pit.lead and drain:
        yield from _lead_faults(pit, drain, words)


def _lead_faults(pit: SumpLayout, drain: DrainLayout, words: Words) -> Iterator[At]:
    lead, area = pit.lead, drain.area
    if lead is None:
        return
    gaps = [
        abs(np.dot(lead.along, _direction(drain, leg))) for leg in range(len(drain.route.points))
    ]
    if min(gaps) > 1e-6:
        yield At(
            ("sump", "at"),
            "no straight pipe meets the drain squarely from the pit; move the pit away from the corner",
        )
        return
    if lead.end_invert < pit.floor:
        yield At(
            ("sump", "depth"),
            f"the pipe would enter at {words.level(lead.end_invert)}, below the pit's bottom at {words.level(pit.floor)}; "
            f"make the pit at least {words.size(pit.rim - lead.end_invert)} deep",
        )
    if lead.sleeve.inside_diameter_m < lead.pipe.outside_diameter_m:
        yield At(
            ("sump", "sleeve"),
            "the sleeve's bore is smaller than the pipe in it; choose a larger sleeve",
        )
    radius = lead.sleeve.outside_diameter_m / 2
    tops = [lead.at(d)[2] + s * radius for d in (lead.face, lead.back) for s in (-1, 1)]
    if max(tops) > area.tof or min(tops) < area.footing_bottom:
        over, under = max(tops) - area.tof, area.footing_bottom - min(tops)
        way = (
            f"lower the outlet invert by {words.size(over)}"
            if over > under
            else f"raise the outlet invert by {words.size(under)}"
        )
        tall = max(tops) - min(tops)
        better = (
            way
            if tall <= area.footing.thickness
            else "choose a smaller sleeve or a thicker footing"
        )
        yield At(
            ("sump", "sleeve"),
            f"the sleeve does not lie wholly within the footing's thickness; {better}",
        )
    wide = lead.sleeve.outside_diameter_m / 2
    if lead.begin > drain.drain.offset or wide > 2 * drain.drain.offset:
        yield At(
            ("drain", "offset"),
            "there is no room for the tee beside the footing; move the drain outward",
        )


def _direction(drain: DrainLayout, leg: int) -> tuple[float, float]:
    points = np.asarray(drain.route.points)
    step = points[(leg + 1) % len(points)] - points[leg]
    x, y = step / np.linalg.norm(step)
    return float(x), float(y)


def pit_layout(design: Design, area: AreaLayout, drain: DrainLayout | None) -> SumpLayout | None:
    """Return the pit laid out, if the design has one."""
    return lay_sump(design.sump, area, drain) if design.sump else None
