"""Designs side by side: one scale, one datum, what moves at its true distance, words apart."""

from itertools import combinations

import pytest

from geometry.units import INCH
from viz.carried import demo
from viz.drawing.lettering import text_box
from viz.drawing.marks import Line, Text
from viz.job import job
from viz.style.lines import CHAIN
from viz.variants.variant_pictures import variants_pictures

pytestmark = pytest.mark.slow

FOAM = 'thickness = "2 in", role = "insulation"'
NAMES = ["Two inches", "Three inches"]


@pytest.fixture(scope="module")
def pictures():
    text = demo().read_text(encoding="utf-8")
    works = [job(text), job(text.replace(FOAM, FOAM.replace("2 in", "3 in")))]
    return variants_pictures(works, NAMES)


def dashed(figure):
    lines = [m for m in figure.marks if isinstance(m, Line) and m.layer == "levels" and m.dash]
    return sorted(line.points[0][1] for line in lines)


def test_the_first_designs_levels_are_dashed_at_their_true_distance(pictures):
    """Foam's top at +2 in and the floor at +6 in of the first; the datum's chain line at 0."""
    for figure in pictures:
        foam, floor = dashed(figure)
        assert floor - foam == pytest.approx(4 * INCH * figure.scale.per_metre, abs=0.01)
        chains = {m.points[0][1] for m in figure.marks if isinstance(m, Line) and m.dash == CHAIN}
        sheet_and_foam = (2 * INCH + 10 * INCH / 1000) * figure.scale.per_metre
        assert any(foam - y == pytest.approx(sheet_and_foam, abs=0.01) for y in chains)


def test_side_by_side_on_a_wide_screen_and_under_another_on_a_narrow_one(pictures):
    for figure, beside in zip(pictures, (True, False), strict=True):
        one, two = (next(m for m in figure.marks if _says(m, name)) for name in NAMES)
        assert (one.at[1] == two.at[1]) == beside
        assert (one.at[0] == two.at[0]) != beside


def _says(mark, words):
    return isinstance(mark, Text) and mark.words == words


def test_what_differs_has_numbers_of_its_own_and_no_words_overlap(pictures):
    for figure, most in zip(pictures, (290, 106), strict=True):
        texts = [m for m in figure.marks if isinstance(m, Text)]
        assert not [
            (a.words, b.words)
            for a, b in combinations(texts, 2)
            if text_box(a).overlaps(text_box(b))
        ]
        numbers = [m.words for m in texts if m.words.isdecimal()]
        alone = [n for n in set(numbers) if numbers.count(n) == 2]
        assert len(alone) == 2, "each foam once in a picture and once in the key"
        assert figure.box.width <= most
