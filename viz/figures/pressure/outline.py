"""The wall in outline, house to the left: footing, floor, fill and the heights that count."""

from collections.abc import Iterator
from itertools import pairwise

from geometry.layout.areas import AreaLayout
from geometry.layout.lay import Layout
from geometry.units import System
from geometry.water.wall import WallRun
from viz.drawing.marks import Line, Mark, Text
from viz.figures.dimensions import Chain, upright
from viz.figures.pressure.words import length
from viz.style.lines import CUT, GROUND, QUIET, SEEN

# How far floor and ground are drawn from the wall, metres; apart of ticks under the ground, mm.
_FLOOR_M, _GROUND_M = 0.55, 0.75
_TICK = 2.0


def outline_marks(
    layout: Layout, run: WallRun, per_metre: float, system: System, text: float
) -> Iterator[Mark]:
    """Yield the section in outline; the foot of the push is y 0, the wall's outer face x 0."""
    area = layout.area(run.area)
    foot = max(area.tof, area.subgrade)

    def y(level: float) -> float:
        return (level - foot) * per_metre

    yield from _concrete(area, y(area.tof), y(area.footing_bottom), y(area.wall_top), per_metre)
    floor = y(area.finished_floor)
    inner = -area.wall.thickness * per_metre
    yield Line(((inner - _FLOOR_M * per_metre, floor), (inner, floor)), CUT, layer="outline")
    slab = y(area.finished_floor - (run.fill_to_slab_m - run.fill_to_floor_m))
    if run.fill_to_slab_m - run.fill_to_floor_m > 1e-3:
        yield Line(((inner - _FLOOR_M * per_metre, slab), (inner, slab)), SEEN, layer="outline")
    grade = run.fill_to_foot_m * per_metre
    yield from _ground(grade, _GROUND_M * per_metre)
    yield Text((2.0, grade + 0.6 + 0.4 * text), "grade", text, layer="labels")
    edge = inner - _FLOOR_M * per_metre
    yield from upright(_chains(run, y(area.wall_top), floor, per_metre, system), edge, -1, text)


def _concrete(
    area: AreaLayout, tof: float, bottom: float, top: float, per_metre: float
) -> Iterator[Mark]:
    thick, out, in_ = (
        v * per_metre for v in (area.wall.thickness, area.projection_out, area.projection_in)
    )
    strip = ((-thick - in_, bottom), (out, bottom), (out, tof), (-thick - in_, tof))
    yield Line((*strip, strip[0]), CUT, layer="outline")
    wall = ((-thick, tof), (-thick, top), (0.0, top), (0.0, tof))
    yield Line(wall, CUT, layer="outline")


def _ground(grade: float, far: float) -> Iterator[Mark]:
    yield Line(((0.0, grade), (far, grade)), GROUND, layer="outline")
    starts = [n * 3 * _TICK + _TICK for n in range(int(far / (3 * _TICK)))]
    for x in starts:
        for off in (0.0, 0.8):
            line = ((x + off, grade - 0.6), (x + off - 1.2, grade - 1.8))
            yield Line(line, SEEN, QUIET, layer="outline")


def _chains(
    run: WallRun, top: float, floor: float, per_metre: float, system: System
) -> tuple[Chain, ...]:
    """Nearest: the fill over the floor. Then: fill over the foot, and the whole wall's height."""
    grade = run.fill_to_foot_m * per_metre
    stops = sorted({0.0, floor, grade, top}) if run.fill_to_floor_m > 0 else [0.0, grade, top]
    kept = [stops[0], *(b for a, b in pairwise(stops) if b - a > 1e-3 * per_metre)]
    words = [length((b - a) / per_metre, system) for a, b in pairwise(kept)]
    fill = Chain((0.0, grade), (length(run.fill_to_foot_m, system),))
    return Chain(tuple(kept), tuple(words)), fill
