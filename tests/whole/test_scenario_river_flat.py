"""A low river flat, a floor set high and a pit by high water: an invented design, by hand."""

from math import pi

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.report import Report
from geometry.water.study import study
from tests.whole.situations import FABRIC, FT, FT3, IN, Change, ids, level, of, row, text
from viz.figures.pit.levels import named_levels

RISE: Change = (("water", "water_table"), "-6 in")  # 2 ft up from -2'-6"


def test_river_flat_levels_of_pit_pump_and_water() -> None:
    found = of("river_flat")
    # Grade 7 ft over TOF, 4.5 ft of it brought: old ground +30 in. Water 5 to 7 ft under that.
    water = (30 - 60, 30 - 84)
    assert level(found, "ground before the dig") == pytest.approx(30)
    assert found.water.water_table_m == pytest.approx(water[0] * IN)
    assert found.water.low_water_table_m == pytest.approx(water[1] * IN)
    # Footing bottom 40 in, 3.3 ft, under the old ground: 20 in, 1.7 ft, over the water.
    assert level(found, "footing bottom") - water[0] == pytest.approx(20)
    # Invert 2 in over that, the pit 2.5 ft deeper: 68 in, 5.7 ft, down, 8 in in the water.
    pit = -10 + 2 - 30
    assert level(found, "sump inside bottom") == pytest.approx(pit)
    assert water[0] - pit == pytest.approx(8)
    # Its floats 10 and 16 in up: the pump starts and stops over the water and leaves it alone.
    assert level(found, "pump off") == pytest.approx(pit + 10)
    assert level(found, "pump on") == pytest.approx(pit + 16)
    (held,) = ids(found)["pit-below-water-table"]
    assert held.severity == "fine"
    assert "Ground water stands in the pit, below the level at which the pump starts" in held.found
    low: Change = (("sump", "pump"), {"off": "2 in", "on": "7 in", "flow": "40 gpm"})
    assert ids(of("river_flat", low))["pit-below-water-table"][0].severity == "look"
    layout = lay_out(read_design(text("river_flat")))
    storm = study(layout).pit
    assert storm is not None
    drawn = {named.name: named.level_m / IN for named in named_levels(storm, layout)}
    assert drawn["water table, highest seen"] == pytest.approx(water[0])
    assert drawn["water table, low"] == pytest.approx(water[1])
    assert drawn["pump on"] == pytest.approx(pit + 16)


def drowned(found: Report) -> dict[str, float]:
    """Minutes after the pump's death at the storm's peak, by level."""
    pit = found.water.pit
    assert pit is not None
    return {r.level: r.after_s / 60 for r in pit.pump_dead if r.after_s is not None}


# An inch an hour on a strip of 10 ft round the house, 0.3 of it: 1,840 x 0.3 / 12 = 46 ft3 an hour.
RAIN = ((44 + 20) * (28 + 20) - 44 * 28) * 0.3 / 12


def test_river_flat_minutes_without_power() -> None:
    # The pump dies as it has just stopped, 10 in up: 20 in more to the invert in a pit of 30 in:
    # 8.2 ft3 in 10.7 minutes.
    pit_ft2 = pi * (30 / 12) ** 2 / 4
    held = pit_ft2 * 20 / 12
    minutes = drowned(of("river_flat"))
    assert minutes["drain invert"] == pytest.approx(held / RAIN * 60, rel=1e-3)
    assert minutes["drain invert"] == pytest.approx(10.7, abs=0.05)
    # Then pit and inner drain fill together, 8 in up to the foam. Its stone is a band round a core
    # of 41'-8" x 25'-8", 12 in wide and 8 in high less fabric on either side and twice on top; its
    # voids are 40 %.
    band = (44 - 28 / 12) * (28 - 28 / 12) - (44 - 52 / 12) * (28 - 52 / 12)
    fabric = 2 * FABRIC
    held += pit_ft2 * 8 / 12 + 0.4 * band * (1 - fabric / 12) * (8 - fabric) / 12
    assert minutes["foam bottom"] == pytest.approx(held / RAIN * 60, rel=2e-3)
    assert minutes["foam bottom"] < 60
    assert ids(of("river_flat"))["pump-dead"][0].severity == "look"


