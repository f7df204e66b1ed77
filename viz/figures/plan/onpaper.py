"""The plan brought to paper: metres of the job to millimetres in the figure's own frame."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, MultiPolygon
from shapely.geometry.base import BaseGeometry

from geometry.plan.outline import Point, multi
from viz.drawing.marks import Line
from viz.style.lines import INK

# Corners on paper lie on this grid, mm: far below what ink shows, and sound to cut and join.
GRID = 1e-6


@dataclass(frozen=True)
class OnPaper:
    """A scale: millimetres of paper for a metre of the job. The job's origin stays the origin."""

    per_metre: float

    def point(self, at: Point) -> Point:
        """Return a place on paper."""
        return (at[0] * self.per_metre, at[1] * self.per_metre)

    def size(self, metres: float, least: float = float("-inf")) -> float:
        """Return a length on paper, at least so many mm."""
        return max(metres * self.per_metre, least)

    def drawn(self, shape: BaseGeometry) -> BaseGeometry:
        """Return a shape on paper."""
        per = self.per_metre
        paper: BaseGeometry = shapely.transform(shape, lambda xy: xy * per)
        return shapely.set_precision(paper, GRID)

    def area(self, shape: BaseGeometry) -> MultiPolygon:
        """Return the areas of a shape on paper."""
        return multi(self.drawn(shape))


def runs(shape: BaseGeometry) -> Iterator[LineString]:
    """Yield the lines of any geometry: edges of areas, merged parts of lines."""
    if shape.is_empty:
        return
    lines = shapely.get_parts(shape)
    edges = [g.boundary if g.geom_type.endswith("Polygon") else g for g in lines]
    flat = [p for e in edges for p in shapely.get_parts(e) if p.geom_type in _LINES]
    merged = shapely.line_merge(shapely.MultiLineString([LineString(p.coords) for p in flat]))
    yield from (part for part in shapely.get_parts(merged) if part.length > 0)


_LINES = ("LineString", "LinearRing")


def stroked(
    shape: BaseGeometry,
    weight: float,
    dash: tuple[float, ...] = (),
    layer: str = "outline",
    colour: str = INK,
) -> Iterator[Line]:
    """Yield the lines of a shape that is on paper already."""
    for run in runs(shape):
        yield Line(tuple((x, y) for x, y, *_ in run.coords), weight, colour, dash, layer)


def unit(vector: NDArray[np.float64] | Point) -> NDArray[np.float64]:
    """Return the vector at length one; up the sheet for one without length."""
    way = np.asarray(vector, dtype=np.float64)
    length = float(np.hypot(*way))
    return way / length if length > 1e-9 else np.array((0.0, 1.0))


def ring_line(centre: Point, radius: float, count: int = 72) -> LineString:
    """Return a circle as a closed line, to be dashed or cut."""
    turn = np.linspace(0, 2 * np.pi, count + 1)
    return LineString(np.column_stack((np.cos(turn), np.sin(turn))) * radius + np.asarray(centre))
