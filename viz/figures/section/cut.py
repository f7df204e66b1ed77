"""The cut itself: tints, hatches, outlines, heavy lines for thin parts, undisturbed ground."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, MultiPolygon, Polygon
from shapely.geometry import LinearRing

from geometry.sections.bars import BarMark
from viz.drawing.marks import Circle, Fill, Hatch, LevelSymbol, Line, Mark, Point
from viz.figures.section.view import GROUND_BAND, PaperFace, View, polygons
from viz.style.lines import CHAIN, GROUND, INK, PAPER, SEEN, THINNEST_OUTLINED
from viz.style.materials import Look, look, look_of

_MOVED_SOIL = ("backfill", "grading")
# Corners of the ground band are rounded by this radius; the sky is higher than any paper. mm.
_ROUND = 6.0
_SKY = 5000.0
# Bars are drawn with at least this radius, mm.
LEAST_DOT = 0.35
# A break line is drawn where more than this is cut through, mm.
_BROKEN = 3.0
_DASH = (3.0, 1.5)
# What covers less of the ground than this, mm2, only touches it; ground nearer than this to
# something built does not show, mm.
_TOUCH = 1e-3
_HIDING = 0.05
_HOLLOW = ("pipe", "fitting", "cleanout", "lead", "sleeve", "bleeder")


def is_thin(polygon: Polygon, role: str) -> bool:
    """Tell whether a face is too thin on paper to outline; pipe walls stay two lines."""
    return role not in _HOLLOW and 2 * polygon.area / polygon.length < THINNEST_OUTLINED


def thin_parts(face: PaperFace) -> tuple[Polygon, ...]:
    """Return the polygons of a face drawn as one heavy line: all of them, or none.

    A sliver of a thick part, such as stone cut beside a pipe, keeps its outline.
    """
    pieces = tuple(face.shape.geoms)
    return pieces if all(is_thin(p, face.label.role) for p in pieces) else ()


def area_marks(faces: Sequence[PaperFace], native: MultiPolygon) -> Iterator[Mark]:
    """Yield tints and hatches of undisturbed ground and of all faces."""
    yield from _area(native, look("excavation"))
    for face in built(faces):
        yield from _area(_thick(face), look_of(face.label))


def edge_marks(faces: Sequence[PaperFace], native: MultiPolygon, view: View) -> Iterator[Mark]:
    """Yield cut outlines, heavy lines for thin parts, the ground line and break lines."""
    solid = built(faces)
    for face in solid:
        yield from _edges(_thick(face), look_of(face.label).line_mm, view)
    for face in solid:
        yield from _heavy(face)
    yield from ground_line(solid, native, view)
    yield from break_lines([*(face.shape for face in solid), native], view)


def bar_dots(bars: Sequence[BarMark], view: View) -> Iterator[Circle]:
    """Yield the bars as solid dots, the thinnest still seen on paper."""
    for bar in bars:
        if view.shows(bar.distance, bar.level):
            radius = max(bar.diameter / 2 * view.scale.per_metre, LEAST_DOT)
            yield Circle(view.at(bar.distance, bar.level), radius, 0.0, fill=INK, layer="outline")


def step_lines(steps: Sequence[float], view: View) -> Iterator[Line]:
    """Yield a thin chain line where the cutting plane steps aside."""
    for step in steps:
        if view.shows(step, view.extent[1]):
            ends = (view.at(step, view.extent[1]), view.at(step, view.extent[3]))
            yield Line(ends, SEEN, dash=CHAIN, layer="outline")


@dataclass(frozen=True)
class Floats:
    """Levels of a pump's switches in the pit, between its sides along the cut, metres."""

    start: float
    end: float
    levels: tuple[float, ...]


def float_marks(floats: Floats | None, view: View) -> Iterator[Mark]:
    """Yield a dashed line across the pit at each switch level, with the sign of a level."""
    for level in floats.levels if floats else ():
        if floats and view.shows(floats.start, level) and view.shows(floats.end, level):
            ends = (view.at(floats.start, level), view.at(floats.end, level))
            yield Line(ends, SEEN, dash=_DASH, layer="outline")
            middle = ((ends[0][0] + ends[1][0]) / 2, ends[0][1])
            yield LevelSymbol(middle, 2.2, layer="outline")


