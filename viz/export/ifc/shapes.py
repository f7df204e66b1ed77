"""Bodies: prisms as extrusions with voids, pipes as hollow round bars, the rest as meshes."""

from typing import Any

import numpy as np
from shapely import LinearRing, Polygon

from geometry.layout.bodies import Bore, Point3, Prism
from geometry.plan.outline import polygons
from geometry.solids.kernel import Mesh
from viz.export.ifc.book import Book
from viz.export.ifc.part import Shape, Tube

# A bore is cut this far past both its ends, as the solids' own kernel cuts it.
PAST_M = 0.02


def items(book: Book, shapes: tuple[Shape, ...]) -> tuple[list[Any], str]:
    """Return a part's body: its items, and what kind of body they are."""
    found: list[Any] = []
    for shape in shapes:
        if isinstance(shape, Prism):
            found += [_prism(book, p, shape) for p in polygons(shape.region)]
        elif isinstance(shape, Tube):
            found.append(_tube(book, shape))
        else:
            found.append(_facets(book, shape))
    return found, "Tessellation" if isinstance(shapes[0], Mesh) else "SweptSolid"


def bore(book: Book, hole: Bore) -> Any:
    """Return a round bar that cuts a bore."""
    start, end = np.array(hole.start), np.array(hole.end)
    along = (end - start) / np.linalg.norm(end - start)
    tool = start - along * PAST_M, end + along * PAST_M
    profile = book.make(
        "IfcCircleProfileDef", ProfileType="AREA", Position=_middle(book), Radius=hole.radius
    )
    return _bar(book, profile, (_point(tool[0]), _point(tool[1])))


def _prism(book: Book, polygon: Polygon, prism: Prism) -> Any:
    outer, *inner = [_line(book, ring) for ring in (polygon.exterior, *polygon.interiors)]
    ifc = "IfcArbitraryProfileDefWithVoids" if inner else "IfcArbitraryClosedProfileDef"
    voids = {"InnerCurves": inner} if inner else {}
    profile = book.make(ifc, ProfileType="AREA", OuterCurve=outer, **voids)
    place = book.frame((0.0, 0.0, prism.bottom))
    return _raised(book, profile, place, prism.top - prism.bottom)


def _line(book: Book, ring: LinearRing) -> Any:
    """Return a ring as a closed line; it ends in the very point where it starts."""
    points = [book.point(x, y) for x, y in list(ring.coords)[:-1]]
    return book.make("IfcPolyline", Points=[*points, points[0]])


def _tube(book: Book, tube: Tube) -> Any:
    profile = book.make(
        "IfcCircleHollowProfileDef", ProfileType="AREA", Position=_middle(book),
        Radius=tube.outer, WallThickness=tube.outer - tube.inner,
    )  # fmt: skip
    return _bar(book, profile, (tube.start, tube.end))


def _bar(book: Book, profile: Any, ends: tuple[Point3, Point3]) -> Any:
    """Return a profile pushed along a straight axis that is not upright."""
    start, end = (np.array(point) for point in ends)
    length = float(np.linalg.norm(end - start))
    along = (end - start) / length
    right = np.array((-along[1], along[0], 0.0)) / np.hypot(along[0], along[1])
    place = book.frame(ends[0], book.way(*along), book.way(*right))
    return _raised(book, profile, place, length)


def _raised(book: Book, profile: Any, place: Any, depth: float) -> Any:
    return book.make(
        "IfcExtrudedAreaSolid", SweptArea=profile, Position=place,
        ExtrudedDirection=book.way(0, 0, 1), Depth=depth,
    )  # fmt: skip


def _facets(book: Book, mesh: Mesh) -> Any:
    points = book.make("IfcCartesianPointList3D", CoordList=mesh.vertices.tolist())
    return book.make(
        "IfcTriangulatedFaceSet", Coordinates=points, Closed=True,
        CoordIndex=(mesh.faces + 1).tolist(),
    )  # fmt: skip


def _middle(book: Book) -> Any:
    if ("IfcAxis2Placement2D", "middle") not in book.kept:
        book.once("IfcAxis2Placement2D", "middle", Location=book.point(0, 0))
    return book.once("IfcAxis2Placement2D", "middle")


def _point(where: np.ndarray[Any, np.dtype[np.float64]]) -> Point3:
    x, y, z = (float(value) for value in where)
    return x, y, z
