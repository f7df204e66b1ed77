"""Ponds: hollows of the dug floor that rain fills and does not leave."""

from dataclasses import dataclass

import numpy as np

from geometry.layout.lay import Layout
from geometry.survey.bed import Bed
from geometry.survey.corners import highest
from geometry.survey.flow import fill_levels
from geometry.survey.pieces import Pieces
from geometry.survey.prisms import covered, space
from geometry.survey.shots import Floats, Ints, Marks
from geometry.survey.spots import over_triangles, point_patches

# Shallower than this a hollow is the reading's own error (3 mm).
LEAST_M = 3e-3
# Smaller than a hat it is a footprint, m2.
_LEAST_M2 = 0.05


@dataclass(frozen=True)
class Pond:
    """A hollow that fills before it spills. x, y: its deepest shot, metres; levels from TOF."""

    x: float
    y: float
    bottom_m: float
    spill_m: float
    area_m2: float
    volume_m3: float

    @property
    def depth_m(self) -> float:
        """Deepest water, metres."""
        return self.spill_m - self.bottom_m


@dataclass(frozen=True)
class Ponds:
    """The deepest ponds, the deepest first; count and volume of all, footprints left out.

    Footings dam the floor all round: water leaves at the pit, or ends at the lowest shot (`ends`:
    x, y, level), where it stands as high as it comes.
    """

    deepest: tuple[Pond, ...]
    count: int
    volume_m3: float
    ends: tuple[float, float, float] | None


def ponds(layout: Layout, bed: Bed, pieces: Pieces, inside: Marks, most: int) -> Ponds:
    """Return where water stands on the ground of an area; inside: (n,) points within its floor."""
    surface = pieces.surface
    if not inside.any():
        return Ponds((), 0, 0.0, None)
    pit = _pit(layout, bed, surface.points, inside)
    lowest = int(np.flatnonzero(inside)[surface.level[inside].argmin()])
    outlet = lowest if pit is None else pit
    filled = fill_levels(surface.level, surface.edges, inside, outlet)
    found = _measured(pieces, filled)
    found.sort(key=lambda pond: -pond.depth_m)
    volume = sum(p.volume_m3 for p in found)
    ends = None
    if pit is None:
        x, y = surface.points[lowest]
        ends = (float(x), float(y), float(surface.level[lowest]))
    return Ponds(tuple(found[:most]), len(found), volume, ends)


def _pit(layout: Layout, bed: Bed, points: Floats, inside: Marks) -> int | None:
    """Return the shot nearest to the pit, if this area has one."""
    if layout.sump is None or layout.sump.area is not bed.area:
        return None
    within = np.flatnonzero(inside)
    away = np.hypot(*(points[within] - np.asarray(layout.sump.sump.at)).T)
    return int(within[away.argmin()])


def _measured(pieces: Pieces, filled: Floats) -> list[Pond]:
    surface = pieces.surface
    depth = filled - surface.level
    # Every point under water belongs to its pond, however shallow it is there.
    owner = point_patches(surface, depth > 0)
    patch = over_triangles(surface, owner)
    water = highest(np.where(depth > 0, filled, -np.inf)[surface.triangles])
    met = np.flatnonzero((pieces.source >= 0) & (patch[pieces.source] >= 0))
    number, below = patch[pieces.source[met]], water[pieces.source[met], None] - pieces.level[met]
    count = int(owner.max()) + 1
    wide = np.bincount(number, covered(pieces.area[met], below), count)
    volume = np.bincount(number, space(pieces.area[met], below), count)
    bottoms = _deepest(owner, depth)
    return [
        Pond(x, y, float(surface.level[p]), float(filled[p]), float(wide[owner[p]]),
             float(volume[owner[p]]))
        for p, (x, y) in zip(bottoms, surface.points[bottoms].tolist(), strict=True)
        if wide[owner[p]] > _LEAST_M2
    ]  # fmt: skip


def _deepest(owner: Ints, depth: Floats) -> Ints:
    """Return the deepest point of each pond that is deep enough to count."""
    deep = np.flatnonzero(depth > LEAST_M)
    deep = deep[np.argsort(-depth[deep], kind="stable")]
    _, firsts = np.unique(owner[deep], return_index=True)
    return deep[firsts]
