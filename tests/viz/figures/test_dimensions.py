"""Strings of dimensions: figures in free places, in order, moved as little as can be."""

from itertools import pairwise, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.units import show_length
from tests.rolls import rolls
from viz.drawing.lettering import text_box
from viz.drawing.marks import Line, Text
from viz.figures.dimensions import Chain, across, chain, nearest_free, upright

SIZES = st.lists(st.tuples(st.integers(0, 60), st.integers(1, 12)), min_size=1, max_size=5)
SPANS = st.lists(st.tuples(st.integers(-20, 80), st.integers(1, 15)), max_size=5)


def clear(places: list[tuple[float, float]]) -> bool:
    return all(a + s / 2 <= b - t / 2 + 1e-6 for (a, s), (b, t) in pairwise(sorted(places)))


@given(SIZES, SPANS)
def test_figures_stand_clear_of_each_other_and_of_what_is_blocked(sizes, spans) -> None:
    wanted = sorted((float(m), float(s)) for m, s in sizes)
    blocked = [(float(low), float(low + wide)) for low, wide in spans]
    found = nearest_free(wanted, blocked)
    placed = [(p, s) for p, (_, s) in zip(found, wanted, strict=True)]
    assert None not in found
    assert clear(placed)
    assert list(found) == sorted(found)
    for (place, size), (low, high) in product(placed, blocked):
        assert place + size / 2 <= low + 1e-6 or place - size / 2 >= high - 1e-6


@settings(max_examples=rolls(10))
@given(st.lists(st.integers(0, 14), min_size=1, max_size=3), st.integers(0, 12))
def test_the_sum_of_movements_is_the_least_there_is(middles, low) -> None:
    # Whole numbers throughout, so the best places are whole too and can all be tried.
    wanted = [(float(m), 4.0) for m in sorted(middles)]
    blocked = [(float(low), float(low + 2))]
    found = nearest_free(wanted, blocked)
    tries = [
        places
        for places in product(range(-14, 30), repeat=len(wanted))
        if all(b - a >= 4 for a, b in pairwise(places))
        and all(p + 2 <= low or p - 2 >= low + 2 for p in places)
    ]
    best = min(sum(abs(p - m) for p, (m, _) in zip(t, wanted, strict=True)) for t in tries)
    assert sum(abs(p - m) for p, (m, _) in zip(found, wanted, strict=True)) == pytest.approx(best)


def test_places_nearer_than_a_hair_are_one_stop() -> None:
    made = chain([0.0, 1.0, 1.0004, 3.0], lambda m: 10 * m, lambda m: show_length(m, "metric"))
    assert made == Chain((0.0, 10.0, 30.0), ("1000 mm", "2000 mm"))
    assert chain([1.0, 1.0], float, str) is None


def texts(marks: object) -> list[Text]:
    return [m for m in marks if isinstance(m, Text)]  # type: ignore[attr-defined]


CHAINS = [
    Chain((0.0, 3.0, 5.0, 60.0, 62.0), ('2"', '1 1/2"', "4'-0\"", '1"')),
    Chain((0.0, 62.0), ("5'-2\"",)),
]


@pytest.mark.parametrize("way", [1, -1])
@pytest.mark.parametrize("strings", [across, upright])
def test_no_figure_overlaps_another_or_is_crossed_by_an_outer_string(strings, way) -> None:
    marks = strings(CHAINS, 0.0, way, 2.5)
    boxes = [text_box(t) for t in texts(marks)]
    assert len(boxes) == 5
    assert not any(a.overlaps(b) for n, a in enumerate(boxes) for b in boxes[n + 1 :])
    edges = [m for m in marks if isinstance(m, Line) and len({*m.points}) == 2]
    for line in edges:
        (x0, y0), (x1, y1) = line.points
        if x0 == x1 or y0 == y1:
            for box in boxes:
                over = min(x0, x1) < box.right - 0.1 and max(x0, x1) > box.left + 0.1
                along = min(y0, y1) < box.high - 0.1 and max(y0, y1) > box.low + 0.1
                assert not (over and along), (line.points, box)


def test_stops_lie_where_they_are_measured() -> None:
    made = across(CHAINS[1:], -4.0, -1, 2.5)
    level = [m for m in made if isinstance(m, Line) and m.points[0][0] == m.points[1][0]]
    assert sorted({m.points[0][0] for m in level}) == [0.0, 62.0]
    assert all(p[1] < -4.0 for m in level for p in m.points)
