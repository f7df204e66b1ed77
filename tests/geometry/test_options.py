"""The ways to make a floor's edge: closed forms on an invented box, soundness on rolled designs."""

import pytest

from geometry.designfile import read_design
from geometry.faults.find import faults
from geometry.layout.lay import lay_out
from geometry.options import EdgeOption, edge_options, moved
from geometry.project import Design
from geometry.report import report
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds

INCH = 0.0254
HOUSE = """
[project]
name = "A box (invented)"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[[area.pier]]
at = "10 ft, 10 ft"
[floor]
tie = {tie}
{board}
layer = [
    {{ name = "stone", material = "stone-57", thickness = "6 in", role = "base" }},
    {{ name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" }},
    {{ name = "slab", material = "concrete", thickness = "4 in", role = "slab" }},
]
{more}
"""


def house(tie: str, board: str = "", more: str = "") -> Design:
    return read_design(HOUSE.format(tie=f'"{tie}"', board=board, more=more))


def options(design: Design) -> dict[str, EdgeOption]:
    return {o.key: o for o in edge_options(design)}


def built(option: EdgeOption) -> Design:
    assert option.design is not None
    return option.design


# Inside the wall 28'-8" x 18'-8"; inside the footing 6 in less on every side. In inches.
ROOM, CORE = (30 * 12 - 16, 20 * 12 - 16), (30 * 12 - 28, 20 * 12 - 28)


@pytest.mark.parametrize(
    ("key", "floor", "subgrade", "ledge"),
    [
        ("over", 6, -6, 0),
        ("stopped", 4, -8, ROOM[0] * ROOM[1] - CORE[0] * CORE[1]),
        ("turned up", 4, -8, (ROOM[0] - 2) * (ROOM[1] - 2) - CORE[0] * CORE[1]),
    ],
)
@pytest.mark.parametrize("tie", ["foam bottom at TOF", "foam top at TOF", "foam bottom at -1 in"])
def test_every_way_to_make_the_edge_by_hand(
    tie: str, key: str, floor: float, subgrade: float, ledge: float
) -> None:
    design = house(tie)
    after = report(lay_out(built(options(design)[key])))
    before = report(lay_out(design))
    moves = moved(before, after)
    assert moves.finished_floor.after == pytest.approx(floor * INCH)
    assert moves.subgrade.after == pytest.approx(subgrade * INCH)
    # The wall is 8 ft high.
    assert moves.headroom.after == pytest.approx((96 - floor) * INCH)
    assert moves.cold_ledge.after == pytest.approx(ledge * INCH**2)
    assert moves.headroom.by == pytest.approx(-moves.finished_floor.by)
    assert moves.finished_floor.by == pytest.approx(moves.subgrade.by)


@pytest.mark.parametrize(
    ("tie", "board", "same"),
    [
        ("foam bottom at TOF", "", "over"),
        ("stone top at TOF", "", "over"),
        ("subgrade at -6 in", "", "over"),
        ("foam top at TOF", "", "stopped"),
        ("slab bottom at TOF", 'edge_board = { thickness = "1 1/2 in" }', "turned up"),
        ("foam bottom at TOF", 'edge_board = { thickness = "1 in" }', "over"),
        ("foam bottom at -1 in", "", None),
    ],
)
def test_the_way_a_design_has_already_is_that_design(
    tie: str, board: str, same: str | None
) -> None:
    design = house(tie, board)
    found = options(design)
    assert list(found) == ["over", "stopped", "turned up", "pads raised"]
    assert [key for key, o in found.items() if o.same] == ([same] if same else [])
    if same:
        assert found[same].design == design


def test_the_turned_up_edge_is_of_the_floors_own_foam_unless_it_has_a_board() -> None:
    board = built(options(house("foam top at TOF"))["turned up"]).areas[0].floor.edge_board
    assert (board.material, board.thickness) == ("xps-iv", pytest.approx(INCH))
    own = 'edge_board = { material = "eps-ix", thickness = "1 1/2 in" }'
    board = built(options(house("foam bottom at TOF", own))["turned up"]).areas[0].floor.edge_board
    assert (board.material, board.thickness) == ("eps-ix", pytest.approx(1.5 * INCH))


