"""Pipes under fill and wheel, worked by hand; others of their size; random designs."""

from math import pi

import pytest

from geometry.designfile import read_design
from geometry.formulas.constants import GRAVITY
from geometry.layout.lay import Layout, lay_out
from geometry.materials.catalogue import PIPES
from geometry.parts.loads import Loads
from geometry.water.strength import (
    DrainStrength,
    PipeStrength,
    of_one_size,
    pipe_strength,
    stiffness,
)
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds

HOUSE = """
[project]
name = "A box (invented)"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[drain]
fall = "level"
{more}
"""
PSI, PCF = 6894.757, 157.0875  # Pa, N/m3


def failing(shown: DrainStrength) -> list[PipeStrength]:
    """The pipes that flatten beyond the limit, with the wheel."""
    return [p for p in shown.pipes if p.worst_with_wheel > shown.limit]


def made(more: str) -> Layout:
    return lay_out(read_design(HOUSE.format(more=more)))


def test_a_drain_under_eight_feet_of_clay_worked_by_hand() -> None:
    # Wall 8 ft, grade 8 in under its top: +88 in, falling 5 % of the 14 in to the pipe's middle:
    # 87.3 in. Footing's bottom -10 in, wrap 1.75 mm, bedding 2 in, pipe 4.215 in: crown at
    # -10 + 0.069 + 2 + 4.215 = -3.716 in. Cover 91.016 in. The stone's top lies 6 in + the wrap
    # over TOF: 9.785 in of it in stone at 100 lb/ft3, 81.231 in clay at 100 lb/ft3: 758.5 lb/ft2.
    shown = pipe_strength(made('pipe = "d2729-4"\n[soil]\ngroup = "CL"'))
    assert shown is not None
    mine = shown.pipes[0]
    assert (mine.pipe, mine.chosen) == ("d2729-4", True)
    at = mine.places[0]
    assert at.cover_m / 0.0254 == pytest.approx(91.016, abs=0.01)
    assert at.stone_m / 0.0254 == pytest.approx(9.785, abs=0.01)
    assert at.soil_pa == pytest.approx(758.5 / 144 * PSI, rel=1e-3)
    # E' of crushed rock dumped 1000 psi, PS 11 psi: 0.1 x 5.267 / (0.149 x 11 + 61) = 0.84 %.
    assert shown.soil_modulus_pa == pytest.approx(1000 * PSI, rel=1e-6)
    assert at.flattened == pytest.approx(0.1 * 5.267 / 62.639, rel=1e-3)
    assert at.with_wheel == at.flattened
    assert not list(failing(shown))


def test_base_with_fines_dumped_lets_the_pipe_flatten() -> None:
    # E' 100 psi: 0.1 p / (1.639 + 6.1), p some 5.3 psi: near 7 %.
    more = 'pipe = "d2729-4"\nstone = { material = "crusher-run" }\n[soil]\ngroup = "CL"'
    shown = pipe_strength(made(more))
    assert shown is not None
    assert shown.embedment == "class III"
    assert 0.065 < shown.pipes[0].worst < 0.075
    names = {pipe.pipe for pipe in failing(shown)}
    assert "d2729-4" in names
    assert "sch40-4" not in names
    needed = shown.pipes[0].places[0].modulus_needed_pa
    assert 100 * PSI < needed < 200 * PSI
    packed = pipe_strength(made(f'{more}\n[loads]\nbedding = "moderate"'))
    assert packed is not None
    assert not list(failing(packed))


def test_a_wheel_far_above_is_a_point() -> None:
    # 3 W / (2 pi z2) right under a point, no impact below 3 ft.
    shown = pipe_strength(made('[loads]\nwheel = "3000 lbf"'))
    assert shown is not None
    at = shown.pipes[0].places[0]
    wheel = 3000 * 4.4482216
    assert at.wheel_pa == pytest.approx(3 * wheel / (2 * pi * at.cover_m**2), rel=2e-3)
    assert at.with_wheel > at.flattened
    heavy = pipe_strength(made('[loads]\nwheel = "16000 lbf"'))
    assert heavy is not None
    # A larger wheel stands on more ground: far above it is still little more than a point.
    far = heavy.pipes[0].places[0]
    assert far.wheel_pa == pytest.approx(16 / 3 * at.wheel_pa, rel=2e-2)


def test_a_wheel_over_a_shallow_pipe_comes_with_its_impact() -> None:
    # Grade at 2'-2 1/2": 2 1/2 ft of cover; 1.15 of impact from 2 to 3 ft (Moser, Table 2.5). 3000
    # lb on 4 1/2 in square press by then within 2 % as a point does, 3 W / (2 pi z2).
    grade = '[grade]\nat_wall = "26.284 in"\nfall = "level"\n'
    shown = pipe_strength(made(f'pipe = "d2729-4"\n{grade}[loads]\nwheel = "3000 lbf"'))
    assert shown is not None
    at = shown.pipes[0].places[0]
    assert at.cover_m / 0.0254 == pytest.approx(30, abs=0.05)
    point = 3 * 3000 * 4.4482216 / (2 * pi * at.cover_m**2)
    assert at.wheel_pa == pytest.approx(1.15 * point, rel=0.02)


