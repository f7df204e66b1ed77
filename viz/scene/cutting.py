"""A building cut open: what lies behind the plane, and the faces the cut leaves."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import shapely
from shapely import MultiPolygon

from geometry.errors import BedcourseError
from geometry.sections.cut import cut as section
from geometry.sections.face import CutFace, CutLine
from geometry.solids.solid import Solid
from viz.scene.bodies import HIDING, HOLE, Body, Cap, Composition
from viz.scene.ground import NEAR, REACH, undisturbed
from viz.scene.mesh import Array, Plane
from viz.scene.view import View, Window


def bodies_of(solids: Sequence[Solid], view: View) -> tuple[Body, ...]:
    """The solids to draw; those of a later stage than the view's as ghosts."""
    last = np.inf if view.stage is None else view.stage
    return tuple(
        Body(
            s.label, s.vertices, s.faces,
            s.label.stage > last or s.label.part in view.ghosts, s.label.part not in view.loose,
            dark=s.label.part in view.dark,
        )
        for s in solids
    )  # fmt: skip


def cut_through(solids: Sequence[Solid], view: View) -> Composition:
    """The building behind the view's cut line, and the faces in it."""
    if view.cut is None:
        raise BedcourseError("This view needs a cut line: give two points of the plan.")
    line, shift = _drawn_out(view.cut, solids)
    bodies = bodies_of([s for s in solids if s.label.role != HOLE], view)
    late = {body.label.part for body in bodies if body.ghost}
    faces = section([s for s in solids if view.dug or s.label.part not in late], line)
    if view.kind == "cutaway":
        faces = _without_yard(faces)
    caps = tuple(
        replace(_cap(f, line), ghost=f.label.part in late)
        for f in faces
        if f.label.role != HOLE and not f.shape.is_empty
    )
    if not caps:
        raise BedcourseError("The cut line misses the building: move it across the plan.")
    _, normal = _axes(line)
    plane = Plane(np.array([*line.start, 0.0]), np.array([*normal, 0.0]))
    behind = tuple(body for body in bodies if _shows(body, view))
    frame = [cap.vertices for cap in caps]
    if view.kind == "cutaway":
        frame += [body.vertices[plane.ahead(body.vertices) >= 0] for body in behind]
    elif view.window is not None:
        frame = [_corners(view.window, shift, line)]
    holes = [f for f in faces if f.label.role == HOLE]
    if view.kind == "face the cut":
        caps = (*_ground(holes, line, REACH), *caps)
    elif view.dug:
        caps = (*_ground(holes, line, NEAR), *caps)
        pits = [_pit(s) for s in solids if s.label.role == HOLE]
        behind = (*behind, *pits)
        frame += [pit.vertices[plane.ahead(pit.vertices) >= 0] for pit in pits]
        frame += [cap.vertices for cap in caps[:1]]
    return Composition(behind, caps, plane, normal, np.vstack(frame), line)


def _shows(body: Body, view: View) -> bool:
    """Whether a body stands behind the cut: soil and stone against the wall once they are in."""
    return body.label.role not in HIDING or (view.dug and not body.ghost)


def _pit(hole: Solid) -> Body:
    """The hole as bottom and sides that are seen from within."""
    corners = hole.vertices[hole.faces]
    across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    lid = across[:, 2] > 0.5 * np.linalg.norm(across, axis=1)
    return Body(hole.label, hole.vertices, hole.faces[~lid][:, ::-1], inked=False, inside=True)


def _without_yard(faces: Sequence[CutFace]) -> tuple[CutFace, ...]:
    """Finished grade only as far as the hole: the yard beyond would make the house small."""
    spans = [f.shape.bounds for f in faces if f.label.role != "grading"]
    if not spans:
        return tuple(faces)
    left, right = min(b[0] for b in spans), max(b[2] for b in spans)
    return tuple(
        replace(face, shape=_between(face.shape, left, right))
        if face.label.role == "grading"
        else face
        for face in faces
    )


def _between(shape: MultiPolygon, left: float, right: float) -> MultiPolygon:
    band = shapely.box(left, shape.bounds[1] - 1, right, shape.bounds[3] + 1)
    parts = shapely.get_parts(shapely.intersection(shape, band))
    return MultiPolygon([part for part in parts if isinstance(part, shapely.Polygon)])


def _ground(holes: Sequence[CutFace], line: CutLine, reach: float) -> tuple[Cap, ...]:
    """The undisturbed ground, a hair behind the cut so that parts lie before it."""
    face = undisturbed(holes, reach)
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
