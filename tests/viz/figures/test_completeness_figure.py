"""The list as a figure: the boxes say what the words say."""

from geometry.checks.completeness import completeness
from tests.houses import house
from viz.drawing.marks import Line, Text
from viz.figures.tables.completeness import completeness_figures
from viz.figures.tables.index import index_figures
from viz.style.lines import CUT

CHANGE = ("count = 2", "count = 0")


def test_each_state_has_its_sign_and_its_word() -> None:
    items = completeness(house(CHANGE))
    (made,) = completeness_figures(items, 2.5, 220.0)
    signs = [m for m in made.marks if isinstance(m, Line) and max(x for x, _ in m.points) < 8.0]
    boxes = [m for m in signs if len(m.points) == 5]
    ticks = [m for m in signs if len(m.points) == 3 and m.weight == CUT]
    dashes = [m for m in signs if len(m.points) == 2 and m.weight == CUT]
    states = [item.state for item in items]
    assert {"shown", "stated", "not stated", "not covered"} == set(states)
    assert len(dashes) == states.count("not covered")
    assert len(ticks) == states.count("shown") + states.count("stated")
    assert len(boxes) == len(items) - len(dashes)
    words = [m.words for m in made.marks if isinstance(m, Text)]
    for state in set(states):
        assert words.count(state) == states.count(state)


def test_a_sign_stands_on_the_first_line_of_its_row() -> None:
    items = completeness(house(CHANGE))
    (made,) = completeness_figures(items, 2.5, 160.0)
    firsts = {m.words: m.at[1] for m in made.marks if isinstance(m, Text)}
    boxes = [m for m in made.marks if isinstance(m, Line) and len(m.points) == 5]
    lows = [min(y for _, y in m.points) for m in boxes]
    assert any(low < firsts["code edition"] < low + 3 for low in lows)


def test_pieces_of_the_list_keep_their_height_and_their_caution() -> None:
    pieces = completeness_figures(completeness(house()), 2.5, 200.0, 120.0)
    assert len(pieces) > 1
    assert all(p.box.height <= 120.0 and p.box.width <= 200.0 for p in pieces)
    assert all("own list governs" in p.remark for p in pieces)


def test_the_index_names_every_sheet() -> None:
    rows = [("1", "Notes", "Index, notes"), ("2", "Plan", "Foundation plan, pier schedule")]
    (made,) = index_figures(rows, 2.5, 110.0)
    words = {m.words for m in made.marks if isinstance(m, Text)}
    assert {cell for row in rows for cell in row} <= words
    assert made.box.width <= 110.0
