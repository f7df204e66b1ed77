"""A drain as one cut shows it, told from the footing's face: what its own pictures are made of."""

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
import shapely
from shapely import MultiPolygon, Polygon, affinity

from geometry.label import Label
from geometry.layout.drain import DrainLayout
from geometry.sections.cut import cut
from geometry.sections.face import CutFace, CutLine
from geometry.solids.foundation import Foundation
from viz.scene.ground import undisturbed

_NEAR_M = 0.6
# How far a cut of its own reaches to both sides of a drain, metres.
_REACH_M = 4.0


@dataclass(frozen=True, eq=False)
class Profile:
    """Shapes of a cut square to a drain in (metres from the footing's face, level).

    The house lies to the left, where distances are negative. axis: the middle of the pipe.
    shapes: of every part cut, by id; labels: what they are. ground: the undisturbed.
    """

    drain: DrainLayout
    axis: tuple[float, float]
    shapes: dict[str, MultiPolygon]
    labels: dict[str, Label]
    ground: MultiPolygon

    @property
    def stone(self) -> MultiPolygon:
        """The drain stone that lies round the pipe."""
        return self.shapes[f"{self.drain.key}/stone"]


def profile_of(
    drain: DrainLayout, foundation: Foundation, lines: Iterable[CutLine]
) -> Profile | None:
    """Return the profile at the first of the cuts that meets the drain; None where none does."""
    for line in lines:
        faces = cut((*foundation.solids, foundation.excavation), line)
        found = _told(drain, faces) if not line.jogs else None
        if found:
            return found
    return None


def square_cut(drain: DrainLayout) -> CutLine:
    """Return a cut square to the drain, in the middle of its longest stick."""
    start, end = max(drain.gaps, key=lambda gap: gap[1] - gap[0])
    length = drain.route.length
    near, far = (np.array(drain.route.at((s + (start + end) / 2) % length)) for s in (-0.01, 0.01))
    along = (far - near) / np.hypot(*(far - near))
    across, middle = np.array((-along[1], along[0])), (near + far) / 2
    (x, y), (i, j) = middle.tolist(), (_REACH_M * across).tolist()
    return CutLine((x - i, y - j), (x + i, y + j))


def _told(drain: DrainLayout, faces: tuple[CutFace, ...]) -> Profile | None:
    by_part = {face.label.part: face for face in faces}
    stone = by_part.get(f"{drain.key}/stone")
    pipes = by_part.get(f"{drain.key}/pipe")
    footings = [p for f in faces if f.label.role == "footing" for p in f.shape.geoms]
    if not (stone and pipes and footings):
        return None
    for bed in stone.shape.geoms:
        whole = Polygon(bed.exterior)
        # A cut through holes leaves the pipe in pieces.
        pieces = [p for p in pipes.shape.geoms if whole.contains(p.envelope.centroid)]
        pipe = MultiPolygon(pieces)
        if not pieces or not _round(pipe):
            continue
        centre = pipe.envelope.centroid
        footing = min(footings, key=centre.distance)
        if footing.distance(centre) < _NEAR_M:
            return _placed(drain, faces, footing, (bed, pipe))
    return None


def _round(pipe: MultiPolygon) -> bool:
    """Whether a pipe is cut square and not along."""
    left, low, right, high = pipe.bounds
    return bool(0.9 < (right - left) / (high - low) < 1.1)


def _placed(
    drain: DrainLayout,
    faces: tuple[CutFace, ...],
    footing: Polygon,
    own: tuple[Polygon, MultiPolygon],
) -> Profile:
    """The faces moved so that the footing's face is at 0 and the house to the left."""
    stone, pipe = own
    left, _, right, _ = footing.bounds
    centre = pipe.envelope.centroid
    flip = centre.x < (left + right) / 2
    zero = left if flip else right

    def moved(shape: shapely.Geometry) -> MultiPolygon:
        there = affinity.translate(shape, -zero)
        there = affinity.scale(there, -1.0, 1.0, origin=(0.0, 0.0)) if flip else there
        return there if isinstance(there, MultiPolygon) else MultiPolygon([there])

    key = drain.key
    shapes = {f.label.part: moved(f.shape) for f in faces if f.label.role != "excavation"}
    shapes |= {f"{key}/stone": moved(stone), f"{key}/pipe": moved(pipe)}
    earth = undisturbed([f for f in faces if f.label.role == "excavation"])
    ground = moved(earth.shape) if earth else MultiPolygon()
    axis = moved(pipe).envelope.centroid
    labels = {face.label.part: face.label for face in faces}
    return Profile(drain, (axis.x, axis.y), shapes, labels, ground)
