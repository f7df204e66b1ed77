"""Walls, footings and piers from above: what is cut, and what lies hidden below."""

from collections.abc import Iterator
from dataclasses import dataclass

import shapely
from shapely import MultiPolygon
from shapely.geometry.base import BaseGeometry

from geometry.layout.areas import AreaLayout
from geometry.layout.footings import column_prism, pad_prism, pier_name
from geometry.layout.lay import Layout
from geometry.plan.outline import Point, multi
from viz.drawing.expand import outline
from viz.drawing.marks import Fill, Hatch, Mark
from viz.figures.plan.dashes import HIDDEN, HIDDEN_WEIGHT
from viz.figures.plan.onpaper import OnPaper, runs, stroked
from viz.style.lines import CUT
from viz.style.materials import look

# A wall thinner than this on paper is filled plain: no hatch is read in it.
_HATCHED = 3.0
# A hidden edge under a wall's face is not drawn, mm.
_UNDER = 0.3


@dataclass(frozen=True, eq=False)
class Step:
    """Where a footing steps up to a higher area: the edge on paper, and the rise, metres."""

    edge: BaseGeometry
    rise: float


@dataclass(frozen=True, eq=False)
class PierMark:
    """A pier on paper. column: None where the pad stands alone."""

    name: str
    area: AreaLayout
    number: int
    at: Point
    pad: BaseGeometry
    column: BaseGeometry | None


@dataclass(frozen=True, eq=False)
class Structure:
    """The concrete on paper, mm. hidden: footing edges that no wall covers."""

    walls: MultiPolygon
    footings: MultiPolygon
    hidden: BaseGeometry
    steps: tuple[Step, ...]
    piers: tuple[PierMark, ...]
    thinnest: float

    @property
    def cut(self) -> BaseGeometry:
        """All that the plan cuts: walls and columns."""
        return shapely.union_all([self.walls, *(p.column for p in self.piers if p.column)])


def structure(layout: Layout, paper: OnPaper) -> Structure:
    """Return the concrete of a layout on paper."""
    walls = multi(shapely.union_all([paper.area(a.walls) for a in layout.areas]))
    strips = [paper.area(a.footings) for a in layout.areas]
    edges = shapely.union_all([s.boundary for s in strips])
    hidden = edges.difference(walls.buffer(_UNDER))
    thinnest = min(paper.size(a.wall.thickness) for a in layout.areas)
    steps = tuple(_steps(layout, strips, walls))
    piers = tuple(_piers(layout, paper))
    return Structure(walls, multi(shapely.union_all(strips)), hidden, steps, piers, thinnest)


def _steps(layout: Layout, strips: list[MultiPolygon], walls: BaseGeometry) -> Iterator[Step]:
    """Yield the edges at which a higher strip ends within a lower one, two of each pair at most."""
    covered = walls.buffer(_UNDER)
    for number, upper in enumerate(layout.areas):
        for lower, strip in zip(layout.areas[:number], strips, strict=False):
            rise = upper.tof - lower.tof
            inside = strips[number].boundary.intersection(strip.buffer(-_UNDER))
            edges = list(runs(inside.difference(covered)))
            if rise > 1e-4:
                longest = sorted(edges, key=lambda e: -e.length)[:2]
                yield from (Step(e, rise) for e in longest if e.length > longest[0].length / 2)


def _piers(layout: Layout, paper: OnPaper) -> Iterator[PierMark]:
    for area in layout.areas:
        for number, pier in enumerate(area.area.piers):
            pad, column = pad_prism(area, pier), column_prism(area, pier)
            yield PierMark(
                pier_name(area, number),
                area,
                number,
                paper.point(pier.at),
                paper.drawn(pad.region),
                paper.drawn(column.region) if column else None,
            )


def structure_marks(made: Structure) -> Iterator[Mark]:
    """Yield the marks of the concrete: poche and hatch, then edges."""
    concrete = look("wall")
    columns = [p.column for p in made.piers if p.column]
    hatched = made.thinnest >= _HATCHED
    yield Fill(made.walls, concrete.fill if hatched else concrete.solid, "cut")
    if hatched:
        yield Hatch(made.walls, concrete.hatch, concrete.ink, "hatch")
    yield from stroked(made.hidden, HIDDEN_WEIGHT, HIDDEN)
    yield from outline(made.walls, CUT, layer="outline")
    for pier in made.piers:
        yield from stroked(pier.pad, HIDDEN_WEIGHT, HIDDEN)
    for column in columns:
        shape = multi(column)
        yield Fill(shape, concrete.ink, "cut")
        yield from outline(shape, CUT, layer="outline")
