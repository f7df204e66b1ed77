"""The floor's layers as listed in the file: added, moved, taken out, and what a slider offers."""

from itertools import permutations

import pytest

from geometry.designfile import read_design
from geometry.layering import FROM_BELOW, moved, thickness_steps, with_layer, without_layer

BARE = """
[project]
name = "Layers (invented)"
[[area]]
name = "main"
corners = ["0, 0", "9 m, 0", "9 m, 7 m", "0, 7 m"]
[floor]
tie = "slab top at TOF"
layer = [{layers}]
"""


def row(role, name=""):
    return {"name": name or str(role), "role": role}


def roles(rows):
    return [one["role"] for one in rows]


def names(rows):
    return [one["name"] for one in rows]


def test_roles_added_in_any_order_lie_as_floors_are_built():
    for order in permutations(FROM_BELOW):
        rows = []
        for role in order:
            rows = with_layer(rows, role, "ft-in")
        assert roles(rows) == list(FROM_BELOW)


@pytest.mark.parametrize("system", ["ft-in", "metric"])
def test_a_floor_of_usual_layers_is_sound(system):
    rows = []
    for role in FROM_BELOW:
        rows = with_layer(rows, role, system)
    layers = [
        "{" + ", ".join(f'{key} = "{value}"' for key, value in one.items()) + "}" for one in rows
    ]
    floor = read_design(BARE.format(layers=", ".join(layers))).floor
    assert [layer.role for layer in floor.layers] == list(FROM_BELOW)


def test_one_more_of_a_role_lies_on_the_last_of_it_under_a_name_of_its_own():
    rows = [row("base", "stone"), row("insulation", "foam"), row("slab", "slab")]
    two = with_layer(rows, "insulation", "ft-in")
    assert names(two) == ["stone", "foam", "foam 2", "slab"]
    assert names(with_layer(two, "insulation", "ft-in"))[1:4] == ["foam", "foam 2", "foam 3"]
    assert names(rows) == ["stone", "foam", "slab"]


def test_a_layer_goes_over_all_that_usually_lie_under_it_and_under_what_nobody_knows():
    upside_down = [row("slab"), row("base")]
    assert roles(with_layer(upside_down, "insulation", "ft-in")) == ["slab", "base", "insulation"]
    odd = [row("base"), row("topping")]
    assert roles(with_layer(odd, "slab", "ft-in")) == ["base", "slab", "topping"]
    assert roles(with_layer([row("base"), row("slab")], "fill", "ft-in"))[0] == "fill"


def test_layers_change_places_and_stay_at_the_ends():
    rows = [row("base"), row("insulation"), row("slab")]
    assert roles(moved(rows, 0, 1)) == ["insulation", "base", "slab"]
    assert roles(moved(rows, 1, -1)) == ["insulation", "base", "slab"]
    assert roles(moved(rows, 2, -1)) == ["base", "slab", "insulation"]
    for place, by in ((0, -1), (2, 1), (3, -1), (-1, 1)):
        assert moved(rows, place, by) == rows
    assert roles(rows) == ["base", "insulation", "slab"]


def test_one_is_taken_out():
    rows = [row("base"), row("insulation"), row("slab")]
    assert roles(without_layer(rows, 1)) == ["base", "slab"]
    assert len(rows) == 3


SLAB = ("3 in", "3 1/2 in", "4 in", "4 1/2 in", "5 in", "5 1/2 in", "6 in", "6 1/2 in", "7 in",
        "7 1/2 in", "8 in")  # fmt: skip


def test_a_thickness_among_the_steps_is_that_step_however_it_is_written():
    assert thickness_steps("slab", "4 in", "ft-in") == (SLAB, "4 in")
    assert thickness_steps("slab", "101.6 mm", "ft-in") == (SLAB, "4 in")


@pytest.mark.parametrize(("said", "place"), [("4 1/4 in", 3), ("10 in", 11), ("2 in", 0)])
def test_another_thickness_stands_among_them_by_its_size(said, place):
    assert thickness_steps("slab", said, "ft-in") == ((*SLAB[:place], said, *SLAB[place:]), said)


@pytest.mark.parametrize(
    ("role", "system", "first", "second", "last", "count"),
    [
        ("fill", "ft-in", "1 in", "2 in", "24 in", 24),
        ("base", "ft-in", "2 in", "3 in", "12 in", 11),
        ("blinding", "ft-in", "1/2 in", "1 in", "3 in", 6),
        ("insulation", "ft-in", "1/2 in", "1 in", "8 in", 16),
        ("slab", "metric", "60 mm", "70 mm", "160 mm", 11),
        ("fill", "metric", "20 mm", "40 mm", "480 mm", 24),
    ],
)
def test_sliders_go_in_whole_steps_from_least_to_most(role, system, first, second, last, count):
    steps, held = thickness_steps(role, last, system)
    assert (steps[0], steps[1], steps[-1], len(steps), held) == (first, second, last, count, last)


def test_no_slider_for_a_sheet_for_an_unknown_role_or_for_words():
    assert thickness_steps("retarder", "10 mil", "ft-in") is None
    assert thickness_steps("topping", "4 in", "ft-in") is None
    assert thickness_steps("slab", "thick", "ft-in") is None
