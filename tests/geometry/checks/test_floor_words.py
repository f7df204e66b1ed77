"""What is told of a floor's build-up and joints, in figures worked by hand.

The house of `tests.houses`: 6 in of No. 57, foam, 15 mil sheet, 4 in of slab; inside its walls
28'-8" by 18'-8".
"""

import pytest

from geometry.checks.finding import Finding
from geometry.checks.floor_rules import floor_findings
from tests.houses import WITH_GARAGE, house, without

Change = tuple[str, str]
TIE = 'tie = "foam bottom at TOF"'
CLAY = ('group = "GW"', 'group = "CL"')
STONE = '    { name = "stone", material = "stone-57", thickness = "6 in", role = "base" },\n'
FOAM = '    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },\n'
SHEET = (
    '    { name = "retarder", material = "e1745-a-15mil", thickness = "15 mil", '
    'role = "retarder" },\n'
)
VENT = ("[soil]", "[site]\nradon_vent = true\n\n[soil]")


def told(*changes: Change) -> dict[str, Finding]:
    return {f.id: f for f in floor_findings(house(*changes))}


def jointed(apart: str) -> Change:
    return TIE, f'{TIE}\njoints = "{apart}"'


@pytest.mark.parametrize(
    ("apart", "panels"),
    [
        # 28'-8" in three, 18'-8" in two.
        ("12 ft", "panels 9'-6 11/16\" x 9'-4\", 1.02 to 1"),
        # What comes out even is cut no finer: 18'-8" in two, 28'-8" in four.
        ("9 ft 4 in", "panels 7'-2\" x 9'-4\", 1.30 to 1"),
    ],
)
def test_a_room_is_cut_evenly_into_panels(apart: str, panels: str) -> None:
    found = told(jointed(apart))["slab-joint-rules"]
    assert panels in found.found


def test_joints_hang_on_the_slabs_thickness() -> None:
    """24 and 36 times 4 in are 8 and 12 ft; sawn a quarter deep (ACI 302.1R)."""
    found = told(jointed("10 ft"))["slab-joint-rules"].found
    assert 'joints 10\'-0" apart in 4" of slab, 8\'-0" for most mixes, 12\'-0" at most' in found
    assert 'sawn 1" deep' in found
    thick = told(jointed("10 ft"), ('thickness = "4 in", role', 'thickness = "6 in", role'))
    # 36 times 6 in are 18 ft, a quarter of it 1 1/2 in.
    assert (
        '12\'-0" for most mixes, 18\'-0" at most; sawn 1 1/2" deep'
        in thick["slab-joint-rules"].found
    )
    assert "joints" not in told()["slab-joint-rules"].found


def test_clean_layers_add_up_and_fines_count_for_nothing() -> None:
    row = '    {{ name = "{0}", material = "{0}", thickness = "{1} in", role = "base" }},\n'
    layers = "".join(
        row.format(*one) for one in (("stone-57", 2), ("stone-8", 3), ("crusher-run", 3))
    )
    assert '5" of clean base' in told(CLAY, (STONE, layers))["floor-rules"].found
    thin = told(CLAY, (STONE, row.format("stone-57", 3) + row.format("crusher-run", 3)))
    assert thin["floor-base"].found == '3" of clean base.'
    vented = told(VENT, (STONE, layers))["floor-rules"].found
    assert 'vent for soil gas: 5" of clean stone, a sheet, laps 1\'-0"' in vented


def test_a_slab_over_the_grade_needs_no_base() -> None:
    grade = ('at_wall = "7 ft"', 'at_wall = "3 in"')
    bare = (STONE, STONE.replace("6 in", "2 in"))
    high = told(CLAY, bare, grade, without("drain"), without("sump"))
    assert "floor-base" not in high
    assert "base" not in high["floor-rules"].found
    assert "floor-base" in told(CLAY, bare)


def test_without_a_sheet_gas_has_its_way_and_no_lap_is_told() -> None:
    found = told(VENT, (SHEET, ""))
    assert 'vent for soil gas: 6" of clean stone, no sheet' in found["radon-vent"].found.lower()
    assert "laps of" not in found["floor-rules"].found.lower()
    assert "radon-vent" not in told(VENT)
    assert "soil gas:" not in told()["floor-rules"].found


def test_what_lies_on_the_sheet_is_told() -> None:
    assert "the slab lies on the sheet" in told()["floor-rules"].found
    over = told((FOAM + SHEET, SHEET + FOAM))["floor-rules"].found
    assert "foam lies on the sheet" in over
    assert "the slab lies on the sheet" not in over
    sand = FOAM.replace("foam", "sand").replace("xps-iv", "sand-c33").replace("insulation", "fill")
    assert told((SHEET, SHEET + sand))["floor-order"].severity == "look"
    # With two sheets the upper one counts.
    lower = SHEET.replace('"retarder", material', '"lower sheet", material')
    twice = told((FOAM, FOAM + lower + sand))
    assert "floor-order" not in twice


def test_how_the_slab_meets_wall_and_piers() -> None:
    tight = told()["slab-joint-rules"].found
    assert tight == (
        "Slab poured tight to the wall, as its foot's brace; wrap the piers that pass through it."
    )
    assert "piers" not in told(without("[area.pier]"))["slab-joint-rules"].found
    board = (TIE, f'{TIE}\nedge_board = {{ material = "xps-iv", thickness = "1 in" }}')
    assert told(board)["slab-joint-rules"].found.startswith("A board parts slab and wall; wrap")
    held = told(('height = "8 ft"', 'height = "8 ft"\nfoot = "dowels"'))["slab-isolation"]
    assert "its foot is held by dowels" in held.found


def test_each_slab_of_two_areas_is_told_under_its_own_name() -> None:
    found = told(WITH_GARAGE)["floor-rules"].found
    assert 'Basement: slab 4"' in found
    assert 'Garage: slab 5"' in found


def test_a_rule_broken_in_one_area_is_told_of_that_one_alone() -> None:
    """Two rules broken in the garage, one of them in the basement too."""
    thin = (WITH_GARAGE[0], WITH_GARAGE[1].replace("5 in", "3 in"))
    found = told(thin, VENT, ("[soil]", '[order.sheet]\nlap = "4 in"\n\n[soil]'))
    assert found["slab-thickness"].found == 'Garage: slab 3".'
    assert found["floor-retarder"].found == "Garage: no vapor retarder under the slab."
    assert found["radon-vent"].found.startswith("Basement: vent for soil gas")
    assert "Garage: vent for soil gas" in found["radon-vent"].found
    assert 'Basement: slab 4"' in found["floor-rules"].found
    assert "Garage: slab" not in found["floor-rules"].found
