"""Corners and shadows from depths made by hand."""

import numpy as np
import pytest

from viz.scene.camera import Margins, aimed, framed
from viz.scene.shade import corners, darkened, light_of, shadows

SIZE = (160, 120)
M = 0.05  # metres a pixel


def test_a_slanted_plane_has_no_corners():
    rows, columns = np.mgrid[:120, :160].astype(np.float32)
    plane = 50 + M * (0.9 * rows - 0.4 * columns)
    assert corners(plane, M)[30:-30, 30:-30].max() < 1e-3


def test_the_foot_of_a_wall_is_darker_than_its_floor_and_an_outer_edge_is_not():
    rows = np.mgrid[:120, :160][0].astype(np.float32)
    valley = 50 - M * np.abs(rows - 60)
    found = corners(valley, M)
    assert found[60, 80] > 5 * found[90, 80] + 0.05
    ridge = corners(50 + M * np.abs(rows - 60), M)
    assert ridge[40:80, 80].max() == pytest.approx(0.0, abs=1e-6)


def test_what_stands_in_the_light_casts_a_shadow_on_what_lies_behind_it():
    # A floor 8 m square looked at from straight above; a board 2 m wide hangs 1 m over its left.
    square = np.array([[0, 0, 0], [8, 0, 0], [8, 8, 0], [0, 8, 0], [3, 3, 1.0], [5, 5, 1.0]])
    camera = framed(aimed((0.0, 1.0), 0.0, 89.999), square, SIZE, Margins(4, 4, 4, 4))
    light = framed(light_of(camera, np.array([-1.0, 0.0, 1.0])), square, SIZE, Margins(4, 4, 4, 4))

    def seen(eye):
        """Depths of floor and board, ray by ray."""
        flat = eye.places(np.zeros((120, 160), np.float32)).astype(float)
        best = np.full((120, 160), np.nan, np.float32)
        for level, low, high in ((0.0, 0.0, 8.0), (1.0, 3.0, 5.0)):
            away = (level - flat[..., 2]) / eye.forward[2]
            spot = flat + away[..., None] * eye.forward
            inside = ((spot[..., :2] > low) & (spot[..., :2] < high)).all(axis=2)
            best = np.where(inside, np.fmin(away, best), best)
        return best.astype(np.float32)

    dark = shadows(seen(camera), camera, seen(light), light)

    def at(x, y):
        column, row = camera.pixels(np.array([[x, y, 0.0]]))[0]
        return dark[int(row), int(column)]

    assert at(5.5, 4.0) > 0.9  # the light comes from the left at 45 degrees: 1 m to the right
    assert at(2.4, 4.0) < 0.1
    assert at(7.0, 7.0) < 0.1
    assert at(3.5, 4.0) < 0.1  # the board itself


def test_cut_faces_keep_their_colour():
    white = np.full((240, 320, 3), 255, np.uint8)
    full = np.ones((120, 160), np.float32)
    kept = np.zeros((120, 160), bool)
    kept[:, :60] = True
    found = darkened(white, full, full, kept)
    assert found[100, 40].tolist() == [255, 255, 255]
    assert found[100, 250].max() < 150
