"""Fill and pressure on outer walls, worked by hand; what state the fill meets; random designs."""

from math import asin, degrees, sin

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.materials.catalogue import SOILS
from geometry.parts.ground import BackfillState
from geometry.water.wall import OUTSIDE, highest, pushes, state_words, wall_runs
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds

HOUSE = """
[project]
name = "A box (invented)"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
{more}
"""
GARAGE = """[[area]]
name = "garage"
step = "40 in"
corners = ["30 ft, 0", "50 ft, 0", "50 ft, 20 ft", "30 ft, 20 ft"]
"""
FOOT, PLF = 0.3048, 14.5939  # m, N/m for a pound per foot


def made(more: str = "") -> Layout:
    return lay_out(read_design(HOUSE.format(more=more)))


def test_fill_is_measured_three_ways() -> None:
    # Wall 96 in, grade 8 in under its top: +88 in. Foam 2 in and slab 4 in over TOF, 10 mil sheet.
    (run,) = wall_runs(made())
    assert run.fill_to_foot_m / 0.0254 == pytest.approx(88)
    assert run.fill_to_slab_m / 0.0254 == pytest.approx(88 - 2.01)
    assert run.fill_to_floor_m / 0.0254 == pytest.approx(88 - 6.01)
    assert run.unbraced_with_slab_m / 0.0254 == pytest.approx(96 - 6.01)
    assert run.unbraced_without_slab_m / 0.0254 == pytest.approx(96)
    assert run.length_m / FOOT == pytest.approx(100)
    assert run.longest_m / FOOT == pytest.approx(30)
    assert run.asks


def test_unknown_soil_pushes_with_no_figure() -> None:
    (run,) = wall_runs(made())
    assert (run.soil, run.pushes) == ("unknown", ())


def test_eight_feet_of_lean_clay_by_hand() -> None:
    # CL: 100 lb/ft3, Ka 0.60. Active: 0.6 x 100 x 8^2 / 2 = 1920 lb/ft at 8/3 ft, 5120 lb ft.
    # The wall table's 60 lb/ft2 per ft comes to the same. sin phi = 0.4/1.6 = 0.25: at rest 0.75.
    # Saturated: dry 95 and 120, x (1 - 1/2.65) + 62.43: 121.6 and 137.1; middle 129.4, buoyant
    # 66.9.
    # Flooded to grade: 0.6 x 66.9 + 62.43 = 102.6 lb/ft3: 1.71 times.
    active, table, rest = pushes(SOILS["CL"], 8 * FOOT)
    assert [p.case for p in (active, table, rest)] == ["active", "code's table", "at rest"]
    assert active.drained_thrust.force_n_m == pytest.approx(1920 * PLF, rel=1e-4)
    assert active.drained_thrust.height_m == pytest.approx(8 / 3 * FOOT)
    assert active.drained_thrust.moment_n == pytest.approx(5120 * PLF * FOOT, rel=1e-4)
    assert table.drained_thrust.force_n_m == pytest.approx(1920 * PLF, rel=1e-4)
    assert sin(asin(0.25)) == pytest.approx(1 - rest.coefficient)
    assert degrees(asin(0.25)) == pytest.approx(SOILS["CL"].friction_angle_deg or 0)
    assert rest.drained_thrust.force_n_m == pytest.approx(2400 * PLF, rel=1e-4)
    assert active.force_ratio == pytest.approx(102.6 / 60, rel=2e-3)
    assert active.moment_ratio == pytest.approx(active.force_ratio)


def test_water_half_way_up_pushes_low() -> None:
    # Water alone 62.43 x 4^2 / 2 = 499 lb/ft at 4/3 ft; the soil's is less for its buoyancy.
    full = pushes(SOILS["CL"], 8 * FOOT, 0.0)[0]
    half = pushes(SOILS["CL"], 8 * FOOT, 4 * FOOT)[0]
    assert 1 < half.force_ratio < full.force_ratio
    assert half.moment_ratio < half.force_ratio
    none = pushes(SOILS["CL"], 8 * FOOT, 9 * FOOT)[0]
    assert none.force_ratio == 1


@pytest.mark.parametrize("group", [key for key in SOILS if key not in ("OL", "unknown")])
def test_more_fill_more_water_more_push(group: str) -> None:
    shallow, deep = pushes(SOILS[group], 1.0), pushes(SOILS[group], 2.0)
    for low, high in zip(shallow, deep, strict=True):
        assert high.drained_thrust.force_n_m == pytest.approx(4 * low.drained_thrust.force_n_m)
        assert high.drained_thrust.moment_n == pytest.approx(8 * low.drained_thrust.moment_n)
        assert high.force_ratio > 1
    loaded = pushes(SOILS[group], 2.0, surcharge_pa=5000.0)
    for plain, more in zip(deep, loaded, strict=True):
        assert more.drained_thrust.force_n_m > plain.drained_thrust.force_n_m


def test_a_filled_garage_is_pushed_over_what_is_not_filled_inside() -> None:
    layout = made(GARAGE + '[soil]\ngroup = "SM"')
    runs = {run.area: run for run in wall_runs(layout) if run.behind == OUTSIDE}
    garage = layout.area("garage")
    assert garage.subgrade < garage.tof
    assert runs["basement"].length_m / FOOT == pytest.approx(80)
    assert runs["garage"].length_m / FOOT == pytest.approx(60)
    # From its own top of footing, 40 in up, its wall is as high as the basement's.
    assert runs["garage"].unbraced_without_slab_m / 0.0254 == pytest.approx(96)
    tallest = highest(wall_runs(layout))
    assert tallest is not None
    assert tallest.area == "basement"


