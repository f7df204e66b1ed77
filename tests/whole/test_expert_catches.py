"""Mistakes an old hand sees at a glance: each a whole design, with a sound one beside it.

The house is that of the first design file. Footing 10 in thick and 20 in wide under an 8 in wall,
so it stands out 6 in; pipe 4.215 in outside, 4.065 in inside, wall 0.075 in; wrap 1.75 mm. Sand's
top at TOF: 10 mil of sheet and 2 in of foam under the slab, whose underside lies at +2.01 in and
the floor at +6.01 in. Levels in inches against TOF.
"""

from math import isclose

import pytest

from geometry.designfile import read_design, start_text
from geometry.layout.lay import lay_out
from geometry.report import Found, Report, report

INCH, FOOT = 0.0254, 0.3048
SLAB_UNDERSIDE, FLOOR = 2.01, 6.01
OUTSIDE_TO_INVERT = 4.065 + 0.075  # from the invert up to the crown
LOWEST_INVERT = -10 + 1.75 / 25.4 + 2 + 0.075


def house(*edits: tuple[str, str], more: str = "") -> Report:
    text = start_text()
    for old, new in edits:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    return report(lay_out(read_design(text + more)))


def the(done: Report, name: str) -> Found:
    (found,) = (f for f in done.findings if f.id == name)
    return found


def between(low: tuple[float, float], high: tuple[float, float], share: float) -> float:
    """Grain size between two sieves (mm, share passing), by its logarithm."""
    (small, below), (large, above) = low, high
    return float(small * (large / small) ** ((share - below) / (above - below)))


def test_half_inch_holes_in_no_57_stone() -> None:
    # ASTM C33, No. 57, as fine as it may be delivered: 60 % pass 1/2 in, 10 % pass No. 4.
    d50 = between((4.75, 0.10), (12.5, 0.60), 0.50)
    assert d50 < 12.7
    found = the(house(), "holes-hold-stone")
    assert found.severity == "look"
    assert "50% or more of the stone is smaller than the hole" in found.found
    assert f"D50 {d50 / 12.7:.2f} fine edge" in found.found
    assert "smaller holes" in found.advice
    drilled = ("[drain]\n", '[drain]\nholes = { diameter = "3/8 in" }\n')
    assert the(house(drilled), "holes-hold-stone").severity == "fine"


def test_sand_straight_on_washed_stone() -> None:
    # No. 57 as coarse as it may be: 25 % pass 1/2 in, none No. 4. Sand (ASTM C33) as fine as it may
    # be: 85 % pass No. 16, 1.18 mm. A filter has at most 5.
    ratio = between((4.75, 0.0), (12.5, 0.25), 0.15) / 1.18
    assert ratio > 5
    found = the(house(), "sand-on-stone")
    assert found.severity == "look"
    assert f"{ratio:.1f} at worst" in found.found
    assert "is no filter for" in found.found
    assert "the upper sinks into its voids" in found.found
    assert "choker of finer stone" in found.advice
    finer = ('"stone", material = "stone-57"', '"stone", material = "stone-89"')
    assert the(house(finer), "sand-on-stone").severity == "fine"


def test_a_slope_that_cannot_fit() -> None:
    # From the lowest invert the footing allows to that whose crown meets the slab's underside.
    room = SLAB_UNDERSIDE - OUTSIDE_TO_INVERT - LOWEST_INVERT
    steep = house(("1/16 in per ft", "1/4 in per ft"))
    slope, found = steep.drain.slope if steep.drain else None, the(steep, "drain-slope-fits")
    assert slope is not None
    # All round, 8 in off the footing that stands out 6 in: half of it at least is one branch.
    half_ft = 36 + 28 + 4 * (6 + 8) / 12
    assert slope.longest_branch_m >= half_ft * FOOT - 1e-6
    needed = slope.longest_branch_m / FOOT / 4
    assert needed > room
    assert isclose(slope.short_m / INCH, needed - room, abs_tol=1e-3)
    assert found.severity == "look"
    assert found.found.startswith("The fall does not fit.")
    assert "What buys room" in found.advice
    # A sixteenth in a foot needs a quarter of it.
    assert needed / 4 < room
    assert the(house(), "drain-slope-fits").severity == "fine"


PUMP = (
    'at = "3 ft 6 in, 6 ft" ',
    'pump = { off = "4 in", on = "10 in" }\nat = "3 ft 6 in, 6 ft" ',
)


@pytest.mark.parametrize(("table", "severity"), [(-12, "look"), (-20, "fine")])
def test_a_pump_that_pumps_ground_water_day_after_day(table: int, severity: str) -> None:
    # The pit is 30 in deep, the pump starts 10 in over its bottom.
    starts = FLOOR - 30 + 10
    assert (table > starts) == (severity == "look")
    water = f'\n[soil]\ngroup = "SM"\n[water]\nwater_table = "{table} in"\nlow_water_table = '
    found = the(house(PUMP, more=f'{water}"-4 ft"'), "pit-below-water-table")
    assert found.severity == severity
    assert ("pumps ground water day after day" in found.found) == (severity == "look")
    assert "the pump starts at -1'-2\"" in found.found
    always = house(PUMP, more=f'{water}"{table} in"')
    assert ("the year round" in the(always, "pit-below-water-table").found) == (table > starts)


def test_a_roof_led_into_the_drain() -> None:
    # 900 sq ft under an inch an hour: 75 cubic feet an hour, at 7.48 gallons each.
    rain = '\n[water]\nstorm = "steady"\nrain = "2 in"\nduration = "2 h"\nshare = 0.3\n'
    gpm = 900 / 12 * 1728 / 231 / 60
    found = the(house(more=f'{rain}roof = "900 sq ft"'), "roof-in-drain")
    assert found.severity == "look"
    assert "Downspouts end in the foundation drain" in found.found
    assert f"it brings {gpm:.2f} gpm" in found.found
    assert "solid pipe" in found.advice
    assert "roof-in-drain" not in {f.id for f in house(more=rain).findings}


RULES = """
[[height_rule]]
name = "pipe under the footing's top"
point = "crown"
at = "at or below"
level = "TOF {}"
why = "the building inspector (invented)"

[[height_rule]]
name = "pipe off the footing's bottom"
point = "invert"
at = "at or above"
level = "TOF {}"
why = "the septic inspector (invented)"
"""


def test_two_inspectors_who_cannot_both_be_pleased() -> None:
    # The one wants the crown at -6 in or lower, so a level pipe's invert 4.14 in under that; the
    # other the invert at -8 in or higher.
    level = ("1/16 in per ft", "level")
    apart = -8 - (-6 - OUTSIDE_TO_INVERT)
    assert apart > 0
    done = house(level, more=RULES.format("-6 in", "-8 in"))
    found = the(done, "drain-rules-asked-clash")
    assert found.severity == "look"
    assert "the building inspector (invented)" in found.found
    assert "the septic inspector (invented)" in found.found
    assert "before the trench is dug" in found.advice
    assert done.drain is not None
    assert done.drain.heights is not None
    (clash,) = (c for c in done.drain.heights.clashes if c.up.startswith("own: ") and c.asked)
    assert isclose(clash.apart_m / INCH, apart, abs_tol=1e-6)
    assert clash.sentence in found.found
    # The pipe's top 2 in under TOF leaves its invert more than the other wants.
    friends = house(level, more=RULES.format("-2 in", "-8 in"))
    assert "drain-rules-asked-clash" not in {f.id for f in friends.findings}
