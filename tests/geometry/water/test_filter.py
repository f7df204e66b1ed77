"""The drain's fabric, stone and sand against soil, holes and stone; the wrap as it is cut."""

from dataclasses import replace

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.materials.catalogue import AGGREGATES, FABRICS, SOILS
from geometry.water.filter import (
    ASK_COARSER,
    ASK_CURVE,
    ASK_FINES,
    ASK_GROUP,
    fabric_on,
    soil_fabrics,
)
from geometry.water.graded import soil_grading
from geometry.water.grains import drain_hole_fits, fine_on_coarse, hole_fits
from geometry.water.wrapping import wrap_sheet
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds

HOUSE = """
[project]
name = "A box (invented)"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[sump]
at = "5 ft, 5 ft"
[drain]
{more}
"""
FABRIC = FABRICS["nonwoven-6oz"]  # opening 0.212 mm, 1.5 1/s
MM = 1e-3
# A silt: 60 % passes No. 200, d85 0.2 mm, d15 0.02 mm.
SILT = ((0.02 * MM, 0.15), (0.05 * MM, 0.40), (0.075 * MM, 0.60), (0.2 * MM, 0.85), (1 * MM, 1.0))


def made(more: str) -> Layout:
    return lay_out(read_design(HOUSE.format(more=more)))


def test_unknown_soil_says_what_to_ask_for() -> None:
    (row,) = soil_fabrics(made(""))
    assert (row.verdict, row.fines, row.most_opening_m) == ("unknown", None, None)
    assert row.ask == (ASK_GROUP, ASK_CURVE)


def test_silt_by_its_group_takes_the_limits_of_both_ends_of_its_band() -> None:
    # ML passes 50 to 100 %: M 288 asks 0.25 mm and 0.2 1/s at 50 %, 0.22 mm and 0.1 1/s above.
    (row,) = soil_fabrics(made('[soil]\ngroup = "ML"'))
    assert row.most_opening_m == pytest.approx((0.22 * MM, 0.25 * MM))
    assert row.least_permittivity == (0.1, 0.2)
    assert row.verdict == "suits"
    assert row.ask == (ASK_CURVE,)
    # 1.5 1/s x 1.75 mm = 2.625e-3 m/s over at most 1e-5 m/s of ML.
    assert row.permeability_ratio == pytest.approx(262.5)


@pytest.mark.parametrize(
    ("opening_mm", "per_s", "verdict"),
    [
        (0.30, 1.0, "too open"),  # more than 0.25 mm, the limit at half fines
        (0.23, 1.0, "depends"),  # between 0.22 and 0.25 mm
        (0.20, 0.15, "depends"),  # between 0.1 and 0.2 1/s
        (0.20, 0.05, "too tight"),  # under 0.1 1/s
        (0.20, 1.0, "suits"),
    ],
)
def test_fabric_too_open_or_too_tight_for_silt(
    opening_mm: float, per_s: float, verdict: str
) -> None:
    fabric = replace(FABRIC, opening_m=opening_mm * MM, permittivity_per_s=per_s)
    assert fabric_on(SOILS["ML"], fabric).verdict == verdict


def test_a_curve_brings_in_the_rule_by_grain_size() -> None:
    # More than half fines: B 1.8 nonwoven, 1.8 x 0.2 = 0.36, not above 0.3 mm; woven B 1: 0.2 mm.
    soft = fabric_on(SOILS["ML"], FABRIC, SILT)
    assert soft.curve is not None
    assert soft.curve.most_opening_m == pytest.approx(0.3 * MM)
    assert soft.fines == pytest.approx((0.6, 0.6))
    assert soft.ask == ()
    woven = fabric_on(SOILS["ML"], replace(FABRIC, woven=True), SILT)
    assert woven.curve is not None
    assert woven.curve.most_opening_m == pytest.approx(0.2 * MM)
    assert (soft.verdict, woven.verdict) == ("suits", "too open")


def test_broad_soil_clogs_a_fabric_finer_than_three_d15() -> None:
    # d15 0.1 mm, Cu 0.6/0.08 above 3: the opening must be 0.3 mm at least.
    broad = ((0.05 * MM, 0.02), (0.075 * MM, 0.08), (0.1 * MM, 0.15), (0.6 * MM, 0.60), (2 * MM, 1))
    row = fabric_on(SOILS["SM"], FABRIC, broad)
    assert row.curve is not None
    assert row.curve.least_opening_m == pytest.approx(0.3 * MM)
    assert row.verdict == "too tight"


