"""The heating tubes of one floor on the plan, with a table of their lengths under it."""

from collections.abc import Iterator, Sequence
from functools import partial

import shapely
from shapely.geometry.base import BaseGeometry

from geometry.layout.lay import Layout
from geometry.layout.tubing.lay import Tubes
from geometry.plan.outline import multi
from geometry.units import System, show_length
from viz.drawing.expand import outline
from viz.drawing.figure import Figure, extent, figure
from viz.drawing.lettering import text_box
from viz.drawing.marks import Anchor, Fill, Leader, Line, Mark, Text
from viz.drawing.page import Box
from viz.drawing.scale import Scale
from viz.figures.plan.onpaper import OnPaper
from viz.figures.tables.figure import Signs, table_figures
from viz.figures.tubing.lines import (
    loop_marks,
    manifold,
    number_marks,
    numbered,
    style,
)
from viz.figures.tubing.spacings import dimension_marks
from viz.style.lines import CUT, INK, SEEN
from viz.style.materials import look
from viz.tables.warmth_tables import loops as loop_table
from viz.words import material_name

_MANIFOLD = "manifold"
# The box of a manifold on paper, at the least, mm.
_WIDE, _DEEP = 3.0, 1.4
_GAP = 5.0
# Farther than any house reaches, mm of paper.
_FAR = 1e5
# A name moves out by so many text heights, at the most, to keep clear of others.
_STEPS = 12
_AIR = 0.8
# Width of the table under the plan, text heights.
_TABLE = 46.0
# Length of a sample of a loop's line, mm.
_SIGN = 14.0


def tubing_figure(
    layout: Layout, tubes: Tubes, scale: Scale, text: float, narrow: float = 0.0
) -> Figure:
    """Return a floor's tubes on the plan at a scale.

    narrow: how wide all may be on a small screen, mm: nothing is written beside the plan then.
    """
    paper = OnPaper(scale.per_metre)
    system = layout.design.project.units
    loops = numbered(tubes.loops, paper, text)
    marks: list[Mark] = [*_house(tubes, paper), *loop_marks(loops)]
    marks += _openings(tubes, paper)
    marks += number_marks(loops, text)
    marks += _manifolds(tubes, paper)
    marks += dimension_marks(tubes, paper, extent(marks), text, system)
    if not narrow:
        marks += _names(tubes, paper, marks, text)
    marks += _table(tubes, marks, text, narrow, system)
    title = f"Heating tubes: {tubes.area.name}"
    name = f"tubes-{tubes.area.name}"
    return figure(name, title, marks, scale, _remark(tubes, system))


def _house(tubes: Tubes, paper: OnPaper) -> Iterator[Mark]:
    """Yield the walls round the floor."""
    wall = look("wall")
    walls = paper.area(_walls(tubes))
    yield Fill(walls, wall.fill, "cut")
    yield from outline(walls, CUT, layer="outline")


def _walls(tubes: Tubes) -> BaseGeometry:
    """Return what of the walls stands round the slab."""
    thick = tubes.area.wall.thickness
    return tubes.slab.buffer(thick, join_style="mitre").difference(shapely.union_all(
        [shapely.Polygon(p.exterior) for p in shapely.get_parts(tubes.slab)]
    ))  # fmt: skip


def _openings(tubes: Tubes, paper: OnPaper) -> Iterator[Mark]:
    """Yield piers, pit and pipes that pass through the slab."""
    for part in shapely.get_parts(tubes.slab):
        for hole in part.interiors:
            shape = multi(paper.drawn(shapely.Polygon(hole)))
            yield Fill(shape, look("wall").fill, "cut")
            yield from outline(shape, SEEN, layer="outline")


def _manifolds(tubes: Tubes, paper: OnPaper) -> Iterator[Mark]:
    """Yield each manifold's box, as wide as its tubes."""
    for part in tubes.parts:
        ends = [paper.point(p) for x in part.loops for p in (x.points[0], x.points[-1])]
        west, south, east, north = shapely.MultiPoint(ends).bounds
        wide = max(_WIDE, east - west + 1.0, north - south + 1.0)
        yield Fill(manifold(paper.point(part.taps), part.inward, wide, _DEEP), INK, "outline")


