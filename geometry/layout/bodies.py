"""Bodies as stacks of prisms, and the round holes that pass through them."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from itertools import pairwise
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from geometry.label import Label
from geometry.plan.outline import EMPTY, minus

Point3 = tuple[float, float, float]
Floats = NDArray[np.float64]

# Levels nearer than this are one level (0.1 micrometre).
SAME_LEVEL_M = 1e-7
# Regions that share less are taken to touch only.
TOUCHING_M2 = 1e-9


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
        return any(not _reached(p, bore).is_empty for p in self.prisms)


@lru_cache(maxsize=512)
def _reached(prism: Prism, bore: Bore) -> BaseGeometry:
    """Return the part of a prism's region that a bore at its levels passes over."""
    (x0, y0, z0), (x1, y1, z1) = bore.start, bore.end
    if max(z0, z1) + bore.radius <= prism.bottom or min(z0, z1) - bore.radius >= prism.top:
        return EMPTY
    reach = shapely.LineString(((x0, y0), (x1, y1))).buffer(bore.radius, cap_style="flat")
    region = prism.region.intersection(reach)
    return region if region.area > 1e-9 else EMPTY


_CHORDS = 32
_TURN = np.arange(1, _CHORDS + 1) * np.pi / (_CHORDS + 1)


@lru_cache(maxsize=256)
def bored(prism: Prism, bore: Bore) -> float:
    """Volume a bore takes out of a prism, m3.

    Gauss-Chebyshev quadrature (second kind) across the bore, exact along each chord that lies
    inside the region. A vertical cut of a sloping round hole is an ellipse, taller by the secant
    of the slope.
    """
    region = _reached(prism, bore)
    if region.is_empty:
        return 0.0
    start, end = np.array(bore.start), np.array(bore.end)
    run = float(np.hypot(*(end - start)[:2]))
    along = (end - start)[:2] / run
    left = np.array((-along[1], along[0]))
    tall = bore.radius * np.sin(_TURN) * float(np.linalg.norm(end - start)) / run
    firsts = start[:2] + bore.radius * np.cos(_TURN)[:, None] * left
    lines = shapely.linestrings(np.stack((firsts, firsts + run * along), axis=1))
    pieces, chord = shapely.get_parts(shapely.intersection(lines, region), return_index=True)
    ends = [_along(shapely.get_point(pieces, i), firsts[chord], along) for i in (0, -1)]
    near, far = np.minimum(*ends), np.maximum(*ends)
    slope = (end[2] - start[2]) / run
    heights = _height_along(prism, start[2] + slope * near, start[2] + slope * far, tall[chord])
    weight = bore.radius * np.pi / (_CHORDS + 1) * np.sin(_TURN)
    return float(np.sum(weight[chord] * (far - near) * heights))


def _along(points: NDArray[np.object_], firsts: Floats, along: Floats) -> Floats:
    where = np.column_stack((shapely.get_x(points), shapely.get_y(points)))
    out: Floats = (where - firsts) @ along
    return np.nan_to_num(out)


def _height_along(prism: Prism, z0: Floats, z1: Floats, tall: Floats) -> Floats:
    """Return the mean height, from z0 to z1, of what [z - tall, z + tall] shares with the prism.

    The shared height is P(z + tall) - P(z - tall) with P clipped to the prism; its mean is the
    difference of P's antiderivative over that of z, or the height itself where z hardly moves.
    """
    level = np.abs(z1 - z0) < 1e-7
    steady = _clipped(prism, (z0 + z1) / 2 + tall) - _clipped(prism, (z0 + z1) / 2 - tall)
    rise = np.where(level, 1.0, z1 - z0)
    upper = _summed(prism, z1 + tall) - _summed(prism, z0 + tall)
    lower = _summed(prism, z1 - tall) - _summed(prism, z0 - tall)
    return np.where(level, steady, (upper - lower) / rise)


def _clipped(prism: Prism, z: Floats) -> Floats:
    return np.clip(z, prism.bottom, prism.top)


def _summed(prism: Prism, z: Floats) -> Floats:
    """Return the antiderivative of z clipped to the prism's levels, zero at its middle."""
    middle, half = (prism.bottom + prism.top) / 2, (prism.top - prism.bottom) / 2
    x = z - middle
    inner = np.clip(x, -half, half)
    return middle * x + inner**2 / 2 + half * np.clip(np.abs(x) - half, 0, None)


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
    for z0, z1 in pairwise(levels):
        if z1 - z0 > SAME_LEVEL_M:
            region = low if z1 <= change + SAME_LEVEL_M else high
            here = [
                t.region
                for t in taken
                if t.bottom < z1 - SAME_LEVEL_M and t.top > z0 + SAME_LEVEL_M
            ]
            prisms.append(Prism(minus(region, here), z0, z1))
    return merged(prisms)


def without(prisms: Iterable[Prism], taken: Sequence[Prism]) -> tuple[Prism, ...]:
    """Return prisms less others, split at the others' levels."""
    found: list[Prism] = []
    for p in prisms:
        here = [t for t in taken if t.region.intersection(p.region).area > 1e-12]
        found += layered(p.bottom, p.top, p.region, p.region, p.top, here)
    return merged(found)


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
