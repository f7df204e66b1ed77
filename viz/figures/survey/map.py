"""The map of one dug floor with its key and the list of its spots and ponds."""

from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from geometry.layout.footings import pier_name
from geometry.layout.lay import Layout
from geometry.survey.asdug import AreaDug
from geometry.survey.bands import Band, shores, thickness_bands
from geometry.survey.shots import Floats, Ints
from geometry.units import System, show_area
from viz.drawing.expand import outline
from viz.drawing.figure import Figure, extent, figure, moved
from viz.drawing.marks import Circle, Fill, Hatch, Mark, Point
from viz.drawing.page import Box
from viz.drawing.scale import Scale
from viz.figures.plan.onpaper import OnPaper
from viz.figures.survey.ground import ground_marks, taken_shapes
from viz.figures.survey.labels import Free, around
from viz.figures.survey.looks import HATCH_INK, LOOKS, WATER, span_words
from viz.figures.tables.figure import Signs, table_figures
from viz.style.lines import CUT, INK, PAPER, SEEN
from viz.tables.survey_tables import spot_names, spots_table, thick
from viz.tables.table import Table

# Size of the signs for spots; of a shot's dot; room between map and tables; of a swatch; mm.
_SIGN, _DOT, _APART, _SWATCH, _ROW = 1.5, 0.35, 7.0, 16.0, 7.0
_RING = 2.4
# Words keep so far from the footing, mm.
_OFF_EDGE = 0.4
# Values stand no closer than this where there are many shots; the least width of the tables, mm.
_CELL, _LEAST = 18.0, 150.0


def survey_map(
    layout: Layout, dug: AreaDug, scale: Scale, text: float, least: float = _LEAST
) -> Figure:
    """Return the thickness of the base over one floor as dug.

    text: height of capitals, mm. least: the least width of the tables under it, mm.
    """
    system = layout.design.project.units
    bands, waters = thickness_bands(dug), shores(dug)
    paper = OnPaper(scale.per_metre)
    marks = [*ground_marks(layout, dug, bands, waters, paper)]
    free = _free(layout, dug, [*(band.region for band in bands), *waters], paper)
    marks += [*_signs(dug, paper, free, text), *_names(layout, dug, paper, free, text)]
    marks += _values(dug, paper, free, text, system)
    box = extent(marks)
    low = box.low - _APART
    for table in _tables(dug, bands, max(box.width, least), text, system):
        marks += moved(table.marks, box.left - table.box.left, low - table.box.high)
        low -= table.box.height + _APART
    title = f"As dug: thickness of the {dug.bed.layer}, {dug.name}"
    return figure(f"as-dug-{dug.name}", title, marks, scale, _remark(dug, system))


def _remark(dug: AreaDug, system: System) -> str:
    beyond = dug.ground.beyond_m2 > 0.01
    carried = " Hatched edge: beyond the shots, the nearest level carried on." if beyond else ""
    plan = thick(dug.bed.top - dug.bed.subgrade, system)
    unit = ", mm" if system == "metric" else ""
    return (
        f"Figures at dots{unit}: thickness to the planned top; planned {plan}. "
        f"Dashed: edge of standing water.{carried}"
    )


def _free(layout: Layout, dug: AreaDug, shapes: Sequence[BaseGeometry], paper: OnPaper) -> Free:
    """Return the room for words: on the floor, off pads and pit, rather off edges and shores."""
    taken = [Box(*paper.drawn(s).bounds) for s in taken_shapes(layout, dug)]
    edges = [paper.drawn(shape).boundary for shape in shapes if not shape.is_empty]
    ground = paper.drawn(dug.bed.area.core).buffer(-_OFF_EDGE)
    return Free(taken, ground, shapely.union_all(edges))


