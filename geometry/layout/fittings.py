"""What lies along a drain's pipe: fittings, straight lengths between them, how far a bend turns."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.layout.areas import AreaLayout
from geometry.plan.route import Route
from geometry.units import INCH

# A fitting reaches this far along each leg, or more where a sharp bend needs it.
FITTING_REACH_M = 6 * INCH
# The pipe stops this far short of the stone at an open end.
END_GAP_M = 4 * INCH
CAP_M = 0.5 * INCH
SAME_STATION_M = 1e-6
# Every pipe is drawn and cut as a regular polygon of this many sides.
PIPE_SIDES = 24


@dataclass(frozen=True)
class Fitting:
    """A place along the pipe that is not drilled: a bend, a tee or a capped end."""

    kind: str
    station: float
    reach: float
    corner: int | None = None


@dataclass(frozen=True)
class Straight:
    """A length of perforated pipe between fittings, falling evenly.

    start, end: stations. holes: rings of holes; plain: undrilled length at its start.
    """

    start: float
    end: float
    plain: float
    holes: int


def turn_at(points: NDArray[np.float64], number: int) -> float:
    """Return how far a closed outline turns at one of its corners, radians."""
    before = points[number] - points[number - 1]
    after = points[(number + 1) % len(points)] - points[number]
    cosine = before @ after / (np.linalg.norm(before) * np.linalg.norm(after))
    return float(np.arccos(np.clip(cosine, -1, 1)))


def corner_station(route: Route, area: AreaLayout, corner: int) -> float:
    """Return the station of the route's corner nearest to an outline corner (numbered from 1)."""
    gaps = np.linalg.norm(np.subtract(route.points, area.area.corners[corner - 1]), axis=1)
    return float(route.stations[int(np.argmin(gaps))])
