"""The sheet under the slab: what counts as one, and the tape for its laps and openings."""

from math import ceil

import pytest

from geometry.takeoff.order import order
from geometry.takeoff.sheet import sheet_rows, strip_layouts
from tests.houses import house

NARROW = ("[soil]", '[order.sheet]\nroll_width = "10 ft"\nroll_length = "100 ft"\n\n[soil]')
WIDE = ("[soil]", '[order.sheet]\nroll_width = "40 ft"\nroll_length = "100 ft"\n\n[soil]')


def test_the_retarder_alone_is_laid_in_strips():
    ((body, _),) = strip_layouts(house())
    assert body.label.role == "retarder"
    (row,) = (r for r in order(house()).rows if r.group == "sheet" and r.unit == "m2")
    # 30 x 20 ft outside walls of 8 in, less the pit, 18 1/2 in over its walls, and a column.
    inside = (30 - 16 / 12) * (20 - 16 / 12) - 3.141592653589793 / 4 * (18.5 / 12) ** 2 - 1
    assert row.in_place == pytest.approx(inside * 0.3048**2, rel=1e-6)


def test_tape_runs_along_every_seam_and_round_every_opening():
    """From a roll wider than the room no seam is left: round pit and column alone."""
    (_, wide), (_, narrow) = (
        next(strip_layouts(layout)) for layout in (house(WIDE), house(NARROW))
    )
    assert wide.seam_m == 0.0
    around = 3.141592653589793 * 18.5 * 0.0254 + 4 * 0.3048
    assert wide.holes_m == pytest.approx(around, rel=2e-3)
    assert narrow.seam_m > 0
    for laid, change in ((wide, [WIDE]), (narrow, [NARROW])):
        (tape,) = (row for row, _ in sheet_rows(house(*change)) if row.unit == "m")
        assert tape.in_place == pytest.approx(laid.seam_m + laid.holes_m)


def test_sheet_is_bought_as_long_as_it_is_cut_and_as_wide_as_the_roll():
    for change, feet in ((WIDE, 40), (NARROW, 10)):
        layout = house(change)
        ((_, laid),) = strip_layouts(layout)
        row, _ = next(sheet_rows(layout))
        assert row.to_buy == pytest.approx(laid.cutting.length_m * feet * 0.3048)


def test_strips_longer_than_the_roll_lap_by_the_lap_and_not_by_the_turn_up():
    """Each joint within a strip takes 2 ft of sheet more."""
    roll = '[order.sheet]\nroll_width = "10 ft"\nroll_length = "15 ft"\nlap = "2 ft"\n'
    layout = house(("[soil]", f'{roll}turn_up = "6 in"\n\n[soil]'))
    ((_, laid),) = strip_layouts(layout)
    row, cuts = next(sheet_rows(layout))
    longer = sum(run.length_m for run in laid.runs) + cuts.joints * 2 * 0.3048
    assert cuts.joints > 0
    assert row.to_buy == pytest.approx(longer * 10 * 0.3048)


def test_each_kind_of_tape_comes_in_its_own_roll():
    rolls = '[order.board]\ntape = "10 ft"\n\n[order.sheet]\ntape = "1000 ft"\n\n[soil]'
    rows = {row.item: row for row in order(house(("[soil]", rolls))).rows}
    for item, feet in (("Tape for foam", 10), ("Tape for sheet", 1000)):
        assert rows[item].count == ceil(rows[item].in_place / (feet * 0.3048) - 1e-9)
    assert rows["Tape for foam"].count > rows["Tape for sheet"].count


def test_fabric_says_which_way_it_is_cut():
    def note(width):
        roll = f'[order.fabric]\nroll_width = "{width}"\nroll_length = "300 ft"\n\n[soil]'
        (row,) = (r for r in order(house(("[soil]", roll))).rows if r.item == "Fabric wrap")
        return row.note

    assert note("30 ft").startswith("cut along the roll, ")
    assert " side by side" in note("30 ft")
    assert note("3 ft").startswith("cut across the roll;")
