"""Foam over interior footings, which owner and crew see differently: three invented designs.

Foam over strip and pads, pads raised through it, foam stopped at the footing; their figures
re-derived by hand. Lengths in inches and feet.
"""

import re

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.options import EdgeOption, edge_options, moved
from geometry.report import report
from tests.whole.situations import (
    BORE,
    FABRIC,
    FT,
    IN,
    PIPE_WALL,
    TON,
    YD3,
    Change,
    ids,
    level,
    of,
    report_on,
    row,
    text,
)
from viz.drawing.marks import Text
from viz.job import job
from viz.sheets.alternatives import alternatives

# The trench may go down to the footing's bottom: fabric, 2 in of bedding, the pipe's wall.
LOWEST_INVERT = -10 + FABRIC + 2 + PIPE_WALL
INVERT_TO_CROWN = BORE + PIPE_WALL

# 40 x 28 ft outside, walls 8 in with 2 in of foam inside, 10 in in all: the slab's plan.
SLAB = (40 - 20 / 12) * (28 - 20 / 12)  # 38'-4" x 26'-4" = 1,009.4 ft2
# Footing 20 in under a wall of 8 in: it stands in by 6 in, 14 in from outside.
CORE = (40 - 28 / 12) * (28 - 28 / 12)  # 37'-8" x 25'-8" = 966.8 ft2
PADS = 4 * 3 * 3  # ft2
SHEET = 0.01  # 10 mil, in
FOAM_CASES = {
    # name: stone top, foam top, finished floor, pad tops; in
    "foam_over_pads": (0.0, 2.0, 2 + SHEET + 4, 0.0),
    "pads_raised": (0.0, 2.0, 2 + SHEET + 4, 2.0),
    "foam_at_footing": (-2.0, 0.0, 0 + SHEET + 4, 0.0),
}
FOAM_AREA = {
    "foam_over_pads": SLAB,  # to the walls' foam, over strip and pads
    "pads_raised": SLAB - PADS,
    "foam_at_footing": CORE - PADS,  # between the footings
}


def without_drains(name: str, *changes: Change) -> str:
    """Floor and footings alone: pit and inner drain take room of the stone."""
    whole = text(name, *changes)
    kept, order = whole.split("[[drain]]")[0], whole[whole.index("[order]") :]
    return kept + order


@pytest.mark.parametrize("name", FOAM_CASES)
def test_foam_levels_and_pad_tops_for_the_crew(name: str) -> None:
    stone, foam, floor, pads = FOAM_CASES[name]
    found = of(name)
    assert level(found, "stone top") == pytest.approx(stone, abs=1e-9)
    assert level(found, "foam top") == pytest.approx(foam, abs=1e-9)
    assert level(found, "slab top (finished floor)") == pytest.approx(floor, abs=1e-9)
    tops = [r for r in found.levels if re.fullmatch(r"pad P\d top", r.interface)]
    assert [r.level_m / IN for r in tops] == pytest.approx([pads] * 4, abs=1e-9)
    # The laser stands 4 ft over TOF: the rod reads so much less as the pad is higher.
    assert [r.rod_reading_m for r in tops] == pytest.approx([4 * FT - pads * IN] * 4)


@pytest.mark.parametrize("name", FOAM_CASES)
@pytest.mark.parametrize("density", [1.4, 1.5, 1.7])
def test_foam_stone_slab_and_sheets_to_order(name: str, density: float) -> None:
    neat = {"density": f"{density} ton/yd3", "compaction": "0 %", "waste": "0 %"}
    found = report_on(without_drains(name, (("order", "stone"), neat)))
    # 4 in of stone between the footings, pads out: (966.8 - 36) / 3 = 310.3 ft3 = 11.49 yd3,
    # at 1.4, 1.5 and 1.7 short tons a yard 16.1, 17.2 and 19.5.
    stone = (CORE - PADS) / 3 / 27
    bought = row(found, "stone-57")
    assert bought.in_place / YD3 == pytest.approx(stone, rel=1e-9)
    assert bought.mass_kg is not None
    assert bought.mass_kg[0] / TON == pytest.approx(stone * density, rel=1e-6)
    # 4 in of slab: 1,009.4 / 3 = 336.5 ft3 = 12.46 yd3 in every case.
    assert row(found, "Slab").in_place / YD3 == pytest.approx(SLAB / 3 / 27, rel=1e-9)
    # Sheets of 4 x 8 ft before waste: 1,009.4, 973.4 and 930.8 ft2 are 31.5, 30.4 and 29.1.
    sheets = row(found, "Foam").in_place / FT**2 / 32
    assert sheets == pytest.approx(FOAM_AREA[name] / 32, rel=1e-9)


