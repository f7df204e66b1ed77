import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from viz.scene.camera import Margins, aimed, framed, grown

CORNERS = np.array([[x, y, z] for x in (0, 12) for y in (0, 8) for z in (-0.3, 2.4)])


@given(
    st.floats(-180, 180),
    st.floats(0, 89),
    st.tuples(st.integers(300, 1600), st.integers(300, 1600)),
    st.floats(0, 100),
)
def test_everything_is_in_the_free_part_and_fills_it(turn, tilt, size, left):
    margins = Margins(left, 20, 30, 40)
    camera = framed(aimed((0.0, 1.0), turn, tilt), CORNERS, size, margins)
    x, y = camera.pixels(CORNERS).T
    low_x, high_x, low_y, high_y = left, size[0] - 20, 30, size[1] - 40
    assert x.min() >= low_x - 1e-6
    assert x.max() <= high_x + 1e-6
    assert y.min() >= low_y - 1e-6
    assert y.max() <= high_y + 1e-6
    touches_sides = abs(np.ptp(x) - (high_x - low_x)) < 1e-6
    touches_ends = abs(np.ptp(y) - (high_y - low_y)) < 1e-6
    assert touches_sides or touches_ends


@pytest.mark.parametrize(("above", "top", "bottom"), [(0.0, 20, 480), (1.0, 320, 780)])
def test_what_height_is_left_over_can_lie_above_or_below(above, top, bottom):
    flat = np.array([[0.0, 0.0, 0.0], [10.0, 0.0, 4.6]])
    axes, margins = aimed((0.0, 1.0), 0.0, 0.0), Margins(0, 0, 20, 20)
    _, y = framed(axes, flat, (1000, 800), margins, above).pixels(flat).T
    assert y == pytest.approx([bottom, top])


@pytest.mark.parametrize("ahead", [(0.0, 1.0), (1.0, 0.0), (-0.6, 0.8)])
def test_z_is_up_and_the_axes_are_square(ahead):
    right, up, forward = aimed(ahead, 25.0, 30.0)
    assert np.allclose(np.array([right, up, forward]) @ np.array([right, up, forward]).T, np.eye(3))
    assert up[2] > 0
    assert right[2] == 0
    assert np.allclose(np.cross(right, up), -forward)


def test_walking_to_the_right_looks_back_to_the_left():
    _, _, forward = aimed((0.0, 1.0), 30.0, 0.0)
    assert np.allclose(forward, [-0.5, np.sqrt(3) / 2, 0.0])


def test_a_window_grows_to_the_picture_but_not_past_the_content():
    box = np.array([[0.0, 0.0], [2.0, 1.0]])
    wide = np.array([[-9.0, -9.0], [9.0, 9.0]])
    assert np.allclose(grown(box, wide, 1.0), [[0, -0.5], [2, 1.5]])
    assert np.allclose(grown(box, wide, 4.0), [[-1, 0], [3, 1]])
    only_up = np.array([[-9.0, 0.0], [9.0, 9.0]])
    assert np.allclose(grown(box, only_up, 1.0), [[0, 0], [2, 2]])
    assert np.allclose(grown(box, box, 1.0), box)
