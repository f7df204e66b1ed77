from itertools import combinations, pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString

from viz.scene.callouts import APART, Callout, called_out, stacked

SIZE = (1200, 900)
spots = st.lists(
    st.tuples(st.integers(300, 900), st.integers(0, 900)), min_size=1, max_size=11, unique=True
)


@given(spots, st.sampled_from(["left", "right"]))
def test_no_label_overlaps_or_leaves_the_picture_and_no_leaders_cross(points, side):
    height = 80.0
    placed = stacked([Callout((("x", True),), side, p, p[1]) for p in points], height, SIZE)
    assert sorted(item.spot for item in placed) == sorted(points)
    middles = sorted(item.middle for item in placed)
    assert all(b - a >= height - 1e-6 for a, b in pairwise(middles))
    assert middles[0] >= height / 2
    assert middles[-1] <= SIZE[1] - height / 2
    rim = 0.0 if side == "left" else SIZE[0]
    leaders = [LineString([(rim, item.middle), item.spot]) for item in placed]
    assert not any(a.crosses(b) for a, b in combinations(leaders, 2))


def test_a_label_stands_level_with_its_spot_where_there_is_room():
    (placed,) = stacked([Callout((("x", True),), "left", (400.0, 300.0), 0.0)], 60.0, SIZE)
    assert placed.middle == 300.0


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


@pytest.mark.parametrize("together", [set(), {"left layer"}])
def test_sides_follow_the_picture_unless_parts_are_kept_together(together):
    masks = {}
    for name, start in (("left layer", 10), ("middle", 100), ("right", 300)):
        masks[name] = np.zeros((100, 400), dtype=bool)
        masks[name][20:60, start : start + 40] = True
    found = called_out(masks, list(masks), False, "right", together)
    on_left = [part for part, side, _ in found if side == "left"]
    assert on_left == (["middle"] if together else ["left layer"])
