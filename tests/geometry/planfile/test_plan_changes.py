"""Edits of the plan in a design file: what moves, and that all else stays letter by letter."""

import tomllib

import pytest

from geometry.designfile import read_design
from geometry.errors import DesignError
from geometry.planfile import change
from geometry.planfile.read import plan_of, written
from geometry.units import read_length
from viz.carried import demo, examples

DEMO = demo().read_text(encoding="utf-8")
METRIC = examples()["metric-house"].read_text(encoding="utf-8")
FOOT, INCH = 0.3048, 0.0254


def changed(before: str, after: str) -> list[str]:
    """The lines of the second text that the first has not, note and all."""
    old = before.split("\n")
    return [line for line in after.split("\n") if line not in old]


@pytest.mark.parametrize("system", ["ft-in", "metric"])
def test_a_written_length_reads_back(system: str) -> None:
    step = INCH / 16 if system == "ft-in" else 0.001
    for count in (0, 1, -1, 15, 16, -16 * 12, 16 * 12 * 42 + 5, 191, -7777):
        words = written(count * step, system)
        assert read_length(words) == pytest.approx(count * step, abs=1e-12)
        assert len(words) <= 40


def test_a_shared_corner_moves_in_both_areas_and_nothing_else() -> None:
    text = change.corner_to(DEMO, 0, 2, (42 * FOOT, 18 * FOOT + 6 * INCH))
    lines = changed(DEMO, text)
    assert lines == [
        'corners = ["0, 0", "42 ft, 0", "42 ft, 18 ft 6 in", "26 ft, 18 ft", "26 ft, 32 ft", '
        '"0, 32 ft"]',
        'corners = ["26 ft, 18 ft", "42 ft, 18 ft 6 in", "42 ft, 42 ft", "26 ft, 42 ft", '
        '"26 ft, 32 ft"]',
    ]
    assert read_design(text)


def test_a_typed_side_leaves_the_demo_sound() -> None:
    design = read_design(change.side_to(DEMO, 0, 0, "44' 3\""))
    house, garage = (a.corners for a in design.areas)
    assert house[1][0] == house[2][0] == garage[1][0] == garage[2][0]
    assert house[1][0] == pytest.approx(44.25 * FOOT)
    with pytest.raises(DesignError, match="not a length"):
        change.side_to(DEMO, 0, 0, "wide")


def test_plain_numbers_stay_plain_numbers() -> None:
    text = change.corner_to(METRIC, 0, 2, (9.81, 7.2))
    assert changed(METRIC, text) == ["corners = [[0, 0], [9.60, 0], [9.81, 7.2], [0, 7.20]]"]
    text = change.pier_to(change.pit_to(METRIC, (1.3, 2.5)), 0, 0, (4.8, 3.0))
    assert changed(METRIC, text) == ["at = [4.8, 3]", "at = [1.3, 2.5]"]


def test_drains_keep_their_corners_and_sides_when_one_is_added_and_taken_out() -> None:
    text = DEMO.replace("cleanouts = [2, 6]", "cleanouts = [2, 6]\nsides = [3, 4, 5]")
    more = change.corner_added(text, 0, 2, (34 * FOOT, 18 * FOOT))
    raw = tomllib.loads(more)
    assert [len(a["corners"]) for a in raw["area"]] == [7, 6]
    assert raw["drain"]["cleanouts"] == [2, 7]
    assert raw["drain"]["sides"] == [3, 4, 5, 6]
    less = change.corner_removed(more, 0, 3)
    assert tomllib.loads(less) == tomllib.loads(text)


def test_a_design_with_faults_is_still_drawn_and_moved() -> None:
    text = DEMO.replace('"42 ft, 0"', '"wide, 0"').replace('width = "20 in"', 'width = "1 mile"')
    plan = plan_of(tomllib.loads(text))
    assert plan.areas[0].corners[1] is None
    assert plan.areas[0].corners[2] == pytest.approx((42 * FOOT, 18 * FOOT))
    moved = change.corner_to(text, 0, 5, (0.0, 30 * FOOT))
    assert '"wide, 0"' in moved
    assert '"0, 30 ft"' in moved
    with pytest.raises(DesignError, match="cannot be read"):
        change.corner_to(text, 0, 1, (0.0, 0.0))


def test_any_tables_give_some_plan() -> None:
    for raw in (None, {}, {"area": 3}, {"area": [3, {"corners": 4}, {"pier": [1]}], "sump": []}):
        assert plan_of(raw).pit is None