def _names(tubes: Tubes, paper: OnPaper, others: Sequence[Mark], text: float) -> Iterator[Mark]:
    """Yield each manifold's name with a leader straight out of the house, clear of other words."""
    house = paper.drawn(shapely.union_all([tubes.slab, _walls(tubes), tubes.area.outline]))
    taken = [text_box(mark) for mark in others if isinstance(mark, Text)]
    for part in tubes.parts:
        at = paper.point(part.taps)
        away, out = _outward(house, at, part.inward)
        for step in range(_STEPS):
            words, end = _name(at, out, away + (2.5 + step) * text, text)
            box = text_box(words)
            if not any(_meet(box, other) for other in taken):
                break
        yield Leader((at, end), layer="leaders")
        yield words
        taken.append(box)


def _outward(
    house: BaseGeometry, at: tuple[float, float], inward: tuple[float, float]
) -> tuple[float, tuple[float, float]]:
    """Return how far it is out of the house, and which way: back, or much shorter."""
    dx, dy = inward
    ways = []
    for worth, (ux, uy) in ((1.0, (-dx, -dy)), (2.0, (-dy, dx)), (2.0, (dy, -dx))):
        ray = shapely.LineString((at, (at[0] + ux * _FAR, at[1] + uy * _FAR)))
        away = float(shapely.hausdorff_distance(shapely.Point(at), ray.intersection(house)))
        ways.append((worth * away, away, (ux, uy)))
    _, away, out = min(ways)
    return away, out


def _name(
    at: tuple[float, float], out: tuple[float, float], away: float, text: float
) -> tuple[Text, tuple[float, float]]:
    """Return the name so far out, and where its leader ends."""
    (dx, dy), (x, y) = out, (at[0] + out[0] * away, at[1] + out[1] * away)
    if abs(dx) > abs(dy):
        anchor: Anchor = "start" if dx > 0 else "end"
        return Text((x + 0.8 * (1 if dx > 0 else -1), y - text / 2), _MANIFOLD, text,
                    anchor=anchor, layer="labels"), (x, y)  # fmt: skip
    low = y + 0.5 * text if dy > 0 else y - 1.5 * text
    return Text((x, low), _MANIFOLD, text, anchor="middle", layer="labels"), (x, y)


def _meet(one: Box, other: Box) -> bool:
    return (
        one.left < other.right + _AIR and other.left < one.right + _AIR
        and one.low < other.high + _AIR and other.low < one.high + _AIR
    )  # fmt: skip


def _table(
    tubes: Tubes, above: list[Mark], text: float, narrow: float, system: System
) -> Iterator[Mark]:
    box = extent(above)
    width = min(_TABLE * text, narrow) if narrow else _TABLE * text
    rows = loop_table(tubes, system)
    signs = Signs("Line", _SIGN, [text] * len(rows.rows), partial(_sign, len(tubes.loops)))
    (made,) = table_figures("loops", "", rows, text, width, signs=signs)
    left = (box.left + box.right - made.box.width) / 2
    moved = made.at(left, box.low - _GAP - made.box.height)
    yield from moved.marks


def _sign(count: int, row: int, box: Box) -> Iterator[Mark]:
    """Yield the line of a row's loop; none for the last row, of all of them."""
    if row < count:
        weight, dash = style(row + 1)
        middle = (box.low + box.high) / 2
        yield Line(((box.left, middle), (box.right, middle)), weight, dash=dash, layer="notes")


def _remark(tubes: Tubes, system: System) -> str:
    tubing = tubes.tubing
    words = (
        f"{material_name(tubing.tube)}, {show_length(tubing.spacing, system)} apart, "
        f"{show_length(round(tubing.edge, 3), system)} or more from the slab's edge. "
        "Black bar: manifold. Arrow: supply. No joint in the slab."
    )
    if any(loop.tight for loop in tubes.loops):
        bend = show_length(tubes.tube.bend, system)
        words += f" Bends tighter than {bend}, which the tube bends to: loop them wider."
    return words
