"""Which drain takes whose water."""

from geometry.layout.lay import Layout, across, empties_into, lay_out
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
