"""One invented floor's heat by hand; its words in both systems."""

import pytest

from geometry.designfile import read_design
from geometry.formulas.ground_heat import floor_transmittance, wall_transmittance
from geometry.heat import words
from geometry.heat.buildup import Resisting
from geometry.heat.f_factors import f_factor
from geometry.heat.floors import FloorHeat, floor_heat
from geometry.heat.tubes import below_tubes
from geometry.layout.lay import lay_out

# 12 x 8 m: 96 m2 and 40 m of edge. Boards of R 5 an inch, concrete of R 0.08 an inch; R 1 (US) is
# 0.17611 m2K/W (NIST SP 811).
R_INCH = 0.17611 / 0.0254
BOARD, SLAB, WALL = 5 * 0.05 * R_INCH, 0.08 * 0.1 * R_INCH, 0.08 * 0.2 * R_INCH
BOX = """
[project]
name = "Invented box"
units = "metric"
[wall]
thickness = "200 mm"
[floor]
tie = "foam bottom at TOF"
layer = [
    { name = "stone", material = "stone-57", thickness = "150 mm", role = "base" },
    { name = "foam", material = "xps-iv", thickness = "50 mm", role = "insulation" },
    { name = "slab", material = "concrete", thickness = "100 mm", role = "slab" },
]
[[area]]
name = "room"
corners = ["0, 0", "12 m, 0", "12 m, 8 m", "0, 8 m"]
[grade]
at_wall = "{grade}"
[climate]
{climate}
"""


def heat(grade: str, share: float, climate: str = 'ground_conductivity = "2 W/mK"') -> FloorHeat:
    text = BOX.replace("{grade}", grade).replace("{climate}", climate)
    layout = lay_out(read_design(text))
    found = floor_heat(layout, layout.areas[0], share)
    assert found is not None
    return found


def test_a_floor_in_the_ground_with_a_quarter_of_cold_concrete() -> None:
    """ISO 13370: B' is area over half the edge; films of 0.17 and 0.04 under a floor, 0.13 and 0.04
    at a wall. The finished floor lies at +150 mm, the grade 1.5 m over it.
    """
    found = heat("1.65 m", 0.25)
    whole, films = BOARD + SLAB, 0.21
    mean = 1 / (0.25 / (films + SLAB) + 0.75 / (films + whole)) - films
    assert found.resistance == pytest.approx(whole, rel=1e-4)
    assert found.mean_resistance == pytest.approx(mean, rel=1e-4)
    assert found.dimension_m == pytest.approx(96 / 20)
    assert found.depth_m == pytest.approx(1.5)
    whole_m, mean_m = (0.2 + 2 * (films + value) for value in (whole, mean))
    assert found.u_whole == pytest.approx(floor_transmittance(4.8, whole_m, 2, 1.5), rel=1e-4)
    assert found.u_floor == pytest.approx(floor_transmittance(4.8, mean_m, 2, 1.5), rel=1e-4)
    assert found.wall_resistance == pytest.approx(WALL, rel=1e-4)
    wall_m = 2 * (0.17 + WALL)
    assert found.u_wall == pytest.approx(wall_transmittance(1.5, wall_m, mean_m, 2), rel=1e-4)
    assert found.wall_m2 == pytest.approx(60)
    assert found.loss_w_k == pytest.approx(96 * found.u_floor + 60 * (found.u_wall or 0))
    assert not found.by_edge.applies
    assert not found.ground_assumed


def test_a_floor_over_the_ground_has_no_wall_in_it_and_all_cold_is_bare() -> None:
    found = heat("-100 mm", 1.5, "")
    assert (found.depth_m, found.wall_m2, found.u_wall, found.wall_w_k) == (0, 0, None, 0)
    assert found.mean_resistance == pytest.approx(SLAB, rel=1e-4)
    assert found.by_edge.applies
    assert found.ground_assumed
    # 50 mm at R 5 an inch are R 9.8: the table's row of no boards, 0.73 Btu/h F ft.
    assert (found.by_edge.r_table, found.by_edge.warmed) == (0, False)
    assert found.by_edge.loss_w_k == pytest.approx(0.73 * 1.730735 * 40, rel=1e-4)


