"""What a picture is made of: bodies, cut faces, and both together; bodies lifted apart."""

from dataclasses import dataclass, replace

import numpy as np
from shapely import MultiPolygon

from geometry.label import Label
from geometry.sections.face import CutLine
from viz.scene.mesh import Array, Index, Plane

HIDING = frozenset({"backfill", "grading", "wall stone"})  # shown only where it is cut
HOLE = "excavation"  # never a body; a square look at the cut shows the ground around it
GAP = 0.05  # clear gap between lifted stages, as a share of the plan's diagonal


@dataclass(frozen=True, eq=False)
class Body:
    """A closed mesh to draw: metres, lifted where the stages stand apart.

    ghost: only its faint outline. inked: with edges. inside: seen from within only, like a pit.
    dark: in ink.
    """

    label: Label
    vertices: Array
    faces: Index
    ghost: bool = False
    inked: bool = True
    inside: bool = False
    dark: bool = False


@dataclass(frozen=True, eq=False)
class Cap:
    """The face a cut leaves in one solid: its shape in the cut, triangles and outlines, metres.

    ghost: only its faint outline.
    """

    label: Label
    vertices: Array
    faces: Index
    shape: MultiPolygon
    rings: tuple[Array, ...]
    ghost: bool = False


@dataclass(frozen=True, eq=False)
class Composition:
    """All that stands in one picture, the plane it is cut at and the points to fill it with.

    lamp: the side the light comes from, -1 left or 1 right.
    """

    bodies: tuple[Body, ...]
    caps: tuple[Cap, ...]
    plane: Plane | None
    ahead: tuple[float, float]
    frame: Array
    line: CutLine | None = None
    lamp: float = -1.0

    @property
    def items(self) -> tuple[Body | Cap, ...]:
        """Cut faces and bodies."""
        return (*self.caps, *self.bodies)


def lifted(bodies: tuple[Body, ...]) -> tuple[Body, ...]:
    """Each stage raised clear above all that was built before it in the same area."""
    everything = np.vstack([body.vertices for body in bodies])
    gap = GAP * float(np.linalg.norm(np.ptp(everything[:, :2], axis=0)))
    raised: list[Body] = []
    lift = -gap
    for stage in sorted({body.label.stage for body in bodies}):
        group = [body for body in bodies if body.label.stage == stage]
        clear = [_clearance(upper, lower) for upper in group for lower in raised]
        lift = max([lift, *clear]) + gap
        up = np.array([0.0, 0.0, lift])
        raised += [replace(body, vertices=body.vertices + up) for body in group]
    return tuple(raised)


def _clearance(upper: Body, lower: Body) -> float:
    """How far a body must rise to stand on another; nothing asked of areas side by side."""
    areas = {upper.label.area, lower.label.area} - {""}
    if len(areas) > 1:
        return -np.inf
    return float(lower.vertices[:, 2].max() - upper.vertices[:, 2].min())
