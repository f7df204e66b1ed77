"""Which drain takes whose water."""

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import Layout, across, empties_into, lay_out, lower_drain
from tests.geometry.layout.test_bleeders_by_hand import TEXT as BLEEDING
from tests.houses import house
from tests.whole import networks


def laid(name: str) -> Layout:
    return lay_out(networks.network(name))


def test_the_pipe_to_the_pit_leaves_the_drain_that_empties_there_and_no_other() -> None:
    layout = laid("both to the pit")
    inside, outside = layout.drains
    assert layout.leads(inside) == (layout.pit_lead,)
    assert layout.leads(outside) == ()
    assert empties_into(outside, layout.drains) is inside
    assert empties_into(inside, layout.drains) is None
    assert (across(inside, layout.drains), across(outside, layout.drains)) == (outside, inside)
    assert layout.bleeders_of(inside) == ()
    assert layout.bleeders_at(inside) == layout.bleeders_of(outside) != ()


def test_a_drain_of_another_area_lies_across_no_footing_of_mine() -> None:
    layout = laid("upper to lower stone")
    lower, upper = layout.drains
    assert (across(lower, layout.drains), across(upper, layout.drains)) == (None, None)
    assert empties_into(upper, layout.drains) is lower
    assert layout.bleeders_at(lower) == ()


def test_parts_of_several_drains_are_told_apart_and_those_of_one_are_not() -> None:
    both, alone = laid("both to the pit"), laid("inside")
    names = {both.label(f"{d.key}/pipe").name for d in both.drains}
    assert names == {
        "Perforated pipe, inside drain, basement", "Perforated pipe, outside drain, basement",
    }  # fmt: skip
    assert alone.label("drain/pipe").name == "Perforated pipe"


def test_the_fill_is_the_ground_that_was_dug_unless_given() -> None:
    fill = '[backfill]\nmaterial = "stone-57"\n\n[soil]'
    for layout, material in ((house(), "GW"), (house(("[soil]", fill)), "stone-57")):
        assert layout.label("ground/backfill").material == material
        assert layout.label("ground/excavation").material == "GW"


def test_the_drain_that_empties_into_the_pit_is_in_view_wherever_it_is_written() -> None:
    head, first, second = BLEEDING.replace("SPACING", "2 m").split("[[drain]]")
    pit = "[sump]" + second.split("[sump]")[1]
    swapped = "[[drain]]".join((head, second.split("[sump]")[0], first)) + pit
    for text, number in ((BLEEDING.replace("SPACING", "2 m"), 0), (swapped, 1)):
        layout = lay_out(read_design(text))
        inside = layout.drains[number]
        assert [d.key for d in layout.drains] == ["drain", "drain 2"]
        assert inside.inside
        assert (layout.drain, layout.sump_drain) == (inside, inside)
        assert layout.lead is layout.pit_lead
        mine, other = layout.views()
        assert mine is layout
        assert other.drain is layout.drains[1 - number]
        assert (other.sump_drain, other.lead) == (inside, None)
        assert other.pit_lead is layout.pit_lead
        assert [view.drain for view in other.views()] == [other.drain, inside]


def test_an_open_end_empties_into_the_drain_whose_stone_it_lies_over() -> None:
    layout = laid("upper to lower stone")
    lower, upper = layout.drains
    assert lower_drain(upper, layout.drains) is lower
    assert lower_drain(lower, layout.drains) is None
    assert empties_into(lower, layout.drains) is None


def test_a_lone_house_has_no_water_in_view() -> None:
    layout = lay_out(read_design(BLEEDING.split("[[drain]]")[0]))
    assert (layout.drain, layout.lead, layout.pit_lead, layout.sump_drain) == (None,) * 4
    assert layout.views() == (layout,)
    assert layout.area("") is layout.area("room") is layout.areas[0]


@pytest.mark.parametrize(("corner", "share"), [(2, 0.0), (5, 1.0)])
def test_the_open_end_is_the_one_at_the_low_corner(corner: int, share: float) -> None:
    layout = lay_out(networks.network("upper to lower stone", drain__1__low_corner=corner))
    _, upper = layout.drains
    assert upper.low == upper.route.length * share
    assert upper.capped == (share == 1, share == 0)


def test_each_pipe_to_daylight_has_its_label_and_its_own_pipe_if_given() -> None:
    own = {"drain__0__daylight__1__pipe": "sch40-4"}
    layout = lay_out(networks.network("pit and two to daylight", **own))
    pipes = [layout.label(f"drain/daylight {n}").material for n in (1, 2)]
    assert pipes == [layout.drains[0].pipe.key, "sch40-4"]
    assert pipes[0] != pipes[1]
    with pytest.raises(KeyError):
        layout.label("drain/daylight 3")
    assert laid("both to the pit").label("bleeders").material == "sch40-3"
