"""Findings on invented houses, each re-derived by hand; passing and failing designs."""

import pytest

from geometry.checks.levels import subgrade_finding
from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.report import Found, Report, report
from tests.houses import WITH_GARAGE, house

HOUSE = """
[project]
name = "A box (invented)"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[floor]
tie = {tie}
layer = [
    {{ name = "stone", material = "stone-57", thickness = "6 in", role = "base" }},
    {{ name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" }},
    {{ name = "slab", material = "concrete", thickness = "4 in", role = "slab" }},
]
{more}
"""


def made(tie: str, more: str = "") -> Report:
    return report(lay_out(read_design(HOUSE.format(tie=tie, more=more))))


def the(made: Report, name: str) -> Found:
    (found,) = (f for f in made.findings if f.id == name)
    return found


def test_two_ties_that_agree() -> None:
    # Foam bottom at 0, stone 6 in under it: the cut is at -6 in.
    found = the(made('["foam bottom at TOF", "subgrade at -6 in"]'), "ties-agree")
    assert found.severity == "fine"
    assert "they agree" in found.found


def test_two_ties_that_disagree_say_by_how_much() -> None:
    found = the(made('["foam bottom at TOF", "subgrade at -8 1/2 in"]'), "ties-agree")
    assert found.severity == "stop"
    assert "lands at -0'-6\"" in found.found
    assert "asks -0'-8 1/2\"" in found.found
    assert '2 1/2" too high' in found.found


@pytest.mark.parametrize(
    ("tie", "meeting", "severity", "words"),
    [
        ("foam bottom at TOF", "over footing", "fine", "its bottom meets TOF"),
        ("foam top at TOF", "stopped at footing", "look", "cold ledge"),
        ("foam bottom at -1 in", "between", "stop", 'TOF cuts it 1" above its bottom'),
        ("foam bottom at +3 in", "above footing", "look", 'a gap of 3" lies between'),
        ("foam top at -2 in", "below footing", "look", 'its top lies 2" under TOF'),
    ],
)
def test_foam_meets_top_of_footing_or_not(
    tie: str, meeting: str, severity: str, words: str
) -> None:
    done = made(f'"{tie}"')
    (verdict,) = done.foam
    found = the(done, "foam-meets-tof")
    assert (verdict.meeting, found.severity) == (meeting, severity)
    assert words in found.found


def test_the_cold_ledge_by_hand() -> None:
    # 20 in footing, 8 in wall: the ledge inside is 6 in wide. Inside the wall 28'-8" x 18'-8".
    (verdict,) = made('"foam top at TOF"').foam
    inside, core = (30 - 16 / 12) * (20 - 16 / 12), (30 - 28 / 12) * (20 - 28 / 12)
    square_foot = 0.3048**2
    assert verdict.cold_ledge_m2 == pytest.approx((inside - core) * square_foot, rel=1e-12)
    assert verdict.cold_share == pytest.approx(1 - core / inside, rel=1e-12)


def test_no_foam_leaves_the_whole_slab_cold() -> None:
    text = HOUSE.format(tie='"slab bottom at TOF"', more="").replace(
        '    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },\n', ""
    )
    (verdict,) = report(lay_out(read_design(text))).foam
    assert verdict.meeting == "no foam"
    assert verdict.cold_share == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("top", "severity", "words"),
    [
        ("finished floor", "fine", "flush with"),
        ("TOF +1 in", "look", '5" below'),
        ("finished floor +2 in", "look", '2" above'),
    ],
)
def test_piers_against_the_finished_floor(top: str, severity: str, words: str) -> None:
    pier = f'[[area.pier]]\nat = "10 ft, 10 ft"\ncolumn_top = "{top}"'
    found = the(made('"foam bottom at TOF"', pier), "pier-flush")
    assert found.severity == severity
    assert words in found.found


def test_a_cut_below_the_footing_is_stopped() -> None:
    shallow = '[footing]\nthickness = "6 in"'
    assert the(made('"foam bottom at TOF"', shallow), "subgrade-above-footing").severity == "fine"
    deep = the(made('"foam top at TOF"', shallow), "subgrade-above-footing")
    assert deep.severity == "stop"
    assert 'the dig would go 2" below it' in deep.found


def test_a_cut_is_told_against_the_areas_own_footing() -> None:
    # The garage's slab of 5 in lies on its own top of footing, its strips are 12 in thick.
    garage = house(WITH_GARAGE).areas[1]
    told = subgrade_finding(garage, "ft-in")
    assert "Cut the floor to 0" in told.found
    assert "the footing's bottom is at -1'-0\"" in told.found


# The floor is 6 in over TOF and the pit 30 in deep: heights count from 2'-0" under TOF.
@pytest.mark.parametrize(
    ("on", "severity", "level"), [("12 in", "fine", "-1'-0"), ("20 in", "look", "-0'-4")]
)
def test_a_pump_that_starts_above_the_inlet_leaves_water_in_the_drain(
    on: str, severity: str, level: str
) -> None:
    pit = '[drain]\nfall = "level"\n[sump]\nat = "4 ft, 8 ft"\npump = { off = "3 in", on = "%s" }'
    done = made('"foam bottom at TOF"', pit % on)
    levels = {row.interface: row.level_m for row in done.levels if row.group == "sump"}
    assert (levels["pump on"] > levels["pipe invert at sump"]) == (severity == "look")
    found = the(done, "pump-below-inlet")
    assert found.severity == severity
    assert f"Pump starts at {level}" in found.found
    assert ("Water would stand" in found.advice) == (severity == "look")


def test_no_pump_or_no_pipe_no_finding_of_the_pump() -> None:
    dry = '[sump]\nat = "4 ft, 8 ft"\npump = { off = "3 in", on = "9 in" }'
    assert "pump-below-inlet" not in {f.id for f in made('"foam bottom at TOF"', dry).findings}


def test_every_finding_names_its_source_and_every_report_its_cautions() -> None:
    done = made('"foam bottom at TOF"', '[drain]\nfall = "level"')
    assert all(f.source and f.advice and f.asked for f in done.findings)
    assert any("competent person" in c for c in done.cautions)


def test_a_fill_that_is_assumed_says_so() -> None:
    known, unknown = (
        the(report(house(*change)), "pipe-keeps-shape").found
        for change in ((), [('group = "GW"', 'group = "unknown"')])
    )
    assert "assumed" not in known
    assert ", assumed" in unknown
