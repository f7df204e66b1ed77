"""What is sound is told to be built so; what is not never is, whatever the check."""

import pytest

from geometry.checks.finding import Finding
from geometry.checks.outlets import outlet_findings
from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.report import Found, report
from tests.geometry.checks.test_findings_raised import LOW_TRENCH, SOUND, WET, WRONG
from tests.geometry.checks.test_outlet_findings import HILL, run
from tests.houses import edited
from tests.whole.networks import TEXTS

# How advice begins where nothing is to be changed.
CALM = (
    "Build it so", "Cast them in", "Cut it so", "Dig it so", "Flush from there", "Keep a spare",
    "Keep both", "Keep it", "Keep wheels off the last", "Lay it so", "Lay no perforated",
    "Lay stones under the end", "Pour it so", "Pour them so", "Set the float so",
    "Stake the open end", "Still backfill", "Use it",
)  # fmt: skip
# Said alike of both, or of nothing that can be changed.
ALIKE = {"backfill-state", "wall-flooded", "drain-rules-clash", "drain-risers"}
AGREEING = ('"foam bottom at TOF"', '["foam bottom at TOF", "subgrade at -6 in"]')
SOFT = ('pipe = "sdr35-4"', 'pipe = "d2729-4"\nstone = { material = "crusher-run" }')
FLAT = ('fall = "1/16 in per ft"', 'fall = "level"\noutlet_invert = "-7 in"')
FEW = ("cleanouts = [3]", "cleanouts = [1, 2, 3, 4]")
HOUSES = {
    "sound": edited(*SOUND), "wrong": edited(*WRONG), "wet": edited(*WET),
    "low trench": edited(*LOW_TRENCH), "agreeing": edited(AGREEING, FEW), "soft": edited(SOFT),
    "flat": edited(FLAT, ("cleanouts = [3]", "")),
    "flooded": edited(*WET, ('rain = "4 in"', 'rain = "40 in"'), ("-13 in", "2 ft")),
    "wheel": edited(("[soil]", '[loads]\npoint = "2000 lbf"\nwheel = "16000 lbf"\n\n[soil]')),
    "tank": edited(("[soil]", '[loads]\npoint = "9000 lbf"\n\n[soil]')),
}  # fmt: skip
HOUSES |= {name: TEXTS[name] for name in ("both to the pit", "upper to lower stone", "daylight")}
FAR = ((0, 6), (40, 0), (60, 3), (150, -8))
RUNS = (
    run(*HILL, high_water="-6 ft"), run(*HILL, high_water="-1 ft"), run(*HILL, high_water="1 ft"),
    run(*HILL, fall="1/16 in per ft"), run(*HILL, above_ground="2 in"), run(*HILL, guard=False),
    run(*HILL[:2], (150, -4), (170, 0)), run((0, -1), (40, -3)), run((0, 1), (40, -3)), run(*FAR),
    run((0, 4), (100, 1)),
)  # fmt: skip


def fits(found: Finding | Found) -> bool:
    return found.id in ALIKE or (found.severity == "fine") == found.advice.startswith(CALM)


@pytest.mark.parametrize("name", HOUSES)
def test_advice_on_a_house_fits_how_grave_it_is(name: str) -> None:
    found = report(lay_out(read_design(HOUSES[name]))).findings
    assert len(found) > 15
    assert [(f.id, f.severity, f.advice) for f in found if not fits(f)] == []


@pytest.mark.parametrize("peak", [0.001, 0.1])
def test_advice_on_an_outlet_fits_how_grave_it_is(peak: float) -> None:
    found = [f for one in RUNS for f in outlet_findings(one, peak, "ft-in")]
    assert {f.severity for f in found} == {"fine", "look", "stop"}
    assert [(f.id, f.severity, f.advice) for f in found if not fits(f)] == []
