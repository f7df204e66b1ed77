"""Fill, washed stone and grade round a plain box, and what is bought for its pit, by hand."""

from math import hypot, pi

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.materials.catalogue import PIPES
from geometry.takeoff.earth import backfill_volume, grading_volume, wall_stone_volume
from geometry.takeoff.order import drained, order
from tests.houses import WITH_GARAGE, house, without

# Metres: 9 x 7 m outside, strips 0.2 m farther out, from -0.3 m to TOF. The ground before the dig
# lies 0.2 m over TOF; the hole is 0.6 m wider than the strips at its bottom, its sides 1 to 2.
TEXT = """
[project]
name = "A hole (invented)"
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
[[area]]
name = "room"
corners = ["0, 0", "9 m, 0", "9 m, 7 m", "0, 7 m"]
[excavation]
working_space = "0.6 m"
slope = 0.5
existing = "0.2 m"
[grade]
at_wall = "0.5 m"
fall = "5 %"
"""


def grown(by):
    return (9 + 2 * by) * (7 + 2 * by)


def dug(more=""):
    return lay_out(read_design(TEXT + more))


def test_backfill_is_the_hole_less_footing_and_house():
    """Simpson's rule is exact for an area that is a square of the level."""
    hole = 0.5 / 6 * (grown(0.8) + 4 * grown(0.8 + 0.125) + grown(0.8 + 0.25))
    standing = grown(0.2) * 0.3 + grown(0.0) * 0.2
    assert backfill_volume(dug()) == pytest.approx(hole - standing, rel=1e-9)
    stone = '[backfill]\nstone_width = "0.3 m"\nstone_top = "0.1 m"\n'
    strip = (grown(0.3) - grown(0.2)) * 0.3 + (grown(0.3) - grown(0.0)) * 0.1
    assert wall_stone_volume(dug(stone)) == pytest.approx(strip, rel=1e-9)
    assert backfill_volume(dug(stone)) == pytest.approx(hole - standing - strip, rel=1e-9)
    assert wall_stone_volume(dug()) == 0.0


def test_a_pipe_to_daylight_takes_its_place_in_the_fill_as_far_as_the_holes_side():
    """From the trench's outer edge, 0.4064 - 0.25 m from the tee, to where its underside meets the
    side: 0.35 m at the hole's bottom at -0.3 m, 1 out for 2 up, the pipe falling 1 in 10."""
    drain = '[drain]\nfall = "level"\noffset = "0.25 m"\nlow_corner = 1\n'
    out = '[[drain.daylight]]\ntoward = "4.5 m, -30 m"\nfall = "1:10"\n'
    out += 'ground = ["0, 0.2 m", "10 m, -0.5 m", "60 m, -9 m"]\n'
    with_pipe, pipe = dug(drain + out), PIPES["d2729-4"]
    under = with_pipe.drain.outlet_invert - pipe.wall_m
    end = (0.35 + 0.5 * (under + 0.3)) / (1 + 0.5 / 10)
    length = (end - (0.4064 - 0.25)) * hypot(1, 0.1)
    taken = backfill_volume(dug(drain)) - backfill_volume(with_pipe)
    assert taken == pytest.approx(pi / 4 * pipe.outside_diameter_m**2 * length, rel=1e-6)


def test_washed_stone_is_cut_by_the_leaning_side_of_a_narrow_hole():
    """5 cm beside the strips at the bottom; 0.1 m over TOF the side has passed the stone's edge.

    Simpson's rule up to the strips' top, up to there, and upright from there on.
    """
    text = TEXT.replace('"0.6 m"\nslope', '"0.05 m"\nslope')
    stone = '[backfill]\nstone_width = "0.45 m"\nstone_top = "0.15 m"\n'

    def hole(low, high):
        at = [grown(0.25 + 0.5 * (z + 0.3)) for z in (low, (low + high) / 2, high)]
        return (high - low) / 6 * (at[0] + 4 * at[1] + at[2])

    beside = hole(-0.3, 0.0) - 0.3 * grown(0.2)
    over = hole(0.0, 0.1) - 0.1 * grown(0.0) + 0.05 * (grown(0.45) - grown(0.0))
    found = wall_stone_volume(lay_out(read_design(text + stone)))
    assert found == pytest.approx(beside + over, abs=1e-5)


