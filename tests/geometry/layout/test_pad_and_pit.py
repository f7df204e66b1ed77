"""Pads, footing steps and the pit's hole: their levels, worked by hand."""

from math import asin, sqrt

import pytest
from shapely import box

from geometry.designfile import read_design
from geometry.layout.footings import footing_body, pad_prism
from geometry.layout.lay import lay_out
from geometry.layout.sump import sump_bodies
from geometry.units import INCH

# Invented; metres. Slab top 0.1 m over TOF: the stack's tie puts the stone's top at TOF - 0.1 m.
TEXT = """
[project]
name = "Pad and pit (invented)"
units = "metric"
[footing]
width = "0.6 m"
thickness = "0.3 m"
[wall]
thickness = "0.2 m"
height = "2.4 m"
[floor]
tie = "slab top at TOF +0.1 m"
layer = [
    { name = "stone", material = "stone-57", thickness = "0.15 m", role = "base" },
    { name = "slab", material = "concrete", thickness = "0.1 m", role = "slab" },
]
[sump]
at = "2 m, 2 m"
depth = "0.8 m"
diameter = "0.5 m"
wall = "0.02 m"
stone_below = "0.1 m"
stone_beside = "0.12 m"
[drain]
[[area]]
name = "room"
corners = ["0, 0", "9 m, 0", "9 m, 7 m", "0, 7 m"]
[[area.pier]]
name = "P"
at = "5 m, 4 m"
width = "0.9 m"
thickness = "0.4 m"
pad_top = "TOF -0.2 m"
"""


@pytest.fixture(scope="module")
def layout():
    return lay_out(read_design(TEXT))


def test_a_pad_hangs_its_thickness_below_its_top(layout):
    pad = pad_prism(layout.areas[0], layout.design.areas[0].piers[0])
    assert (pad.bottom, pad.top) == (pytest.approx(-0.6), pytest.approx(-0.2))
    assert pad.region.symmetric_difference(box(4.55, 3.55, 5.45, 4.45)).area < 1e-9
    assert pad.volume == pytest.approx(0.9 * 0.9 * 0.4)


def test_the_pits_hole_holds_basin_and_stone_below_the_subgrade(layout):
    """Rim +0.1, inside bottom -0.7, its wall 0.02, stone 0.1 below; subgrade 0.1 - 0.25."""
    pocket = layout.sump.pocket
    assert pocket.bottom == pytest.approx(-0.82)
    assert pocket.top == pytest.approx(-0.15)
    radius = 0.25 + 0.02 + 0.12
    assert pocket.region.area == pytest.approx(3.141592653589793 * radius**2, rel=1e-9)


STEPPED = (
    TEXT.split("[[area.pier]]")[0]
    + """
[[area]]
name = "upper"
step = "0.6 m"
corners = ["9 m, 0", "12 m, 0", "12 m, 7 m", "9 m, 7 m"]
"""
)


def test_a_step_fills_concrete_down_to_the_lower_strip():
    """0.6 m up, both strips 0.3 m thick: where they cross, concrete stands from -0.3 to +0.6 m."""
    areas = lay_out(read_design(STEPPED)).areas
    lower, upper = sorted(areas, key=lambda area: area.tof)
    body = footing_body(areas)
    crossing = [p for p in body.prisms if p.bottom == pytest.approx(0.0) and p.top > 0]
    assert crossing
    assert all(p.top == pytest.approx(upper.tof) for p in crossing)
    whole = sum(p.volume for p in body.prisms)
    over = upper.footings.intersection(lower.footings).area
    rest = upper.footings.difference(lower.footings).area
    alone = lower.footings.area - over
    by_hand = (alone + rest) * 0.3 + over * (0.6 + 0.3)
    assert whole == pytest.approx(by_hand, rel=1e-9)


