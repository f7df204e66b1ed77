"""Warmth of invented floors, by hand."""

import pytest

from geometry.checks.cold import cold_concrete
from geometry.designfile import read_design
from geometry.edge_heat import edge_heats
from geometry.heat.buildup import resistance, resisting
from geometry.heat.floors import FloorHeat
from geometry.layout.lay import lay_out
from geometry.report import report
from tests.houses import WITH_GARAGE, edited, house

R_IP = 0.176110  # m2K/W, NIST SP 811


def warmth(*changes: tuple[str, str]) -> dict[str, FloorHeat]:
    return {one.area: one for one in report(house(*changes)).warmth}


CLIMATE = ("[soil]", "[climate]\n{}\n\n[soil]")


def climate(words: str) -> tuple[str, str]:
    return CLIMATE[0], CLIMATE[1].format(words)


def test_the_stack_of_slab_and_two_inches_of_foam() -> None:
    # 4 in of concrete at 0.08 an inch, 2 in at 5: 10.32; with a film of 0.61, 10.93.
    layers = resisting(house().areas[0].floor)
    assert resistance(layers) / R_IP == pytest.approx(0.32 + 10, rel=1e-4)
    assert [x.name for x in layers if x.resistance is None] == ["stone", "retarder"]


def test_sand_over_the_foam_counts_and_under_it_is_ground() -> None:
    sand = '    { name = "sand", material = "sand-c33", thickness = "2 in", role = "blinding" },\n'
    foam, sheet = '    { name = "foam"', '    { name = "retarder"'
    under, over = house((foam, sand + foam)), house((sheet, sand + sheet))
    plain, low, high = (
        resistance(resisting(made.areas[0].floor)) for made in (house(), under, over)
    )
    assert low == plain
    assert high - plain == pytest.approx(0.0508 / 2.0)


def test_heat_is_what_the_areas_and_degrees_make_of_u() -> None:
    (one,) = warmth(climate('inside = "68 F"\noutside = "32 F"')).values()
    assert one.floor_m2 == pytest.approx(600 * 0.3048**2)
    assert one.dimension_m == pytest.approx(600 / 50 * 0.3048)
    # Grade at +7 ft, floor at 2 in of foam, 15 mil and 4 in of slab.
    assert one.depth_m == pytest.approx((84 - 6.015) * 0.0254, abs=1e-6)
    assert one.wall_m2 == pytest.approx(100 * 0.3048 * one.depth_m)
    assert one.u_wall is not None
    assert one.loss_w_k == pytest.approx(one.u_floor * one.floor_m2 + one.u_wall * one.wall_m2)
    assert one.loss_w == pytest.approx(20 * one.loss_w_k)


def test_without_temperatures_the_loss_is_for_each_degree_alone() -> None:
    (one,) = warmth(climate('inside = "20 C"')).values()
    assert one.loss_w is None


def test_ground_by_group_by_word_or_unknown() -> None:
    (gravel,), (clay,), (said,), (unknown,) = (
        warmth(*changes).values()
        for changes in (
            (), (('group = "GW"', 'group = "CL"'),),
            (climate('ground_conductivity = "0.9 Btu/h-ft-F"'),),
            (('group = "GW"', 'group = "unknown"'),),
        )
    )  # fmt: skip
    assert (gravel.ground_w_mk, clay.ground_w_mk) == (2.0, 1.5)
    assert said.ground_w_mk == pytest.approx(0.9 * 1.730735, rel=1e-5)
    assert (unknown.ground_w_mk, unknown.ground_assumed) == (2.0, True)
    assert not gravel.ground_assumed
    assert clay.u_floor < gravel.u_floor


def test_foam_on_the_walls_saves_more_than_foam_under_the_floor() -> None:
    (plain,), (warm,) = warmth().values(), warmth(climate('wall_resistance = "R-15"')).values()
    assert warm.wall_resistance - plain.wall_resistance == pytest.approx(15 * R_IP, rel=1e-4)
    assert warm.wall_w_k < plain.wall_w_k / 2


def test_an_unheated_garage_loses_nothing_and_lays_the_edge_beside_it_bare() -> None:
    both = warmth(WITH_GARAGE)
    alone = warmth(WITH_GARAGE, climate('unheated = ["garage"]'))
    assert set(both) == {"basement", "garage"}
    assert set(alone) == {"basement"}
    side = 20 * 0.3048
    assert alone["basement"].exposed_m - both["basement"].exposed_m == pytest.approx(side, abs=0.01)


def test_cold_concrete_costs_heat() -> None:
    low = warmth(("foam bottom at TOF", "foam top at TOF"))["basement"]
    over = warmth()["basement"]
    assert low.cold_share > over.cold_share > 0
    assert low.mean_resistance < over.mean_resistance < over.resistance
    assert over.u_floor > over.u_whole


def test_ways_to_make_the_edge_tell_cold_concrete_before_and_after() -> None:
    made = house()
    first, *others = edge_heats(made.design)
    assert first.same
    assert first.cold_share == pytest.approx(cold_concrete(made, made.areas[0]).share)
    ways = {one.key: one for one in others}
    assert not any(one.same for one in others)
    stopped, turned = ways["stopped"], ways["turned up"]
    assert stopped.cold_share > first.cold_share
    assert stopped.edge_m2 > turned.edge_m2 == 0
    assert stopped.heat is not None
    assert first.heat is not None
    assert stopped.heat.floor_w_k > first.heat.floor_w_k


def test_a_floor_without_foam_has_no_edge_to_choose() -> None:
    foam = '    { name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" },\n'
    text = edited((foam, ""), ("foam bottom at TOF", "slab bottom at TOF"))
    design = read_design(text)
    assert edge_heats(design) == ()
    (one,) = report(lay_out(design)).warmth
    assert one.mean_resistance == pytest.approx(one.resistance)