def test_a_solid_wall_is_as_stiff_as_its_plastic_and_thickness() -> None:
    # PVC of 400,000 psi, 4.5 in outside, 0.237 in thick: 6.71 x 8/12 E / (18.9873 - 1)^3.
    assert stiffness(PIPES["sch40-4"]) / PSI == pytest.approx(307.46, rel=2e-4)


def test_no_wheel_unless_one_is_given_and_an_even_load_adds_to_the_fill() -> None:
    plain, loaded = (pipe_strength(made(more)) for more in ("", '[loads]\nsurcharge = "5 kPa"'))
    assert plain is not None
    assert loaded is not None
    before, after = plain.pipes[0].places[0], loaded.pipes[0].places[0]
    assert before.wheel_pa == after.wheel_pa == 0
    assert after.soil_pa == pytest.approx(before.soil_pa + 5000)
    assert after.flattened == pytest.approx(before.flattened * after.soil_pa / before.soil_pa)


def test_the_limit_of_flattening_is_the_design_s() -> None:
    more = 'stone = {{ material = "crusher-run" }}\n[soil]\ngroup = "CL"\n[loads]\n{}'
    strict, lenient = (
        pipe_strength(made(more.format(f'deflection_limit = "{limit}"')))
        for limit in ("5 %", "7.5 %")
    )
    assert strict is not None
    assert lenient is not None
    assert (strict.limit, lenient.limit) == pytest.approx((0.05, 0.075))
    assert {p.pipe for p in failing(lenient)} < {p.pipe for p in failing(strict)}


def test_unknown_soil_is_taken_at_the_usual_weight_and_says_so() -> None:
    shown, clay = pipe_strength(made("")), pipe_strength(made('[soil]\ngroup = "CL"'))
    assert shown is not None
    assert clay is not None
    assert shown.fill_assumed
    assert shown.fill_weight_n_m3 == pytest.approx(120 * PCF, rel=1e-5)
    assert not clay.fill_assumed
    assert clay.fill_weight_n_m3 == pytest.approx(100 * 0.45359237 / 0.3048**3 * GRAVITY)


def test_pipes_of_one_size_stand_side_by_side() -> None:
    four = [pipe.key for pipe in of_one_size(PIPES["d2729-4"])]
    assert four[0] == "d2729-4"
    assert set(four[1:]) == {"sdr35-4", "sch40-4", "corrugated-4", "en1401-110"}
    six = {pipe.key for pipe in of_one_size(PIPES["sdr35-6"])}
    assert "d2729-6" in six
    assert not six & set(four)


@pytest.mark.parametrize("pipe", PIPES.values(), ids=lambda pipe: pipe.key)
def test_every_pipe_has_a_stiffness(pipe: object) -> None:
    assert stiffness(pipe) > 40e3  # type: ignore[arg-type]


def test_a_pipe_under_the_garage_has_its_floor_above() -> None:
    garage = """[[area]]
name = "garage"
step = "40 in"
corners = ["30 ft, 0", "50 ft, 0", "50 ft, 20 ft", "30 ft, 20 ft"]
"""
    text = HOUSE.format(more="").replace("[drain]", garage + "[drain]\narea = 'basement'")
    layout = lay_out(read_design(text))
    shown = pipe_strength(layout)
    assert shown is not None
    assert layout.drain is not None
    shallow = min(shown.pipes[0].places, key=lambda place: place.cover_m)
    floor = layout.area("garage").finished_floor
    crown = layout.drain.centre(shallow.station_m) + layout.drain.radius
    assert shallow.cover_m == pytest.approx(floor - crown)


@pytest.mark.parametrize("seed", seeds(12))
def test_random_designs(seed: int) -> None:
    raw = seeded_raw(seed)
    layout = lay_out(design_of(raw)) if raw else None
    shown = pipe_strength(layout) if layout else None
    if layout is None or shown is None:
        assert layout is None or layout.drain is None
        return
    firm = pipe_strength(layout, Loads(bedding="high"))
    assert firm is not None
    for pipe, better in zip(shown.pipes, firm.pipes, strict=True):
        deep, shallow = pipe.places
        assert deep.cover_m >= shallow.cover_m >= 0
        assert all(place.with_wheel <= pipe.worst_with_wheel for place in pipe.places)
        assert all(place.flattened <= pipe.worst for place in pipe.places)
        assert better.worst_with_wheel <= pipe.worst_with_wheel
    stiff = sorted(shown.pipes, key=lambda pipe: pipe.stiffness_pa)
    assert [p.worst for p in stiff] == sorted((p.worst for p in stiff), reverse=True)
