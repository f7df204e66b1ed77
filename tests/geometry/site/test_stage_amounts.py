"""Each card's amounts: together the order's rows, and shared only where several take of one row."""

from collections import defaultdict

import pytest
from hand_house import DRAIN, INCH, LOW, PIT, PUMP, hand_house

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.site.records import Amount
from geometry.site.stages import stages
from geometry.takeoff.order import order
from tests.whole.networks import TEXTS
from viz.carried import examples

HOUSES = {name: file.read_text(encoding="utf-8") for name, file in examples().items()} | TEXTS
EVERY = ("l-basement", "upper to daylight", "pit and two to daylight", "both to the pit")
ITEMS = {
    "perforated_pipe": "Perforated pipe", "solid_pipe": "Solid pipe", "sheet": "Retarder",
    "fabric": "Fabric wrap", "elbow:90°": "Elbow 90°", "tee": "Tee", "cap": "Cap",
    "cleanout_tee": "Cleanout tee", "cleanout_plug": "Cleanout plug",
    "guard_for_an_open_end": "Guard for an open end", "basin": "Sump basin with lid",
}  # fmt: skip


def taken(layout: Layout) -> dict[tuple[str, str], list[Amount]]:
    found = defaultdict(list)
    for stage in stages(layout):
        for amount in stage.amounts:
            found[amount.key, amount.material].append(amount)
    return found


@pytest.mark.parametrize("name", EVERY)
def test_pipes_fittings_sheets_and_wraps_of_all_cards_are_the_order_s(name: str) -> None:
    layout = lay_out(read_design(HOUSES[name]))
    mine, asked = taken(layout), 0
    # Bleeders are cast into the footing, which stands.
    cast = {d.drain.bleeders.pipe for d in layout.drains if layout.bleeders_of(d)}
    for key, item in ITEMS.items():
        rows = [r for r in order(layout).rows if r.item == item and r.material not in cast]
        for material in {r.material for r in rows}:
            alike = [r for r in rows if r.material == material]
            took = mine[key, material]
            asked += 1
            whole = sum(r.in_place for r in alike)
            assert sum(a.in_place for a in took) == pytest.approx(whole), item
            if key.endswith(("pipe", "sheet")):
                assert {a.shared for a in took} == {len(took) > 1}, item
                assert {(a.count, a.to_buy) for a in took} == {(r.count, r.to_buy) for r in alike}
            else:
                assert not any(a.shared for a in took)
                assert sum(a.count for a in took) == sum(r.count for r in alike)
    assert asked > 8


@pytest.mark.parametrize("name", EVERY)
def test_tape_is_that_of_sheet_and_foam_and_shared_where_another_area_takes_some(name: str) -> None:
    layout = lay_out(read_design(HOUSES[name]))
    rows = [r for r in order(layout).rows if r.material == "tape"]
    took = taken(layout)["tape", "tape"]
    assert rows
    assert sum(a.in_place for a in took) == pytest.approx(sum(r.in_place for r in rows))
    for amount in took:
        (row,) = (r for r in rows if (r.to_buy, r.count) == (amount.to_buy, amount.count))
        assert amount.shared == (row.in_place - amount.in_place > 1e-9)


@pytest.mark.parametrize("name", EVERY)
def test_the_least_weight_of_stone_is_parted_like_the_most(name: str) -> None:
    layout = lay_out(read_design(HOUSES[name]))
    for row in order(layout).rows:
        if row.group == "stone and sand" and row.mass_kg:
            parts = [a.mass_kg for a in taken(layout)["bulk", row.material] if a.mass_kg]
            assert sum(least for least, _ in parts) == pytest.approx(row.mass_kg[0])


def test_solid_pipe_on_the_drain_s_card_is_its_risers_alone() -> None:
    """Beside the pit's pump the drain's risers stand from its pipe to the plug's level."""
    layout = hand_house(DRAIN + PIT + PUMP)
    (drain,) = layout.drains
    found = {s.key: {a.key: a for a in s.amounts} for s in stages(layout)}
    risers = sum(r.top - r.bottom for r in layout.risers(drain))
    # Of two risers at corners of the hand-made grade each ends at about 7 ft.
    assert risers / INCH == pytest.approx(2 * (84 - LOW), rel=0.1)
    assert found["pipe"]["solid_pipe"].in_place == pytest.approx(risers)
    assert {"basin", "pump", "bulk", "solid_pipe"} == set(found["pit"])


def test_of_two_layers_of_boards_the_upper_one_is_taped() -> None:
    foam = '{ name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },'
    second = foam.replace('"foam"', '"more foam"')
    layout = hand_house("", (foam, f"{foam}\n{second}"))
    boards = [s for s in stages(layout) if s.key == "insulation"]
    assert [[a.key for a in s.amounts] for s in boards] == [["boards"], ["boards", "tape"]]