def test_the_highest_fill_is_asked_of_outer_walls_alone() -> None:
    # 10 in of fill outside; behind the wall to the garage 46.01 in over the basement's foot.
    low = '[grade]\nat_wall = "10 in"\n'
    runs = wall_runs(made(GARAGE + low))
    assert max(run.fill_to_foot_m for run in runs) / 0.0254 == pytest.approx(46.01)
    tallest = highest(runs)
    assert tallest is not None
    assert (tallest.area, tallest.behind) == ("basement", OUTSIDE)
    assert tallest.fill_to_foot_m / 0.0254 == pytest.approx(10)


def test_fill_inside_holds_a_wall() -> None:
    # The garage's floor at +40 in from its TOF on 12 in of layers: ground inside at +28 in.
    tie = GARAGE + '[area.floor]\ntie = "finished floor at +40 in"\n'
    layout = made(tie)
    run = next(run for run in wall_runs(layout) if run.area == "garage" and run.behind == OUTSIDE)
    garage = layout.area("garage")
    assert garage.subgrade > garage.tof
    assert run.fill_to_foot_m == pytest.approx(layout.ground.at_wall - garage.subgrade)


def test_the_wall_to_a_higher_floor_holds_the_fill_under_it() -> None:
    # The shared side is 20 ft; the garage's floor lies 6.01 in over its TOF at +40 in. The
    # basement's own floor 6.01 in over TOF: 40 in of fill over it, 46.01 in over its foot.
    layout = made(GARAGE)
    (run,) = (run for run in wall_runs(layout) if run.behind != OUTSIDE)
    assert (run.area, run.behind) == ("basement", "garage")
    assert run.length_m / FOOT == pytest.approx(20, abs=1e-3)
    assert run.fill_to_floor_m / 0.0254 == pytest.approx(40)
    assert run.fill_to_foot_m / 0.0254 == pytest.approx(46.01)


def test_the_design_says_how_high_water_stands_and_what_loads_the_ground() -> None:
    # 88 in of CL over the foot. 100 lb/ft2 at rest 0.75: 75 lb/ft2 more over 88/12 ft. The same
    # water 4 ft down pushes what `pushes` says for it.
    more = GARAGE + '[soil]\ngroup = "CL"\n[backfill]\nwater_depth = "4 ft"\n[loads]\n{}'
    plain = wall_runs(made(more.format("")))
    loaded = wall_runs(made(more.format('surcharge = "100 psf"')))
    for before, after in zip(plain, loaded, strict=True):
        assert before.water_depth_m == after.water_depth_m == pytest.approx(4 * FOOT)
        outside = before.behind == OUTSIDE
        rest, heavier = before.pushes[-1], after.pushes[-1]
        more_n = heavier.drained_thrust.force_n_m - rest.drained_thrust.force_n_m
        height_ft = before.fill_to_foot_m / FOOT
        assert heavier.surcharge_pa == pytest.approx(100 * PLF / FOOT if outside else 0)
        # What stands on the higher floor of a neighbour is not counted.
        assert more_n == pytest.approx(75 * height_ft * PLF if outside else 0, rel=1e-4)
        assert before.pushes == pushes(SOILS["CL"], before.fill_to_foot_m, 4 * FOOT)


def test_words_for_the_day_of_backfill_never_say_that_it_is_safe() -> None:
    (run,) = wall_runs(made())
    free = " ".join(state_words(run, BackfillState(deck=False, slab=False, braced=False)))
    assert "do not backfill" in free
    held = " ".join(state_words(run, BackfillState(deck=True, slab=True, braced=True)))
    assert "do not backfill" not in held
    assert "Held at top and foot" in held
    assert "Held at top and foot" not in free
    unsaid = " ".join(state_words(run, BackfillState()))
    assert unsaid.count("Not said") == 3
    assert "with neither deck nor braces do not backfill" in unsaid
    for words in (free, held, unsaid):
        assert "Ask an engineer" in words
        assert "safe" not in words
        assert "strong enough" not in words
    (low,) = wall_runs(made('[wall]\nheight = "4 ft"'))
    assert not low.asks
    assert "Ask an engineer" in " ".join(state_words(low, BackfillState(deck=True)))


@pytest.mark.parametrize("seed", seeds(12))
def test_random_designs(seed: int) -> None:
    raw = seeded_raw(seed)
    if raw is None:
        return
    flooded = {"backfill": {**raw["backfill"], "water_depth": 0.3}}
    layout = lay_out(design_of({**raw, **flooded, "soil": {"group": "ML"}}))
    runs = wall_runs(layout)
    whole = sum(run.length_m for run in runs if run.behind == OUTSIDE)
    assert whole == pytest.approx(layout.ground.house.exterior.length, rel=0.02)
    for run in runs:
        assert run.fill_to_slab_m >= run.fill_to_floor_m >= 0
        assert bool(run.pushes) == (run.fill_to_foot_m > 0)
        for push in run.pushes:
            assert push.force_ratio >= 1
            assert 0 < push.drained_thrust.height_m < run.fill_to_foot_m
