"""What pictures say of the parts, and the levels a section names."""

import pytest

from geometry.sections.face import CutLine
from geometry.units import FOOT, INCH
from viz.carried import demo
from viz.figures.section.named_levels import levels_at
from viz.job import job
from viz.pictures import detail_of
from viz.words import part_words

DEMO = demo().read_text(encoding="utf-8")


def words(text=DEMO, areas=()):
    work = job(text)
    chosen = [a for a in work.layout.areas if a.name in areas]
    return part_words(work.layout, work.foundation, chosen)


def test_layers_are_called_by_their_material_with_thickness_and_use():
    said = words()
    assert said["basement/foam"] == 'Rigid foam, XPS type IV (25 psi)\n2", insulation'
    assert said["basement/slab"] == 'Concrete slab\n4", finished floor'
    assert said["basement/retarder"].endswith("\n10 mil, laps taped")


def test_a_footing_is_said_for_the_areas_that_are_shown():
    assert words(areas=["basement"])["footing"] == 'Strip footing\n20" × 12"'
    assert words()["footing"] == 'Strip footing\n20" × 12" and 16" × 8"'


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ("[-60, 60]", "holes down"),
        ("[-120, 120]", "holes up"),
        ("[0, 180]", "holes all round"),
        ("[]", "no holes"),
    ],
)
def test_holes_are_said_to_look_where_they_do(rows, said):
    text = DEMO.replace("rows = [-60, -30, 30, 60]", f"rows = {rows}")
    assert said in words(text)["drain/pipe"]


def test_metric_designs_speak_in_millimetres():
    said = words(DEMO.replace('units = "ft-in"', 'units = "metric"'))
    assert '"' not in "".join(said.values())
    assert "101.6 mm" in said["basement/slab"]


# Across the basement at 21 ft: over the front of the house and its back.
AT_21_FT = CutLine((21 * FOOT, -10 * FOOT), (21 * FOOT, 45 * FOOT))


def test_a_section_names_the_inverts_where_it_crosses_the_drain():
    """By hand: the cut at 21 ft meets the pipe 8 in beyond the footing, 14 in outside the wall.

    From the low point opposite the pit (12 ft up the left side) the pipe runs 12 ft + 14 in down
    that side and 21 ft + 14 in along the front, 424 in in all, and rises 1/16 in per ft.
    """
    work = job(DEMO)
    marks = {m.name: m.level_m for m in levels_at(work.layout, AT_21_FT, None)}
    low = work.report.drain.outlet_invert_m
    rise = (12 * 12 + 14 + 21 * 12 + 14) / 12 / 16 * INCH
    assert marks["Drain invert at the left"] == pytest.approx(low + rise, abs=1e-6)
    assert marks["Drain invert further right"] > marks["Drain invert at the left"]


def test_a_detail_shows_its_own_corner_alone():
    work = job(DEMO)
    window = detail_of(work, AT_21_FT).window
    names = [m.name for m in levels_at(work.layout, AT_21_FT, window)]
    assert "Drain invert" in names
    assert not any("right" in name for name in names)
    assert window[2] - window[0] < 4
