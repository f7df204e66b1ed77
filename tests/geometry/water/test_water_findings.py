"""Findings on water: for each a design that passes and one that fails, worked by hand."""

import pytest
from drained_box import box
from wet_box import GROUND, STEADY, wet

from geometry.checks.finding import Finding
from geometry.checks.water import water_findings
from geometry.layout.lay import Layout

EVERYTHING = STEADY + 'water_table = "-3 ft"\nconductivity = "1e-6 cm/s"\n'


def found(layout: Layout) -> dict[str, Finding]:
    rows = list(water_findings(layout))
    by_id = {f.id: f for f in rows}
    assert len(by_id) == len(rows)
    return by_id


def test_a_sound_design_has_nothing_lacking() -> None:
    rows = found(wet(EVERYTHING))
    assert "water-not-given" not in rows
    assert "roof-in-drain" not in rows
    assert all(f.severity == "fine" for name, f in rows.items() if name != "pump-starts")


def test_roof_water_in_the_drain_says_what_it_brings() -> None:
    # 900 ft2 at an inch an hour is 9.35 gpm beside 3.12 gpm through the backfill.
    rows = found(wet(EVERYTHING + 'roof = "900 sq ft"'))
    assert rows["roof-in-drain"].severity == "look"
    assert "9.35 gpm" in rows["roof-in-drain"].found
    assert "3.12 gpm" in rows["roof-in-drain"].found


def test_a_roof_without_rain_is_still_said() -> None:
    rows = found(wet('roof = "900 sq ft"'))
    assert "in every rain" in rows["roof-in-drain"].found


@pytest.mark.parametrize(
    ("table", "severity", "words"),
    [
        ("-27 in", "fine", "stays above it"),
        ("-17 in", "fine", "stands in the pit, below the level at which the pump starts"),
        ("-15 in", "look", "pumps ground water day after day, rain or none, while it stands so"),
        ('-1 in"\nlow_water_table = "-17 in', "look", "as long as it stands higher than that"),
        ('-1 in"\nlow_water_table = "-15 in', "look", "rain or none, the year round"),
    ],
)
def test_a_pit_below_the_water_table(table: str, severity: str, words: str) -> None:
    # The floor lies at +4 in, the pit is 30 in deep: its bottom at -26 in; 10 in over it the pump
    # starts, at -16 in.
    rows = found(wet(EVERYTHING.replace("-3 ft", table)))
    assert rows["pit-below-water-table"].severity == severity
    assert "bottom at -2'-2\"" in rows["pit-below-water-table"].found
    assert "starts at -1'-4\"" in rows["pit-below-water-table"].found
    assert words in rows["pit-below-water-table"].found


def test_without_a_pump_the_pit_s_bottom_is_held_against_the_water_table() -> None:
    for table, severity in (("-27 in", "fine"), ("-25 in", "look")):
        row = found(wet(EVERYTHING.replace("-3 ft", table), pump=None))["pit-below-water-table"]
        assert row.severity == severity
    # Nothing is known of the ground: what comes is not known, but the pump works all the same.
    row = found(wet('water_table = "-25 in"', pump=None))["pit-below-water-table"]
    assert row.severity == "look"
    assert "how much of it comes is not known" in row.found


@pytest.mark.parametrize(
    ("flow", "rain", "severity"),
    [("4 gpm", "2 in", "fine"), ("3 gpm", "2 in", "look"), ("3 gpm", "60 in", "stop")],
)
def test_the_pump_against_the_peak(flow: str, rain: str, severity: str) -> None:
    # 2 in bring 3.12 gpm for two hours: 3 gpm leave a quarter of a gallon a minute to the pit.
    pump = f'pump = {{ off = "2 in", on = "10 in", flow = "{flow}" }}'
    rows = found(wet(EVERYTHING.replace('"2 in"', f'"{rain}"', 1), pump))
    assert rows["pump-throws-peak"].severity == severity
    assert (f"{flow[0]}.00 gpm") in rows["pump-throws-peak"].found


@pytest.mark.parametrize(("flow", "severity"), [("20 gpm", "look"), ("3 gpm", "fine")])
def test_starts_of_the_pump(flow: str, severity: str) -> None:
    # 8 in of an 18 in pit hold 8.8 gal: 3.12 gpm in, 20 gpm out is a start every 3.3 minutes.
    # A pump that throws less than what comes never stops once it runs.
    pump = f'pump = {{ off = "2 in", on = "10 in", flow = "{flow}" }}'
    rows = found(wet(EVERYTHING, pump))
    assert rows["pump-starts"].severity == severity
    assert "10 starts an hour" in rows["pump-starts"].asked


@pytest.mark.parametrize(("rain", "severity"), [("2 in", "fine"), ("20 in", "look")])
def test_how_long_the_floor_stays_dry_with_the_pump_dead(rain: str, severity: str) -> None:
    # Foam at -2 in; 2 in bring 25 ft3 an hour against some 38 ft3 of stone and pit below it.
    rows = found(wet(EVERYTHING.replace('"2 in"', f'"{rain}"', 1)))
    assert rows["pump-dead"].severity == severity
    if severity == "look":
        assert "foam bottom after" in rows["pump-dead"].found


@pytest.mark.parametrize(("table", "severity"), [("7 in", "fine"), ("8 in", "stop")])
def test_the_floor_against_the_highest_water_table(table: str, severity: str) -> None:
    # 4 in of concrete and 2 in of foam float with water 9.6 in and a little over the foam's
    # underside at -2 in.
    rows = found(wet(EVERYTHING.replace("-3 ft", table)))
    assert rows["floor-floats"].severity == severity
    assert (rows["floor-floats"].advice == "Keep it.") == (severity == "fine")


@pytest.mark.parametrize(
    "water", ["", STEADY, 'water_table = "TOF"', 'storm = "SCS II"\nrain = "4 in"']
)
def test_what_is_not_given_is_one_finding(water: str) -> None:
    rows = found(wet(water, pump=None))
    assert rows["water-not-given"].severity == "look"
    assert "the pump" in rows["water-not-given"].found


def test_a_house_that_drains_by_itself_lacks_no_pump() -> None:
    rows = found(box(more=f"{GROUND}[water]\n{EVERYTHING}"))
    assert {"pump-dead", "pump-starts", "water-not-given"}.isdisjoint(rows)
