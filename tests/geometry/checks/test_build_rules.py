"""Rules on footing, wall, floor and grade, kept and broken: the cases of `rule_cases` and more."""

import pytest

from geometry.checks.completeness import completeness
from geometry.checks.finding import Finding
from geometry.checks.floor_rules import floor_findings
from geometry.checks.footing_rules import footing_findings, table_of
from geometry.checks.ground_rules import ground_findings
from geometry.checks.radon import radon_findings
from geometry.checks.wall_rules import wall_rule_findings
from geometry.layout.lay import Layout
from geometry.report import report
from geometry.rules.limit import Limit
from geometry.sources import PRACTICE
from geometry.units import INCH
from tests.geometry.checks.rule_cases import (
    CASES,
    CLAY,
    FROST,
    SHEET,
    VENT,
    WIDE,
    Change,
    tell,
    tie,
    wall,
)
from tests.houses import WITH_GARAGE, house


def found(*changes: Change) -> list[Finding]:
    made = house(*changes)
    walls, floors = wall_rule_findings(made), floor_findings(made)
    radon = radon_findings(made)
    return [*footing_findings(made), *walls, *floors, *radon, *ground_findings(made)]


def the(name: str, *changes: Change) -> Finding:
    (one,) = (f for f in found(*changes) if f.id == name)
    return one


@pytest.mark.parametrize("name", CASES)
def test_a_rule_kept_is_told_with_its_fellows(name: str) -> None:
    group, kept, _ = CASES[name]
    by_id = {f.id: f for f in found(*kept)}
    assert name not in by_id
    assert by_id[group].severity == "fine"


@pytest.mark.parametrize("name", CASES)
def test_a_rule_broken_stands_alone_with_source_and_reason(name: str) -> None:
    _, _, broken = CASES[name]
    one = the(name, *broken)
    assert one.severity == "look"
    assert str(one.source)
    assert len(one.advice.split(". ")) > 1


def test_the_editions_differ_on_the_sheet() -> None:
    six = (SHEET, '"poly-6mil", thickness = "6 mil"')
    ten = (SHEET, '"poly-10mil", thickness = "10 mil"')
    for sheet in (six, ten):
        for edition in ("irc-2012", "irc-2018", "irc-2024"):
            rules = tell("rules", f'sets = ["{edition}"]')
            assert "floor-retarder" not in {f.id for f in found(sheet, rules)}, edition
        held = the("floor-retarder", sheet, tell("rules", 'sets = ["irc-2021"]'))
        assert "10 mil, ASTM E1745 Class A" in held.asked
    every = the("floor-retarder", ten)
    assert "not enough for IRC 2021" in every.found
    assert "Editions differ" in every.advice
    thin = the("floor-retarder", (SHEET, '"poly-6mil", thickness = "4 mil"'))
    assert "IRC 2012, IRC 2018, IRC 2021, IRC 2024" in thin.found


def test_an_edition_brings_the_codes_rules_on_the_drain_along() -> None:
    ids = {f.id for f in report(house(tell("rules", 'sets = ["irc-2021"]'))).findings}
    assert "drain-rules-irc" in ids
    assert "drain-rules-din" not in ids


def test_rules_of_another_code_leave_these_out_but_not_those_of_concrete() -> None:
    narrow = (('width = "20 in"', 'width = "11 in"'), tie('joints = "14 ft"'))
    ids = {f.id for f in found(*narrow, tell("rules", 'sets = ["din"]'))}
    assert not ids & {"footing-width", "footing-rules", "rules-not-given", "floor-retarder"}
    assert "slab-joints" in ids


def test_both_laps_are_told_and_the_longer_is_usual() -> None:
    assert "soil-gas rules ask 1'-0\"" in the("floor-rules").found
    short = the("floor-rules", tell("order", 'sheet = { lap = "6 in" }'))
    assert "this is less" in short.found


def test_an_unheated_garage_may_do_without_a_sheet() -> None:
    heated = the("floor-retarder", WITH_GARAGE)
    assert heated.found.startswith("Garage: no vapor retarder")
    ids = {f.id for f in found(WITH_GARAGE, tell("climate", 'unheated = ["garage"]'))}
    assert "floor-retarder" not in ids


def test_what_is_not_given_is_asked_for_once_and_less_when_it_is_said() -> None:
    asked = the("rules-not-given").found
    for words in ("frost_depth", "stories", "wall table", "termites", "radon_vent", "joints"):
        assert words in asked
    said = the(
        "rules-not-given",
        tell("site", 'frost_depth = "42 in"\nstories = 2\ntermites = "none"\nradon_vent = false'),
        tie('joints = "10 ft"'), tell("rules", 'sets = ["irc-2024"]'),
    ).found  # fmt: skip
    assert "wall table" in said
    for words in ("frost_depth", "stories", "termites", "radon_vent", "joints", "edition"):
        assert words not in said


def test_the_brace_and_the_cold_edge_are_told_against_each_other() -> None:
    board = tie('edge_board = { material = "xps-iv", thickness = "1 in" }')
    one = the("wall-foot", board)
    assert '1" of board stands between slab and wall' in one.found
    assert "keyway or dowels" in one.advice
    assert "wall-foot" not in {f.id for f in found(board, wall('foot = "dowels"'))}


def test_a_limit_is_read_to_the_sixteenth() -> None:
    one = Limit("x", "x", "x", source=PRACTICE, least=12 * INCH)
    assert one.met(12 * INCH - INCH / 17)
    assert not one.met(12 * INCH - INCH / 15)


