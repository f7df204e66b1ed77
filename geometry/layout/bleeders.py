"""Bleeders: short level pipes through the footing from the drain outside it to the one inside."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString
from shapely.affinity import translate

from geometry.layout.bodies import Bore, Point3
from geometry.layout.drain import DrainLayout
from geometry.materials.catalogue import PIPES
from geometry.materials.kinds import Pipe
from geometry.units import INCH

# A bleeder reaches this far into the stone past the fabric on either side.
REACH_M = 2 * INCH
# It keeps this far from bends and ends of the stone (common practice, no source).
CORNER_M = 12 * INCH

_Floats = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Bleeder:
    """One pipe through the footing: its ends' centres, metres."""

    pipe: Pipe
    outer_end: Point3
    inner_end: Point3

    @property
    def radius(self) -> float:
        """Outer radius of the pipe."""
        return self.pipe.outside_diameter_m / 2

    @property
    def length(self) -> float:
        """Length of the pipe, metres; it lies level."""
        return float(np.hypot(*np.subtract(self.inner_end, self.outer_end)[:2]))

    @property
    def outside(self) -> Bore:
        """The pipe's own outside."""
        return Bore(self.outer_end, self.inner_end, self.radius)


def bleeder_invert(drain: DrainLayout) -> float:
    """Level of the bleeders' inverts."""
    given = drain.drain.bleeders.invert
    return drain.outlet_invert if given is None else drain.area.tof + given


def lay_bleeders(drain: DrainLayout, other: DrainLayout) -> tuple[Bleeder, ...]:
    """Lay the bleeders of a drain that empties through the footing into the other one.

    Every straight side where both drains lie on either face gets one at least.
    """
    outside, inside = (other, drain) if drain.inside else (drain, other)
    pipe = PIPES[drain.drain.bleeders.pipe]
    level = bleeder_invert(drain) + pipe.inside_diameter_m / 2
    found = []
    for point, inward in _places(outside, inside, drain.drain.bleeders.spacing):
        start = point - inward * (outside.wrap_m + REACH_M)
        end = point + inward * (outside.area.footing.width + inside.wrap_m + REACH_M)
        ends = [(float(x), float(y), level) for x, y in (start, end)]
        found.append(Bleeder(pipe, *ends))
    return tuple(found)


def _places(
    outside: DrainLayout, inside: DrainLayout, spacing: float
) -> Iterator[tuple[_Floats, _Floats]]:
    """Yield points on the footing's outer face, evenly spread along each side, and the way in."""
    face, width = outside.line_at(0.0), outside.area.footing.width
    count = len(outside.corners) if outside.route.closed else len(outside.corners) - 1
    for number in outside.corners[:count]:
        a, b = face[number], face[(number + 1) % len(face)]
        along = (b - a) / np.linalg.norm(b - a)
        inward = np.array((-along[1], along[0]))
        near = translate(outside.low_space, *(inward * 1e-3))
        far = translate(inside.low_space, *(-inward * (width + 1e-3)))
        shared = LineString((a, b)).intersection(near.buffer(2e-6)).intersection(far.buffer(2e-6))
        for run in shapely.get_parts(shared):
            yield from _spread(run, along, inward, spacing)


def _spread(
    run: LineString, along: _Floats, inward: _Floats, spacing: float
) -> Iterator[tuple[_Floats, _Floats]]:
    room = run.length - 2 * CORNER_M
    if run.geom_type != "LineString" or room <= 0:
        return
    ends = np.asarray(run.coords)
    first = min(ends, key=lambda end: float(end @ along))
    stops = np.linspace(0.0, room, int(np.ceil(room / spacing - 1e-9)) + 1)
    for a, b in pairwise(stops):
        yield first + along * (CORNER_M + (a + b) / 2), inward