def test_basin_lid_and_what_they_take_out_of_the_floor(layout):
    """The basin from -0.72 to the rim at +0.1, its bottom and shell 0.02 thick, the lid 1/2 in."""
    pit = layout.sump
    assert (pit.opening.bottom, pit.opening.top) == (pytest.approx(-0.72), pytest.approx(0.1))
    bodies = {body.label.role: body for body in reversed(sump_bodies(pit))}
    outer, inner = 3.141592653589793 * 0.27**2, 3.141592653589793 * 0.25**2
    basin = sum(p.volume for p in bodies["basin"].prisms)
    assert basin == pytest.approx(outer * 0.02 + (outer - inner) * 0.8, rel=1e-9)
    (lid,) = bodies["lid"].prisms
    assert (lid.bottom, lid.top) == (pytest.approx(0.1 - 0.0127), pytest.approx(0.1))
    stone = sum(p.volume for p in bodies["pit stone"].prisms)
    hole = 3.141592653589793 * 0.39**2
    assert stone == pytest.approx(hole * 0.1 + (hole - outer) * (0.72 - 0.15), rel=1e-6)


def test_the_solid_pipes_trench_runs_from_the_footing_to_the_pits_stone(layout):
    """2 in under the pipe's end and 4 in beside it, as wide as that, less the pit's round hole.

    The strip's end on a circle of radius r is r cos: what a strip of half width w takes off it is
    w sqrt(r² - w²) + r² arcsin(w / r).
    """
    pit, lead = layout.sump, layout.sump.lead
    trench = pit.trench
    assert trench.top == pytest.approx(-0.15)
    fallen = lead.invert - lead.fall * (2.0 - lead.tee[1] - 0.25 + INCH)
    assert trench.bottom == pytest.approx(fallen - lead.pipe.wall_m - 2 * INCH)
    wide, radius = lead.outer + 4 * INCH, 0.25 + 0.02 + 0.12
    # From the strip footing's inner face, 0.4 m inside the outline, to the pit's middle at 2 m.
    whole = 2 * wide * (2.0 - 0.4)
    off = wide * sqrt(radius**2 - wide**2) + radius**2 * asin(wide / radius)
    assert trench.region.area == pytest.approx(whole - off, rel=2e-3)
    bodies = {body.label.part: body for body in sump_bodies(pit)}
    filled = sum(p.volume for p in bodies["sump/trench"].prisms)
    assert filled == pytest.approx((whole - off) * (trench.top - trench.bottom), rel=2e-3)
    assert bodies["sump/lid"].label.stage > bodies["sump/basin"].label.stage


def test_a_pipe_whose_bed_lies_in_the_floors_stone_needs_no_trench():
    """The floor 0.2 m lower: the subgrade lies at -0.35 m, under the pipe's bed at about -0.3 m."""
    deep = TEXT.replace("slab top at TOF +0.1 m", "slab top at TOF -0.1 m")
    deep = deep.replace('pad_top = "TOF -0.2 m"', 'pad_top = "TOF -0.4 m"')
    pit = lay_out(read_design(deep)).sump
    assert pit.lead is not None
    assert pit.trench is None


def test_a_thicker_strip_of_a_higher_area_reaches_down_through_the_lower_one():
    """0.1 m up, 0.5 m thick: it reaches 0.1 m under the lower one, where they cross as well."""
    deep = STEPPED.replace("[drain]\n", "").replace('step = "0.6 m"', 'step = "0.1 m"') + (
        'footing = { width = "0.6 m", thickness = "0.5 m" }\n'
    )
    lower, upper = lay_out(read_design(deep)).areas
    body = footing_body([lower, upper])
    over = upper.footings.intersection(lower.footings).area
    rest, alone = upper.footings.area - over, lower.footings.area - over
    assert over > 0.1
    whole = sum(p.volume for p in body.prisms)
    assert whole == pytest.approx(alone * 0.3 + (rest + over) * 0.5, rel=1e-9)
    assert body.bottom == pytest.approx(-0.4)
