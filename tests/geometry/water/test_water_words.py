"""What is told of pump, pit and floors that float, in figures worked by hand."""

import re

import pytest
from wet_box import STEADY, wet

from geometry.checks.finding import Finding
from geometry.checks.water import water_findings
from geometry.layout.lay import Layout
from tests.houses import WITH_GARAGE, house

EVERYTHING = STEADY + 'water_table = "-3 ft"\nconductivity = "1e-6 cm/s"\n'


def found(layout: Layout, name: str) -> list[Finding]:
    return [f for f in water_findings(layout) if f.id == name]


def pump(flow: str, rain: str = "2 in") -> Layout:
    words = f'pump = {{ off = "2 in", on = "10 in", flow = "{flow}" }}'
    return wet(EVERYTHING.replace('"2 in"', f'"{rain}"', 1), words)


@pytest.mark.parametrize(
    ("flow", "rain", "holds"), [("4 gpm", "2 in", False), ("3 gpm", "2 in", True),
                                ("3 gpm", "60 in", False)],
)  # fmt: skip
def test_water_is_held_against_the_lowest_of_the_floor(flow: str, rain: str, holds: bool) -> None:
    """The foam's underside lies 2 in under TOF. Only a pit that fills and stays dry holds it."""
    (told,) = found(pump(flow, rain), "pump-throws-peak")
    assert "underside of the floor's foam or slab -0'-2\"" in told.found
    assert ("Pit and stone hold what it cannot throw." in told.found) == holds


def test_starts_in_the_storm_and_at_the_worst_inflow() -> None:
    """8 in of 18 in across hold 8.81 gal. 3.12 gpm in and 20 out: 2.83 + 0.52 min, 17.9 an hour.

    At half the pump's flow 0.88 min to fill and as much to empty: 34 an hour.
    """
    (busy,) = found(pump("20 gpm"), "pump-starts")
    times = int(busy.found.split("starts ")[1].split(" times")[0])
    assert times in (17, 18)
    assert "at the worst steady inflow 34 times an hour" in busy.found
    # Slower than what comes: it starts once and runs on; 8.81 gal at 1.5 gpm each way.
    (slow,) = found(pump("3 gpm"), "pump-starts")
    assert "the pump starts 1 time;" in slow.found
    assert "at the worst steady inflow 5 times an hour" in slow.found


def floats(table: str) -> list[tuple[str, str]]:
    water = ("[soil]", f'[water]\nwater_table = "{table}"\n\n[soil]')
    return [(f.subject, f.severity) for f in found(house(WITH_GARAGE, water), "floor-floats")]


def test_of_higher_floors_only_those_that_float_are_told() -> None:
    """The garage's 5 in of slab at +3 ft weigh as much as 12 in of water: it floats at +4 ft."""
    basement, garage = "basement, build-up", "garage, bare slab"
    assert floats("-3 ft") == [(basement, "fine")]
    assert floats("3 ft 11 in") == [(basement, "stop")]
    assert floats("4 ft 1 in") == [(garage, "stop"), (basement, "stop")]


def test_what_floats_is_told_as_slab_or_all_from_the_lowest_sheet_up() -> None:
    water = ("[soil]", '[water]\nwater_table = "5 ft"\n\n[soil]')
    slab, whole = found(house(WITH_GARAGE, water), "floor-floats")
    assert "(the slab alone) floats when water stands at +4'-0" in slab.found
    assert "(everything from its lowest sheet up)" in whole.found
    assert slab.advice == whole.advice


def test_the_water_tables_are_told_and_what_comes_of_the_ground_a_day() -> None:
    low = EVERYTHING.replace("-3 ft", '-1 in"\nlow_water_table = "-17 in')
    (one,), (two,) = (found(wet(water), "pit-below-water-table") for water in (EVERYTHING, low))
    assert "highest water table at -3'-0\". The pit stays above it." in one.found
    assert "highest water table at -0'-1\", lowest at -1'-5\". The pump pumps" in two.found
    # 1440 minutes to a day.
    wetter = found(wet(low.replace("1e-6", "1e-2")), "pit-below-water-table")[0].found
    ((daily, flow),) = re.findall(r"about ([\d.]+) gal a day \(([\d.]+) gpm\)", wetter)
    assert float(daily) == pytest.approx(float(flow) * 1440, rel=0.005)
