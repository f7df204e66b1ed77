"""Cutting lines and details on the plan: which way one looks, where bubbles stand."""

from math import hypot

import numpy as np
import pytest
import shapely

from geometry.label import Label
from geometry.sections.cut import cut
from geometry.sections.face import CutLine
from geometry.solids.solid import Solid
from tests.viz.figures.plan.reading import FOOT, clashes, drawn, example, of_layer, plain, texts
from viz.drawing.figure import Figure
from viz.drawing.marks import Circle, Fill, Line
from viz.figures.plan.refs import DetailRef, SectionRef

PER = 1000 / 48
HOUSE = ((0, 0), (30, 0), (30, 20), (0, 20))
LONG = ((-9.0, 2.0), (15.0, 2.0))


def bubbles(figure: Figure) -> list[Circle]:
    return [m for m in of_layer(figure, "marks") if isinstance(m, Circle)]


def arrows(figure: Figure) -> list[shapely.Geometry]:
    return [m.shape for m in of_layer(figure, "marks") if isinstance(m, Fill)]


def looked(figure: Figure) -> list[np.ndarray]:
    """The way each bubble's arrow looks: from the bubble's middle to the arrow's."""
    found = []
    for circle in bubbles(figure):
        near = min(arrows(figure), key=lambda a, c=circle: a.distance(shapely.Point(c.centre)))
        middle = near.convex_hull.centroid
        way = np.array((middle.x - circle.centre[0], middle.y - circle.centre[1]))
        found.append(way / np.hypot(*way))
    return found


def seen_from(line: CutLine) -> np.ndarray:
    """The way a viewer looks for whom the section's distance runs to the right, its levels up."""
    # A tetrahedron's cut tells which way distance runs.
    start, end = np.asarray(line.start), np.asarray(line.end)
    along = (end - start) / np.hypot(*(end - start))
    aside = np.array((-along[1], along[0]))
    middle = (start + end) / 2
    base = [middle - aside, middle + 2 * along - aside, middle + along + 2 * aside]
    corners = np.array([[*p, 0.0] for p in base] + [[*(middle + along), 2.0]])
    faces = np.array([[0, 2, 1], [0, 1, 3], [1, 2, 3], [2, 0, 3]])
    spike = Solid(Label("spike", "Spike", "wall", "concrete", "", 0), corners, faces)
    (face,) = cut([spike], line)
    half = np.hypot(*(end - start)) / 2
    right = along if face.shape.centroid.x > half else -along
    return np.cross((0.0, 0.0, 1.0), (*right, 0.0))[:2]


@pytest.mark.parametrize("points", [
    LONG, (LONG[1], LONG[0]), ((4.0, -9.0), (4.0, 15.0)), ((4.0, 15.0), (4.0, -9.0)),
    ((-5.0, -4.0), (14.0, 9.0)), ((14.0, 9.0), (-5.0, -4.0)),
])  # fmt: skip
def test_arrows_look_as_the_section_is_seen(
    points: tuple[tuple[float, float], tuple[float, float]],
) -> None:
    figure = drawn(plain(*HOUSE), refs=(SectionRef(points, "1", "S-3"),))
    ways = looked(figure)
    assert len(ways) == 2
    for way in ways:
        assert way == pytest.approx(seen_from(CutLine(*points)), abs=1e-6)


def test_bubbles_stand_on_the_cutting_line_outside_the_dimensions() -> None:
    figure = drawn(plain(*HOUSE), refs=(SectionRef(LONG, "1", "S-3"),))
    circles = bubbles(figure)
    inner = [t for t in texts(figure) if t.layer in ("dimensions", "labels")]
    for circle in circles:
        assert circle.centre[1] == pytest.approx(2.0 * PER)
    left, right = sorted(c.centre[0] for c in circles)
    assert left + circles[0].radius < min(t.at[0] for t in inner)
    assert right - circles[0].radius > max(t.at[0] for t in inner)
    said = [(t.words, t.at[1] > 2.0 * PER) for t in texts(figure) if t.layer == "marks"]
    assert said.count(("1", True)) == 2
    assert said.count(("S-3", False)) == 2


def test_jogs_are_kept_and_drawn_heavy() -> None:
    points = ((-9.0, 1.5), (3.0, 1.5), (3.0, 4.0), (15.0, 4.0))
    figure = drawn(plain(*HOUSE), refs=(SectionRef(points, "1", "S-3"),))
    heavy = [m for m in of_layer(figure, "marks") if isinstance(m, Line) and len(m.points) == 3]
    corners = [m.points[1] for m in heavy]
    assert corners == [pytest.approx((3.0 * PER, y * PER)) for y in (1.5, 4.0)]
    levels = sorted(c.centre[1] for c in bubbles(figure))
    assert levels == pytest.approx([1.5 * PER, 4.0 * PER])
    assert all(way == pytest.approx((0.0, 1.0), abs=1e-6) for way in looked(figure))


def test_the_end_of_a_step_looks_as_the_cut_does() -> None:
    points = ((-9.0, 1.5), (3.0, 1.5), (3.0, 15.0))
    figure = drawn(plain(*HOUSE), refs=(SectionRef(points, "1", "S-3"),))
    assert len(looked(figure)) == 2
    assert all(way == pytest.approx((0.0, 1.0), abs=1e-6) for way in looked(figure))


def test_a_cut_that_starts_in_the_house_ends_there_without_a_bubble() -> None:
    refs = (SectionRef(((2.0, 3.0), (-4.0, 3.0)), "1", "S-3"),)
    figure = drawn(plain(*HOUSE), refs=refs)
    (circle,) = bubbles(figure)
    assert circle.centre[0] < 0
    line = shapely.union_all(
        [shapely.LineString(m.points) for m in of_layer(figure, "section line")
         if isinstance(m, Line)]
    )  # fmt: skip
    assert line.bounds[2] == pytest.approx(2.0 * PER)
    assert len(arrows(figure)) == 2


def test_bubbles_of_cuts_that_meet_keep_apart() -> None:
    refs = tuple(SectionRef(((-9.0, y), (15.0, y)), str(y), "S-3") for y in (2.0, 2.1, 2.2))
    figure = drawn(plain(*HOUSE), refs=refs)
    circles = bubbles(figure)
    assert len(circles) == 6
    for number, one in enumerate(circles):
        for two in circles[:number]:
            apart = hypot(one.centre[0] - two.centre[0], one.centre[1] - two.centre[1])
            assert apart > one.radius + two.radius
    assert clashes(figure) == []


def test_a_detail_is_a_circle_of_its_size_with_a_bubble() -> None:
    figure = drawn(plain(*HOUSE), details=(DetailRef((0.0, 0.0), 0.8, "7", "S-401"),))
    parts = [m for m in of_layer(figure, "section line") if isinstance(m, Line) and m.dash]
    ring = [hypot(*p) for m in parts for p in m.points]
    assert ring
    assert min(ring) > 0.8 * PER * 0.99
    assert max(ring) == pytest.approx(0.8 * PER)
    (circle,) = bubbles(figure)
    assert hypot(*circle.centre) > 0.8 * PER + circle.radius
    assert {"7", "S-401"} <= {t.words for t in texts(figure)}


def test_without_references_there_are_no_marks() -> None:
    assert not of_layer(drawn(example("l-basement")), "marks")
    assert FOOT * PER > 0
