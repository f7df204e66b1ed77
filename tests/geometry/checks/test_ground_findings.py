"""Findings on filter, pipe, wall and cleanouts: passing and failing invented houses."""

from dataclasses import replace

import pytest

from geometry.checks.cleanouts import cleanout_findings
from geometry.checks.filter import drain_filter_findings, fabric_finding, filter_findings
from geometry.checks.finding import Finding
from geometry.checks.strength import strength_findings
from geometry.checks.wall import wall_findings
from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.materials.catalogue import FABRICS, SOILS
from geometry.water.filter import fabric_on
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds

HOUSE = """
[project]
name = "A box (invented)"
units = "{units}"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[drain]
{drain}
{more}
"""


def made(drain: str = "", more: str = "", units: str = "ft-in") -> Layout:
    return lay_out(read_design(HOUSE.format(drain=drain, more=more, units=units)))


def every(layout: Layout) -> list[Finding]:
    return [
        *drain_filter_findings(layout), *filter_findings(layout), *strength_findings(layout),
        *wall_findings(layout), *cleanout_findings(layout),
    ]  # fmt: skip


def the(layout: Layout, name: str) -> Finding:
    (found,) = (f for f in every(layout) if f.id == name)
    return found


def test_unknown_soil_is_looked_at_and_told_what_to_ask() -> None:
    found = the(made(), "fabric-suits-soil")
    assert found.severity == "look"
    assert "cannot be said" in found.found
    assert "Ask for: the soil's group" in found.advice


def test_nonwoven_on_silt_passes_by_its_class() -> None:
    found = the(made(more='[soil]\ngroup = "ML"'), "fabric-suits-soil")
    assert found.severity == "fine"
    assert "at most 0.22 to 0.25 mm" in found.found
    assert "M 288" in str(found.source)
    assert "ASTM D5101" in found.advice


@pytest.mark.parametrize(
    ("opening", "flow", "woven", "severity", "words"),
    [
        (0.425e-3, 0.5, False, "stop", "too open"),
        (0.2e-3, 0.05, False, "stop", "too tight"),
        (0.23e-3, 0.5, False, "look", "only a part"),
        (0.2e-3, 0.5, True, "look", "woven"),
        (0.2e-3, 0.5, False, "fine", "it suits"),
    ],
)
def test_fabrics_on_silt(
    opening: float, flow: float, woven: bool, severity: str, words: str
) -> None:
    row = replace(FABRICS["nonwoven-6oz"], opening_m=opening, permittivity_per_s=flow, woven=woven)
    found = fabric_finding(fabric_on(SOILS["ML"], row))
    assert found.severity == severity
    assert words in found.found


def test_the_soil_s_own_grading_is_held_against_its_group() -> None:
    graded = '[soil]\ngroup = "{}"\ngrading = ["2 mm, 95 %", "No. 40, 80 %", "No. 200, 35 %"]'
    good = the(made(more=graded.format("SM")), "grading-fits-group")
    assert good.severity == "fine"
    bad = the(made(more=graded.format("CL")), "grading-fits-group")
    assert bad.severity == "look"
    assert "35 % of the sample passes No. 200" in bad.found
    assert "means 50 to 100 %" in bad.found
    assert "by its grading (D85" in the(made(more=graded.format("SM")), "fabric-suits-soil").found


def test_backfill_of_another_soil_is_held_against_the_fabric_too() -> None:
    layout = made(more='[soil]\ngroup = "ML"\n[backfill]\nmaterial = "SM"')
    rows = [f.subject for f in drain_filter_findings(layout) if f.id == "fabric-suits-soil"]
    assert rows == ["drain wrap, ground", "drain wrap, backfill"]


@pytest.mark.parametrize(("hole", "severity"), [("1/2 in", "look"), ("3/8 in", "fine")])
def test_holes_against_no_57(hole: str, severity: str) -> None:
    # D50 of the fine edge is 10.3 mm: under 12.7 mm, over 9.5 mm.
    found = the(made(f'holes = {{ diameter = "{hole}" }}'), "holes-hold-stone")
    assert found.severity == severity
    assert ("too small" in found.found) == (severity == "look")


def test_stone_and_sand_as_delivered_stand_for_the_whole_band() -> None:
    # D50 of the load: half way by its share from 1/2 to 3/4 in: 12.7 x 1.5^0.5 = 15.55 mm, 1.22
    # times the hole; D15 a third of the way from No. 4 to 1/2 in: 4.75 x 2.674^(1/3) = 6.59 mm.
    load = '[[grading]]\nmaterial = "stone-57"\nsieves = ["1 in, 100 %", "3/4 in, {}", '
    load += '"1/2 in, {} %", "No. 4, 5 %"]\n'
    coarse = made(more=load.format("65 %", 35))
    found = the(coarse, "holes-hold-stone")
    assert found.severity == "fine"
    assert "D50 1.22 as delivered" in found.found
    fine = the(made(more=load.format("95 %", 60)), "holes-hold-stone")
    assert fine.severity == "look"
    assert fine.found.startswith("50% or more of the stone, as delivered, is smaller")
    sand = '[[grading]]\nmaterial = "sand-c33"\nsieves = ["No. 4, 100 %", "No. 8, 85 %", '
    sand += '"No. 200, 2 %"]\n'
    both = the(made(more=load.format("65 %", 35) + sand), "sand-on-stone")
    # 6.59 over 2.36 mm.
    assert "2.8 as delivered" in both.found
    assert both.severity == "fine"


def test_stone_of_unknown_grading_is_asked_for() -> None:
    found = the(made('stone = { material = "crusher-run" }'), "holes-hold-stone")
    assert found.severity == "look"
    assert "Ask the supplier" in found.advice


