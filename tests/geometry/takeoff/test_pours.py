"""Which pours a house has and what is ordered of each, by rooms that come out even."""

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.takeoff.pours import masonry_walls, pours

FOOT = 0.3048
YARD = 27 * FOOT**3
# Walls of 8 in: 16 in less inside.
BARE = """
[project]
name = "Pours (invented)"
units = "{units}"
[wall]
height = "8 ft"
{wall}
[floor]
tie = "slab top at TOF +4 in"
layer = [
    {{ name = "stone", material = "stone-57", thickness = "6 in", role = "base" }},
    {{ name = "slab", material = "concrete", thickness = "4 in", role = "slab" }},
]
[[area]]
name = "main"
corners = ["0, 0", "{x}, 0", "{x}, {y}", "0, {y}"]
{more}
"""
ROUND = (
    '[[area.pier]]\nat = "13 ft, 12 ft"\nwidth = "3 ft"\ncolumn = "round"\ncolumn_size = "12 in"'
)
NOTHING_ADDED = "[order.concrete]\nloss = 0\nslab_variation = 0\n"


def laid(x="28 ft 4 in", y="25 ft 4 in", wall="", more="", units="ft-in"):
    return lay_out(read_design(BARE.format(x=x, y=y, wall=wall, more=more, units=units)))


def named(layout):
    return {pour.name: pour for _, pour in pours(layout)}


def test_a_house_has_its_footings_its_walls_and_each_slab_poured():
    assert list(named(laid())) == ["Footings and pads", "Walls and columns", "Slab"]


def test_a_slab_of_less_than_a_cubic_metre_is_a_pour():
    # 6 x 5 ft inside, 4 in: 10 ft3.
    slab = named(laid("7 ft 4 in", "6 ft 4 in"))["Slab"]
    assert slab.neat_m3 == pytest.approx(10 * FOOT**3)


def test_columns_among_walls_of_blocks_are_poured_and_no_other_part_is_laid():
    with_blocks = laid(wall='kind = "Concrete block"', more=ROUND)
    assert masonry_walls(with_blocks) == ["main"]
    poured, walls = (named(each)["Walls and columns"].neat_m3 for each in (with_blocks, laid()))
    assert 0 < poured < walls
    # A column of 12 in is pi / 4 ft2 and stands no higher than the wall.
    assert poured < 0.7854 * 8 * FOOT**3


def test_what_comes_out_even_is_not_rounded_up():
    # 27 x 24 ft inside, 4 in: 216 ft3, 8 yd3, which is 32 of the supplier's quarters.
    slab = named(laid(more=NOTHING_ADDED))["Slab"]
    assert slab.neat_m3 / YARD == pytest.approx(8.0)
    assert slab.ordered_m3 / YARD == pytest.approx(8.0)
    # One inch longer takes another quarter.
    slab = named(laid(x="28 ft 5 in", more=NOTHING_ADDED))["Slab"]
    assert slab.ordered_m3 / YARD == pytest.approx(8.25)


@pytest.mark.parametrize(("units", "step"), [("ft-in", FOOT / 96), ("metric", 0.003)])
def test_a_slab_is_told_what_a_little_more_of_its_own_thickness_takes(units, step):
    # 27 x 24 ft and 4 in of it; the stone under it is thicker. A quarter inch on all: 13.5 ft3.
    more = NOTHING_ADDED.replace("slab_variation = 0", 'slab_variation = "1/4 in"')
    slab = named(laid(units=units, more=more))["Slab"]
    assert slab.step_m == pytest.approx(step)
    assert slab.step_m3 == pytest.approx(27 * 24 * FOOT**2 * step)
    assert slab.step_share == pytest.approx(step / (FOOT / 3))
    assert slab.variation_m3 == pytest.approx(13.5 * FOOT**3)


def test_shares_of_a_pour_are_taken_of_what_is_drawn():
    # The wall's middle is 2 x (27 ft 8 in + 24 ft 8 in) long; the usual footing 20 x 10 in.
    more = "[order.concrete]\nloss = 0.1\nfooting_variation = 0.2\nwall_variation = 0.5\n"
    made = named(laid(more=more))
    middle = 2 * (27 + 24 + 16 / 12)
    for name, area, share in (("Footings and pads", 200 / 144, 0.2),
                              ("Walls and columns", 8 * 8 / 12, 0.5)):  # fmt: skip
        drawn = middle * area * FOOT**3
        pour = made[name]
        assert pour.neat_m3 == pytest.approx(drawn)
        assert pour.variation_m3 == pytest.approx(share * drawn)
        assert pour.loss_m3 == pytest.approx(0.1 * (1 + share) * drawn)


@pytest.mark.parametrize(("least", "told"), [("8 yd3", False), ("8.25 yd3", True)])
def test_only_less_than_the_least_load_is_told(least, told):
    made = laid(more=f'{NOTHING_ADDED}least = "{least}"\n')
    note = next(row.note for row, pour in pours(made) if pour.name == "Slab")
    assert ("less than the least load" in note) is told
