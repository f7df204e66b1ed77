"""Footing bars are drawn in concrete only: two in a plain cut, none in the sleeve's bore."""

from pathlib import Path

from viz.drawing.marks import Circle
from viz.job import job
from viz.pictures import Cutting, detail_window, section_of

EXAMPLE = Path(__file__).parents[2] / "assets/examples/l-basement.toml"


def dots(name: str) -> int:
    work = job(EXAMPLE.read_text(encoding="utf-8"))
    line = work.cuts[name]
    window = detail_window(work.layout, work.foundation, line)
    drawing = section_of(work.layout, work.foundation, Cutting(name, line, "ANSI B", window=window))
    return sum(isinstance(m, Circle) and m.layer == "outline" for m in drawing.marks)


def test_two_bars_in_a_plain_cut_of_the_strip() -> None:
    assert dots("across") == 2


def test_no_bar_floats_in_the_sleeve() -> None:
    assert dots("sump") == 0
