import numpy as np
import pytest
from basement_of_boxes import box, rim, tube

from viz.scene.mesh import Plane, clipped, clipped_lines, inked_edges


def area(vertices, faces):
    a, b, c = (vertices[faces[:, k]] for k in range(3))
    return float(np.linalg.norm(np.cross(b - a, c - a), axis=1).sum() / 2)


def test_clipped_box_keeps_the_closed_form_area():
    vertices, faces = box(0, 0, 3, 2, 0, 1)
    plane = Plane(np.array([0.0, 0.5, 0.0]), np.array([0.0, 1.0, 0.0]))
    kept, triangles = clipped(vertices, faces, plane)
    used = kept[np.unique(triangles)]
    assert used[:, 1].min() == pytest.approx(0.5)
    assert used[:, 1].max() == pytest.approx(2.0)
    # top and bottom 3 x 1.5, two ends 1.5 x 1, the back 3 x 1; the cut itself stays open
    assert area(kept, triangles) == pytest.approx(2 * 4.5 + 2 * 1.5 + 3.0)


@pytest.mark.parametrize("offset", [0.0, 2.0, -5.0, 9.0])
def test_plane_in_a_face_or_beside_the_box_adds_nothing(offset):
    vertices, faces = box(0, 0, 3, 2, 0, 1)
    plane = Plane(np.array([0.0, offset, 0.0]), np.array([0.0, 1.0, 0.0]))
    kept, triangles = clipped(vertices, faces, plane)
    whole = 2 * (6 + 3 + 2)
    expected = {0.0: whole, 2.0: 3.0, -5.0: whole, 9.0: 0.0}[offset]
    assert area(kept, triangles) == pytest.approx(expected)


def test_two_halves_make_the_whole():
    vertices, faces = rim(0.154, -0.354, -0.254, 0.0)
    slanted = np.array([np.cos(0.7), np.sin(0.7), 0.0])
    origin = np.array([5.0, 3.0, 0.0])
    halves = [clipped(vertices, faces, Plane(origin, side * slanted)) for side in (1, -1)]
    assert sum(area(*half) for half in halves) == pytest.approx(area(vertices, faces))


def test_lines_end_at_the_plane():
    plane = Plane(np.zeros(3), np.array([1.0, 0.0, 0.0]))
    starts = np.array([[-1.0, 0, 0], [1.0, 0, 0], [-2.0, 0, 0]])
    ends = np.array([[3.0, 4.0, 0], [2.0, 0, 0], [-1.0, 0, 0]])
    first, last = clipped_lines(starts, ends, plane)
    assert np.allclose(first, [[0, 1, 0], [1, 0, 0]])
    assert np.allclose(last, [[3, 4, 0], [2, 0, 0]])


def test_a_box_has_twelve_inked_edges_and_no_diagonals():
    vertices, faces = box(0, 0, 3, 2, 0, 1)
    starts, ends = inked_edges(vertices, faces, np.array([0.3, 0.8, -0.5]))
    assert len(starts) == 12
    assert ((starts != ends).sum(axis=1) == 1).all()


def test_a_round_pipe_shows_its_outline_but_not_its_facets():
    vertices, faces = tube(0.05, 0.45, 0.0, sides=24)
    forward = np.array([0.0, np.cos(0.5), -np.sin(0.5)])
    starts, ends = inked_edges(vertices, faces, forward)
    along = np.isclose(np.abs(ends - starts)[:, 1:], 0).all(axis=1)
    front = along & (starts[:, 1] < 0)
    # two outlines of the outer face and two of the inner one on the front run, not 24 facets
    assert front.sum() == 4
