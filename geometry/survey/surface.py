"""The surface through shots: their Delaunay triangulation."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import Delaunay, QhullError

from geometry.survey.shots import Floats, Ints, SurveyError

Ids = NDArray[np.int32]

# Shots nearer to one line than this span no surface (1 mm).
LINE_M = 1e-3
_CELLS = 65535
# Corners of the shots' outer rim: far more than a walk round the hole takes.
MOST_RIM = 3000


@dataclass(frozen=True, eq=False)
class Surface:
    """Triangles between shots, each a plane.

    points: (n, 2) metres on the plan. level: (n,) metres. triangles: (m, 3) indices,
    counter-clockwise. neighbours: (m, 3) the triangle beyond the side facing each corner, or -1.
    """

    points: Floats
    level: Floats
    triangles: Ids
    neighbours: Ids

    @cached_property
    def rim(self) -> Ints:
        """The sides nothing lies beyond, (k, 2) indices, counter-clockwise round the surface."""
        triangle, corner = np.nonzero(self.neighbours < 0)
        starts = self.triangles[triangle, (corner + 1) % 3]
        ends = self.triangles[triangle, (corner + 2) % 3]
        after = dict(zip(starts.tolist(), ends.tolist(), strict=True))
        walk = [int(starts[0])]
        while len(walk) < len(after):
            walk.append(after[walk[-1]])
        return np.column_stack((walk, np.roll(walk, -1)))

    @cached_property
    def edges(self) -> tuple[Ids, Ids]:
        """Every side of a triangle once, as two (k,) arrays of indices."""
        begin = np.concatenate([self.triangles[:, n] for n in (0, 1, 2)])
        end = np.concatenate([self.triangles[:, n] for n in (1, 2, 0)])
        lone = np.concatenate([self.neighbours[:, n] < 0 for n in (2, 0, 1)])
        # A side between two triangles comes once each way.
        once = (begin < end) | lone
        return begin[once], end[once]


def neighbourly(x: Floats, y: Floats) -> Ints:
    """Return the order of places along a curve that keeps near ones together (Morton's), (n,).

    Triangles then lie near their neighbours in memory: everything after is much faster for it.
    """
    corner, size = (x.min(), y.min()), max(np.ptp(x), np.ptp(y), LINE_M)
    across, up = (
        _apart(((values - low) / size * _CELLS).astype(np.uint64))
        for values, low in zip((x, y), corner, strict=True)
    )
    return np.argsort(across | (up << np.uint64(1)), kind="stable")


def _apart(numbers: NDArray[np.uint64]) -> NDArray[np.uint64]:
    """Return 16-bit numbers with a bit of room after each of theirs."""
    for by, mask in ((8, 0x00FF00FF), (4, 0x0F0F0F0F), (2, 0x33333333), (1, 0x55555555)):
        numbers = (numbers | (numbers << np.uint64(by))) & np.uint64(mask)
    return numbers


def triangulate(x: Floats, y: Floats, level: Floats) -> Surface:
    """Return the surface through shots, (n,) each, metres. Raises SurveyError where there is none.

    Reckoned about the shots' middle, so that large plan coordinates cost no digits.
    """
    if len(x) < 3:
        raise SurveyError(f"{_count(len(x))}; a surface needs three at least")
    points = np.column_stack((x, y))
    shifted = points - points.mean(axis=0)
    if _width(shifted) < LINE_M:
        raise SurveyError("all shots lie on one line; a surface needs shots beside it")
    try:
        found = Delaunay(shifted)
    except QhullError:
        raise SurveyError("the shots span no surface; shoot more places, apart") from None
    if np.count_nonzero(found.neighbors < 0) > MOST_RIM:
        raise SurveyError(f"more than {MOST_RIM:,} shots stand on their outer rim; thin them there")
    return Surface(points, level, found.simplices, found.neighbors)


def _width(shifted: Floats) -> float:
    """Return the mean distance, as root of squares, from the line the points lie nearest to."""
    spread = shifted.T @ shifted / len(shifted)
    return float(np.sqrt(max(0.0, np.linalg.eigvalsh(spread)[0])))


def _count(shots: int) -> str:
    return {0: "no shot", 1: "one shot", 2: "two shots"}[shots]
