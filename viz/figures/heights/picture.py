"""The section itself: floor, footings, walls, stone and the pipe at its two ends, cut."""

from collections.abc import Iterator

import shapely
from shapely import LineString, affinity, box
from shapely import Point as Spot

from geometry.layout.areas import AreaLayout
from geometry.materials.catalogue import find
from viz.drawing.marks import Area, Fill, Hatch, Line, Mark, Point
from viz.figures.heights.frame import BREAK, BREAK_IN, SOIL, Frame
from viz.figures.pipe.section import HALO, cross, ring
from viz.figures.watertable import WaterTable, table_marks
from viz.style.lines import CHAIN, DATUM, DIMENSION, PAPER, SEEN, THINNEST_OUTLINED
from viz.style.materials import Look, look

SIDES = (-1, 1)


def picture_marks(frame: Frame) -> Iterator[Mark]:
    """Yield all that is cut, with the break in the floor and the datum's line."""
    yield from _ground(frame)
    stone = [mark for side in SIDES for mark in _stone(frame, side)]
    floor = [*_floor(frame)]
    # Inside the footing the stone lies in the floor, and is drawn over it.
    yield from (*floor, *stone) if frame.drain.inside else (*stone, *floor)
    for side in SIDES:
        yield from _concrete(frame, side)
        yield from _pipe(frame, side)
    yield from _break(frame)
    yield from _lines(frame)


def _shown(shape: Area, found: Look, outline: bool = True) -> Iterator[Mark]:
    if shape.is_empty:
        return
    yield Fill(shape, found.fill, "cut")
    yield Hatch(shape, found.hatch, found.ink, "hatch")
    if outline:
        for part in shapely.get_parts(shape):
            yield Line(tuple(part.exterior.coords), found.line_mm, layer="outline")


def _ground(frame: Frame) -> Iterator[Mark]:
    """Yield undisturbed ground under everything, and moved soil beside the stone."""
    area, drain = frame.drain.area, frame.drain
    bottom = frame.y(area.footing_bottom if drain.inside else drain.stone_bottom)
    outer = frame.edge + SOIL
    whole = box(-outer, frame.low, outer, bottom)
    middle = box(-frame.footing_in, frame.low, frame.footing_in, frame.y(area.subgrade))
    under = [
        frame.block(side, frame.footing_in, frame.footing_out, frame.low,
                    frame.y(area.footing_bottom))
        for side in SIDES
    ]  # fmt: skip
    outside = [frame.block(s, frame.footing_out, outer, frame.low, bottom) for s in SIDES]
    earth = shapely.union_all([middle, *under, *outside]).union(
        whole.intersection(shapely.union_all([middle, *under]))
    )
    yield from _shown(earth, look("excavation"), outline=False)
    top = max(frame.y(drain.stone_top), 0.0) if drain.inside else frame.y(drain.stone_top)
    for side in SIDES:
        soil = frame.block(side, frame.edge, outer, bottom, top)
        yield from _shown(soil, look("backfill"), outline=False)


def _stone(frame: Frame, side: int) -> Iterator[Mark]:
    """Yield the stone with the pipe's room left out, and its wrap as a heavy line."""
    drain = frame.drain
    low, high = frame.y(drain.stone_bottom), frame.y(drain.stone_top)
    wall = frame.half + drain.area.wall.thickness * frame.per_metre
    near, far = frame.stone
    beside = frame.block(side, near, far, low, high)
    reach = (near, frame.half) if drain.inside else (wall, far)
    over = [frame.block(side, *reach, max(0.0, low), high)] if high > max(0.0, low) else []
    shape = shapely.union_all([beside, *over])
    hole = Spot(side * frame.pipe, frame.centre(side)).buffer(drain.radius * frame.per_metre, 48)
    ring_room = hole.buffer(HALO / 2)
    yield Fill(ring_room, PAPER, "bore")
    yield from _shown(shape.difference(ring_room), look("drain stone"), outline=False)
    wrap = look("wrap")
    ends = tuple(shape.exterior.coords)
    yield Line(ends, wrap.thin_mm + HALO, PAPER, layer="outline")
    yield Line(ends, wrap.thin_mm, wrap.ink, wrap.dash, layer="outline")


def _pipe(frame: Frame, side: int) -> Iterator[Mark]:
    """Yield the pipe's wall with its holes; they are set out with the house to the left."""
    shape = ring(cross(frame.drain, frame.per_metre))
    turned = affinity.scale(shape, side, 1, origin=(0, 0))
    at = (side * frame.pipe, frame.centre(side))
    bore = Spot(at).buffer(frame.drain.bore * frame.per_metre, 48)
    yield Fill(bore, PAPER, "bore")
    yield Fill(affinity.translate(turned, *at), look("pipe").ink, "cut")