def built(faces: Sequence[PaperFace]) -> tuple[PaperFace, ...]:
    """Return the faces of things, without the dig, which is a room and no thing."""
    return tuple(face for face in faces if face.label.role != "excavation")


def _thick(face: PaperFace) -> MultiPolygon:
    return MultiPolygon() if thin_parts(face) else face.shape


def _area(shape: MultiPolygon, shown: Look) -> Iterator[Mark]:
    if not shape.is_empty:
        yield Fill(shape, shown.fill, "cut")
        yield Hatch(shape, shown.hatch, shown.ink, "hatch")


def _edges(shape: MultiPolygon, weight: float, view: View) -> Iterator[Line]:
    """Yield the outline without the stretches along the crop of the view: nothing ends there."""
    box = view.box
    crop = shapely.box(box.left, box.low, box.right, box.high).exterior.buffer(0.02)
    for ring in [r for p in shape.geoms for r in (p.exterior, *p.interiors)]:
        left = ring if not view.cropped else shapely.line_merge(ring.difference(crop))
        for part in shapely.get_parts(left):
            yield Line(_points(part), weight, layer="outline")


def _heavy(face: PaperFace) -> Iterator[Line]:
    shown = look_of(face.label)
    for polygon in thin_parts(face):
        points = middle_line(polygon)
        if shown.dash:
            yield Line(points, shown.thin_mm, PAPER, layer="outline")
        yield Line(points, shown.thin_mm, shown.solid, shown.dash, "outline")


