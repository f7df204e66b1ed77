"""One pressure diagram: its outline, arrows toward the wall, the water's part, the resultant."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from shapely import Polygon

from geometry.formulas.wall_pressure import PressureDiagram, Thrust
from viz.drawing.marks import Fill, Line, Mark, Point, Strokes, Text
from viz.style.lines import CUT, DIMENSION, HATCH, INK, QUIET, SEEN

# Resultant: its arrow's length and head; distance of the strokes in the diagram, mm.
_ARROW, _HEAD, _STROKES = 11.0, 2.6, 2.4
_DASH = (2.4, 1.2)


@dataclass(frozen=True)
class Place:
    """Where a diagram stands: x of its upright line, mm a metre, mm a pascal. The foot is y 0."""

    x: float
    per_metre: float
    per_pascal: float


def reach(diagram: PressureDiagram, place: Place, text: float) -> float:
    """Return how far a diagram reaches to the right of its upright line, mm."""
    return max(diagram.total_pa) * place.per_pascal + _ARROW + 2 * text


def diagram_marks(
    diagram: PressureDiagram, thrust: Thrust, place: Place, text: float
) -> Iterator[Mark]:
    """Yield one diagram; pressure points to the left, at the wall."""
    yield _strokes(diagram, place)
    if diagram.water_pa[-1] > 0:
        edge = tuple(_points(diagram, diagram.water_pa, place))
        yield Line(edge, SEEN, QUIET, _DASH, layer="outline")
    top, foot = _y(diagram, 0.0, place), 0.0
    rim = (*_points(diagram, diagram.total_pa, place), (place.x, foot), (place.x, top))
    yield Line((*rim, rim[0]), SEEN, layer="outline")
    yield Line(((place.x, foot), (place.x, top)), CUT, layer="outline")
    yield from _resultant(diagram, thrust, place, text)


def _points(
    diagram: PressureDiagram, pressures: tuple[float, ...], place: Place
) -> Iterator[Point]:
    for depth, pressure in zip(diagram.depths_m, pressures, strict=True):
        yield place.x + pressure * place.per_pascal, _y(diagram, depth, place)


def _y(diagram: PressureDiagram, depth: float, place: Place) -> float:
    return (diagram.height_m - depth) * place.per_metre


def _strokes(diagram: PressureDiagram, place: Place) -> Strokes:
    """Level strokes across the diagram, evenly apart from the foot upward."""
    ys = np.arange(_STROKES, diagram.height_m * place.per_metre, _STROKES)
    wide = diagram.at(diagram.height_m - ys / place.per_metre) * place.per_pascal
    lines = tuple(
        ((place.x, float(y)), (place.x + float(w), float(y)))
        for y, w in zip(ys, wide, strict=True)
        if w > HATCH
    )
    return Strokes(lines, HATCH, QUIET, layer="hatch")


def _resultant(
    diagram: PressureDiagram, thrust: Thrust, place: Place, text: float
) -> Iterator[Mark]:
    """An arrow that ends on the diagram's edge at the resultant's height, with its letter."""
    y = thrust.height_m * place.per_metre
    at = diagram.at(diagram.height_m - thrust.height_m)
    tip = place.x + float(at) * place.per_pascal + DIMENSION
    yield Line(((tip + _HEAD, y), (tip + _ARROW, y)), CUT, layer="outline")
    half = _HEAD / 3
    head = Polygon(((tip, y), (tip + _HEAD, y + half), (tip + _HEAD, y - half)))
    yield Fill(head, INK, layer="outline")
    yield Text((tip + _ARROW + 0.8, y - text / 2), "R", text, bold=True, layer="labels")