def _concrete(frame: Frame, side: int) -> Iterator[Mark]:
    area = frame.drain.area
    bottom = frame.y(area.footing_bottom)
    strip = frame.block(side, frame.footing_in, frame.footing_out, bottom, 0.0)
    yield from _shown(strip, look("footing"))
    outer = frame.half + area.wall.thickness * frame.per_metre
    yield from _shown(frame.block(side, frame.half, outer, 0.0, frame.top), look("wall"))


def _floor(frame: Frame) -> Iterator[Mark]:
    """Yield the layers from wall to wall above the footing, from footing to footing below."""
    area: AreaLayout = frame.drain.area
    for number, layer in enumerate(area.floor.layers):
        low, high = (frame.y(area.stack.levels[number + n]) for n in (0, 1))
        row = find(layer.material)
        found = look(layer.role, row.kind if row else None)
        if high - low < THINNEST_OUTLINED:
            reach = frame.half if low >= -1e-9 else frame.footing_in
            middle = (low + high) / 2
            yield Line(((-reach, middle), (reach, middle)), found.thin_mm, found.ink, found.dash,
                       layer="outline")  # fmt: skip
            continue
        upper = box(-frame.half, max(low, 0.0), frame.half, max(high, 0.0))
        lower = box(-frame.footing_in, min(low, 0.0), frame.footing_in, min(high, 0.0))
        parts = [part for part in (lower, upper) if part.area > 1e-9]
        yield from _shown(shapely.union_all(parts), found)


def shown_levels(frame: Frame) -> tuple[float, float]:
    """Return the lowest and highest level at which the section shows ground or stone, metres."""
    tof, area = frame.drain.area.tof, frame.drain.area
    top = max(frame.drain.stone_top, area.subgrade)
    return tof + frame.low / frame.per_metre, top


def water_marks(frame: Frame, table: WaterTable) -> Iterator[Mark]:
    """Yield the water table through stone and soil on both sides, as far as they are shown."""
    heights = [None if z is None else frame.y(z) for z in (table.high, table.low)]
    bottom, top = frame.low, frame.y(frame.drain.stone_top)
    for side in SIDES:
        wet = frame.block(side, frame.footing_out, frame.edge + SOIL, bottom, top)
        wet = wet.union(frame.block(side, *frame.stone, bottom, top))
        hole = Spot(side * frame.pipe, frame.centre(side)).buffer(
            frame.drain.radius * frame.per_metre + HALO, 24
        )
        yield from table_marks(wet.difference(hole), *heights)


def break_at(frame: Frame) -> tuple[float, float]:
    """Return where the break in the floor begins and ends."""
    right = frame.inner - BREAK_IN
    return right - BREAK, right


def _break(frame: Frame) -> Iterator[Mark]:
    """Yield a white gap through the floor with a zigzag at each side: what lies between is cut."""
    low = frame.low - 1.0
    high = frame.y(frame.drain.area.finished_floor) + 1.5
    left, right = break_at(frame)
    yield Fill(box(left, low, right, high), PAPER, "break")
    for x in (left, right):
        yield Line(zigzag(x, low, high), SEEN, layer="outline")


def zigzag(x: float, low: float, high: float) -> tuple[Point, ...]:
    """Return the line of a break at a place across the paper, from a height up to another."""
    middle = (low + high) / 2
    return (x, low), (x, middle - 2.0), (x - 1.0, middle - 0.7), (x + 1.0, middle + 0.7), (
        x, middle + 2.0), (x, high)  # fmt: skip


def _lines(frame: Frame) -> Iterator[Mark]:
    """Yield the datum across the floor, and the footing's bottom where nothing else shows it."""
    left, right = break_at(frame)
    bottom = frame.y(frame.drain.area.footing_bottom)
    for start, end in ((-frame.footing_in, left), (right, frame.footing_in)):
        yield Line(((start, 0.0), (end, 0.0)), DATUM + HALO, PAPER, layer="levels")
        yield Line(((start, 0.0), (end, 0.0)), DATUM, dash=CHAIN, layer="levels")
        yield Line(((start, bottom), (end, bottom)), DIMENSION + HALO, PAPER, layer="levels")
        yield Line(((start, bottom), (end, bottom)), DIMENSION, dash=(2.6, 1.2), layer="levels")


def level_line(points: tuple[Point, ...]) -> Iterator[Line]:
    """Yield a thin line with a white edge that keeps it clear of hatches."""
    if LineString(points).length:
        yield Line(points, DIMENSION + HALO, PAPER, layer="leaders")
        yield Line(points, DIMENSION, layer="leaders")
