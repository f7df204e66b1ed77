"""What is laid now stands out, what comes later is only hinted at."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

import shapely
from shapely import LineString, MultiPolygon

from viz.drawing.marks import Line, Mark, Point
from viz.figures.section.cut import is_thin, middle_line
from viz.figures.section.view import PaperFace, View, polygons
from viz.style.lines import CUT, INK, PAPER, QUIET, SEEN
from viz.style.materials import look_of

BOLD = 1.1
# A part thinner than this on paper is one heavy line of this weight, mm.
HEAVY = 1.8
_GHOST_DASH = (1.8, 1.2)
_SAME = 0.02


def now_edges(faces: Sequence[PaperFace], view: View) -> Iterator[Mark]:
    """Yield bold outlines of what is laid now; heavy lines for thin parts."""
    for face in faces:
        for piece in face.shape.geoms:
            if is_thin(piece, face.label.role):
                yield from _heavy(face, middle_line(piece))
            else:
                yield from _outline(MultiPolygon([piece]), view, min(BOLD, _room(piece)))


def _room(piece: shapely.Polygon) -> float:
    """Return the weight that leaves a narrow part some of its own colour."""
    return max(CUT, float(2 * piece.area / piece.length / 3))


def _heavy(face: PaperFace, points: tuple[Point, ...]) -> Iterator[Line]:
    shown = look_of(face.label)
    if shown.dash:
        yield Line(points, HEAVY, PAPER, layer="outline")
    yield Line(points, HEAVY, shown.solid, tuple(1.5 * d for d in shown.dash), "outline")


def ghosts(faces: Sequence[PaperFace], view: View) -> Iterator[Mark]:
    """Yield thin dashed outlines of what comes later."""
    for face in faces:
        for piece in face.shape.geoms:
            if is_thin(piece, face.label.role):
                yield Line(middle_line(piece), SEEN, QUIET, _GHOST_DASH, "ghost")
            else:
                yield from _outline(MultiPolygon([piece]), view, SEEN, QUIET, _GHOST_DASH, "ghost")


def dug_floor(dug: Sequence[PaperFace], there: Sequence[PaperFace], view: View) -> Iterator[Line]:
    """Yield a bold line along the bottom of the hole, where it is bare ground."""
    hole = polygons(shapely.union_all([face.shape for face in dug]))
    solid = shapely.union_all([face.shape for face in there])
    bare = hole - solid
    for part in _lower_edges(polygons(bare), view):
        lying = part.intersection(hole.boundary.buffer(_SAME)).difference(solid.buffer(_SAME))
        for piece in shapely.get_parts(shapely.line_merge(lying)):
            if isinstance(piece, LineString) and piece.length > 0.5:
                yield Line(_points(piece), HEAVY, INK, layer="outline")


def _lower_edges(shape: MultiPolygon, view: View) -> Iterator[LineString]:
    crop = _crop(view)
    for polygon in shape.geoms:
        ring = shapely.get_coordinates(shapely.orient_polygons(polygon).exterior)
        for a, b in pairwise(ring):
            if b[0] - a[0] > 0.9 * abs(b[1] - a[1]) and b[0] > a[0]:
                yield LineString((a, b)).difference(crop)


def _outline(
    shape: MultiPolygon,
    view: View,
    weight: float,
    colour: str = INK,
    dash: tuple[float, ...] = (),
    layer: str = "outline",
) -> Iterator[Line]:
    """Yield the edges of a shape but those along the crop: nothing ends there."""
    crop = _crop(view)
    for ring in [r for p in shape.geoms for r in (p.exterior, *p.interiors)]:
        for part in shapely.get_parts(shapely.line_merge(ring.difference(crop))):
            if part.length > 0:
                yield Line(_points(part), weight, colour, dash, layer)


def _crop(view: View) -> shapely.Geometry:
    box = view.box
    return shapely.box(box.left, box.low, box.right, box.high).exterior.buffer(_SAME)


def _points(line: LineString) -> tuple[Point, ...]:
    return tuple((x, y) for x, y, *_ in line.coords)
