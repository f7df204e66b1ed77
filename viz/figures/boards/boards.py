"""A course of foam boards on the plan: whole ones plain, cut ones hatched, every one numbered."""

from collections.abc import Iterator, Sequence

import shapely
from shapely import affinity
from shapely.geometry.base import BaseGeometry

from geometry.plan.outline import polygons
from geometry.takeoff.boards import BoardLayout
from viz.drawing.figure import Figure, figure
from viz.drawing.marks import Fill, Hatch, Line, Mark
from viz.drawing.scale import Scale
from viz.figures.boards.numbers import Numbered, numbers
from viz.figures.boards.pieces import Piece, pieces
from viz.style.lines import CUT, SEEN

_WHOLE = "#fcf9ee"
_CUT = "#ece6d2"
_INK = "#8a8572"


def boards_figure(name: str, title: str, course: BoardLayout, scale: Scale, text: float) -> Figure:
    """Return a course as it lies, its pieces numbered in the order of laying."""
    found = pieces(course)
    shapes = [on_paper(piece.region, scale) for piece in found]
    whole = on_paper(course.region, scale)
    placed = list(numbers([(str(p.number), s) for p, s in zip(found, shapes, strict=True)],
                          whole, text))  # fmt: skip
    marks = [*_filled(found, shapes, placed), *outlines(shapes, SEEN), *outlines([whole], CUT)]
    marks += [mark for number in placed for mark in number.marks]
    return figure(name, title, marks, scale)


def _filled(
    found: Sequence[Piece], shapes: Sequence[BaseGeometry], placed: Sequence[Numbered]
) -> Iterator[Mark]:
    """Yield tints and hatches; round a number the hatch is left out."""
    clear = shapely.union_all([number.room for number in placed])
    for piece, shape in zip(found, shapes, strict=True):
        for part in polygons(shape):
            yield Fill(part, _CUT if piece.board else _WHOLE, "cut")
        if piece.board:
            for part in polygons(shape.difference(clear)):
                yield Hatch(part, "diagonal", _INK, "hatch")


def on_paper(region: BaseGeometry, scale: Scale) -> BaseGeometry:
    """Return a region of the plan in mm of paper."""
    return affinity.scale(region, scale.per_metre, scale.per_metre, origin=(0, 0))


def outlines(shapes: Sequence[BaseGeometry], weight: float) -> Iterator[Line]:
    """Yield the outlines of shapes, of their holes too."""
    for shape in shapes:
        for ring in shapely.get_rings(shapely.get_parts(shape)):
            yield Line(tuple(map(tuple, shapely.get_coordinates(ring))), weight, layer="outline")