@pytest.mark.parametrize(
    ("asked", "change", "said"),
    [
        ("frost depth", FROST, "3'-6\""),
        ("damp-proofing", wall('coating = "waterproofing"'), "waterproofing"),
        ("slab joints", tie('joints = "10 ft"'), "10'-0\" apart"),
    ],
)
def test_what_is_said_answers_the_departments_lists(asked: str, change: Change, said: str) -> None:
    (before,), (after,) = (
        [item for item in completeness(made) if item.asked.startswith(asked)]
        for made in (house(), house(change))
    )
    assert (before.state, after.state) == ("not covered", "stated")
    assert said in after.detail


def test_an_l_shaped_slab_is_told_to_start_joints_at_its_inner_corner() -> None:
    box = '"30 ft, 20 ft", "0, 20 ft"'
    bent = '"30 ft, 14 ft", "22 ft, 14 ft", "22 ft, 20 ft", "0, 20 ft"'
    plain, shaped = (
        the("slab-joint-rules", tie('joints = "10 ft"')),
        the("slab-joint-rules", tie('joints = "10 ft"'), (box, bent)),
    )
    assert "looks inward" not in plain.found
    assert "looks inward" in shaped.found


def test_only_the_first_ten_feet_of_grade_count() -> None:
    # 4 % over 20 ft is 9.6 in, but 4.8 in within 10 ft.
    far = ('fall = "5 %"', 'fall = "4 %"'), ('fall_length = "10 ft"', 'fall_length = "20 ft"')
    assert "4 13/16" in the("grade-away", *far).found


def test_ground_that_drains_well_needs_no_base() -> None:
    thin = ('thickness = "6 in", role = "base"', 'thickness = "3 in", role = "base"')
    assert "GW drains well" in the("floor-rules", thin).found
    assert the("floor-base", thin, CLAY).severity == "look"


def test_the_tables_own_thickness_can_break_the_rule_on_what_stands_out() -> None:
    trap = the("footing-table", tell("site", "stories = 2"), CLAY)
    assert "stand out farther than it is thick" in trap.advice
    assert "(table value)" in trap.found


def test_a_shallow_hole_is_held_to_no_slope_nor_one_under_another_safety_law() -> None:
    # The footing's bottom stands at -1 ft.
    steep = tell("excavation", 'slope = 0.5\nexisting = "{}"')
    ids = {f.id for f in found((steep[0], steep[1].format("3 ft 11 in")))}
    assert not ids & {"dig-slope", "dig-rules"}
    assert "dig-slope" in {f.id for f in found((steep[0], steep[1].format("4 ft")))}
    din = found(tell("rules", 'sets = ["din"]'), (steep[0], steep[1].format("4 ft")))
    assert not {f.id for f in din} & {"dig-slope", "dig-rules"}


def test_a_pits_lid_is_sealed_where_soil_gas_is_vented() -> None:
    assert "sealed" not in the("pit-rules").found
    assert "sealed" in the("pit-rules", tell("site", "radon_vent = true")).found


def test_a_footing_off_its_wall_is_held_at_both_faces() -> None:
    """20 in under 8 in stands out 6 in each way; 1 in off, 7 in and 5 in."""
    told = the("footing-rules", (WIDE, f'{WIDE}\noffset = "1 in"')).found
    assert 'it stands out 5" beyond the wall' in told
    assert 'it stands out 7" beyond the wall' in told


@pytest.mark.parametrize("along", [True, False])
def test_a_house_is_as_wide_as_its_shorter_side_wherever_it_stands(along: bool) -> None:
    def placed(x: int, y: int) -> Layout:
        wide, deep = (60, 20) if along else (20, 60)
        ring = ((0, 0), (wide, 0), (wide, deep), (0, deep))
        corners = ", ".join(f'"{x + dx} ft, {y + dy} ft"' for dx, dy in ring)
        return house(
            tell("site", "stories = 2"),
            (
                'corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]',
                f"corners = [{corners}]",
            ),
            ('at = "15 ft, 10 ft"', f'at = "{x + wide / 2} ft, {y + deep / 2} ft"'),
            ('at = "4 ft, 5 ft"', f'at = "{x + 5} ft, {y + 5} ft"'),
        )

    sizes = {table_of(made, made.areas[0]) for made in (placed(0, 0), placed(200, 90))}
    square = house(tell("site", "stories = 2"))
    assert sizes == {table_of(square, square.areas[0])}  # 20 ft as well
    assert None not in sizes


def test_a_table_that_answers_is_not_said_to_be_lacking() -> None:
    told = [f for f in found(tell("site", "stories = 2")) if f.id == "rules-not-given"]
    assert not any("footing table" in f.found for f in told)


def test_clean_base_is_told_by_its_thickness() -> None:
    assert '6" of clean base' in the("floor-rules", CLAY).found
    assert "No clean base." in the("floor-base", CLAY, ('"stone-57"', '"crusher-run"')).found


def test_a_vent_is_told_by_its_size_and_by_what_it_stands_in() -> None:
    stone = '    { name = "stone", material = "stone-57", thickness = "6 in", role = "base" },\n'
    vent = tell("vent", VENT)
    assert "Vent of PVC Schedule 40, 3 in in stone" in the("radon-pipe", vent).found
    assert "in without stone" in the("radon-placed", vent, (stone, "")).found
