"""What is told of walls with fill: which one, from where, how grave, and what to do about it.

The house of `tests.houses`: grade at +7 ft, floor at +6 in, so 6'-6" of fill; from a garage's floor
at +3'-5" beside it 2'-11".
"""

import pytest

from geometry.checks.finding import Finding
from geometry.checks.wall import wall_findings
from tests.houses import WITH_GARAGE, house

Change = tuple[str, str]
LOW = ('at_wall = "7 ft"', 'at_wall = "4 ft"')


def tell(table: str, words: str) -> Change:
    return "[soil]", f"[{table}]\n{words}\n\n[soil]"


def told(*changes: Change) -> dict[tuple[str, str], Finding]:
    rows = list(wall_findings(house(*changes)))
    found = {(f.id, f.subject): f for f in rows}
    assert len(found) == len(rows)
    return found


def test_a_wall_to_a_higher_floor_is_told_from_that_floor() -> None:
    found = told(WITH_GARAGE)
    outer = found["wall-fill", "basement, outer wall"]
    inner = found["wall-fill", "basement, wall to garage"]
    assert "Unbalanced fill 6'-6\" from grade to finished floor" in outer.found
    assert "Unbalanced fill 2'-11\" from the floor of garage to finished floor" in inner.found
    assert "What stands on the higher floor is not counted." in inner.found
    assert "not counted" not in outer.found
    # 48 in is what the code asks from: R404.1.3.
    assert (outer.severity, inner.severity) == ("look", "fine")
    assert (
        "up to the floor of garage" in found["wall-flooded", f"{inner.subject}, drain failed"].found
    )
    assert "up to grade" in found["wall-flooded", f"{outer.subject}, drain failed"].found


def test_the_day_of_backfill_is_told_once_of_the_wall_with_the_most_fill() -> None:
    subjects = [subject for name, subject in told(WITH_GARAGE) if name == "backfill-state"]
    assert subjects == ["basement, outer wall, day of backfill"]


@pytest.mark.parametrize(
    ("state", "low", "severity", "advice"),
    [
        ("", False, "look", "Say it in [backfill.state]"),
        ("deck = false\nbraced = false", False, "stop", "No fill before the deck is on"),
        ("deck = false\nbraced = false", True, "look", "No fill before the deck is on"),
        ("deck = false\nbraced = true", False, "look", "Look again on the day"),
        ("deck = true\nbraced = false", False, "look", "Look again on the day"),
        ("deck = true\nslab = true", False, "look", "Look again on the day"),
        ("deck = true\nslab = true", True, "fine", "Look again on the day"),
        ("deck = true\nslab = false", True, "look", "Look again on the day"),
    ],
)
def test_only_fill_that_asks_for_help_against_a_bare_wall_is_stopped(
    state: str, low: bool, severity: str, advice: str
) -> None:
    changes = [tell("backfill.state", state)] * bool(state) + [LOW] * low
    found = told(*changes)["backfill-state", "basement, outer wall, day of backfill"]
    assert found.severity == severity
    assert found.advice.startswith(advice)
    assert found.found.startswith("Not said what holds the walls") == (not state)


@pytest.mark.parametrize(
    ("depth", "words"),
    [("0 in", "water up to grade pushes"), ("2 ft", "water up to 2'-0\" under grade pushes"),
     ("9 ft", "stays under the foot of the wall")],
)  # fmt: skip
def test_water_behind_a_wall_is_grave_where_the_fill_is_high(depth: str, words: str) -> None:
    water = tell("backfill", f'water_depth = "{depth}"')
    for low, severity in ((False, "look"), (True, "fine")):
        key = "wall-flooded", "basement, outer wall, drain failed"
        found = told(water, *([LOW] * low))[key]
        assert found.severity == severity
        assert words in found.found
