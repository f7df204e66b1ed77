"""The water table in a section: in the ground and the fill outside the house, and in the pit."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import shapely
from shapely import MultiPolygon

from geometry.units import System
from viz.drawing.marks import Mark
from viz.figures.section.view import PaperFace, View
from viz.figures.watertable import WaterTable, table_marks, told_outside

# What lies in the ground outside the house.
_OUTSIDE = ("backfill", "grading", "wall stone", "drain stone", "pit stone")


@dataclass(frozen=True)
class Standing:
    """The water table on a cut. pit: the inside it goes through: s0, z0, s1, z1 metres."""

    table: WaterTable
    pit: tuple[float, float, float, float] | None = None


def standing_marks(
    standing: Standing | None, faces: Sequence[PaperFace], native: MultiPolygon, view: View
) -> Iterator[Mark]:
    """Yield the table's lines, with the season's range ruled, clipped to what the view shows."""
    if standing is None or not standing.table.named:
        return
    ground = [native, *(f.shape for f in faces if f.label.role in _OUTSIDE)]
    inside = shapely.Polygon()
    if standing.pit is not None:
        left, low, right, high = standing.pit
        inside = shapely.box(*view.at(left, low), *view.at(right, high))
    box, table = view.box, standing.table
    room = shapely.box(box.left, box.low, box.right, box.high)
    heights = [None if z is None else view.at(0.0, z)[1] for z in (table.high, table.low)]
    for wet in (shapely.union_all(ground), inside):
        yield from table_marks(wet.intersection(room), *heights)


def standing_words(standing: Standing | None, view: View, system: System) -> str:
    """Return in words the levels of the table that lie outside the view."""
    if standing is None:
        return ""
    return told_outside(standing.table, view.extent[1], view.extent[3], 0.0, system)
