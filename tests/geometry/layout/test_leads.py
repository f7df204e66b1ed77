"""Solid pipes from a drain's tees: where they begin, end and lie, worked by hand."""

from math import hypot

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.materials.catalogue import FABRICS, PIPES
from geometry.units import INCH

# Metres: 9 x 7 m outside; strips 0.6 m under walls of 0.2 m, their faces 0.2 m outside and 0.4 m
# inside the outline. The pipe's centre lies 0.25 m from the face, the stone is 0.45 m wide.
TEXT = """
[project]
name = "Solid pipes (invented)"
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
    {{ name = "stone", material = "stone-57", thickness = "0.25 m", role = "base" }},
    {{ name = "slab", material = "concrete", thickness = "0.1 m", role = "slab" }},
]
[[area]]
name = "room"
corners = ["0, 0", "9 m, 0", "9 m, 7 m", "0, 7 m"]
[[drain]]
pipe = "sdr35-4"
offset = "0.25 m"
outlet_invert = "{invert}"
fall = "level"
stone = {{ width = "0.45 m" }}
{more}
"""
PIPE, WRAP = PIPES["sdr35-4"], FABRICS["nonwoven-6oz"].thickness_m
RADIUS = PIPE.outside_diameter_m / 2
# The underside of the pipe at the drain lies so far over the hole's bottom.
OVER = 0.3 - 0.1 - PIPE.wall_m


def leads(more, invert="-0.1 m"):
    layout = lay_out(read_design(TEXT.format(more=more, invert=invert)))
    return layout.leads(layout.drains[0])


def daylight(fall, space, slope, invert="-0.1 m"):
    (lead,) = leads(
        f'daylight = {{ toward = "3 m, -20 m", fall = "{fall}", '
        'ground = ["0, 0.5 m", "10 m, -6 m"] }\n'
        f'[excavation]\nworking_space = "{space} m"\nslope = {slope}\n',
        invert,
    )
    assert lead.tee == pytest.approx((3.0, -0.45))
    assert lead.along == pytest.approx((0.0, -1.0))
    assert (lead.face, lead.back, lead.sleeve) == (pytest.approx(0.2), pytest.approx(0.2), None)
    # The tee's leg ends half way between the pipe and where the stone's wrap begins.
    assert lead.begin == pytest.approx((RADIUS + 0.2 - WRAP) / 2)
    return lead


@pytest.mark.parametrize(("fall", "each"), [("1:20", 0.05), ("level", 0.0)])
@pytest.mark.parametrize("slope", [0.0, 1.5])
def test_a_pipe_to_daylight_ends_at_the_side_of_the_hole(fall, each, slope):
    lead = daylight(fall, 0.9, slope)
    under = OVER - each * lead.end
    assert under > 0
    assert lead.end == pytest.approx(0.9 - 0.25 + slope * under)
    assert lead.end_invert == pytest.approx(-0.1 - each * lead.end)
    assert lead.stretch == pytest.approx(hypot(1, each))


def test_a_steep_pipe_to_daylight_ends_in_the_bottom_of_the_hole():
    lead = daylight("1:4", 3.0, 1.0)
    assert lead.end == pytest.approx(OVER * 4)
    x, y, level = lead.at(lead.end)
    assert (x, y) == pytest.approx((3.0, -0.45 - OVER * 4))
    assert level == pytest.approx(-0.3 + RADIUS)


def test_a_pipe_to_daylight_passes_the_drains_own_wrap():
    """It would meet the hole's bottom, 0.05 m under it, after 0.19 m."""
    lead = daylight("1:4", 0.9, 0.0, "-0.25 m")
    assert lead.end == pytest.approx(0.2)


def test_the_pipe_to_the_pit_passes_the_footing_in_its_sleeve():
    """From 0.25 m outside the face through 0.6 m of footing, 1 in into a pit of 0.5 m."""
    (lead,) = leads('[sump]\nat = "3 m, 2 m"\ndiameter = "0.5 m"\nsleeve = "sch40-6"\n', "-0.14 m")
    assert (lead.face, lead.back) == (pytest.approx(0.25), pytest.approx(0.85))
    assert lead.begin == pytest.approx((RADIUS + 0.25 - WRAP) / 2)
    assert lead.end == pytest.approx(2.45 - 0.25 + INCH)
    assert lead.sleeve_bore.radius == PIPES["sch40-6"].outside_diameter_m / 2
    assert lead.sleeve_bore.start[:2] == pytest.approx((3.0, -0.2))
    assert lead.sleeve_bore.end[:2] == pytest.approx((3.0, 0.4))


def test_the_pipe_from_a_drain_inside_needs_no_sleeve():
    (lead,) = leads('line = "inside"\n[sump]\nat = "3 m, 2 m"\ndiameter = "0.5 m"\n', "-0.2 m")
    assert lead.tee == pytest.approx((3.0, 0.4 + 0.25))
    assert (lead.sleeve, lead.sleeve_bore) == (None, None)
    assert (lead.face, lead.back) == (pytest.approx(0.2), pytest.approx(0.2))
    assert lead.begin == pytest.approx((RADIUS + 0.2 - WRAP) / 2)
    assert lead.end == pytest.approx(2.0 - 0.65 - 0.25 + INCH)
