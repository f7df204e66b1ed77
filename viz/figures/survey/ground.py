"""The map's ground: bands, the part that was not shot, ponds, and the concrete round them."""

from collections.abc import Iterator, Sequence

import shapely
from shapely import MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from geometry.layout.floors import openings
from geometry.layout.lay import Layout
from geometry.plan.outline import EMPTY
from geometry.survey.asdug import AreaDug
from geometry.survey.bands import Band, not_shot
from viz.drawing.expand import outline
from viz.drawing.marks import Fill, Hatch, Mark
from viz.figures.plan.dashes import HIDDEN, HIDDEN_WEIGHT
from viz.figures.plan.onpaper import OnPaper, stroked
from viz.figures.survey.looks import EDGE, HATCH_INK, LOOKS, WATER
from viz.style.lines import CUT, PAPER, QUIET, SEEN, THIN
from viz.style.materials import look

_POND_DASH = (2.2, 0.9)
_LEAST_MM2 = 1.0
_SPECK_MM2 = 0.2


def ground_marks(
    layout: Layout,
    dug: AreaDug,
    bands: Sequence[Band],
    waters: Sequence[BaseGeometry],
    paper: OnPaper,
) -> Iterator[Mark]:
    """Yield everything under the words. waters: the ponds on the plan, metres."""
    for band in bands:
        yield from _band(band, paper)
    beyond = paper.area(not_shot(dug))
    if not beyond.is_empty:
        yield Fill(beyond, PAPER, "bands")
        yield Hatch(beyond, "dashes", QUIET, "hatch")
    for shape in waters:
        water = paper.area(Polygon(shape.exterior)) if isinstance(shape, Polygon) else EMPTY
        if water.area > _LEAST_MM2:
            yield from stroked(water, SEEN, _POND_DASH, "water", WATER)
    yield from _concrete(layout, dug, paper)


def _band(band: Band, paper: OnPaper) -> Iterator[Mark]:
    shape, looks = _whole(paper.area(band.region)), LOOKS[band.meaning]
    if shape.is_empty:
        return
    yield Fill(shape, looks.fill, "bands")
    if looks.hatch:
        yield Hatch(shape, looks.hatch, HATCH_INK, "hatch")
    yield from outline(shape, THIN, EDGE, "bands")


def _whole(shape: MultiPolygon) -> MultiPolygon:
    """Return an area without specks and slits too small to see."""
    seen = [p for p in shape.geoms if p.area > _SPECK_MM2]
    return MultiPolygon(
        [Polygon(p.exterior, [h for h in p.interiors if Polygon(h).area > _SPECK_MM2])
         for p in seen]
    )  # fmt: skip


def _concrete(layout: Layout, dug: AreaDug, paper: OnPaper) -> Iterator[Mark]:
    """Yield the floor's edge, walls, footings, and what stands in the floor."""
    area, concrete = dug.bed.area, look("wall")
    for shape in taken_shapes(layout, dug):
        drawn = paper.area(shape)
        yield Fill(drawn, concrete.fill, "cut")
        yield from outline(drawn, SEEN, layer="outline")
    footing = paper.area(area.outline.difference(area.core))
    yield Fill(footing, concrete.fill, "cut")
    yield from stroked(paper.drawn(area.footing_outer.boundary), HIDDEN_WEIGHT, HIDDEN)
    yield from outline(paper.area(area.outline), CUT, layer="outline")
    yield from outline(paper.area(dug.bed.region), SEEN, layer="outline")
    yield from outline(paper.area(area.room), SEEN, layer="outline")


def taken_shapes(layout: Layout, dug: AreaDug) -> list[BaseGeometry]:
    """Return what stands in the floor, metres: pads and the pit."""
    area = dug.bed.area
    pit = [layout.sump.opening.region] if layout.sump and layout.sump.area is area else []
    shapes = [prism.region for prism in openings(area)] + pit
    return [s for s in shapes if shapely.intersects(s, area.core)]
