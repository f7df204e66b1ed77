"""A few drawings look as they did when someone last looked at them.

Where a change is meant: `python -m tests.images.renew`, look at what it names, keep it.
"""

import numpy as np
import pytest
from numpy.typing import NDArray
from PIL import Image

from tests.images.pictures import FOLDER, KEPT, drawn, kept, same

LARGEST = 60_000


@pytest.mark.slow
@pytest.mark.parametrize("name", KEPT)
def test_a_drawing_looks_as_it_did(name: str) -> None:
    assert same(kept(name), drawn(name)), "meant? python -m tests.images.renew, and look"


def test_pictures_are_small_and_all_are_drawn() -> None:
    files = {file.stem: file.stat().st_size for file in FOLDER.glob("*.png")}
    assert set(files) == set(KEPT)
    assert max(files.values()) < LARGEST


@pytest.mark.parametrize("name", KEPT)
def test_the_comparison_sees_strokes_elsewhere_and_things_missing(name: str) -> None:
    """It bears another smoothing of the same strokes alone."""
    picture = np.asarray(kept(name))
    moved = np.roll(picture, 2, axis=1)
    smoothed = (0.97 * picture.astype(float) + 0.03 * 255).astype(np.uint8)
    assert not same(kept(name), Image.fromarray(moved))
    assert not same(kept(name), Image.fromarray(without_a_block(picture)))
    assert same(kept(name), Image.fromarray(smoothed))


def without_a_block(picture: NDArray[np.uint8]) -> NDArray[np.uint8]:
    """The picture with the block of 64 by 64 dots that has most ink left white."""
    high, wide = (side // 64 for side in picture.shape)
    blocks = picture[: 64 * high, : 64 * wide].reshape(high, 64, wide, 64).mean(axis=(1, 3))
    row, column = (64 * at for at in np.unravel_index(blocks.argmin(), blocks.shape))
    left = picture.copy()
    left[row : row + 64, column : column + 64] = 255
    return left
