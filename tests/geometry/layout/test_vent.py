"""The vent pipe for soil gas: where it stands, what it takes out, what is said of it."""

from math import pi

import pytest
import trimesh

from geometry.checks.radon import radon_findings
from geometry.designfile import read_design
from geometry.errors import DesignError
from geometry.layout.lay import Layout, lay_out
from geometry.solids.foundation import build
from geometry.takeoff.order import order
from geometry.units import FOOT, INCH

BOX = """
[project]
name = "Invented box"
[[area]]
name = "room"
corners = ["0, 0", "40 ft, 0", "40 ft, 24 ft", "0, 24 ft"]
[[area.pier]]
name = "P1"
at = "20 ft, 12 ft"
[grade]
at_wall = "6 ft"
{more}
"""
VENT = '[vent]\nat = "{at}"\n'


def house(more: str = "") -> Layout:
    return lay_out(read_design(BOX.format(more=more)))


def vented(at: str = "10 ft, 8 ft", more: str = "") -> Layout:
    return house(VENT.format(at=at) + more)


def test_the_pipe_stands_in_the_stone_and_passes_the_slab() -> None:
    """3 in Schedule 40 is 3 1/2 in outside; in 6 in of stone it begins 3 in over the subgrade."""
    layout = vented()
    vent, area = layout.vent, layout.areas[0]
    assert vent is not None
    assert vent.foot == pytest.approx(area.subgrade + 3 * INCH)
    assert vent.top == pytest.approx(area.finished_floor + 12 * INCH)
    hole = pi * (1.75 * INCH) ** 2
    plain = {b.label.part: b.volume for b in house().floors}
    for body in layout.floors:
        thick = body.top - body.bottom
        passes = thick / 2 if body.label.role == "base" else thick
        assert plain[body.label.part] - body.volume == pytest.approx(hole * passes, rel=1e-6)


def test_its_solid_is_a_pipe_of_its_length_and_it_is_bought() -> None:
    layout = vented(more='pipe = "sch40-4"\nstub = "2 ft"\n')
    assert layout.vent is not None
    length = layout.vent.top - layout.vent.foot
    outside, inside = 4.5 * INCH, (4.5 - 2 * 0.237) * INCH
    metal = pi / 4 * (outside**2 - inside**2) * length
    solid = build(layout).named("vent/pipe")
    mesh = trimesh.Trimesh(solid.vertices, solid.faces)
    assert mesh.is_watertight
    assert mesh.volume == pytest.approx(metal, rel=1e-6)
    (row,) = (r for r in order(layout).rows if r.item == "Vent pipe for soil gas")
    assert row.in_place == pytest.approx(length)
    pieces = {r.item: r.count for r in order(layout).rows if "vent" in r.item.lower()}
    assert pieces == {
        "Vent pipe for soil gas": 1, "Tee in the stone, for the vent": 1,
        "Cap or plug on the vent's stub": 1,
    }  # fmt: skip
    assert length > 2 * FOOT


@pytest.mark.parametrize(
    ("at", "word"), [("20 ft, 12 ft", "pad of pier P1"), ("6 in, 8 ft", "inward")]
)
def test_a_pipe_in_a_pad_or_a_footing_is_a_fault(at: str, word: str) -> None:
    with pytest.raises(DesignError) as caught:
        vented(at)
    assert any(word in fault.sentence for fault in caught.value.faults)


def test_a_vent_that_is_wanted_and_not_placed_is_found() -> None:
    wanted = "[site]\nradon_vent = true\n"

    def told(layout: Layout) -> dict[str, str]:
        return {f.id: f.severity for f in radon_findings(layout)}

    assert told(house(wanted)) == {"radon-placed": "look"}
    assert told(vented(more=wanted)) == {"radon-pipe": "fine"}
    assert told(house()) == {}
    wide = vented(more='pipe = "sch40-6"\n')
    assert told(wide) == {"radon-pipe-size": "look", "radon-pipe": "fine"}
