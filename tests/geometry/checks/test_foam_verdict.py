"""How foam meets a raised top of footing, in numbers and words, on an invented box."""

import pytest

from geometry.checks.cold import cold_concrete
from geometry.checks.foam import foam_finding, foam_verdict
from geometry.designfile import read_design
from geometry.layout.lay import lay_out

# Metres: 9 x 7 m outside, walls 0.2 m, strips 0.6 m wide: 0.2 m of ledge inside the walls.
TEXT = """
[project]
name = "Foam on a raised footing (invented)"
units = "metric"
[footing]
width = "0.6 m"
thickness = "0.3 m"
[wall]
thickness = "0.2 m"
height = "2.4 m"
[floor]
tie = "foam bottom at TOF {tie}"
layer = [
    {{ name = "stone", material = "stone-57", thickness = "0.15 m", role = "base" }},
    {{ name = "foam", material = "xps-iv", thickness = "0.05 m", role = "insulation" }},
    {{ name = "slab", material = "concrete", thickness = "0.1 m", role = "slab" }},
]
[[area]]
name = "room"
step = "0.6 m"
corners = ["0, 0", "9 m, 0", "9 m, 7 m", "0, 7 m"]
"""
ROOM, LEDGE = 8.6 * 6.6, 8.6 * 6.6 - 8.2 * 6.2


@pytest.mark.parametrize(
    ("tie", "meeting", "gap", "ledge", "words"),
    [
        ("+0 m", "over footing", 0.0, 0.0, "Foam from 0 mm to +50 mm against TOF"),
        ("-0.05 m", "stopped at footing", 0.0, LEDGE, "Foam from -50 mm to 0 mm against TOF"),
        ("-0.02 m", "between", -0.02, 0.0, "Foam from -20 mm to +30 mm against TOF"),
        ("+0.03 m", "above footing", 0.03, 0.0, "Foam from +30 mm to +80 mm against TOF"),
        ("-0.09 m", "below footing", -0.04, LEDGE, "Foam from -90 mm to -40 mm against TOF"),
        # 1/16 in either way is as fine as boards are laid on stone.
        ("+0.0015 m", "over footing", 0.0015, 0.0, "its bottom meets TOF"),
        ("-0.0515 m", "stopped at footing", -0.0015, LEDGE, "its top meets TOF"),
    ],
)
def test_foam_against_its_own_footing(
    tie: str, meeting: str, gap: float, ledge: float, words: str
) -> None:
    layout = lay_out(read_design(TEXT.format(tie=tie)))
    (area,) = layout.areas
    cold = cold_concrete(layout, area)
    verdict = foam_verdict(area, cold)
    assert verdict.meeting == meeting
    assert verdict.gap_m == pytest.approx(gap, abs=1e-12)
    assert verdict.ledge_m2 == pytest.approx(ledge, abs=1e-9)
    assert verdict.cold_share == pytest.approx(ledge / ROOM, abs=1e-9)
    told = foam_finding(area, verdict, cold, "metric")
    assert words in told.found
    assert f"{ledge / ROOM:.1%} of the floor" in told.found
    assert ("slab on footing" in told.found) == (ledge > 0)


def test_a_floor_without_foam_has_no_gap_and_no_levels_of_it() -> None:
    row = '    { name = "foam", material = "xps-iv", thickness = "0.05 m", role = "insulation" },\n'
    text = TEXT.format(tie="+0 m").replace(row, "").replace("foam bottom", "slab bottom")
    layout = lay_out(read_design(text))
    (area,) = layout.areas
    cold = cold_concrete(layout, area)
    verdict = foam_verdict(area, cold)
    assert (verdict.meeting, verdict.gap_m) == ("no foam", 0.0)
    assert (verdict.foam_bottom_m, verdict.foam_top_m) == (None, None)
    assert verdict.ledge_m2 == pytest.approx(LEDGE)
    assert foam_finding(area, verdict, cold, "metric").found.startswith("Foam: no insulation in")