def test_river_flat_if_the_water_rises_two_feet() -> None:
    before, after = of("river_flat"), of("river_flat", RISE)
    # At -6 in it stands 2 in over the inverts, 16 in over the pump's start at -22 in.
    (words,) = ids(after)["pit-below-water-table"]
    assert words.severity == "look"
    assert "day after day" in words.found
    # Dupuit, K = 1e-4 m/s, 100 ft off, tight ground at -20 ft: 19.5 and 19.33 ft of water, over the
    # outer pipe's length: 44 + 28 + 4 x 14 / 12 ft, twice. The ground's water comes from outside.
    assert before.water.inflow is not None
    assert after.water.inflow is not None
    assert before.water.inflow.ground_high_m3_per_s == 0
    high, low = 19.5 * FT, (20 - 8 / 12) * FT
    length = 2 * (44 + 28 + 4 * 14 / 12) * FT
    ground = 1e-4 * (high**2 - low**2) / (2 * 100 * FT) * length
    assert after.water.inflow.ground_high_m3_per_s == pytest.approx(ground, rel=1e-6)
    peak = RAIN * FT3 / 3600 + ground
    assert after.water.inflow.peak_m3_per_s == pytest.approx(peak, rel=1e-6)
    # So much sooner is the pit full.
    assert drowned(after)["drain invert"] / drowned(before)["drain invert"] == pytest.approx(
        (peak - ground) / peak, rel=1e-3
    )


@pytest.mark.parametrize(("table_in", "severity"), [(-30, "fine"), (-6, "fine"), (18, "stop")])
def test_river_flat_uplift(table_in: float, severity: str) -> None:
    # 4 in of concrete at 2,400 kg/m3 on the foam, whose underside lies at -0.01 in: it floats when
    # water stands 9.6 in over that. 2 ft more water does not lift it, 4 ft more does.
    found = of("river_flat", (("water", "water_table"), f"{table_in} in"))
    build_up = next(f for f in found.water.floating if f.body == "build-up")
    assert build_up.floats_at_m / IN == pytest.approx(-0.01 + 4 * 2.4, abs=0.1)
    worst = max((f.severity for f in ids(found)["floor-floats"]), key=["fine", "stop"].index)
    assert worst == severity
    if severity == "stop":
        assert build_up.safety == pytest.approx(9.6 / (18 + 0.01), abs=0.01)


def test_river_flat_fill_is_the_order() -> None:
    sand = row(of("river_flat"), "SP")
    parts = {p.name: p.in_place / FT3 for p in sand.parts}
    # Grade 4.5 ft up, falling 1 in 4 from the walls: at u under the top it reaches 4 u out. The
    # frustum less the house: 8 x (44 + 28) u^2 / 2 + 64 u^3 / 3 at 4.5 ft = 7,776 ft3 = 288 yd3.
    grade = 8 * (44 + 28) * 4.5**2 / 2 + 64 * 4.5**3 / 3
    assert parts["Finished grade"] == pytest.approx(grade, rel=1e-3)  # two risers come out of it
    # The hole: 2 ft outside a footing of 45 x 29 ft, sides 1:1, 40 in deep.
    deep = 40 / 12
    hole = 49 * 33 * deep + (49 + 33) * deep**2 + 4 * deep**3 / 3
    footing, house = 45 * 29 * 10 / 12, 44 * 28 * 30 / 12
    # The outer drain's stone, 16 in wide, from -9.89 to +6.07 in, over the footing's ledge too.
    outside = (45 + 32 / 12) * (29 + 32 / 12)
    drain = (outside - 45 * 29) * 9.89 / 12 + (outside - 44 * 28) * 6.07 / 12
    assert parts["Backfill"] == pytest.approx(hole - footing - house - drain, rel=2e-3)
    # Loose: 1.25 over 0.90 of a bank yard, 39 % more, and 5 % lost: 357 yd3 in place are 522.
    whole = sum(parts.values())
    assert sand.to_buy / FT3 == pytest.approx(whole * 1.39 * 1.05, rel=1e-9)
    assert sand.count == pytest.approx(whole * 1.39 * 1.05 / 27, rel=1e-9)
    others = [r for r in of("river_flat").order.rows if r.sold == "yd3" and r.item != "SP"]
    assert sand.count > 5 * sum(r.count for r in others)