GRADED = '[soil]\ngroup = "{0}"\ngrading = [{1}]'
SANDY = '"4.75 mm, 100 %", "2 mm, 95 %", "0.425 mm, 0.80", "No. 200, 35 %"'


def test_the_design_s_own_grading_decides_for_the_ground() -> None:
    # D85 lies a third of the way, by logarithm, from 0.425 to 2 mm: 0.425 (2/0.425)^(1/3) = 0.712;
    # B is 1 where D60 over D10 is not known. 35 % fines: M 288 asks 0.25 mm and 0.2 per s.
    layout = made(GRADED.format("SM", SANDY) + '\n[backfill]\nmaterial = "ML"')
    ground, fill = soil_fabrics(layout)
    assert ground.curve is not None
    assert ground.curve.most_opening_m == pytest.approx(0.712 * MM, rel=1e-3)
    assert ground.fines == pytest.approx((0.35, 0.35))
    assert ground.most_opening_m == pytest.approx((0.25 * MM, 0.25 * MM))
    assert ground.ask == ()
    assert fill.curve is None
    grading = soil_grading(layout.design)
    assert grading is not None
    assert [p.sieve_m for p in grading.points] == pytest.approx([4.75e-3, 2e-3, 425e-6, 75e-6])
    assert grading.d85_m == pytest.approx(ground.curve.d85_m)
    assert (grading.d15_m, grading.uniformity) == (None, None)
    assert soil_grading(made("").design) is None


def test_a_grading_that_is_too_short_says_what_to_ask_for() -> None:
    (row,) = soil_fabrics(made(GRADED.format("SM", '"No. 10, 80 %", "No. 40, 30 %"')))
    # At most the 30 % that pass No. 40 can pass No. 200; D85 lies over the largest sieve.
    assert row.fines == (0.0, 0.3)
    assert row.curve is None
    assert row.ask == (ASK_FINES, ASK_COARSER)
    (row,) = soil_fabrics(made(GRADED.format("CL", '"0.05 mm, 90 %", "0.002 mm, 40 %"')))
    assert row.fines == (0.9, 1.0)
    assert row.curve is not None
    assert row.ask == (ASK_FINES,)


def test_fines_that_may_be_few_or_many_are_held_to_the_stricter_of_both_rules() -> None:
    # From none to 60 % can pass No. 200: B 1 of an even soil, or 1.8; D85 is 0.2 mm.
    short = ((0.1 * MM, 0.60), (0.2 * MM, 0.85), (1 * MM, 1.0))
    row = fabric_on(SOILS["ML"], FABRIC, short)
    assert row.fines == pytest.approx((0.0, 0.6))
    assert row.curve is not None
    assert row.curve.most_opening_m == pytest.approx(0.2 * MM)


def test_a_grading_that_is_not_the_group_s() -> None:
    for group, fits in (("SM", True), ("CL", False), ("SP", False)):
        grading = soil_grading(made(GRADED.format(group, SANDY)).design)
        assert grading is not None
        assert grading.fits_group == fits


def test_half_inch_holes_lose_the_fine_edge_of_no_57() -> None:
    # Fine edge: 60 % under 12.5 mm, 10 % under 4.75: D50 = 4.75 (12.5/4.75)^0.8 = 10.30 mm.
    # Coarse edge: 25 % under 12.5, 95 % under 25: D50 = 12.5 x 2^(25/70) = 16.01 mm.
    (row,) = (r for r in hole_fits(AGGREGATES["stone-57"], 12.7 * MM) if r.share == 0.5)
    assert row.fine_edge == pytest.approx(10.30 / 12.7, rel=1e-3)
    assert row.coarse_edge == pytest.approx(16.01 / 12.7, rel=1e-3)
    assert row.fails
    # D15 is asked of critical drains alone; the upper end of the Corps' 1.0 to 1.2 is told only.
    every = hole_fits(AGGREGATES["stone-57"], 12.7 * MM)
    assert [(r.share, r.least) for r in every if r.judged] == [(0.85, 1.0), (0.5, 1.0)]
    assert drain_hole_fits(made("holes = { rows = [] }")) == ()
    fits = drain_hole_fits(made('holes = { diameter = "3/8 in" }'))
    assert fits
    assert not any(fit.fails for fit in fits)


