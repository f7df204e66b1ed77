from dataclasses import replace
from itertools import combinations

import numpy as np
import pytest
from basement_of_boxes import basement

from viz.scene.anchors import APART, called_out
from viz.scene.camera import Margins, aimed, framed
from viz.scene.composition import composed
from viz.scene.legend import seen_masks
from viz.scene.painting import Painting
from viz.scene.view import View


def masks_of_layers():
    masks = {}
    for number, name in enumerate(("slab", "foam", "sand")):
        mask = np.zeros((200, 400), dtype=bool)
        mask[100 + 5 * number : 105 + 5 * number, 100:300] = True
        masks[name] = mask
    return masks


def test_spots_lie_on_their_part_and_clear_of_each_other():
    masks = masks_of_layers()
    found = called_out(masks, list(masks), True, "right")
    assert [part for part, _, _ in found] == ["slab", "foam", "sand"]
    for text, side, (x, y) in found:
        assert side == "right"
        assert masks[text][round(y), round(x)]
    gaps = [np.hypot(a[0] - b[0], a[1] - b[1]) for (*_, a), (*_, b) in combinations(found, 2)]
    assert min(gaps) >= APART


def test_parts_that_are_hidden_or_only_a_few_pixels_get_no_label():
    masks = masks_of_layers()
    masks["pipe"] = np.zeros((200, 400), dtype=bool)
    masks["pipe"][0, :5] = True
    found = called_out(masks, ["pipe", "gone", "foam"], False, "right")
    assert [part for part, *_ in found] == ["foam"]


def patches(**columns):
    masks = {}
    for name, (start, end) in columns.items():
        masks[name] = np.zeros((100, 400), dtype=bool)
        masks[name][20:60, start:end] = True
    return masks


@pytest.mark.parametrize(
    ("together", "left"),
    [(set(), ["near", "long"]), ({"long"}, ["near"]), ({"near"}, ["near", "long"])],
)
def test_sides_follow_the_picture_unless_parts_kept_together_reach_the_right(together, left):
    masks = patches(near=(10, 50), long=(20, 300), far=(300, 340), end=(350, 390))
    found = called_out(masks, list(masks), False, "right", together)
    assert sorted(part for part, side, _ in found if side == "left") == sorted(left)


def test_the_dots_of_the_two_sides_lie_on_two_sides_of_one_line():
    masks = patches(a=(0, 400), b=(150, 260), c=(180, 240), d=(30, 380))
    found = called_out(masks, list(masks), False, "right", {"c"})
    across = {side: [x for _, s, (x, _) in found if s == side] for side in ("left", "right")}
    assert max(across["left"]) < min(across["right"])


def painting_of(wide):
    """A picture of a footing and a wall, with the wall seen in so many columns of pixels."""
    solids = [s for s in basement() if s.label.part in ("footing", "wall")]
    scene = composed(solids, View("whole"))
    size = (1000, 700)
    camera = framed(aimed((0.0, 1.0), 0.0, 30.0), scene.frame, size, Margins(9, 9, 9, 9))
    parts = np.full((700, 1000), -1)
    parts[300:400, 100 : 100 + wide] = 1
    seen = np.zeros((700, 1000), dtype=bool)
    pixels = np.zeros((700, 1000, 3), dtype=np.uint8)
    return Painting(pixels, parts, seen, ("footing", "wall")), scene, camera


@pytest.mark.parametrize(("wide", "named"), [(5, False), (60, True)])
def test_a_mere_glimpse_of_a_part_gets_no_label_unless_it_is_cut(wide, named):
    painting, scene, camera = painting_of(wide)
    assert ("wall" in seen_masks(painting, scene, camera)) == named
    cut = replace(painting, cut=painting.parts == 1)
    assert "wall" in seen_masks(cut, scene, camera)
