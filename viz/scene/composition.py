"""What stands in a picture: bodies, the faces a cut leaves, and where the viewer stands."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import shapely
from shapely import MultiPolygon

from geometry.errors import BedcourseError
from geometry.sections.cut import cut as section
from geometry.sections.face import CutFace, CutLine
from geometry.solids.solid import Label, Solid
from viz.scene.ground import undisturbed
from viz.scene.mesh import Array, Index, Plane
from viz.scene.view import View, Window

HIDING = frozenset({"backfill", "grading", "wall stone"})  # shown only where it is cut
HOLE = "excavation"  # never a body; a square look at the cut shows the ground around it
GAP = 0.05  # clear gap between lifted stages, as a share of the plan's diagonal


@dataclass(frozen=True, eq=False)
class Body:
    """A closed mesh to draw: metres, lifted where the stages stand apart."""

    label: Label
    vertices: Array
    faces: Index
    ghost: bool = False


@dataclass(frozen=True, eq=False)
class Cap:
    """The face a cut leaves in one solid: its shape in the cut, triangles and outlines, metres."""

    label: Label
    vertices: Array
    faces: Index
    shape: MultiPolygon
    rings: tuple[Array, ...]


@dataclass(frozen=True, eq=False)
class Composition:
    """All that stands in one picture, the plane it is cut at and the points to fill it with."""

    bodies: tuple[Body, ...]
    caps: tuple[Cap, ...]
    plane: Plane | None
    ahead: tuple[float, float]
    frame: Array
    line: CutLine | None = None

    @property
    def items(self) -> tuple[Body | Cap, ...]:
        """Cut faces and bodies."""
        return (*self.caps, *self.bodies)


def composed(solids: Sequence[Solid], view: View) -> Composition:
    """The picture's bodies and cut faces for a view."""
    cutting = view.kind in ("cutaway", "face the cut")
    hidden = view.without | (frozenset() if cutting else HIDING | {HOLE})
    shown = [solid for solid in solids if solid.label.role not in hidden]
    if not shown:
        raise BedcourseError("There is nothing to draw: every part is left out of this view.")
    if cutting:
        return _cut_through(shown, view)
    bodies = _bodies(shown, view)
    if view.kind == "exploded":
        bodies = lifted(bodies)
    everything = np.vstack([body.vertices for body in bodies])
    return Composition(bodies, (), None, (0.0, 1.0), everything)


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


def _bodies(solids: Sequence[Solid], view: View) -> tuple[Body, ...]:
    last = np.inf if view.stage is None else view.stage
    return tuple(Body(s.label, s.vertices, s.faces, s.label.stage > last) for s in solids)


def _cut_through(solids: Sequence[Solid], view: View) -> Composition:
    if view.cut is None:
        raise BedcourseError("This view needs a cut line: give two points of the plan.")
    line, shift = _drawn_out(view.cut, solids)
    bodies = _bodies([s for s in solids if s.label.role != HOLE], view)
    late = {body.label.part for body in bodies if body.ghost}
    faces = section([s for s in solids if s.label.part not in late], line)
    caps = tuple(_cap(f, line) for f in faces if f.label.role != HOLE and not f.shape.is_empty)
    if not caps:
        raise BedcourseError("The cut line misses the building: move it across the plan.")
    _, normal = _axes(line)
    plane = Plane(np.array([*line.start, 0.0]), np.array([*normal, 0.0]))
    behind = tuple(body for body in bodies if body.label.role not in HIDING)
    frame = [cap.vertices for cap in caps]
    if view.kind == "cutaway":
        frame += [body.vertices[plane.ahead(body.vertices) >= 0] for body in behind]
    elif view.window is not None:
        frame = [_corners(view.window, shift, line)]
    if view.kind == "face the cut":
        caps = (*_ground([f for f in faces if f.label.role == HOLE], line), *caps)
    return Composition(behind, caps, plane, normal, np.vstack(frame), line)


def _ground(holes: Sequence[CutFace], line: CutLine) -> tuple[Cap, ...]:
    """The undisturbed ground, a hair behind the cut so that parts lie before it."""
    face = undisturbed(holes)
    if face is None:
        return ()
    cap = _cap(face, line)
    back = 1e-3 * np.array([*_axes(line)[1], 0.0])
    return (replace(cap, vertices=cap.vertices + back),)


def _corners(window: Window, shift: float, line: CutLine) -> Array:
    x = np.array([window.left, window.right]) + shift
    return placed(np.column_stack([x, [window.bottom, window.top]]), line)


def _axes(line: CutLine) -> tuple[Array, tuple[float, float]]:
    """The direction along the cut, and the way the viewer looks (start on the left hand)."""
    along = np.subtract(line.end, line.start)
    length = float(np.hypot(*along))
    if length == 0.0:
        raise BedcourseError("The cut line has no length: its two points must differ.")
    along = along / length
    return along, (-float(along[1]), float(along[0]))


def _drawn_out(line: CutLine, solids: Sequence[Solid]) -> tuple[CutLine, float]:
    """The line drawn out past everything, and by how much its start moved back, metres."""
    along, _ = _axes(line)
    spots = np.vstack([s.vertices[:, :2] for s in solids])
    reach = (spots - line.start) @ along
    first, last = min(0.0, float(reach.min())) - 0.1, float(reach.max()) + 0.1
    start, end = np.array(line.start) + first * along, np.array(line.start) + last * along
    longer = CutLine((float(start[0]), float(start[1])), (float(end[0]), float(end[1])))
    return longer, -first


def placed(flat: Array, line: CutLine) -> Array:
    """(n, 2) distances along the cut and levels as (n, 3) points, metres."""
    along, _ = _axes(line)
    spots = np.array(line.start) + flat[:, :1] * along
    return np.column_stack([spots, flat[:, 1]])


def _cap(face: CutFace, line: CutLine) -> Cap:
    pieces = shapely.get_parts(shapely.constrained_delaunay_triangles(face.shape))
    corners = shapely.get_coordinates(pieces).reshape(-1, 4, 2)[:, :3].reshape(-1, 2)
    loops = shapely.get_rings(shapely.get_parts(face.shape))
    rings = tuple(placed(shapely.get_coordinates(loop), line) for loop in loops)
    faces = np.arange(len(corners), dtype=np.int64).reshape(-1, 3)
    return Cap(face.label, placed(corners, line), faces, face.shape, rings)
