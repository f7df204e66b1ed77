"""Strips of the vapor retarder on the plan: each with its number and length, laps hatched."""

from collections.abc import Iterator
from itertools import combinations

import shapely
from shapely.geometry.base import BaseGeometry

from geometry.plan.outline import polygons
from geometry.takeoff.strips import StripLayout
from geometry.units import System, show_length
from viz.drawing.figure import Figure, figure
from viz.drawing.marks import Fill, Hatch, Line, Mark
from viz.drawing.scale import Scale
from viz.figures.boards.boards import on_paper, outlines
from viz.figures.boards.numbers import numbers
from viz.style.lines import SEEN

_SHEET = "#f4f4f4"
_LAP = "#d5d5d5"
_INK = "#55554f"
_LEAST_MM2 = 0.05


def strips_figure(
    name: str, title: str, laid: StripLayout, floor: BaseGeometry, scale: Scale, text: float,
    system: System,
) -> Figure:  # fmt: skip
    """Return strips as they are rolled out, turn-ups folded flat; dashed is the floor's edge.

    floor: the region that the sheet covers, on the plan.
    """
    shapes = [on_paper(strip, scale) for strip in laid.strips]
    edge = on_paper(floor, scale)
    laps = [
        part
        for one, other in combinations(shapes, 2)
        for part in polygons(one.intersection(other))
        if part.area > _LEAST_MM2
    ]
    lapped = shapely.union_all(laps) if laps else shapely.Polygon()
    words = [
        f"{number}: {show_length(run.length_m, system, 8)}"
        for number, run in enumerate(laid.runs, 1)
    ]
    bare = [shape.difference(lapped) for shape in shapes]
    placed = list(numbers(list(zip(words, bare, strict=True)), shapely.union_all(shapes), text))
    marks: list[Mark] = [Fill(p, _SHEET, "cut") for s in shapes for p in polygons(s)]
    for lap in laps:
        marks += [Fill(lap, _LAP, "cut"), Hatch(lap, "diagonal", _INK, "hatch")]
    marks += [*outlines(shapes, SEEN), *_dashed(edge)]
    marks += [mark for number in placed for mark in number.marks]
    return figure(name, title, marks, scale)


def _dashed(edge: BaseGeometry) -> Iterator[Line]:
    for ring in shapely.get_rings(shapely.get_parts(edge)):
        points = tuple(map(tuple, shapely.get_coordinates(ring)))
        yield Line(points, SEEN, dash=(2.4, 1.2), layer="outline")
