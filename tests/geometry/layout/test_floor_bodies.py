"""The floor's layers as bodies: order of the work, the board along the wall, fill under a floor."""

import pytest

from geometry.designfile import read_design
from geometry.layout.floors import edge_prism, fill_body, floor_bodies
from geometry.layout.lay import lay_out

# Metres: 9 x 7 m outside, walls 0.2 m, strips 0.6 m wide. The slab's top lies 0.5 m over TOF, so
# the subgrade (0.3 m under it) lies 0.2 m over TOF, and the ground before the dig 0.1 m under it.
TEXT = """
[project]
name = "A raised floor (invented)"
units = "metric"
[footing]
width = "0.6 m"
thickness = "0.3 m"
[wall]
thickness = "0.2 m"
height = "2.4 m"
[floor]
tie = "slab top at TOF +0.5 m"
layer = [
    { name = "stone", material = "stone-57", thickness = "0.15 m", role = "base" },
    { name = "foam", material = "xps-iv", thickness = "0.05 m", role = "insulation" },
    { name = "slab", material = "concrete", thickness = "0.1 m", role = "slab" },
]
edge_board = { material = "xps-iv", thickness = "0.03 m", bottom = "foam top", top = "slab top" }
[[area]]
name = "room"
corners = ["0, 0", "9 m, 0", "9 m, 7 m", "0, 7 m"]
[excavation]
existing = "-0.1 m"
"""
ROOM, CORE = 8.6 * 6.6, 8.2 * 6.2


@pytest.fixture(scope="module")
def area():
    return lay_out(read_design(TEXT)).areas[0]


def test_layers_follow_each_other_and_the_board_stands_before_the_slab_is_poured(area):
    *layers, board = floor_bodies(area, [])
    stages = [body.label.stage for body in layers]
    assert stages == sorted(set(stages))
    assert [body.label.role for body in layers] == ["base", "insulation", "slab"]
    assert board.label.stage == stages[-1]


def test_the_board_takes_its_width_out_of_the_layers_it_stands_in(area):
    """From the foam's top at +0.4 m to the slab's at +0.5 m, 0.03 m along every wall."""
    edge = edge_prism(area)
    strip = ROOM - (8.6 - 0.06) * (6.6 - 0.06)
    assert (edge.bottom, edge.top) == pytest.approx((0.4, 0.5))
    assert edge.region.area == pytest.approx(strip)
    volumes = {body.label.name: body.volume for body in floor_bodies(area, [])}
    assert volumes == {
        "Stone": pytest.approx(ROOM * 0.15), "Foam": pytest.approx(ROOM * 0.05),
        "Slab": pytest.approx((ROOM - strip) * 0.1), "Edge board": pytest.approx(strip * 0.1),
    }  # fmt: skip


def test_fill_stands_from_the_ground_to_a_floor_over_it(area):
    """0.1 m between the strips up to TOF, then 0.2 m between the walls."""
    fill = fill_body(area, -0.1, [])
    assert fill.volume == pytest.approx(CORE * 0.1 + ROOM * 0.2)
    assert (fill.bottom, fill.top) == pytest.approx((-0.1, 0.2))
    assert fill_body(area, 0.2, []) is None
    assert fill_body(area, 0.3, []) is None
    whole = lay_out(read_design(TEXT)).floors
    assert [b.volume for b in whole if b.label.role == "fill"] == pytest.approx([fill.volume])
