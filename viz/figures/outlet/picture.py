"""The outlet's picture: footing, wall and stone, the ground with its hatch, the pipe, its end."""

from collections.abc import Iterator
from math import cos, pi, sin

from shapely import Polygon, box, union_all
from shapely.geometry.base import BaseGeometry

from viz.drawing.expand import outline
from viz.drawing.marks import Fill, Hatch, Line, Mark
from viz.figures.outlet.stage import Stage
from viz.style.lines import CUT, DIMENSION, GROUND, INK, PAPER, SEEN
from viz.style.materials import Look, look

# Depth of the ground's hatch under its line, height of the wall over the ground; mm.
_BAND, _STUB = 3.6, 7.0
# Air between the pipe and the hatch of the ground, mm.
_AIR = 0.5
_UPRIGHT_HALO = 0.7
# Bars of the guard: how many, and how far they reach out of the pipe, mm.
_BARS, _OUT = 4, 1.6


def house_marks(stage: Stage) -> Iterator[Mark]:
    """Yield the drain's stone, the footing, and the wall, broken off over the ground."""
    drain, area = stage.drain, stage.drain.area
    stone = (stage.face, drain.stone_bottom, stage.face + drain.drain.stone.width, drain.stone_top)
    pipe = pipe_band(stage).buffer(_AIR / 2)
    yield from _block(_box(stage, *stone).difference(pipe), look("drain stone"))
    footing = (stage.back, area.footing_bottom, stage.face, area.tof)
    yield from _block(_box(stage, *footing), look("footing"))
    left, foot = stage.view.x(stage.wall_face - area.wall.thickness), stage.view.y(area.tof)
    right, top = stage.view.x(stage.wall_face), stage.view.y(area.wall_top)
    broken = min(top, stage.view.y(stage.ground.at(0.0)) + _STUB)
    if broken <= foot:
        return
    yield from _block(box(left, foot, right, broken), look("wall"))
    if broken < top:
        yield _break(left, right, broken)


def level_marks(stage: Stage, left: float) -> Iterator[Line]:
    """Yield thin lines at the footing's levels and the floor's from x = `left` to the house, mm."""
    area = stage.drain.area
    inside = stage.wall_face - area.wall.thickness
    levels = {area.footing_bottom: stage.back, area.tof: stage.back, area.finished_floor: inside}
    for level, to in levels.items():
        y = stage.view.y(level)
        yield Line(((left, y), (stage.view.x(to), y)), DIMENSION, layer="levels")


def _box(stage: Stage, left: float, low: float, right: float, high: float) -> Polygon:
    return box(*stage.at(left, low), *stage.at(right, high))


def _block(shape: BaseGeometry, shown: Look) -> Iterator[Mark]:
    parts = [p for p in getattr(shape, "geoms", (shape,)) if isinstance(p, Polygon)]
    for part in parts:
        if part.is_empty:
            continue
        yield Fill(part, shown.fill, "cut")
        yield Hatch(part, shown.hatch, shown.ink, "hatch")
        yield from outline(part, shown.line_mm, layer="outline")


def _break(left: float, right: float, y: float) -> Line:
    middle, out = (left + right) / 2, 1.4
    steps = ((left - out, y), (middle - 0.8, y), (middle - 0.3, y + 1.1), (middle + 0.3, y - 1.1),
             (middle + 0.8, y), (right + out, y))  # fmt: skip
    return Line(steps, SEEN, layer="outline")


def ground_marks(stage: Stage) -> Iterator[Mark]:
    """Yield the ground's line and a band of hatch under it, clear of pipe and house."""
    line = tuple(stage.at(x, z) for x, z in stage.ground.points)
    band = Polygon((*line, *((x, y - _BAND) for x, y in reversed(line))))
    drain = stage.drain
    reach = stage.face + drain.drain.stone.width
    stone = _box(stage, stage.wall_face, drain.stone_bottom, reach, drain.stone_top)
    shape = band.difference(union_all([pipe_band(stage).buffer(_AIR), stone]))
    soil = look("excavation")
    yield Fill(shape, soil.fill, "cut")
    yield Hatch(shape, soil.hatch, soil.ink, "hatch")
    yield Line(line, GROUND, layer="outline")