def test_foam_half_an_inch_of_low_stone_is_concrete() -> None:
    # Low between footings and pads by half an inch: (966.8 - 36) / 24 = 38.8 ft3 = 1.44 yd3, of
    # 12.46 yd3 11.5 %. The floor stays where it was. (The sheet, drawn flat, frees its 10 mil on
    # ledge and pads: 0.002 yd3.)
    low: list[Change] = [
        (("floor", "tie"), "subgrade at -6 in"),
        (("floor", "layer", 0, "thickness"), "3 1/2 in"),
        (("floor", "layer", 3, "thickness"), "4 1/2 in"),
    ]
    before, after = (
        report_on(without_drains("foam_at_footing", *changes)) for changes in ([], low)
    )
    top = "slab top (finished floor)"
    assert level(before, top) == pytest.approx(level(after, top), abs=1e-9)
    slabs = [row(r, "Slab").in_place / YD3 for r in (before, after)]
    sheet = (SLAB - CORE + PADS) * SHEET / 12
    assert slabs[1] - slabs[0] == pytest.approx(((CORE - PADS) / 24 + sheet) / 27, rel=1e-6)
    assert (slabs[1] - slabs[0]) / slabs[0] == pytest.approx(0.115, abs=5e-4)
    # The order's own line speaks of the whole slab, 1/8 in: a quarter of 1,009.4 / 24 ft3, 3.1 %.
    (pour,) = (p for p in before.order.pours if p.name == "Slab")
    assert (pour.step_m, pour.step_share) == pytest.approx((IN / 8, 1 / 32))
    assert pour.step_m3 is not None
    assert 4 * pour.step_m3 / YD3 == pytest.approx(SLAB / 24 / 27, rel=1e-6)


@pytest.mark.parametrize("name", FOAM_CASES)
def test_foam_slope_beside_a_footing_of_ten_inches(name: str) -> None:
    found = of(name)
    slope = next(d.slope for d in found.drains if d.line == "outside")
    assert slope is not None
    # Half way round the pipe, 14 in outside the walls: 40 + 28 + 4 x 14 / 12 = 72.7 ft; 68 ft along
    # the walls themselves. A sixteenth of an inch a foot: 4.54 in; 4.25 in.
    assert slope.longest_branch_m / FT == pytest.approx(40 + 28 + 4 * 14 / 12)
    assert slope.needed_m / IN == pytest.approx((40 + 28 + 4 * 14 / 12) / 16)
    # Up to the slab's underside: 2.01 or 0.01 in, less 4.14 in of pipe, from -7.86 in: 5.73, 3.73.
    underside = FOAM_CASES[name][1] + SHEET
    room = underside - INVERT_TO_CROWN - LOWEST_INVERT
    assert (slope.highest_invert_m - slope.lowest_invert_m) / IN == pytest.approx(room, abs=1e-6)
    fits = name != "foam_at_footing"
    assert (room >= 68 / 16, slope.short_m == 0) == (fits, fits)
    assert slope.by_rule[0].level_fits
    words = next(f for f in ids(found)["drain-slope-fits"] if f.subject.startswith("outside"))
    assert words.severity == ("fine" if fits else "look")
    assert fits or any(w.key == "level" or "level" in w.sentence for w in slope.ways)


def options(name: str) -> dict[str, EdgeOption]:
    return {o.key: o for o in edge_options(read_design(text(name)))}


def test_foam_every_way_moves_every_level_and_says_what_else() -> None:
    before = of("foam_at_footing")
    changed = {
        key: report(lay_out(o.design)) for key, o in options("foam_at_footing").items() if o.design
    }
    assert set(changed) == {"over", "stopped", "turned up", "pads raised"}
    # Foam over the footing: all of the floor 2 in up; the pads stay where they are poured, or rise.
    for key, pads in (("over", 0.0), ("pads raised", 2.0)):
        after = changed[key]
        for name in ("subgrade", "stone top", "foam top", "slab top (finished floor)"):
            assert level(after, name) - level(before, name) == pytest.approx(2), name
        assert level(after, "pad P1 top") == pytest.approx(pads)
        moves = moved(before, after)
        assert moves.headroom.by / IN == pytest.approx(-2)
        # Slab on the ledge: from the foam's foot on the walls, 10 in in, to the footing's edge.
        assert moves.cold_ledge.before / FT**2 == pytest.approx(SLAB - CORE)
        assert moves.cold_ledge.after == 0
        assert moves.cold_piers.before / FT**2 == pytest.approx(PADS)
        assert moves.cold_piers.after / FT**2 == pytest.approx(0 if key == "over" else PADS)


WINNER = re.compile(
    r"\b(best|better|worse|recommend\w*|prefer\w*|winner|ideal\w*|superior)\b", re.I
)


@pytest.mark.parametrize("name", FOAM_CASES)
def test_foam_no_way_is_named_the_winner(name: str) -> None:
    found = of(name)
    words = [w for f in found.findings for w in (f.subject, f.found, f.asked, f.advice)]
    words += [r.note for r in found.order.rows]
    for option in options(name).values():
        words += [option.title, option.note, *option.faults]
    assert len(words) > 100
    assert [w for w in words if WINNER.search(w)] == []


@pytest.mark.slow
@pytest.mark.parametrize("name", FOAM_CASES)
def test_foam_no_sheet_for_decision_names_a_winner(name: str) -> None:
    sheets = alternatives(job(text(name)), "ARCH D")
    words = [m.words for sheet in sheets for m in sheet.drawing.marks if isinstance(m, Text)]
    assert [w for w in words if WINNER.search(w)] == []
    drawn = " ".join(words)
    pads = "pads raised" if name != "pads_raised" else "the pads"
    for title in ("Foam over the footing", "stopped at the footing", "edge turned up", pads):
        assert title in drawn
