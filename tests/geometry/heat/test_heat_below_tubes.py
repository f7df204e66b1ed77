"""Heat downward from warm tubes, worked by hand."""

import pytest

from geometry.designfile import read_design
from geometry.formulas.radiant_floor import UPWARD, heat_downward
from geometry.heat.floors import floor_heat
from geometry.layout.lay import lay_out

BOX = """
[project]
name = "Invented box"
units = "metric"
[[area]]
name = "room"
corners = ["0, 0", "12 m, 0", "12 m, 8 m", "0, 8 m"]
[climate]
inside = "20 C"
outside = "10 C"
{more}
"""
TUBES = "[floor.tubing]\nspacing = '200 mm'\n"


def test_heat_downward_by_hand() -> None:
    """60 W/m2 up through 1/10.8 + 0.05 warm the tubes to 20 + 8.56 C; 18.56 K over 2 m2K/W."""
    assert heat_downward(60, UPWARD + 0.05, 2.0, 20, 10) == pytest.approx(18.556 / 2, abs=1e-3)
    # Nothing given up: the tubes' level has the room's temperature.
    assert heat_downward(0, UPWARD, 2.0, 20, 10) == pytest.approx(5.0)
    with pytest.raises(ValueError, match="below"):
        heat_downward(60, 0.1, 0.0, 20, 10)


def test_a_floor_with_tubes_sends_more_down_than_one_without() -> None:
    layout = lay_out(read_design(BOX.format(more=TUBES)))
    heat = floor_heat(layout, layout.areas[0], 0.0)
    assert heat is not None
    cold = heat.u_floor * 10
    downs = [one.down_w_m2 for one in heat.below_tubes]
    assert cold < downs[0] < downs[1] < downs[2]
    for one in heat.below_tubes:
        assert one.share == pytest.approx(one.down_w_m2 / (one.down_w_m2 + one.up_w_m2))
    # With no output the way down is the slab's, less half the slab and the film over it.
    slope = (downs[2] - downs[0]) / (heat.below_tubes[2].up_w_m2 - heat.below_tubes[0].up_w_m2)
    at_rest = downs[0] - slope * heat.below_tubes[0].up_w_m2
    assert cold < at_rest < 1.5 * cold


def test_without_tubes_or_temperatures_nothing_is_told() -> None:
    for more in ("", TUBES):
        text = BOX.format(more=more)
        layout = lay_out(read_design(text if not more else text.replace('outside = "10 C"', "")))
        heat = floor_heat(layout, layout.areas[0], 0.0)
        assert heat is not None
        assert heat.below_tubes == ()