def middle_line(polygon: Polygon) -> tuple[Point, ...]:
    """Return the line along the middle of a thin strip or ring."""
    thickness = 2 * polygon.area / polygon.length
    plain = polygon.simplify(thickness / 20)
    if plain.interiors:
        inner = plain.buffer(0).exterior
        return _points(inner)
    ring = list(plain.exterior.coords)[:-1]
    caps = _caps(ring, thickness)
    if caps is None:
        return _points(LinearRing(ring))
    start, end = caps
    side = [*ring[start + 1 : end + 1]]
    other = [*ring[end + 1 :], *ring[: start + 1]][::-1]
    if len(side) == len(other):
        both = zip(side, other, strict=True)
        return tuple(((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in both)
    return _points(LineString(max(side, other, key=len)))


def _caps(ring: Sequence[Sequence[float]], thickness: float) -> tuple[int, int] | None:
    """Return the two short edges that close a strip: those that part its outline most evenly."""
    count = len(ring)
    edges = [LineString((ring[i], ring[(i + 1) % count])).length for i in range(count)]
    run = [sum(edges[:i]) for i in range(count + 1)]
    short = [i for i in range(count) if edges[i] < 3 * thickness]
    pairs = [(a, b) for a in short for b in short if a < b]
    if not pairs:
        return None
    return min(pairs, key=lambda pair: abs(2 * (run[pair[1]] - run[pair[0]]) - run[-1]))


def native_ground(faces: Sequence[PaperFace], view: View) -> MultiPolygon:
    """Return a band of undisturbed ground along the dig, at each side up to its brim."""
    dug = shapely.union_all([f.shape for f in faces if f.label.role == "excavation"])
    if dug.is_empty:
        return MultiPolygon()
    band = dug.buffer(GROUND_BAND + _ROUND).buffer(-_ROUND) - _with_all_above(dug)
    box = view.box
    room = shapely.box(box.left, box.low, box.right, box.high)
    ground = (band - _above_brims(dug)).intersection(room)
    return polygons(ground - _over(ground, [face.shape for face in built(faces)], 0.0))


def _over(
    shape: shapely.Geometry, others: Sequence[MultiPolygon], grown: float
) -> shapely.Geometry:
    """Return those of the others, each grown a little, that really cover some of a shape."""
    near = np.array([p for other in others for p in other.geoms], dtype=object)
    if not len(near):
        return MultiPolygon()
    shapely.prepare(shape)
    near = near[shapely.intersects(shape, near)]
    near = near[shapely.area(shapely.intersection(shape, near)) > _TOUCH] if not grown else near
    return shapely.union_all(near if not grown else shapely.buffer(near, grown))


def _with_all_above(shape: MultiPolygon) -> shapely.Geometry:
    """Return a shape and all that lies straight above it, by sweeping its edges upward."""
    swept = []
    for ring in (polygon.exterior for polygon in polygons(shape).geoms):
        for (x0, y0, *_), (x1, y1, *_) in pairwise(ring.coords):
            if abs(x1 - x0) > 1e-9:
                swept.append(Polygon(((x0, y0), (x1, y1), (x1, y1 + _SKY), (x0, y0 + _SKY))))
    return shapely.union_all([shape, *swept])


def _above_brims(dug: MultiPolygon) -> shapely.Geometry:
    """Return the air beside the dig: above its brim at the left, and at the right."""
    left, _, right, _ = dug.bounds
    points = shapely.get_coordinates(dug)
    brims = [max(y for x, y in points if abs(x - side) < 0.1) for side in (left, right)]
    return shapely.union_all([
        shapely.box(left - _SKY, brims[0], left, brims[0] + _SKY),
        shapely.box(right, brims[1], right + _SKY, brims[1] + _SKY),
    ])  # fmt: skip


def ground_line(faces: Sequence[PaperFace], native: MultiPolygon, view: View) -> Iterator[Line]:
    """Yield the upper edge of soil towards the air, heavy."""
    soil = [face.shape for face in faces if face.label.role in _MOVED_SOIL]
    earth = shapely.union_all([*soil, native]).buffer(0.01)
    rest = [face.shape for face in faces if face.label.role not in _MOVED_SOIL]
    for polygon in polygons(earth).geoms:
        top = _upper_edges(polygon)
        line = shapely.line_merge(shapely.MultiLineString(top))
        line = line.difference(_over(line, rest, _HIDING))
        for part in shapely.get_parts(line):
            if part.length > 1.0 and part.bounds[3] < view.box.high - 0.1:
                yield Line(_points(part), GROUND, layer="ground")


def _upper_edges(polygon: Polygon) -> list[NDArray[np.float64]]:
    """Return the (2, 2) edges of an outline that have the shape under them and are no cliffs."""
    ring = shapely.get_coordinates(shapely.orient_polygons(polygon).exterior)
    back = ring[:-1, 0] - ring[1:, 0]
    lengths = np.hypot(back, ring[:-1, 1] - ring[1:, 1])
    return [ring[n : n + 2] for n in np.flatnonzero(back > 0.5 * lengths)]


def break_lines(shapes: Sequence[MultiPolygon], view: View) -> Iterator[Line]:
    """Yield a break line wherever the crop cuts through something at the left or right."""
    if not view.cropped:
        return
    box = view.box
    everything = shapely.union_all(shapes)
    for x in (box.left, box.right):
        inside = x + (0.01 if x == box.left else -0.01)
        cut = everything.intersection(LineString(((inside, box.low), (inside, box.high))))
        if not cut.is_empty and cut.length > _BROKEN:
            yield Line(_zigzag(x, cut.bounds[1] - 2.5, cut.bounds[3] + 2.5), SEEN, layer="outline")


def _zigzag(x: float, low: float, high: float) -> tuple[Point, ...]:
    middle = low + max(3.0, 0.2 * (high - low))
    return (
        (x, low), (x, middle - 2.4), (x - 1.8, middle - 0.8), (x + 1.8, middle + 0.8),
        (x, middle + 2.4), (x, high),
    )  # fmt: skip


def _points(line: LineString | LinearRing) -> tuple[Point, ...]:
    return tuple((x, y) for x, y, *_ in line.coords)
