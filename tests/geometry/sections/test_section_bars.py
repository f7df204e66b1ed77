"""Bars in the strip footing where a cut crosses them, re-derived by hand."""

from pathlib import Path

import pytest

from geometry.designfile import edited, read_design
from geometry.layout.lay import lay_out
from geometry.sections.bars import bar_marks
from geometry.sections.face import CutLine

EXAMPLES = Path(__file__).parents[3] / "assets/examples"
INCH = 0.0254


def test_bars_lie_between_covers_on_the_bottom_cover() -> None:
    layout = lay_out(read_design((EXAMPLES / "l-basement.toml").read_text(encoding="utf-8")))
    marks = bar_marks(layout, CutLine((-2.0, 2.0), (6.0, 2.0)))
    # Footing 20 in wide under an 8 in wall: outer face 6 in outside the house's face at x = 0.
    # Cover 3 in, #4 bar 1/2 in (ASTM A615): centres 3 1/4 in from each face, and above the bottom.
    places = sorted(m.distance - 2.0 for m in marks)
    assert places == pytest.approx([(-6 + 3.25) * INCH, (14 - 3.25) * INCH])
    assert [m.level for m in marks] == pytest.approx([(-12 + 3.25) * INCH] * 2)
    assert [m.diameter for m in marks] == pytest.approx([0.5 * INCH] * 2)


def test_a_lone_bar_lies_in_the_middle_of_its_strip() -> None:
    text = (EXAMPLES / "l-basement.toml").read_text(encoding="utf-8")
    lone = edited(text, ("footing", "bars", "count"), 1)
    (mark,) = bar_marks(lay_out(read_design(lone)), CutLine((-2.0, 2.0), (1.0, 2.0)))
    assert mark.distance - 2.0 == pytest.approx(4 * INCH)  # from 6 in outside to 14 in inside


def test_a_cut_across_the_house_meets_both_strips() -> None:
    layout = lay_out(read_design((EXAMPLES / "metric-house.toml").read_text(encoding="utf-8")))
    marks = bar_marks(layout, CutLine((-2.0, 3.0), (12.0, 3.0)))
    assert len(marks) == 6
    middle = [m.distance - 2.0 for m in marks if m.distance < 4]
    assert sorted(middle)[1] == pytest.approx(0.12)  # the middle bar under the wall's middle


def test_a_cut_along_a_strip_shows_no_dots() -> None:
    layout = lay_out(read_design((EXAMPLES / "metric-house.toml").read_text(encoding="utf-8")))
    marks = bar_marks(layout, CutLine((1.0, 0.12), (8.0, 0.12)))
    assert marks == ()


def test_a_strip_without_bars_shows_none() -> None:
    text = (EXAMPLES / "l-basement.toml").read_text(encoding="utf-8")
    bare = edited(text, ("footing", "bars", "count"), 0)
    assert bar_marks(lay_out(read_design(bare)), CutLine((-2.0, 2.0), (6.0, 2.0))) == ()
