"""Least insulation by climate zone, beside the published tables, and what is said of tubes."""

import pytest

from geometry.checks.energy import energy_findings
from geometry.checks.tubing import tubing_findings
from geometry.designfile import read_design
from geometry.errors import DesignError
from geometry.layout.lay import Layout, lay_out
from geometry.rules.energy import ENERGY
from geometry.units import FOOT

# IRC 2018 table N1102.1.2 (a city's print) and IRC 2021 N1102.1.3 (a laboratory's comparison):
# basement wall in boards / between studs, slab R and depth in feet.
PUBLISHED = {
    "irc-2018": {"2": (0, 0, 0, 0), "3": (5, 13, 0, 0), "4": (10, 13, 10, 2), "4C": (15, 19, 10, 2),
                 "5": (15, 19, 10, 2), "6": (15, 19, 10, 4), "8": (15, 19, 10, 4)},
    "irc-2021": {"2": (0, 0, 0, 0), "3": (5, 13, 10, 2), "4": (10, 13, 10, 4),
                 "4C": (15, 19, 10, 4), "5": (15, 19, 10, 4), "7": (15, 19, 10, 4)},
}  # fmt: skip

BOX = """
[project]
name = "Invented box"
[[area]]
name = "room"
corners = ["0, 0", "40 ft, 0", "40 ft, 24 ft", "0, 24 ft"]
[grade]
at_wall = "{grade}"
[rules]
sets = ["{edition}"]
[climate]
zone = "{zone}"
{more}
"""


def house(grade: str, more: str = "", zone: str = "5A", edition: str = "irc-2018") -> Layout:
    return lay_out(
        read_design(BOX.format(grade=grade, more=more, zone=zone, edition=edition))
    )  # fmt: skip


def test_the_tables_are_those_that_are_printed() -> None:
    for edition in ENERGY:
        for zone, row in PUBLISHED.get(edition.key, {}).items():
            rule = edition.rules[zone]  # type: ignore[index]
            found = (rule.continuous, rule.cavity, rule.slab_r, round(rule.slab_depth_m / FOOT))
            assert found == row, (edition.key, zone)


def told(layout: Layout) -> dict[str, str]:
    return {f.id: f.severity for f in energy_findings(layout)}


def test_a_basements_walls_and_a_slabs_edge_are_held_to_the_zone() -> None:
    deep, flat = "7 ft", "6 in"
    assert told(house(deep)) == {"energy-wall": "look"}
    assert told(house(deep, 'wall_resistance = "R-15"')) == {"energy-rules": "fine"}
    assert told(house(deep, 'wall_resistance = "R-14"')) == {"energy-wall": "look"}
    assert told(house(deep, 'wall_resistance = "R-10"', zone="4A")) == {"energy-rules": "fine"}
    assert told(house(deep, zone="2")) == {}
    assert told(house(flat)) == {"energy-slab": "look"}
    board = '[floor.edge_board]\nmaterial = "xps-iv"\nthickness = "2 in"'
    assert told(house(flat, board)) == {"energy-rules": "fine"}
    assert told(house(flat, 'unheated = ["room"]')) == {}
    assert told(house(flat, zone="3")) == {}
    assert told(house(flat, zone="3", edition="irc-2021")) == {"energy-slab": "look"}


@pytest.mark.parametrize(("deep", "name"), [(11.9, "energy-slab"), (12.1, "energy-wall")])
def test_a_floor_a_foot_under_the_grade_is_a_basements(deep: float, name: str) -> None:
    floor = house("7 ft").areas[0].finished_floor
    assert told(house(f"{floor * 12 / FOOT + deep:.3f} in")) == {name: "look"}


def test_what_is_there_and_what_is_asked_are_told_in_r() -> None:
    board = '[floor.edge_board]\nmaterial = "xps-iv"\nthickness = "1 in"'
    (edge,) = energy_findings(house("6 in", board))
    # ASTM C578: R-5 an inch.
    assert edge.found == "Slab at grade, R-5 at its edge."
    assert "slab at grade R-10 at its edge, 2'-0\" from its top" in edge.asked
    (bare,) = energy_findings(house("6 in"))
    assert "R-0 at its edge" in bare.found
    (wall,) = energy_findings(house("7 ft", 'wall_resistance = "R-14"'))
    assert wall.found == "Basement walls with R-14."
    (unsaid,) = energy_findings(house("7 ft"))
    assert unsaid.found.startswith("Nothing is said of insulation")


def test_editions_that_ask_alike_are_told_together() -> None:
    """Zone 4: a slab's edge 2 ft down until 2018, 4 ft since 2021; the walls stay as they were."""

    def asked(grade: str, zone: str) -> list[str]:
        text = BOX.format(grade=grade, more="", zone=zone, edition="")
        layout = lay_out(read_design(text.replace('sets = [""]', "")))
        return [f.asked.split(":")[0] for f in energy_findings(layout)]

    assert asked("7 ft", "4") == ["IRC 2012, IRC 2018, IRC 2021, zone 4"]
    assert asked("6 in", "4") == ["IRC 2012, IRC 2018, zone 4", "IRC 2021, zone 4"]
    assert asked("6 in", "3") == ["IRC 2021, zone 3"]


def test_a_zone_that_is_none_is_a_fault() -> None:
    with pytest.raises(DesignError) as caught:
        house("7 ft", zone="9")
    assert caught.value.faults[0].place == "climate > zone"


def tubes(keys: str, more: str = "") -> dict[str, str]:
    layout = house("7 ft", f"{more}\n[floor.tubing]\n{keys}", zone="2")
    return {f.id: f.severity for f in tubing_findings(layout)}


def test_tubes_as_they_should_be_and_what_is_wrong_with_others() -> None:
    assert tubes('spacing = "12 in"') == {"tubing": "fine"}
    # 8 in apart turns back with 4 in: 1/2 in tube bends to 5 in, 3/8 in tube to 4 in.
    assert tubes('spacing = "8 in"') == {"tubing-bends": "look"}
    assert tubes('spacing = "8 in"\ntube = "pex-3/8"') == {"tubing": "fine"}
    assert tubes('edge = "2 ft"\nspacing = "10 in"') == {"tubing-reach": "look"}


def test_a_heated_slab_wants_foam_under_all_of_it() -> None:
    bare = """
[floor]
layer = [
    { name = "stone", material = "stone-57", thickness = "6 in", role = "base" },
    { name = "slab", material = "concrete", thickness = "4 in", role = "slab" },
]
[floor.tubing]
"""
    assert told(house("7 ft", bare, zone="2")) == {"energy-heated-slab": "look"}
    assert told(house("7 ft", "[floor.tubing]", zone="2")) == {"energy-rules": "fine"}
    # R-5 is asked: an inch of extruded foam.
    foam = '{ name = "foam", material = "xps-iv", thickness = "1 in", role = "insulation" },'
    inch = bare.replace('    { name = "slab"', f'    {foam}\n    {{ name = "slab"')
    assert told(house("7 ft", inch, zone="2")) == {"energy-rules": "fine"}
    thin = told(house("7 ft", inch.replace('"1 in"', '"3/4 in"'), zone="2"))
    assert thin == {"energy-heated-slab": "look"}