# WAC 51-11C-61061 (2013), Table A106.1, fully insulated: US R and Btu/h F ft.
PLAIN = {0: 0.73, 10: 0.36, 15: 0.31, 20: 0.26, 30: 0.21}
WARMED = {0: 0.84, 5: 0.74, 10: 0.55, 15: 0.44, 20: 0.39, 30: 0.32}


@pytest.mark.parametrize(("rows", "warmed"), [(PLAIN, False), (WARMED, True)])
def test_the_codes_factors_are_those_of_the_table(rows: dict[int, float], warmed: bool) -> None:
    for r_value, factor in rows.items():
        found = f_factor(r_value * 0.17611, 10, 0.0, warmed=warmed)
        assert (found.r_table, found.factor) == (r_value, pytest.approx(factor * 1.730735))


def test_the_codes_factors_hold_up_to_a_foot_under_the_grade() -> None:
    """1 Btu/h F ft is 1.730735 W/mK (NIST SP 811); a board a hair short of its R is that R."""
    assert f_factor(0.0, 10, 0.3).applies
    assert not f_factor(0.0, 10, 0.3048).applies
    warm = f_factor(9.995 * 0.17611, 10, 0.0, warmed=True)
    assert (warm.r_table, warm.warmed) == (10, True)
    assert f_factor(9.9 * 0.17611, 10, 0.0, warmed=True).r_table == 5


def test_heat_down_from_tubes_in_the_middle_of_a_slab_by_hand() -> None:
    """0.05 of the slab and 0.1 of wood lie over the tubes, 1/0.25 - 0.17 - 0.15 = 3.68 m2K/W under
    them. 60 W/m2 up through 1/10.8 + 0.15 warm them 14.556 K over the room, 24.556 over the mean.
    """
    layers = (
        Resisting("stone", "stone-57", 0.15, None), Resisting("foam", "xps-iv", 0.05, 2.0),
        Resisting("slab", "concrete", 0.1, 0.1), Resisting("wood", "wood", 0.01, 0.1),
    )  # fmt: skip
    little, usual, much = below_tubes(layers, 2, 0.25, 20, 10)
    assert [one.up_w_m2 for one in (little, usual, much)] == [30, 60, 90]
    assert usual.down_w_m2 == pytest.approx(24.5556 / 3.68, rel=1e-5)
    assert usual.share == pytest.approx(6.6727 / 66.6727, rel=1e-4)
    # A floor all but open to the cold has half its slab left under the tubes.
    assert below_tubes(layers, 2, 10, 20, 10)[1].down_w_m2 == pytest.approx(491.11, abs=0.01)


def test_heat_in_words_of_both_systems() -> None:
    """By NIST SP 811: R 0.17611 m2K/W, Btu/h 0.293071 W, ft2 0.092903 m2, F 5/9 K."""
    said = {
        words.show_resistance: (1.82, "1.82 m²K/W", "R-10.3"),
        words.show_transmittance: (0.221, "0.221 W/m²K", "0.0389 Btu/h·ft²·F"),
        words.show_loss: (23.0, "23.0 W/K", "43.6 Btu/h·F"),
        words.show_power: (774.0, "774 W", "2,641 Btu/h"),
        words.show_flow: (63.0, "63 W/m²", "20.0 Btu/h·ft²"),
        words.show_temperature: (20.0, "20 C", "68 F"),
        words.show_ground: (1.5, "1.5 W/mK", "0.87 Btu/h·ft·F"),
    }
    for show, (value, metric, feet) in said.items():
        assert (show(value, "metric"), show(value, "ft-in")) == (metric, feet)
