"""The tags of a plan: which words belong to which place of it."""

from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from geometry.layout.bleeders import Bleeder
from geometry.layout.drain import DrainLayout
from geometry.layout.lay import Layout, across
from geometry.layout.sump import SumpLayout
from viz.drawing.fonts import text_width
from viz.drawing.marks import Point
from viz.figures.drainwords import to_daylight
from viz.figures.plan.onpaper import OnPaper, unit
from viz.figures.plan.pipes import bleeder_line, flows, lead_line
from viz.figures.plan.structure import Structure
from viz.figures.plan.tags import Tag
from viz.figures.plan.words import Saying

# A leg is told its fall only where it is so much longer than the words.
_LONG = 1.25
_UP_RIGHT = (0.7071, 0.7071)
# Farther than words stand from the house, mm.
_FAR = 500.0
# Words farther than this from what they name get a leader, mm.
_LOOSE = 3.0


def away_from(shape: BaseGeometry, at: Point) -> Point:
    """Return the unit vector from a shape's nearest place to a point outside it."""
    near, _ = shapely.get_coordinates(shapely.shortest_line(shape, shapely.Point(at)))
    way = unit(np.asarray(at) - near)
    return (float(way[0]), float(way[1]))


def house_of(layout: Layout, paper: OnPaper) -> BaseGeometry:
    """Return all outlines joined, on paper."""
    return paper.drawn(layout.ground.house)


def pier_tags(layout: Layout, made: Structure) -> Iterator[Tag]:
    """Yield the piers' names, with the size of pads that are not the usual one."""
    say = Saying(layout)
    for pier in made.piers:
        pad = say.pad_unless_usual(pier.area.area.piers[pier.number])
        lines = (pier.name, f"pad {pad}") if pad else (pier.name,)
        half = (pier.column.bounds[2] - pier.column.bounds[0]) / 2 if pier.column else 0.0
        loose = max(_LOOSE, pier.pad.length / 8)
        yield Tag(lines, pier.at, _UP_RIGHT, loose, False, max(1.2, half + 0.4), half, 0.4)


def free_side(layout: Layout, drain: DrainLayout, paper: OnPaper) -> BaseGeometry:
    """Return what words about a drain lean away from: the house, for one inside its walls."""
    house = house_of(layout, paper)
    return house.boundary if drain.inside else house


def wrong_side(layout: Layout, drain: DrainLayout, paper: OnPaper) -> BaseGeometry | None:
    """Return where words about a drain would be taken for those of one on the footing's far side.

    Inside that is the ground outside the house, whether a drain lies there or not.
    """
    house = house_of(layout, paper)
    if drain.inside:
        return house.envelope.buffer(_FAR).difference(house)
    return house if across(drain, layout.drains) else None


def drain_tags(layout: Layout, drain: DrainLayout, paper: OnPaper) -> Iterator[Tag]:
    """Yield inverts at every corner, at low and high points and at open ends."""
    say, house = Saying(layout), free_side(layout, drain, paper)
    wrong = wrong_side(layout, drain, paper)
    for station, name in say.stations(drain):
        at = paper.point(drain.route.at(station))
        lines = (say.of(drain, name), *say.invert(drain.invert(station)))
        yield Tag(lines, at, away_from(house, at), away=4.0, shunned=wrong)


def pipe_tags(layout: Layout, drain: DrainLayout, paper: OnPaper, text: float) -> Iterator[Tag]:
    """Yield what the pipe is, on its longest leg, and the fall along each long leg."""
    say, house = Saying(layout), free_side(layout, drain, paper)
    legs = sorted(flows(drain), key=lambda f: f.start - f.end)
    wrong = wrong_side(layout, drain, paper)
    # Where words crowd and need leaders, these keep off the arrow at the middle of the leg.
    middle = 0.5 if len(layout.drains) == len(drain.lows) == 1 else 0.42
    for number, flow in enumerate(legs):
        length, words = flow.end - flow.start, say.fall(drain, flow)
        needed = _LONG * text_width(words, text) + 8
        if number and (paper.size(length) < needed or drain.rise <= 1e-9):
            continue
        share = middle if number else 0.36
        at = paper.point(drain.route.at(flow.start + share * length))
        toward = away_from(house, at)
        if number:
            yield Tag((words,), at, toward, _LOOSE, True, away=1.4, shunned=wrong)
        else:
            lines = (*say.pipe(drain), words, *say.level_throughout(drain))
            yield Tag(lines, at, toward, away=4.0, shunned=wrong)


def named_one(laid: Sequence[Bleeder]) -> Bleeder:
    """Return the bleeder that words for all stand at: the lowest on the sheet, then leftmost."""
    return min(laid, key=lambda b: (round(b.outer_end[1], 3), b.outer_end[0]))


def outward_tags(layout: Layout, paper: OnPaper) -> Iterator[Tag]:
    """Yield where the pipes to daylight go, and one tag for each drain's bleeders."""
    say, house = Saying(layout), house_of(layout, paper)
    for drain in layout.drains:
        for out in to_daylight(layout, drain):
            x, y = lead_line(out.lead, layout, paper).coords[-1]
            words, along = say.daylight(drain, out), out.lead.along
            yield Tag(words, (x, y), along, loose=_LOOSE, away=1.0, shunned=house)
        if laid := layout.bleeders_of(drain):
            x, y = bleeder_line(named_one(laid), paper).coords[0]
            toward = away_from(house, (x, y))
            yield Tag(say.bleeders(drain), (x, y), toward, away=4.0, shunned=house)


def pit_tags(layout: Layout, pit: SumpLayout, paper: OnPaper) -> Iterator[Tag]:
    """Yield the words of the pit and of the sleeve."""
    say, drain = Saying(layout), layout.sump_drain
    outside = wrong_side(layout, drain, paper) if drain and drain.inside else None
    if pit.lead:
        # The sleeve lies closer to the wall and has less choice of place: it comes first.
        lead = pit.lead
        at = paper.point(lead.at(lead.face + 0.85 * (lead.back - lead.face))[:2])
        yield Tag(say.lead(pit), at, away=3.0, shunned=outside)
    edge = paper.size(pit.outer, 2.0)
    at = paper.point(pit.sump.at)
    yield Tag(say.pit(pit), at, away=edge + 2.0, start=edge, shunned=outside)


def step_tags(layout: Layout, made: Structure) -> Iterator[Tag]:
    """Yield where footings step, and by how much."""
    say = Saying(layout)
    for step in made.steps:
        spot = step.edge.interpolate(0.5, normalized=True)
        yield Tag((f"Footing steps {say.size(step.rise)}",), (spot.x, spot.y), plain=True, away=3.0)


def side_tags(
    layout: Layout, sides: Sequence[tuple[Point, Point]], paper: OnPaper
) -> Iterator[Tag]:
    """Yield the lengths of sides that no string of dimensions tells. sides: metres."""
    say, house = Saying(layout), house_of(layout, paper)
    for a, b in sides:
        middle = paper.point(((a[0] + b[0]) / 2, (a[1] + b[1]) / 2))
        way = unit(np.subtract(b, a))
        normal = np.array((way[1], -way[0]))
        if house.contains(shapely.Point(np.asarray(middle) + normal * 0.05)):
            normal = -normal
        toward = (float(normal[0]), float(normal[1]))
        words = say.size(float(np.hypot(*np.subtract(b, a))))
        yield Tag((words,), middle, toward, loose=_LOOSE, plain=True, away=0.8)
