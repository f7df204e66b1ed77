import io

import numpy as np
import pytest
from basement_of_boxes import ACROSS, LABELS, basement
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from viz.scene.camera import Margins
from viz.scene.free import CLEAR, LEAST, Free
from viz.scene.palette import colour
from viz.scene.view import View
from viz.scene.worker import Studio

FREE = Free((600, 400), Margins(90, 80, 20, 25))


@given(st.integers(90, 400), st.integers(20, 300), st.integers(5, 300), st.integers(5, 200))
def test_a_lens_lies_in_the_free_part_and_clear_of_the_picture(x, y, wide, high):
    taken = np.zeros((400, 600), dtype=bool)
    taken[y : y + high, x : x + wide] = True
    found = FREE.largest(taken)
    if found is None:  # then a lens of the least size covers something in every corner
        least = round(LEAST * (600 - 170))
        for left, top, right, bottom in FREE.corners(least):
            around = taken[
                max(top - CLEAR, 0) : bottom + CLEAR, max(left - CLEAR, 0) : right + CLEAR
            ]
            assert around.any()
        return
    left, top, right, bottom = found
    assert 90 <= left < right <= 520
    assert 20 <= top < bottom <= 375
    assert not taken[top - CLEAR : bottom + CLEAR, left - CLEAR : right + CLEAR].any()


def test_there_is_no_lens_where_the_picture_is_full():
    assert FREE.largest(np.ones((400, 600), dtype=bool)) is None


@pytest.mark.slow
@pytest.mark.pictures
def test_thin_layers_are_shown_large_in_a_labelled_cutaway():
    solids = basement()
    sand = np.array(next(colour(s.label) for s in solids if s.label.part == "sand"))
    studio = Studio()
    try:
        counts = []
        for labels in ({}, LABELS):
            still = studio.still(solids, View("cutaway", cut=ACROSS, labels=labels), (900, 700))
            pixels = np.asarray(Image.open(io.BytesIO(still)), dtype=int)
            counts.append(int((np.abs(pixels - sand).max(axis=2) < 6).sum()))
    finally:
        studio.close()
    assert counts[1] > 3 * max(counts[0], 50)