def _signs(dug: AreaDug, paper: OnPaper, free: Free, text: float) -> Iterator[Mark]:
    """Yield a triangle at each spot, its point up where the ground is high, a ring for water."""
    named = spot_names(dug)
    places = [paper.point((spot.x, spot.y)) for _, spot in named]
    for place in places:
        free.take(around(place, _SIGN))
    for (name, _), place in zip(named, places, strict=True):
        yield from _sign(name[0], place)
        label = free.label(place, name, text, (_RING + 0.6, 4.5, 6.5, 9.0), bold=True)
        if label:
            yield label


def _sign(kind: str, at: Point) -> Iterator[Mark]:
    if kind == "W":
        yield Circle(at, _RING, CUT, WATER, layer="labels")
        return
    way, (x, y) = (1 if kind == "H" else -1), at
    corners = ((x - _SIGN, y - way * _SIGN), (x + _SIGN, y - way * _SIGN), (x, y + way * _SIGN))
    yield Fill(Polygon(corners), INK if kind == "H" else PAPER, "labels")
    yield from outline(Polygon(corners), SEEN, layer="labels")


def _names(layout: Layout, dug: AreaDug, paper: OnPaper, free: Free, text: float) -> Iterator[Mark]:
    area = dug.bed.area
    if layout.sump and layout.sump.area is area:
        at, outer = layout.sump.sump.at, paper.size(layout.sump.outer)
        label = free.label(paper.point(at), "pit", text, (outer + 0.6, outer + 2.0))
        yield from [label] if label else []
    for number, pier in enumerate(area.area.piers):
        half = paper.size(max(pier.width, pier.pad_depth) / 2)
        label = free.label(
            paper.point(pier.at), pier_name(area, number), text, (half + 0.6, half + 3)
        )
        if label:
            yield label


def _values(dug: AreaDug, paper: OnPaper, free: Free, text: float, system: System) -> list[Mark]:
    """Return a dot at each shot within the floor, and beside it the thickness where there is room.

    Where shots stand closer than words, one in each small square speaks.
    """
    surface = dug.surface
    inside = np.flatnonzero(dug.floor.found.points)
    spots: Floats = surface.points[inside] * paper.per_metre
    kept = _spread(spots)
    dots = [(float(x), float(y)) for x, y in spots[kept]]
    for dot in dots:
        free.take(around(dot, _DOT))
    marks: list[Mark] = [Circle(dot, _DOT, 0.0, fill=INK, layer="labels") for dot in dots]
    values = dug.bed.top - surface.level[inside][kept]
    for dot, value in zip(dots, values.tolist(), strict=True):
        words = thick(value, system).removesuffix(" mm")
        label = free.label(dot, words, text, (_DOT + 0.6, 1.8, 3.0))
        if label:
            marks.append(label)
    return marks


def _spread(spots: Floats) -> Ints:
    if len(spots) < 200:
        return np.arange(len(spots))
    cell = np.floor(spots / _CELL).astype(np.int64)
    _, kept = np.unique(cell, axis=0, return_index=True)
    return np.sort(kept)


def _tables(
    dug: AreaDug, bands: Sequence[Band], width: float, text: float, system: System
) -> Iterator[Figure]:
    rows = tuple(
        (span_words(b, system), LOOKS[b.meaning].words, show_area(b.area_m2, system)) for b in bands
    )
    signs = Signs("Band", _SWATCH, [_ROW] * len(bands), lambda n, box: _swatch(bands[n], box))
    head = (f"Thickness of {dug.bed.layer}", "Means", "Area")
    yield from table_figures("bands", "", Table(head, rows), text, width, signs=signs)
    spots = spots_table(dug, system)
    if spots.rows:
        yield from table_figures("spots", "", spots, text, width)


def _swatch(band: Band, box: Box) -> Iterator[Mark]:
    middle = (box.low + box.high) / 2
    shape = shapely.box(box.left, middle - 2.3, box.right, middle + 2.3)
    looks = LOOKS[band.meaning]
    yield Fill(shape, looks.fill, "bands")
    if looks.hatch:
        yield Hatch(shape, looks.hatch, HATCH_INK, "hatch")
    yield from outline(shape, SEEN, layer="notes")