def test_larger_holes_never_fit_better() -> None:
    for small, large in zip(
        hole_fits(AGGREGATES["stone-57"], 6 * MM),
        hole_fits(AGGREGATES["stone-57"], 12 * MM),
        strict=True,
    ):
        assert small.fine_edge is not None
        assert large.fine_edge is not None
        assert small.fine_edge == pytest.approx(2 * large.fine_edge)


def test_sand_straight_on_washed_stone() -> None:
    # Worst 8.49 mm over 1.18 mm, best 5.23 over 2.98 mm.
    (row,) = fine_on_coarse(made(""))
    assert (row.upper, row.lower) == ("sand-c33", "stone-57")
    assert row.worst == pytest.approx(7.19, abs=0.01)
    assert row.best == pytest.approx(1.756, abs=0.005)


def test_the_wrap_of_a_box() -> None:
    # 8 in wall on a 20 in footing: it stands out 6 in. Girth 2 (16 + 6) in + 2 tall, lap 12 in.
    # Trench's outer edge: 30 ft + 2 (6 + 16) in = 33.667 ft, 23.667 ft; a 1 ft lap at each bend.
    layout = made('pipe = "d2729-4"')
    sheet, drain = wrap_sheet(layout), layout.drain
    assert sheet is not None
    assert drain is not None
    tall = (drain.stone_top - drain.stone_bottom) / 0.0254
    assert sheet.width_m / 0.0254 == pytest.approx(44 + 2 * tall + 12)
    feet = [piece.length_m / 0.3048 for piece in sheet.pieces]
    assert feet == pytest.approx([34.6667, 24.6667, 34.6667, 24.6667], abs=1e-3)
    assert sheet.area_m2 == pytest.approx(sheet.width_m * 118.6667 * 0.3048, rel=1e-5)
    assert sheet.girth_ratio == pytest.approx((44 + 2 * tall) / (3.14159265 * 4.215))
    assert sheet.soil_ratio == pytest.approx((16 + 6 + 16 + tall) / (3.14159265 * 4.215))


def test_a_wrap_along_two_sides_is_lapped_at_the_one_bend_between() -> None:
    layout = made("sides = [1, 2]")
    butted, lapped = wrap_sheet(layout, 0.0), wrap_sheet(layout, 0.3)
    assert butted is not None
    assert lapped is not None
    pairs = zip(butted.pieces, lapped.pieces, strict=True)
    assert [more.length_m - plain.length_m for plain, more in pairs] == pytest.approx([0.3, 0.0])


def test_sand_on_stone_whose_grading_is_not_known_is_told_without_a_ratio() -> None:
    def rows(lower: str, upper: str) -> list[tuple[str, str, float | None]]:
        layers = [
            f'{{ name = "{n}", material = "{key}", thickness = "4 in", role = "{role}" }}'
            for n, key, role in (("a", lower, "base"), ("b", upper, "base"))
        ]
        slab = '{ name = "slab", material = "concrete", thickness = "4 in", role = "slab" }'
        floor = f"[floor]\nlayer = [{', '.join((*layers, slab))}]\ntie = 'b top at TOF'"
        found = fine_on_coarse(made(f"fall = 'level'\n{floor}"))
        return [(row.upper, row.lower, row.worst) for row in found]

    assert rows("crusher-run", "sand-c33") == [("sand-c33", "crusher-run", None)]
    assert rows("stone-57", "crusher-run") == rows("sand-c33", "crusher-run") == []


@pytest.mark.parametrize("seed", seeds(12))
def test_random_designs(seed: int) -> None:
    raw = seeded_raw(seed)
    if raw is None:
        return
    layout = lay_out(design_of(raw))
    sheet = wrap_sheet(layout)
    assert (sheet is None) == (layout.drain is None) == (not soil_fabrics(layout))
    if sheet is not None and layout.drain is not None:
        assert sheet.length_m >= 0.9 * layout.drain.route.length
        assert sheet.soil_ratio < sheet.girth_ratio
    for row in fine_on_coarse(layout):
        assert row.worst is None or row.best is None or row.best <= row.worst
