"""Tables as figures: every word is there, nothing overlaps, nothing leaves its room."""

from itertools import combinations, groupby

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.rolls import rolls
from viz.drawing.figure import Figure
from viz.drawing.fonts import text_width, wrap
from viz.drawing.lettering import text_box
from viz.drawing.marks import Circle, Line, Text
from viz.drawing.page import Box
from viz.drawing.place import NoRoomError
from viz.figures.tables.columns import column_widths
from viz.figures.tables.figure import Signs, table_figures
from viz.tables.table import Table

WORDS = st.text("abc WM-,.é½ 12'\"\n", max_size=60)


def texts(figure: Figure) -> list[Text]:
    return [mark for mark in figure.marks if isinstance(mark, Text)]


def bare(words: str) -> str:
    return "".join(words.split())


def columns(figure: Figure) -> list[str]:
    """What is written in each column from the top down, without blanks."""

    def left(text: Text) -> float:
        return round(text.at[0], 6)

    found = sorted(texts(figure), key=lambda t: (left(t), -t.at[1]))
    return ["".join(bare(t.words) for t in run) for _, run in groupby(found, key=left)]


def overlapping(figure: Figure) -> list[tuple[Text, Text]]:
    boxes = [(t, text_box(t)) for t in texts(figure)]
    return [(a, b) for (a, p), (b, q) in combinations(boxes, 2) if p.overlaps(q)]


@st.composite
def tables(draw: st.DrawFn) -> Table:
    wide = draw(st.integers(1, 5))
    row = st.tuples(*[WORDS] * wide)
    return Table(draw(row), tuple(draw(st.lists(row, min_size=1, max_size=6))))


@settings(max_examples=rolls(25), deadline=None)
@given(tables(), st.sampled_from([2.5, 3.0]), st.integers(60, 200))
def test_any_table_is_whole_and_clear_and_keeps_its_width(
    table: Table, text: float, width: int
) -> None:
    (made,) = table_figures("t", "T", table, text, width)
    assert made.box.left >= -1e-6
    assert made.box.right <= width + 1e-6
    assert not overlapping(made)
    assert min((t.height for t in texts(made)), default=text) == text
    cells = [[table.head[n], *(str(r[n]) for r in table.rows)] for n in range(len(table.head))]
    # Every letter stands in its own column; empty columns have no text at all.
    assert [c for c in columns(made) if c] == [w for c in cells if (w := bare("".join(c)))]


@settings(max_examples=rolls(15), deadline=None)
@given(tables(), st.integers(40, 120))
def test_pieces_keep_their_height_and_repeat_the_head(table: Table, height: int) -> None:
    try:
        pieces = table_figures("t", "T", table, 2.5, 120.0, height)
    except NoRoomError:
        (whole,) = table_figures("t", "T", table, 2.5, 120.0)
        assert whole.box.height > height
        return
    assert all(p.box.height <= height + 1e-6 for p in pieces)
    heads = [bare("".join(t.words for t in texts(p) if t.bold)) for p in pieces]
    assert all(sorted(h) == sorted(bare("".join(table.head))) for h in heads)
    body = "".join(bare(t.words) for p in pieces for t in texts(p) if not t.bold)
    assert sorted(body) == sorted(bare("".join(str(c) for r in table.rows for c in r)))
    assert [p.title for p in pieces[1:]] == ["T, continued"] * (len(pieces) - 1)
    assert len({p.name for p in pieces}) == len(pieces)


def test_columns_of_figures_stand_to_the_right() -> None:
    rows = (("stone", '6"', "+0'-6 1/2\"", "98.40 ft"), ("sand", '1/2"', "0'-0\"", "8.40 ft"))
    (made,) = table_figures("t", "T", Table(("Name", "Thick", "Level", "El."), rows), 2.5, 120.0)
    ends = {t.words: t.anchor for t in texts(made)}
    assert ends["stone"] == "start"
    assert {ends[w] for row in rows for w in row[1:]} == {"end"}
    assert ends["El."] == "end"


def test_a_figure_is_never_broken_while_words_can_give_way() -> None:
    rows = (("a long name of many words that can be wrapped", "+0'-11 15/16\"", "412.35 ft"),)
    (made,) = table_figures("t", "T", Table(("Name", "Level", "El."), rows), 2.5, 70.0)
    said = {t.words for t in texts(made)}
    assert {"+0'-11 15/16\"", "412.35 ft"} <= said


def test_widths_are_given_where_they_save_lines() -> None:
    short, long = "two words", " ".join(["word"] * 60)
    room = 100.0
    widths = column_widths(("A", "B", "C"), [(short, long, short)], 2.5, room)
    assert sum(widths) <= room + 1e-6
    even = len(wrap(long, room / 3, 2.5))
    assert len(wrap(long, widths[1], 2.5)) < even / 1.5


def test_the_longer_of_two_long_columns_is_wider() -> None:
    some, many, room = " ".join(["word"] * 20), " ".join(["word"] * 60), 100.0
    widths = column_widths(("A", "B"), [(some, many)], 2.5, room)
    assert sum(widths) <= room + 1e-6
    lines = [len(wrap(w, x, 2.5)) for w, x in zip((some, many), widths, strict=True)]
    assert max(lines) < len(wrap(many, room / 2, 2.5))


def test_words_wider_than_the_table_are_broken_not_lost() -> None:
    word = "W" * 80
    (made,) = table_figures("t", "T", Table(("A", "B"), ((word, word),)), 2.5, 60.0)
    assert text_width(word, 2.5) > 60.0
    assert made.box.right <= 60.0 + 1e-6
    assert columns(made) == ["A" + word, "B" + word]


def test_a_row_has_its_sign() -> None:
    def draw(number: int, box: Box) -> list[Circle]:
        x, y = (box.left + box.right) / 2, (box.low + box.high) / 2
        return [Circle((x, y), 1.0 + number / 10, 0.2)]

    signs = Signs("Sign", 12.0, [10.0, 20.0], draw)
    (made,) = table_figures("t", "T", Table(("A",), (("one",), ("two",))), 2.5, 60.0, signs=signs)
    rings = [m for m in made.marks if isinstance(m, Circle)]
    words = {t.words: t for t in texts(made)}
    assert [round(m.radius, 1) for m in rings] == [1.0, 1.1]
    for ring, name in zip(rings, ("one", "two"), strict=True):
        assert ring.centre[0] + ring.radius < words[name].at[0]
        assert abs(ring.centre[1] - words[name].at[1] - 1.25) < 0.01
    rules = sorted(m.points[0][1] for m in made.marks if isinstance(m, Line))
    assert rules[1] - rules[0] == pytest.approx(20.0)
    assert rules[2] - rules[1] == pytest.approx(10.0)


def test_refusals() -> None:
    table = Table(("A",), (("one",),))
    with pytest.raises(ValueError, match="smaller than"):
        table_figures("t", "T", table, 2.0, 60.0)
    with pytest.raises(NoRoomError, match="larger paper"):
        table_figures("t", "T", table, 2.5, 60.0, 10.0)
    with pytest.raises(NoRoomError, match="larger paper"):
        table_figures("t", "T", Table(("A",) * 9, (("x",) * 9,)), 2.5, 20.0)