def test_sand_straight_on_washed_stone_and_on_fine_stone() -> None:
    floor = '[floor]\nlayer = [{}{{ name = "slab", material = "concrete", thickness = "4 in", '
    floor += 'role = "slab" }}]'
    row = '{{ name = "{0}", material = "{0}", thickness = "3 in", role = "{1}" }}, '
    coarse = row.format("stone-57", "base") + row.format("sand-c33", "blinding")
    found = the(made(more=floor.format(coarse)), "sand-on-stone")
    assert found.severity == "look"
    assert "7.2 at worst" in found.found
    # No. 89's coarse D15: 5 % under 2.36, 20 % under 4.75 mm: 3.76 mm, over 1.18 mm: 3.2.
    fine = row.format("stone-89", "base") + row.format("sand-c33", "blinding")
    passed = the(made(more=floor.format(fine)), "sand-on-stone")
    assert passed.severity == "fine"
    assert "3.2 at worst" in passed.found


def test_pipe_in_stone_keeps_its_shape_and_in_loose_fines_does_not() -> None:
    sound = the(made('pipe = "d2729-4"'), "pipe-keeps-shape")
    assert sound.severity == "fine"
    assert "Schedule 40" in sound.found
    soft = 'pipe = "d2729-4"\nstone = { material = "crusher-run" }'
    found = the(made(soft), "pipe-keeps-shape")
    assert found.severity == "stop"
    assert "stiffer pipe" in found.advice


def test_a_run_without_access_and_short_ones() -> None:
    blind = the(made(), "drain-within-reach")
    assert blind.severity == "look"
    assert "nothing can be put into it" in blind.found
    every_corner = [
        f for f in every(made("cleanouts = [1, 2, 3, 4]")) if f.id == "drain-within-reach"
    ]
    assert [f.severity for f in every_corner] == ["fine"] * 4
    assert {f.advice[:11] for f in every_corner} == {"Build it so"}
    one = the(made("cleanouts = [1]"), "drain-within-reach")
    assert one.severity == "look"
    assert "270°" in one.found
    # Either of the two asks for a cleanout between: too far, or too much bent.
    assert one.advice.startswith("Add a cleanout at a corner between")
    halves = [f for f in every(made("cleanouts = [1, 3]")) if f.id == "drain-within-reach"]
    assert [(f.severity, f.advice) for f in halves] == [("look", one.advice)] * 2


def test_the_reach_is_said_in_the_designs_own_system() -> None:
    assert "50'-0\"" in the(made(), "drain-within-reach").asked
    assert "15000 mm" in the(made(units="metric"), "drain-within-reach").asked


def test_high_fill_asks_and_says_what_water_would_do() -> None:
    layout = made(more='[soil]\ngroup = "CL"')
    fill = the(layout, "wall-fill")
    assert fill.severity == "look"
    assert "sk an engineer" in fill.advice
    # At rest 0.75: (0.75 x 66.9 + 62.43)/(0.75 x 100) = 1.50 times.
    assert "1.5 times" in the(layout, "wall-flooded").found


STATE = "[backfill.state]\n{}"
BARE = STATE.format("deck = false\nslab = false\nbraced = false")
HELD = STATE.format("deck = true\nslab = true")


@pytest.mark.parametrize(
    ("more", "severity", "words"),
    [
        ("", "look", "Not said what holds the walls"),
        (BARE, "stop", "Nothing braces it"),
        (BARE.replace("deck = false", "deck = true"), "look", "No slab holds the wall's foot"),
        (BARE.replace("braced = false", "braced = true"), "look", "who designed them"),
        (HELD, "look", "as the code's tables suppose. Ask an engineer"),
        (f'[wall]\nheight = "4 ft"\n{HELD}', "fine", "as the code's tables suppose."),
        (f'[wall]\nheight = "4 ft"\n{BARE}', "look", "Nothing braces it"),
    ],
)
def test_what_holds_the_walls_when_the_fill_goes_in(more: str, severity: str, words: str) -> None:
    found = the(made(more=more), "backfill-state")
    assert found.severity == severity
    assert words in found.found
    assert "safe" not in f"{found.found} {found.advice}"


def test_water_that_stays_under_the_foot_adds_nothing() -> None:
    deep = '[soil]\ngroup = "CL"\n[backfill]\nwater_depth = "9 ft"'
    assert "adds nothing" in the(made(more=deep), "wall-flooded").found
    half = deep.replace("9 ft", "4 ft") + '\n[loads]\nsurcharge = "100 psf"'
    found = the(made(more=half), "wall-flooded").found
    assert "100 lb/ft² on it" in found
    assert "up to 4'-0\" under grade" in found


def test_a_wheel_is_spoken_of_where_one_is_given() -> None:
    plain = the(made(), "pipe-keeps-shape")
    assert "No wheel: none is given" in plain.found
    driven = the(made(more='[loads]\nwheel = "16000 lbf"\ndeflection_limit = "7.5 %"'), plain.id)
    assert "with a wheel of 16,000 lb" in driven.found
    assert driven.asked == "at most 7.5 % of its diameter"
    assert "design file" in driven.source.title


def test_low_fill_is_no_green_light() -> None:
    fill = the(made(more='[wall]\nheight = "4 ft"'), "wall-fill")
    assert fill.severity == "fine"
    assert "the code's table speaks" in fill.advice


@pytest.mark.parametrize("seed", seeds(10))
def test_random_designs_have_whole_sentences(seed: int) -> None:
    raw = seeded_raw(seed)
    if raw is None:
        return
    for found in every(lay_out(design_of(raw))):
        for words in (found.found, found.advice):
            assert words.endswith(".")
            assert "None" not in words
            assert "nan" not in words
