"""The pit of a box over the storm: store, starts and times worked by hand."""

from math import pi

import pytest
from drained_box import WRAP
from wet_box import FOOT, GPM, GROUND, INCH, STEADY, wet

from geometry.layout.lay import Layout
from geometry.water.inflow import inflow
from geometry.water.pit import PitStorm, pit_storm

PIT = pi / 4 * (18 * INCH) ** 2
# Stone beside the footing: 16 in wide round 31 x 21 ft, inside its wrap.
STONE = 0.40 * (
    (31 * 12 + 32 - 2 * WRAP) * (21 * 12 + 32 - 2 * WRAP) - (31 * 12 + 2 * WRAP) * (252 + 2 * WRAP)
) * INCH**2  # fmt: skip
RAIN = 25 * FOOT**3 / 3600


def storm(layout: Layout) -> PitStorm:
    found = pit_storm(layout, inflow(layout))
    assert found is not None
    return found


def after(found: PitStorm, name: str) -> float | None:
    (one,) = (r.after_s for r in found.reached if r.mark.name == name)
    return one


def test_the_store_is_pit_and_stone_above_the_invert() -> None:
    layout = wet()
    found = storm(layout)
    assert layout.drain is not None
    invert, low = layout.drain.outlet_invert, 4 * INCH - 30 * INCH
    assert found.store.volume(invert) == pytest.approx(PIT * (invert - low), rel=1e-9)
    # At TOF, below which the stone lies beside the footing alone but for the wrap on its ledge.
    whole = PIT * -low + STONE * -invert
    assert found.store.volume(0.0) == pytest.approx(whole, rel=1e-9)
    assert found.store.spill_m == pytest.approx(4 * INCH)


def test_a_pump_larger_than_the_inflow_keeps_water_at_its_on_level() -> None:
    found = storm(wet())
    assert found.pumped is not None
    assert found.pumped.highest_m == pytest.approx(-26 * INCH + 10 * INCH, abs=1e-9)
    # 8 in of the pit filled by 3.117 gpm, emptied by 20 gpm less that.
    wet_m3 = PIT * 8 * INCH
    cycle = wet_m3 / RAIN + wet_m3 / (20 * GPM - RAIN)
    assert found.wet_m3 == pytest.approx(wet_m3, rel=1e-9)
    assert found.most_starts in {int(3600 // cycle), int(3600 // cycle) + 1}
    assert found.worst_starts == pytest.approx(3600 * 20 * GPM / (4 * wet_m3), rel=1e-9)


def test_with_the_pump_dead_water_rises_by_what_comes_over_what_is_held() -> None:
    layout = wet()
    found = storm(layout)
    assert layout.drain is not None
    invert = layout.drain.outlet_invert
    # The rain is steady, so its peak begins at once, with the water where the pump stops.
    to_invert = PIT * (invert + 24 * INCH) / RAIN
    assert after(found, "drain invert") == pytest.approx(to_invert, rel=1e-9)
    to_foam = to_invert + (PIT + STONE) * (-2 * INCH - invert) / RAIN
    assert after(found, "foam bottom") == pytest.approx(to_foam, rel=1e-9)
    assert found.first_on_floor_s == after(found, "foam bottom")
    assert after(found, "finished floor") is None


def test_marks_rise_and_so_do_their_times() -> None:
    found = storm(wet(STEADY.replace('"2 in"', '"20 in"')))
    levels = [r.mark.level_m for r in found.reached]
    times = [r.after_s for r in found.reached]
    assert found.reached[0].mark.name == "drain invert"
    assert levels == sorted(levels)
    assert None not in times
    assert times == sorted(times, key=lambda t: t or 0.0)


def test_a_pit_without_pump_begins_empty_at_the_peak() -> None:
    layout = wet(pump=None)
    found = storm(layout)
    assert layout.drain is not None
    assert found.pumped is None
    assert found.most_starts is None
    to_invert = PIT * (layout.drain.outlet_invert + 26 * INCH) / RAIN
    assert after(found, "drain invert") == pytest.approx(to_invert, rel=1e-9)


def test_a_pump_of_unknown_flow_dies_just_before_it_starts() -> None:
    layout = wet(pump='pump = { off = "2 in", on = "10 in" }')
    found = storm(layout)
    assert layout.drain is not None
    assert found.pumped is None
    to_invert = PIT * (layout.drain.outlet_invert + 16 * INCH) / RAIN
    assert after(found, "drain invert") == pytest.approx(to_invert, rel=1e-9)


def test_a_scs_storm_kills_the_pump_at_its_steepest() -> None:
    # Type II has its steepest six minutes from 11.8 to 12.0 h.
    found = storm(wet(STEADY.replace("steady", "SCS II").replace('"2 h"', '"24 h"')))
    assert found.series.peak_s == pytest.approx(11.8 * 3600, abs=360)
    _, dead = found.sampled(60.0)
    before = dead.pumped_m3[dead.times_s <= found.series.peak_s]
    assert dead.pumped_m3[-1] == pytest.approx(before[-1], abs=1e-3)


def test_a_pit_without_pump_begins_at_the_steepest_of_a_storm() -> None:
    layout = wet(STEADY.replace("steady", "SCS II").replace('"2 h"', '"24 h"'), pump=None)
    found = storm(layout)
    assert layout.drain is not None
    # Filled to the invert before the steepest block is over.
    peak = max(found.series.inflows_m3s)
    to_invert = PIT * (layout.drain.outlet_invert + 26 * INCH) / peak
    assert after(found, "drain invert") == pytest.approx(to_invert, rel=1e-9)
    # A day follows the storm.
    assert found.series.times_s[-1] == pytest.approx(48 * 3600)


def test_ground_alone_fills_the_pit_for_a_day() -> None:
    water = 'water_table = "TOF"\nconductivity = "1e-2 cm/s"\nreach = "10 ft"'
    found = storm(wet(water))
    coming = inflow(wet(water))
    assert coming is not None
    assert found.storm is None
    assert found.dead.came_m3[-1] == pytest.approx(86400 * (coming.ground_m3s or 0), rel=1e-12)


@pytest.mark.parametrize("water", ["", 'water_table = "TOF"', 'roof = "900 sq ft"'])
def test_without_a_known_inflow_no_pit_is_marched(water: str) -> None:
    layout = wet(water, more=GROUND)
    assert pit_storm(layout, inflow(layout)) is None
