from itertools import combinations, pairwise

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, box

from tests.rolls import rolls
from viz.scene import lettering
from viz.scene.anchors import called_out
from viz.scene.callouts import Callout, stacked
from viz.scene.legend import Legend, arranged

SIZE = (1500, 950)
HEIGHT = lettering.letter_height(SIZE)
WORDS = st.lists(
    st.sampled_from(["Wall", "footing", "polyethylene", "10 mil,", "(XPS)", "of"]), max_size=7
)
TEXTS = st.builds(lambda name, sizes: f"Part {' '.join(name)}\n{' '.join(sizes)}", WORDS, WORDS)
ACROSS, DOWN = st.integers(0, 1000), st.integers(0, SIZE[1])


def drawn(legend, found):
    height, callouts = arranged(legend, found)
    leaders = [LineString(lettering.leader(c, SIZE, height)) for c in callouts]
    labels = [[box(*line) for line in lettering.boxes(c, SIZE, height)] for c in callouts]
    return callouts, leaders, labels


def assert_nothing_crosses(leaders, labels):
    assert not any(one.intersects(two) for one, two in combinations(leaders, 2))
    for one, two in combinations(labels, 2):
        assert not any(a.intersection(b).area > 1e-6 for a in one for b in two)
    for label in labels:
        for line in label:
            left, top, right, bottom = line.bounds
            assert left > 0
            assert top > 0
            assert right < SIZE[0]
            assert bottom < SIZE[1]
            assert not any(leader.intersects(line) for leader in leaders)


@settings(max_examples=rolls(40))
@given(
    st.lists(st.tuples(TEXTS, ACROSS, DOWN), min_size=1, max_size=22, unique_by=lambda t: t[1:]),
    st.integers(1, 999),
)
def test_no_label_overlaps_and_no_leader_crosses_a_label_or_another(parts, divide):
    texts = {str(n): text for n, (text, _, _) in enumerate(parts)}
    legend = Legend(texts, SIZE, HEIGHT)
    # spots fall where the picture may: between the columns
    start = legend.margins.left
    share = (SIZE[0] - legend.margins.left - legend.margins.right) / 1000
    found = [
        (str(n), "left" if x < divide else "right", (start + x * share, float(y)))
        for n, (_, x, y) in enumerate(parts)
    ]
    _, leaders, labels = drawn(legend, found)
    assert leaders
    assert_nothing_crosses(leaders, labels)


PATCH = st.tuples(
    st.integers(350, 1100), st.integers(30, 850), st.integers(6, 300), st.integers(6, 80)
)


@settings(max_examples=rolls(20), deadline=None)
@given(
    st.lists(st.tuples(TEXTS, PATCH, st.booleans()), min_size=1, max_size=12),
    st.sampled_from(["left", "right"]),
)
def test_parts_of_any_shape_get_dots_on_them_and_leaders_that_cross_nothing(parts, rising):
    shown = np.full((SIZE[1], SIZE[0]), -1)
    for number, (_, (x, y, wide, high), _) in enumerate(parts):
        shown[y : y + high, x : min(x + wide, 1150)] = number
    masks = {str(n): shown == n for n in range(len(parts))}
    floor = {str(n) for n, (*_, kept) in enumerate(parts) if kept}
    found = called_out(masks, list(masks), False, rising, floor)
    for part, _, (x, y) in found:
        assert masks[part][round(y), round(x)]
    if len({spot for *_, spot in found}) == len(found):
        legend = Legend({str(n): text for n, (text, *_) in enumerate(parts)}, SIZE, HEIGHT)
        _, leaders, labels = drawn(legend, found)
        assert_nothing_crosses(leaders, labels)


def column(*spots):
    return [Callout((("x", True),), "left", spot, 200.0, 60.0, 20.0) for spot in spots]


def test_a_label_stands_level_with_its_spot_where_there_is_room():
    (placed,) = stacked(column((400.0, 300.0)), 10.0, 940.0)
    assert placed.port == (200.0, 300.0)


def test_crowded_labels_stand_around_the_mean_of_their_spots():
    placed = stacked(column((400.0, 300.0), (400.0, 310.0), (400.0, 320.0)), 10.0, 940.0)
    assert [item.spot[1] for item in placed] == [300.0, 310.0, 320.0]
    assert [item.port[1] for item in placed] == [250.0, 310.0, 370.0]


def test_labels_stay_between_top_and_bottom():
    low = stacked(column((400.0, 930.0), (500.0, 940.0)), 10.0, 940.0)
    assert [item.top for item in low] == [820.0, 880.0]
    high = stacked(column((400.0, 0.0), (500.0, 5.0)), 10.0, 940.0)
    assert sorted(item.top for item in high) == [10.0, 70.0]


def test_labels_past_all_room_are_left_out_rather_than_laid_over_others():
    texts = {str(n): f"Part {n}\nof no great size" for n in range(120)}
    found = [(name, "left", (700.0, 5.0 * n)) for n, name in enumerate(texts)]
    callouts, leaders, labels = drawn(Legend(texts, SIZE, HEIGHT), found)
    assert 15 < len(callouts) < 120
    assert_nothing_crosses(leaders, labels)


def test_letters_are_legible_and_leave_the_picture_most_of_the_width():
    assert 18 <= lettering.letter_height((1500, 950)) <= 23
    legend = Legend({"foam": "Rigid foam, XPS type IV (25 psi)\n2 in, insulation"}, SIZE, HEIGHT)
    assert legend.margins.left + legend.margins.right < SIZE[0] / 3


def test_tops_follow_each_other_without_overlap():
    placed = stacked(column(*[(300.0 + n, 5.0 * n) for n in range(12)]), 10.0, 940.0)
    tops = [item.top for item in placed]
    assert all(b - a >= 60.0 - 1e-6 for a, b in pairwise(tops))


def test_a_leader_keeps_off_a_dot_it_would_brush_past():
    placed = stacked(column((230.0, 285.0), (700.0, 335.0), (500.0, 480.0)), 10.0, 940.0)
    far = next(item for item in placed if item.spot == (700.0, 335.0))
    (x, y), share = far.port, (230.0 - 200.0) / (700.0 - 200.0)
    assert x == 200.0
    assert abs(y + share * (335.0 - y) - 285.0) >= 20.0 / 3


@settings(max_examples=rolls(10))
@given(st.lists(st.tuples(TEXTS, ACROSS, DOWN), min_size=1, max_size=14))
def test_no_label_stands_in_the_title(parts):
    texts = {str(n): text for n, (text, _, _) in enumerate(parts)}
    legend = Legend(texts, SIZE, HEIGHT, title="Stage 3 of 12: Drain pipe")
    found = [
        (str(n), "left" if x < 500 else "right", (400 + 0.7 * x, float(y)))
        for n, (_, x, y) in enumerate(parts)
    ]
    _, _, labels = drawn(legend, found)
    assert legend.head > HEIGHT
    assert all(line.bounds[1] > legend.head for label in labels for line in label)