def test_piers_follow_their_level_words() -> None:
    for key, floor in (("over", 6), ("stopped", 4)):
        layout = lay_out(built(options(house("foam bottom at -1 in"))[key]))
        (column,) = (b for b in layout.structure if b.label.role == "column")
        assert column.top == pytest.approx(floor * INCH)


@pytest.mark.parametrize("tie", ["foam bottom at TOF", "foam top at TOF"])
def test_pads_go_through_the_foam_or_under_it(tie: str) -> None:
    design = house(tie)
    raised = built(options(design)["pads raised"])
    moves = moved(report(lay_out(design)), report(lay_out(raised)))
    # The pad is 3 ft square, its top at TOF; over the footing the foam's top is at +2 in.
    assert moves.pad_top.before == 0
    assert moves.pad_top.after == pytest.approx(2 * INCH)
    assert moves.cold_piers.after == pytest.approx((36 * INCH) ** 2)
    assert moves.finished_floor.after == pytest.approx(6 * INCH)
    back = options(raised)
    assert "pads raised" not in back
    under = moved(report(lay_out(raised)), report(lay_out(built(back["pads under"]))))
    # Under the foam only the column, 12 in square, comes through it.
    assert under.pad_top.after == 0
    assert under.cold_piers.after == pytest.approx((12 * INCH) ** 2)


def test_no_pads_no_such_way() -> None:
    bare = HOUSE.format(tie='"foam bottom at TOF"', board="", more="").replace(
        '[[area.pier]]\nat = "10 ft, 10 ft"\n', ""
    )
    assert [o.key for o in edge_options(read_design(bare))] == ["over", "stopped", "turned up"]


def test_a_way_that_cannot_be_built_says_why_and_has_no_design() -> None:
    # The pipe comes in at -9 in; the pit's bottom lies 14 in under the floor at +4 in or +6 in.
    pit = (
        '[drain]\nfall = "level"\n[sump]\nat = "4 ft, 8 ft"\ndepth = "14 in"\nstone_below = "2 in"'
    )
    found = options(house("foam top at TOF", more=pit))
    assert found["over"].design is None
    assert any("the pit" in sentence for sentence in found["over"].faults)
    assert found["stopped"].same
    assert found["turned up"].faults == ()


def test_a_floor_without_foam_under_a_slab_has_no_such_ways() -> None:
    bare = HOUSE.format(tie='"slab bottom at TOF"', board="", more="").replace(
        '    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },\n', ""
    )
    assert edge_options(read_design(bare)) == ()


def test_the_rest_of_the_house_stays() -> None:
    more = (
        '[[area]]\nname = "upper"\nstep = "3 ft"\n'
        'corners = ["30 ft, 0", "40 ft, 0", "40 ft, 20 ft", "30 ft, 20 ft"]'
    )
    design = house("foam top at TOF", more=more)
    before = lay_out(design).area("upper").stack.levels
    for option in edge_options(design):
        assert lay_out(built(option)).area("upper").stack.levels == before


@pytest.mark.parametrize("seed", seeds(12))
def test_every_way_of_rolled_designs_is_sound(seed: int) -> None:
    raw = seeded_raw(seed)
    if raw is None:
        pytest.skip("this seed rolls no sound design")
    design = design_of(raw)
    for option in edge_options(design):
        assert (option.design is None) == bool(option.faults)
        assert sum(o.same for o in edge_options(design)) <= 1
        if option.design is not None:
            assert faults(option.design) == []
            moves = moved(report(lay_out(design)), report(lay_out(option.design)))
            assert moves.finished_floor.by == pytest.approx(moves.subgrade.by)
            if option.same:
                assert moves.finished_floor.by == 0
