"""Strings of dimensions round the plan: corners of each side, the whole, and the piers' grid."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from geometry.layout.lay import Layout
from geometry.plan.outline import Point
from geometry.units import show_length
from viz.drawing.marks import Line, Mark
from viz.drawing.page import Box
from viz.figures.dimensions import Chain, across, chain, upright
from viz.figures.plan.onpaper import OnPaper
from viz.style.lines import DIMENSION

# Places nearer than this are one, metres.
SAME_M = 1e-3
_FAR_M = 1e4
_GAP = 1.6

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Look:
    """A side of the sheet: which coordinate its strings run along, and which way is outward."""

    axis: int
    way: int


BOTTOM, TOP, LEFT, RIGHT = Look(0, -1), Look(0, 1), Look(1, -1), Look(1, 1)


@dataclass(frozen=True, eq=False)
class Corners:
    """The corners of all outlines, and which of them each side of the sheet sees; metres."""

    points: Floats
    sides: tuple[tuple[Point, Point], ...]
    house: BaseGeometry

    @cached_property
    def bounds(self) -> tuple[float, float, float, float]:
        """The house's left, low, right and high, metres."""
        left, low, right, high = self.house.bounds
        return (left, low, right, high)

    def seen(self, look: Look) -> Floats:
        """Return (n, 2) corners that nothing hides from a side of the sheet."""
        return self._seen[look]

    @cached_property
    def _seen(self) -> dict[Look, Floats]:
        return {look: self._from(look) for look in (BOTTOM, TOP, LEFT, RIGHT)}

    def _from(self, look: Look) -> Floats:
        step = np.zeros(2)
        step[1 - look.axis] = look.way
        rays = shapely.linestrings(
            np.stack((self.points + step * SAME_M, self.points + step * _FAR_M), axis=1)
        )
        hidden = shapely.length(shapely.intersection(rays, self.house)) > SAME_M
        seen: Floats = self.points[~hidden]
        return seen

    def places(self, look: Look) -> tuple[float, ...]:
        """Return the sorted places of a side's string of corners; empty where another tells it."""
        mine = _distinct(self.seen(look)[:, look.axis])
        if look in (BOTTOM, LEFT):
            return mine
        first = _distinct(self.seen(Look(look.axis, -1))[:, look.axis])
        return () if _within(mine, first) else mine

    def untold(self) -> tuple[tuple[Point, Point], ...]:
        """Return the sides whose lengths no string tells: slanted or hidden ones."""
        told = [(axis, self.places(look)) for axis in (0, 1)
                for look in (Look(axis, -1), Look(axis, 1))]  # fmt: skip
        return tuple(side for side in self.sides if not _is_told(side, told))


def corners(layout: Layout) -> Corners:
    """Return the corners of a layout's outlines."""
    rings = [np.asarray(a.outline.exterior.coords) for a in layout.areas]
    sides: dict[tuple[float, ...], tuple[Point, Point]] = {}
    for ring in rings:
        for a, b in pairwise(ring):
            ends = sorted(((float(a[0]), float(a[1])), (float(b[0]), float(b[1]))))
            key = tuple(round(v, 3) for end in ends for v in end)
            sides.setdefault(key, (ends[0], ends[1]))
    points = np.unique(np.round(np.vstack(rings), 6), axis=0)
    house = shapely.union_all([a.outline for a in layout.areas])
    return Corners(points, tuple(sides.values()), house)


def _distinct(values: Sequence[float] | Floats) -> tuple[float, ...]:
    kept: list[float] = []
    for value in sorted(map(float, values)):
        if not kept or value - kept[-1] > SAME_M:
            kept.append(value)
    return tuple(kept)


def _within(few: Sequence[float], many: Sequence[float]) -> bool:
    return all(any(abs(a - b) <= SAME_M for b in many) for a in few)


def _is_told(side: tuple[Point, Point], told: Sequence[tuple[int, Sequence[float]]]) -> bool:
    (ax, ay), (bx, by) = side
    if abs(ay - by) <= SAME_M:
        return any(axis == 0 and _within((ax, bx), places) for axis, places in told)
    if abs(ax - bx) <= SAME_M:
        return any(axis == 1 and _within((ay, by), places) for axis, places in told)
    return False


def places_by_side(found: Corners, grid: tuple[Sequence[float], Sequence[float]]) -> dict[
    Look, list[tuple[float, ...]]
]:  # fmt: skip
    """Return each side's strings from the house outward, as sorted places in metres.

    grid: the piers' x and y; their strings stand above and to the right.
    """
    left, low, right, high = found.bounds
    ends = {0: (left, right), 1: (low, high)}
    rows: dict[Look, list[tuple[float, ...]]] = {}
    for look in (BOTTOM, LEFT, TOP, RIGHT):
        own, whole = found.places(look), ends[look.axis]
        if look.way < 0:
            rows[look] = [own, whole] if len(own) > 2 else [own]
            continue
        axes = grid[look.axis]
        gridded = _distinct((*whole, *axes)) if axes else ()
        rows[look] = [p for p in (() if _within(own, gridded) else own, gridded) if p]
    return rows


@dataclass(frozen=True, eq=False)
class Strings:
    """All strings of dimensions: marks, and the extension lines from the house to them."""

    marks: tuple[Mark, ...]
    extensions: tuple[Line, ...]


def strings(
    layout: Layout,
    found: Corners,
    rows: dict[Look, list[tuple[float, ...]]],
    paper: OnPaper,
    around: Box,
    text: float,
    closer: float = 0.0,
) -> Strings:
    """Return the strings outside a box on paper, mm; so much closer to it than is usual."""
    marks: list[Mark] = []
    extensions: list[Line] = []
    for look, places in rows.items():
        edge = _edge(around, look) - look.way * closer
        chains = [c for p in places if (c := _chain(p, layout, paper))]
        if not chains:
            continue
        draw = across if look.axis == 0 else upright
        marks += draw(chains, edge, look.way, text)
        stops = _distinct([place for row in places for place in row])
        extensions += _extensions(found, look, stops, paper, edge)
    return Strings(tuple(marks), tuple(extensions))


def _chain(places: Sequence[float], layout: Layout, paper: OnPaper) -> Chain | None:
    system = layout.design.project.units
    return chain(places, paper.size, lambda length: show_length(length, system))


def _edge(around: Box, look: Look) -> float:
    if look.axis == 0:
        return around.high if look.way > 0 else around.low
    return around.right if look.way > 0 else around.left


def _extensions(
    found: Corners, look: Look, stops: Sequence[float], paper: OnPaper, edge: float
) -> Iterator[Line]:
    """Yield the thin lines from corners of the house out to where the strings' own begin."""
    seen = found.seen(look)
    for stop in stops:
        here = seen[np.abs(seen[:, look.axis] - stop) <= SAME_M]
        if not len(here):
            continue
        outermost = max(here[:, 1 - look.axis] * look.way) * look.way
        start = paper.size(float(outermost)) + look.way * _GAP
        end = edge + look.way * _GAP
        if (end - start) * look.way <= 0:
            continue
        at = paper.size(stop)
        points = ((at, start), (at, end)) if look.axis == 0 else ((start, at), (end, at))
        yield Line(points, DIMENSION, layer="dimensions")
