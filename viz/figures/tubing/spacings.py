"""What is dimensioned: the wall to the first tube, and one spacing, below and beside the plan."""

from collections.abc import Iterator

import numpy as np
import shapely
from shapely import LineString, affinity
from shapely.geometry.base import BaseGeometry

from geometry.layout.tubing.lay import Tubes
from geometry.units import System, show_length
from viz.drawing.marks import Mark
from viz.drawing.page import Box
from viz.figures.dimensions import Chain, across, chain, upright
from viz.figures.plan.onpaper import OnPaper

# Lines looked along for tubes that cross them square.
_LOOKS = 60
_ALIKE = 0.02


def dimension_marks(
    tubes: Tubes, paper: OnPaper, around: Box, text: float, system: System
) -> Iterator[Mark]:
    """Yield the strings below the plan and to its left, where straight tubes cross square."""
    level = _string(tubes, tubes.slab, [x.line for x in tubes.loops])
    if level:
        yield from across([_chain(level, paper, system)], around.low, -1, text)
    swapped = [_swap(x.line) for x in tubes.loops]
    stood = _string(tubes, _swap(tubes.slab), swapped)
    if stood:
        yield from upright([_chain(stood, paper, system)], around.left, -1, text)


def _chain(stops: tuple[float, ...], paper: OnPaper, system: System) -> Chain:
    made = chain(stops, paper.size, lambda metres: show_length(round(metres, 3), system))
    if made is None:
        raise ValueError("a string of dimensions needs two stops")
    return made


def _swap(shape: BaseGeometry) -> BaseGeometry:
    """Return a shape with x and y exchanged."""
    return affinity.affine_transform(shape, (0, 1, 1, 0, 0, 0))


def _string(
    tubes: Tubes, slab: BaseGeometry, lines: list[BaseGeometry]
) -> tuple[float, ...] | None:
    """Return the wall's place and those of the first two tubes along the lowest line that has both.

    None where no line crosses two tubes square, a spacing apart, next to the wall.
    """
    west, south, east, north = slab.bounds
    all_lines = shapely.union_all(lines)
    if all_lines.is_empty:
        return None
    for y in np.linspace(south, north, _LOOKS + 2)[1:-1]:
        look = LineString(((west, y), (east, y)))
        inside = [g for g in shapely.get_parts(slab.intersection(look)) if g.length > 0]
        if not inside:
            continue
        wall = min(float(g.bounds[0]) for g in inside)
        met = sorted(float(p.x) for p in shapely.get_parts(all_lines.intersection(look))
                     if p.geom_type == "Point")  # fmt: skip
        if len(met) >= 2 and _square(lines, met[:2], float(y), tubes.tubing.spacing):
            return wall, met[0], met[1]
    return None


def _square(lines: list[BaseGeometry], met: list[float], y: float, spacing: float) -> bool:
    """Whether two tubes run square to the line where they cross it, a spacing apart."""
    if abs(met[1] - met[0] - spacing) > _ALIKE * spacing:
        return False
    reach = spacing / 4
    pieces = [LineString(((x, y - reach), (x, y + reach))).buffer(0.005) for x in met]
    return all(
        any(line.intersection(piece).length > 1.9 * reach for line in lines) for piece in pieces
    )
