"""Cuts through whole designs: areas add up to volumes, faces keep apart, manifold3d agrees."""

from itertools import combinations, pairwise
from math import cos, radians, sin
from pathlib import Path

import numpy as np
import pytest
import shapely

from geometry.designfile import read_design
from geometry.sections.cut import cut
from geometry.sections.face import CutLine
from geometry.sections.loops import areas_of
from geometry.solids.solid import Solid
from tests.designs import design_of, seeded_raw
from tests.whole.witness import Whole, body, volume

EXAMPLE = Path(__file__).parents[2] / "assets" / "examples" / "l-basement.toml"
FAR = 150.0


@pytest.fixture(
    scope="module",
    params=["example", 9, *(pytest.param(n, marks=pytest.mark.slow) for n in (12, 22))],
)
def whole(request: pytest.FixtureRequest) -> Whole:
    if request.param == "example":
        return Whole(read_design(EXAMPLE.read_text(encoding="utf-8")))
    raw = seeded_raw(request.param)
    assert raw is not None
    return Whole(design_of(raw))


def line_at(angle: float, aside: float) -> CutLine:
    """A long cut in a direction (degrees), so far to its left from the origin."""
    along = np.array((cos(radians(angle)), sin(radians(angle))))
    left = np.array((-along[1], along[0]))
    start, end = left * aside - along * FAR, left * aside + along * FAR
    return CutLine((float(start[0]), float(start[1])), (float(end[0]), float(end[1])))


def section(solid: Solid, line: CutLine) -> shapely.MultiPolygon:
    """The cut of one solid."""
    return next((f.shape for f in cut((solid,), line)), shapely.MultiPolygon())


def asides(solid: Solid, angle: float) -> np.ndarray:
    """Distances to the left of the origin at which the solid's corners lie."""
    left = np.array((-sin(radians(angle)), cos(radians(angle))))
    return np.unique(np.round(solid.vertices[:, :2] @ left, 9))


@pytest.mark.parametrize("angle", [0, 90, 33])
def test_areas_of_cuts_add_up_to_the_volume(whole: Whole, angle: float) -> None:
    # Between corners the area of a cut through flat faces is at most a parabola of the place:
    # two Gauss points a gap are exact.
    seen = 0
    for solid in whole.solids:
        stops = asides(solid, angle)
        if len(solid.vertices) > 120 or len(stops) > 60:
            continue
        total = 0.0
        for a, b in pairwise(stops):
            for node in (-(3**-0.5), 3**-0.5):
                place = (a + b) / 2 + node * (b - a) / 2
                face = section(solid, line_at(angle, place))
                total += face.area * (b - a) / 2
        assert total == pytest.approx(volume(solid), rel=1e-6), solid.label.part
        seen += 1
    assert seen >= 5


@pytest.mark.parametrize(("angle", "share"), [(0, 0.31), (90, 0.52), (27, 0.45), (141, 0.6)])
def test_faces_keep_apart_and_manifold_agrees(whole: Whole, angle: float, share: float) -> None:
    walls = [s for s in whole.solids if s.label.role == "wall"]
    places = asides(walls[0], angle)
    aside = float(places[0] + share * (places[-1] - places[0]))
    faces = cut(whole.solids, line_at(angle, aside))
    assert len(faces) > 5
    for one, two in combinations(faces, 2):
        shared = one.shape.intersection(two.shape).area
        assert shared < 1e-8, (one.label.part, two.label.part)
    shown = {f.label.part: f.shape for f in faces}
    for solid in whole.solids:
        mine = shown.get(solid.label.part, shapely.MultiPolygon())
        theirs = sliced(solid, angle, aside)
        spare = 1e-6 + 1e-6 * theirs.length
        assert mine.symmetric_difference(theirs).area < spare, solid.label.part


def sliced(solid: Solid, angle: float, aside: float) -> shapely.Geometry:
    """The same cut by manifold3d: the body turned until the plane lies level, then sliced."""
    c, s = cos(radians(angle)), sin(radians(angle))
    # Rows: along the cut from its start, level, distance behind the plane.
    matrix = np.array([[c, s, 0, FAR], [0, 0, 1, 0], [s, -c, 0, aside]])
    polygons = body(solid).transform(matrix).slice(0.0).to_polygons()
    shape: shapely.Geometry = shapely.MultiPolygon()
    for ring in polygons:
        if len(ring) > 2:
            shape = shape.symmetric_difference(shapely.Polygon(ring).buffer(0))
    return shape


def test_a_plane_in_a_face_shows_what_lies_to_its_right() -> None:
    whole = Whole(read_design(EXAMPLE.read_text(encoding="utf-8")))
    wall = whole.foundation.named("basement/wall")
    inch = 0.0254
    # The inner face of the south wall, 8 in from the outline's side at y = 0.
    lines = [line_at(0, 8 * inch + step) for step in (-1e-5, 0.0, 1e-5)]
    right, on, left = (section(wall, line) for line in lines)
    assert right.area > 5 * left.area
    assert on.symmetric_difference(right).area < 1e-3


def test_a_plane_through_corners_of_the_pipe_and_its_holes_loses_nothing() -> None:
    whole = Whole(read_design(EXAMPLE.read_text(encoding="utf-8")))
    pipe = whole.foundation.named("drain/pipe")
    # y = 0 runs through the middle of a row of holes, where corners of many facets lie in it.
    on, beside = (section(pipe, line_at(0, step)) for step in (0.0, 1e-7))
    assert on.area == pytest.approx(beside.area, rel=1e-4)
    assert len(on.geoms) == len(beside.geoms)


def test_loops_within_loops_and_loops_that_touch() -> None:
    ways = [
        (0, 0, 9, 9, -1),
        (1, 1, 8, 8, 1),
        (2, 2, 7, 7, -1),
        (3, 3, 4, 4, 1),
        (20, 0, 21, 1, -1),
    ]
    # Two more that share a side: as an overlay gives them, without the side.
    ways += [(21, 0, 22, 1, -1)]
    rings = [np.array([(a, b), (c, b), (c, d), (a, d)])[::way] for a, b, c, d, way in ways]
    starts = np.arange(0, 4 * len(rings), 4)
    corners = np.concatenate(rings).astype(float)
    nested = areas_of(corners[:20], starts[:5], np.array([2, 2, 2, 2, 5]))
    assert sorted(nested) == [2, 5]
    assert nested[2].area == pytest.approx(81 - 49 + 25 - 1)
    assert [len(p.interiors) for p in nested[2].geoms] == [1, 1]
    touching = areas_of(corners, starts, np.array([2, 2, 2, 2, 5, 5]))
    assert touching[5].is_valid
    assert touching[5].area == pytest.approx(2)
    assert len(touching[5].geoms) == 1