def test_a_pad_of_a_higher_area_in_the_lower_ones_hole_takes_its_place_in_the_fill():
    """3 x 3 ft of pad, 1 ft thick, 3 ft beside the basement's wall; its column stands in the floor.

    The hole runs 5 ft past the footing there: the pad stands in it wholly.
    """
    dig = ("[soil]", '[excavation]\nworking_space = "5 ft"\nslope = 1.0\n\n[soil]')
    pier = '[[area.pier]]\nat = "33 ft, 10 ft"\n\n[area.floor]'
    padded = (WITH_GARAGE[0], WITH_GARAGE[1].replace("[area.floor]", pier))
    bare, stands = (backfill_volume(house(garage, dig)) for garage in (WITH_GARAGE, padded))
    assert bare - stands == pytest.approx(9 * 0.3048**3, rel=1e-5)


@pytest.mark.parametrize("more", ["", '[drain]\noffset = "0.25 m"\ncleanouts = [1, 3]\n'])
def test_the_grade_falls_five_in_a_hundred_from_the_wall(more):
    """0.3 m in 6 m on every side, hips at the corners; a cleanout's riser stands in it."""
    whole = 0.3 / 6 * ((grown(6.0) - 63) + 4 * (grown(3.0) - 63))
    riser = pi / 4 * PIPES["d2729-4"].outside_diameter_m ** 2 * (0.3 - 0.05 * 0.45)
    count = 2 if more else 0
    assert grading_volume(dug(more)) == pytest.approx(whole - count * riser, rel=1e-9)


def test_a_footing_over_the_ground_takes_its_place_in_the_grade():
    """The ground 0.2 m under TOF: so high the strips stand in the fill, 0.2 m beside the wall."""
    low = TEXT.replace('"0.2 m"\n[grade]', '"-0.2 m"\n[grade]').replace('"0.5 m"', '"0.1 m"')
    whole = 0.3 / 6 * ((grown(6.0) - 63) + 4 * (grown(3.0) - 63))
    footing = (grown(0.2) - 63) * 0.2
    assert grading_volume(lay_out(read_design(low))) == pytest.approx(whole - footing, rel=1e-9)


def test_ground_as_high_as_the_grade_needs_none():
    assert grading_volume(lay_out(read_design(TEXT.replace('"0.5 m"', '"0.2 m"')))) == 0.0


def test_a_pit_is_bought_with_its_pump_and_the_pipe_to_it_along_its_fall():
    steep = ("[sump]\n", '[sump]\nfall = "1:40"\n')
    (outlet,) = (o for drain in drained(house(steep)) for o in drain.outlets)
    lead = outlet.lead
    assert outlet.length_m == pytest.approx((lead.end - lead.begin) * hypot(1, 1 / 40))
    pit = {row.item: row.count for row in order(house()).rows if row.group == "pit"}
    assert pit == {"Sump basin with lid": 1, "Pump with float switch": 1}
    bare = house(('pump = { off = "4 in", on = "12 in" }\n', ""))
    pit = {row.item: row.count for row in order(bare).rows if row.group == "pit"}
    assert pit == {"Sump basin with lid": 1}
    assert not [row for row in order(house(without("sump"))).rows if row.group == "pit"]


def test_bars_that_run_right_round_lap_themselves():
    """3 x 3 m outside, the strip's middle 11.2 m round: a stick of 18 m holds a bar and its lap."""
    text = TEXT.replace("9 m", "3 m").replace("7 m", "3 m")
    text = text.replace(
        'thickness = "0.3 m"', 'thickness = "0.3 m"\nbars = { count = 2, size = "#4" }'
    )
    made = order(lay_out(read_design(text + '[order.bars]\nstick = "18 m"\nlap = 40\n')))
    (row,) = (r for r in made.rows if r.item == "Footing bars #4")
    assert row.in_place == pytest.approx(2 * 4 * (3.4 - 0.6))
    (cuts,) = (c for c in made.cuts if c.item == "Footing bars #4")
    lengths = [cut.length_m for stock in cuts.stocks for cut in stock.cuts]
    assert lengths == pytest.approx([4 * 2.8 + 40 * 0.0127] * 2)
