"""Bleeders of a plain box: how many on each side, where, how long."""

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.materials.catalogue import FABRICS, PIPES

INCH = 0.0254
# Metres: strips 0.6 m wide, their inner faces 8.2 m and 6.2 m long: there both drains lie.
TEXT = """
[project]
name = "Bleeders (invented)"
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
    { name = "stone", material = "stone-57", thickness = "0.4 m", role = "base" },
    { name = "slab", material = "concrete", thickness = "0.1 m", role = "slab" },
]
[[area]]
name = "room"
corners = ["0, 0", "9 m, 0", "9 m, 7 m", "0, 7 m"]
[[drain]]
line = "inside"
fall = "level"
offset = "0.2 m"
stone = { width = "0.4 m" }
outlet_invert = "-0.25 m"
[[drain]]
fall = "level"
offset = "0.25 m"
stone = { width = "0.45 m" }
outlet_invert = "-0.2 m"
outlet = "bleeders"
bleeders = { spacing = "SPACING", pipe = "sch40-3", invert = "-0.2 m" }
[sump]
at = "3 m, 3 m"
"""
WRAP = FABRICS["nonwoven-6oz"].thickness_m


def laid(spacing):
    layout = lay_out(read_design(TEXT.replace("SPACING", spacing)))
    _, outside = layout.drains
    return layout.bleeders_of(outside)


@pytest.mark.parametrize(
    ("spacing", "long", "short"), [("2 m", 4, 3), ("2.6 m", 3, 3), ("6 m", 2, 1)]
)
def test_each_side_has_as_many_as_its_spacing_asks(spacing, long, short):
    """12 in free at either end; the rest, 7.59 m and 5.59 m, in equal parts with one in each."""
    found = laid(spacing)
    assert len(found) == 2 * (long + short)
    room = 8.2 - 24 * INCH
    south = sorted(b.outer_end[0] for b in found if b.outer_end[1] < 0)
    by_hand = [0.4 + 12 * INCH + room * (n + 0.5) / long for n in range(long)]
    assert south == pytest.approx(by_hand, abs=1e-5)


def test_a_bleeder_passes_footing_and_both_wraps_and_reaches_two_inches_into_the_stone():
    for bleeder in laid("3 m"):
        assert bleeder.length == pytest.approx(0.6 + 2 * (WRAP + 2 * INCH))
        level = -0.2 + PIPES["sch40-3"].inside_diameter_m / 2
        assert bleeder.outer_end[2] == bleeder.inner_end[2] == pytest.approx(level)
    south = [b for b in laid("3 m") if b.outer_end[1] < 0]
    assert {round(b.outer_end[1], 9) for b in south} == {round(-0.2 - WRAP - 2 * INCH, 9)}
    assert {round(b.inner_end[1], 9) for b in south} == {round(0.4 + WRAP + 2 * INCH, 9)}


@pytest.mark.parametrize(
    ("sides", "counts"), [("[1, 2]", [2, 1]), ("[4]", [1]), ("[4, 1]", [1, 2])]
)
def test_a_drain_along_some_sides_has_bleeders_on_those(sides, counts):
    """Some 6 m apart: two on each long side, one on each short one."""
    text = TEXT.replace("SPACING", "6 m").replace("bleeders = {", f"sides = {sides}\nbleeders = {{")
    layout = lay_out(read_design(text))
    _, outside = layout.drains
    found = layout.bleeders_of(outside)
    places = [(round(b.outer_end[0], 1), round(b.outer_end[1], 1)) for b in found]
    south = sum(y < 0 for _, y in places)
    east, west = sum(x > 9 for x, _ in places), sum(x < 0 for x, _ in places)
    by_side = {1: south, 2: east, 3: sum(y > 7 for _, y in places), 4: west}
    assert [by_side[n] for n in outside.drain.sides] == counts
    assert len(found) == sum(counts)
