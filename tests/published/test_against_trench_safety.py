"""The safety rule on holes: 29 CFR 1926.651 and .652, its depths and distances in feet.

.652(a)(1): sides are protected from 5 ft of depth on; .651(c)(2): a way out from 4 ft on, within
25 ft of where one works; .651(j)(2): spoil and machines at least 2 ft back from the edge;
.652(b)(1)(i): sides laid back no steeper than 1 1/2 across for 1 up unless the ground is classed.
"""

import pytest

from geometry.checks.dangers import Danger, dangers
from tests.houses import house, without


def told(*changes: tuple[str, str]) -> dict[str, Danger]:
    return {danger.key: danger for danger in dangers(house(*changes))}


def deep(grade: str, *more: tuple[str, str]) -> str:
    """The hole reaches 1 ft under TOF; without a slope of the grade it begins at its level."""
    changes = [('at_wall = "7 ft"', f'at_wall = "{grade}"'), ('fall = "5 %"', 'fall = "level"')]
    return told(*changes, without("sump"), without("drain"), *more)["hole"].words


def test_depths_and_distances_of_the_rule() -> None:
    words = told()["hole"].words
    assert "5'-0\" from which its sides are protected whatever the ground" in words
    assert "A ladder within 25'-0\" wherever it is 4'-0\" deep or more" in words
    assert "spoil and machines 2'-0\" back from the edge" in words
    assert "laid back 1 1/2 across for 1 up; 1 to 1 is drawn" in words
    assert "1926.651" in str(told()["hole"].source)


@pytest.mark.parametrize(
    ("grade", "word"), [("4 ft", "more"), ("4 ft 6 in", "more"), ("3 ft", "less")]
)
def test_a_hole_of_five_feet_is_protected(grade: str, word: str) -> None:
    assert f"deep, {word} than the 5'-0\"" in deep(grade)


def test_a_hole_of_two_feet_is_a_danger_too_and_is_told_to_the_inch() -> None:
    assert "about 2'-0\" deep, less than" in deep("1 ft")
    # 5'-6 3/8".
    assert "about 5'-6\" deep" in deep("4 ft 6 3/8 in")


@pytest.mark.parametrize(("mm", "word"), [(1510, "more"), (1490, "less")])
def test_a_metric_hole_is_held_against_the_figure_that_is_printed(mm: int, word: str) -> None:
    """The footing's bottom lies 304.8 mm under TOF; 1510 mm are less than 5 ft."""
    metric = ('name = "Two', 'units = "metric"\nname = "Two')
    assert f"about {mm} mm deep, {word} than the 1500 mm" in deep(f"{mm - 304.8:.1f} mm", metric)


def test_round_metric_figures_are_no_less_safe() -> None:
    text = deep("6 ft", ('name = "Two', 'units = "metric"\nname = "Two'))
    figures = (("1500 mm", 5), ("1200 mm", 4), ("7600 mm", 25))
    for said, feet in figures:
        assert said in text
        assert float(said.split()[0]) <= feet * 304.8
    assert " 610 mm back" in text
    assert 610 >= 2 * 304.8


def test_a_pump_is_told_where_there_is_a_pit() -> None:
    assert "ground-fault" in told()["pump"].words
    assert "pump" not in told(without("sump"))
