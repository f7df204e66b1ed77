"""Bodies as stacks of prisms, and the round holes that pass through them."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import NamedTuple

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from geometry.label import Label
from geometry.plan.outline import minus

Point3 = tuple[float, float, float]

# Levels nearer than this are one level (0.1 micrometre).
SAME_LEVEL_M = 1e-7


class Prism(NamedTuple):
    """A region of the plan between two levels, metres."""

    region: BaseGeometry
    bottom: float
    top: float

    @property
    def volume(self) -> float:
        """Area times height, m3."""
        return float(self.region.area) * (self.top - self.bottom)


class Bore(NamedTuple):
    """A round hole along a straight axis (nearly level), metres."""

    start: Point3
    end: Point3
    radius: float


@dataclass(frozen=True, eq=False)
class Body:
    """A labelled part made of prisms that do not overlap, less round bores.

    taken: volume of pipe and risers that stand in it, m3.
    """

    label: Label
    prisms: tuple[Prism, ...]
    bores: tuple[Bore, ...] = ()
    taken: float = 0.0

    @cached_property
    def volume(self) -> float:
        """In-place volume, m3: prisms in closed form, less what the bores take out."""
        whole = sum(p.volume for p in self.prisms)
        return whole - self.taken - sum(bored(p, b) for p in self.prisms for b in self.bores)

    @property
    def bottom(self) -> float:
        """Lowest level, metres."""
        return min(p.bottom for p in self.prisms)

    @property
    def top(self) -> float:
        """Highest level, metres."""
        return max(p.top for p in self.prisms)

    def pierced(self, bores: Iterable[Bore]) -> "Body":
        """Return the body with those bores that pass through it."""
        met = tuple(b for b in bores if self._meets(b))
        return replace(self, bores=self.bores + met) if met else self

    def _meets(self, bore: Bore) -> bool:
        return any(bored(p, bore) > 1e-12 for p in self.prisms)


def bored(prism: Prism, bore: Bore) -> float:
    """Volume a bore takes out of a prism, m3.

    Gauss-Chebyshev quadrature (second kind) across the bore; along each of its chords inside the
    region, the height of the bore between the prism's levels, by Gauss-Legendre quadrature
    between the places where it meets a level.
    """
    (x0, y0, z0), (x1, y1, z1) = bore.start, bore.end
    if max(z0, z1) + bore.radius <= prism.bottom or min(z0, z1) - bore.radius >= prism.top:
        return 0.0
    reach = shapely.LineString(((x0, y0), (x1, y1))).buffer(bore.radius, cap_style="flat")
    if not prism.region.intersects(reach):
        return 0.0
    return _chords(prism, bore)


_CHORDS = 48
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(8)


def _chords(prism: Prism, bore: Bore) -> float:
    start, end = np.array(bore.start), np.array(bore.end)
    run = float(np.hypot(*(end - start)[:2]))
    along = (end - start)[:2] / run
    left = np.array((-along[1], along[0]))
    turn = np.arange(1, _CHORDS + 1) * np.pi / (_CHORDS + 1)
    across, half = bore.radius * np.cos(turn), bore.radius * np.sin(turn)
    # A vertical cut of a sloping round hole is an ellipse, taller by the secant of the slope.
    half = half * float(np.linalg.norm(end - start)) / run
    firsts = start[:2] + across[:, None] * left
    lines = shapely.linestrings(np.stack((firsts, firsts + run * along), axis=1))
    inside = shapely.intersection(lines, prism.region)
    weight = bore.radius * np.pi / (_CHORDS + 1) * np.sin(turn)
    total = 0.0
    for piece, first, tall, share in zip(inside, firsts, half, weight, strict=True):
        for part in shapely.get_parts(piece):
            if part.length > 0:
                ends = (np.asarray(part.coords)[[0, -1]] - first) @ along
                total += share * _between(prism, (start[2], end[2], run), sorted(ends), tall)
    return total


def _between(
    prism: Prism, axis: tuple[float, float, float], ends: Sequence[float], tall: float
) -> float:
    z0, z1, run = axis
    slope = (z1 - z0) / run
    kinks = [a for a in _kinks(prism, axis, tall) if ends[0] < a < ends[1]]
    stops = np.array([ends[0], *sorted(kinks), ends[1]])
    centre, width = (stops[1:] + stops[:-1]) / 2, (stops[1:] - stops[:-1]) / 2
    at = centre[:, None] + width[:, None] * _NODES
    z = z0 + slope * at
    height = np.clip(np.minimum(z + tall, prism.top) - np.maximum(z - tall, prism.bottom), 0, None)
    return float(np.sum(width * (height @ _WEIGHTS)))


def _kinks(prism: Prism, axis: tuple[float, float, float], tall: float) -> list[float]:
    z0, z1, run = axis
    if abs(z1 - z0) < 1e-12:
        return []
    slope = (z1 - z0) / run
    return [
        (level + sign * tall - z0) / slope
        for level in (prism.bottom, prism.top)
        for sign in (-1, 1)
    ]


def layered(
    bottom: float,
    top: float,
    low: BaseGeometry,
    high: BaseGeometry,
    change: float,
    taken: Sequence[Prism],
) -> tuple[Prism, ...]:
    """Return a layer as prisms: `low` region below the level `change`, `high` above, less openings.

    taken: openings with their own levels (pads, columns, the pit).
    """
    stops = {bottom, top, change, *(level for t in taken for level in (t.bottom, t.top))}
    levels = sorted(s for s in stops if bottom <= s <= top)
    prisms = []
    for z0, z1 in zip(levels, levels[1:], strict=False):
        if z1 - z0 > SAME_LEVEL_M:
            region = low if z1 <= change + SAME_LEVEL_M else high
            here = [
                t.region
                for t in taken
                if t.bottom < z1 - SAME_LEVEL_M and t.top > z0 + SAME_LEVEL_M
            ]
            prisms.append(Prism(minus(region, here), z0, z1))
    return merged(prisms)


def merged(prisms: Sequence[Prism]) -> tuple[Prism, ...]:
    """Join prisms that stand on each other with the same region, and drop empty ones."""
    out: list[Prism] = []
    for p in prisms:
        if p.top - p.bottom < SAME_LEVEL_M or p.region.area < 1e-12:
            continue
        if out and abs(out[-1].top - p.bottom) < SAME_LEVEL_M and out[-1].region.equals(p.region):
            out[-1] = Prism(p.region, out[-1].bottom, p.top)
        else:
            out.append(p)
    return tuple(out)
