"""What the rules on walls and grade say of one house: grade, table, foot and coating.

The house of `tests.houses`: wall to +8 ft, grade at +7 ft, floor at +6 in, the cut under it at
-6 in, 4 in of slab.
"""

import pytest

from geometry.checks.finding import Finding
from geometry.checks.ground_rules import ground_findings
from geometry.checks.wall_rules import wall_rule_findings
from tests.houses import WITH_GARAGE, house

Change = tuple[str, str]
SLAB = '"concrete-3000", thickness = "4 in", role = "slab"'
HEIGHT = 'height = "8 ft"\n'


def told(*changes: Change) -> dict[str, Finding]:
    return {f.id: f for f in wall_rule_findings(house(*changes))}


def wet(level: str) -> Change:
    return "[soil]", f'[water]\nwater_table = "{level}"\n\n[soil]'


def wall(words: str) -> Change:
    return HEIGHT, f"{HEIGHT}{words}\n"


def test_a_plain_house_is_told_in_a_sentence() -> None:
    (one,) = told().values()
    assert one.found == 'Top of wall 1\'-0" above grade; 4" of slab poured tight to the wall.'


@pytest.mark.parametrize(
    ("table", "coating", "kept", "words"),
    [
        ("-13 in", "", True, '7" below the cut under the floor: damp-proofing is enough'),
        ("-13 in", "waterproofing", True, '7" below the cut under the floor: waterproofing is'),
        ("-3 in", "", False, '3" above the cut under the floor, wall with no coating'),
        ("-3 in", "damp-proofing", False, '3" above the cut under the floor, wall with damp-proof'),
        ("-3 in", "waterproofing", True, '3" above the cut under the floor, wall with waterproof'),
    ],
)
def test_water_over_the_cut_wants_waterproofing(
    table: str, coating: str, kept: bool, words: str
) -> None:
    found = told(wet(table), *([wall(f'coating = "{coating}"')] * bool(coating)))
    assert ("wall-waterproofing" in found) != kept
    assert words in found["wall-rules" if kept else "wall-waterproofing"].found.replace("H", "h")


@pytest.mark.parametrize(("table", "engineer"), [("6 in", False), ("7 in", True)])
def test_no_table_holds_for_a_wall_with_water_over_its_floor(table: str, engineer: bool) -> None:
    """The floor lies at +6 in."""
    assert ("wall-table" in told(wet(table))) == engineer


@pytest.mark.parametrize(
    ("change", "kept", "words"),
    [
        ((SLAB, SLAB.replace("4 in", "3 in")), False, '3" of slab poured tight to the wall.'),
        ((SLAB, '"sand-c33", thickness = "4 in", role = "fill"'), False, "No slab holds the foot"),
        (wall('foot = "keyway"'), True, "foot held by keyway, so the slab's edge is free"),
        (wall('foot = "slab"'), True, '4" of slab poured tight to the wall'),
        # 3'-6" of fill asks for nothing.
        (('at_wall = "7 ft"', 'at_wall = "4 ft"'), True, "Top of wall 4'-0\" above grade."),
    ],
)
def test_high_fill_wants_its_walls_foot_held(change: Change, kept: bool, words: str) -> None:
    found = told(change)
    assert ("wall-foot" in found) != kept
    assert words in found["wall-rules" if kept else "wall-foot"].found
    low = change[1] == 'at_wall = "4 ft"'
    assert ("slab" in found["wall-rules"].found) == (kept and not low)


def test_each_of_two_walls_is_told_under_its_own_name() -> None:
    """The garage's wall ends at 3 ft + 4 ft 9 in; its slab at +3'-5" holds back 3'-7" of fill."""
    found = told(WITH_GARAGE, wall('kind = "8 in block, grouted"'))["wall-rules"].found
    basement, garage = found.split(" Garage: ")
    assert basement.startswith('Basement: top of wall 1\'-0" above grade; 4" of slab')
    assert garage.startswith('top of wall 9" above grade; table value: 8 in of solid or fully')
    assert "slab" not in garage


@pytest.mark.parametrize(
    ("length", "words"), [("20 ft", "6\" in 10'-0\""), ("10 ft", "6\" in 10'-0\""),
                          ("5 ft", "3\" in 5'-0\"")],
)  # fmt: skip
def test_the_grades_fall_is_told_over_ten_feet_at_the_most(length: str, words: str) -> None:
    """5 % of 10 ft is 6 in, of 5 ft 3 in."""
    made = house(('fall_length = "10 ft"', f'fall_length = "{length}"'))
    (one,) = (f for f in ground_findings(made) if f.id in ("grade-rules", "grade-away"))
    assert one.found == f"Grade falls {words}."