def pipe_band(stage: Stage) -> Polygon:
    """Return the pipe's outside on paper, mm."""
    return _between(stage, -stage.run.pipe.wall_m, stage.run.crown_over_invert_m)


def _between(stage: Stage, low: float, high: float) -> Polygon:
    run = stage.run
    ends = ((0.0, run.start_m), (run.reach_m, run.end_invert_m))
    under = [stage.at(x, z + low) for x, z in ends]
    return Polygon((*under, *(stage.at(x, z + high) for x, z in reversed(ends))))


def pipe_marks(stage: Stage) -> Iterator[Mark]:
    """Yield the solid pipe cut along its middle; its invert is the heavier line."""
    pipe = stage.run.pipe
    bore, wall = pipe.inside_diameter_m, pipe.wall_m
    yield Fill(pipe_band(stage), PAPER, "outline")
    yield Fill(_between(stage, -wall, 0.0), INK, "cut")
    yield Fill(_between(stage, bore, bore + wall), INK, "cut")
    yield from outline(pipe_band(stage), SEEN, layer="outline")
    start, end = (stage.at(x, stage.run.invert(x)) for x in (0.0, stage.run.reach_m))
    yield Line((start, end), CUT, layer="invert")
    yield from _drain_marks(stage)


def _drain_marks(stage: Stage) -> Iterator[Mark]:
    """Yield the drain's own pipe, seen along itself, wide as its heights are enlarged."""
    drain = stage.drain
    x, y = stage.at(0.0, drain.outlet_invert + drain.bore)
    across, up = stage.view.x(drain.radius), stage.view.y(drain.radius)
    turns = [number * pi / 24 for number in range(48)]
    shape = Polygon([(x + across * cos(t), y + up * sin(t)) for t in turns])
    yield Fill(shape, PAPER, "outline")
    yield from outline(shape, SEEN, layer="outline")


def end_marks(stage: Stage) -> Iterator[Mark]:
    """Yield the guard's bars at the open end, or a break where the pipe stays in the ground."""
    run = stage.run
    x, low = stage.at(run.reach_m, run.end_invert_m - run.pipe.wall_m)
    high = stage.view.y(run.end_invert_m + run.crown_over_invert_m)
    if run.end_at_m is None:
        middle = (low + high) / 2
        steps = ((0.0, low - 1.5), (0.0, middle - 1.2), (-1.4, middle - 0.5),
                 (1.4, middle + 0.5), (0.0, middle + 1.2), (0.0, high + 1.5))  # fmt: skip
        yield Line(tuple((x + dx, y) for dx, y in steps), SEEN, layer="outline")
        return
    if not run.asked.guard:
        return
    for number in range(1, _BARS + 1):
        y = low + (high - low) * number / (_BARS + 1)
        yield Line(((x - _OUT / 2, y), (x + _OUT, y)), SEEN, layer="outline")
    yield Line(((x + _OUT, low), (x + _OUT, high)), CUT, layer="outline")


def station_marks(stage: Stage, foot: float, top: float) -> Iterator[Line]:
    """Yield an upright at every station from the figures up over the ground; mm.

    foot: where figures begin. top: up to where the first and the last upright reach.
    """
    last = len(stage.stations) - 1
    for number, distance in enumerate(stage.stations):
        crown = stage.run.invert(distance) + stage.run.crown_over_invert_m
        high = stage.view.y(max(stage.ground.at(distance), crown)) + 1.5
        ends = (
            (stage.view.x(distance), foot),
            (stage.view.x(distance), top if number in (0, last) else high),
        )
        yield Line(ends, DIMENSION + _UPRIGHT_HALO, PAPER, layer="outline")
        yield Line(ends, DIMENSION, layer="outline")
