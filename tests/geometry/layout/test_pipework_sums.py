"""What a drain's pipe, fittings, riser, lead and sleeve hold and displace, summed by hand."""

from math import pi

import numpy as np
import pytest

from geometry.designfile import read_design
from geometry.layout import pipework
from geometry.layout.lay import lay_out
from geometry.materials.catalogue import PIPES
from tests.geometry.layout.test_leads import TEXT
from tests.geometry.layout.test_pipework_by_hand import summed

# A level loop of 35.6 m round 9 x 7 m: four bends and a tee, each 6 in both ways; one cleanout.
MORE = (
    'cleanouts = [2]\n[sump]\nat = "3 m, 2 m"\ndiameter = "0.5 m"\nsleeve = "sch40-6"\n'
    'fall = "1:50"\n'
)
REACH = 6 * 0.0254
R, BORE = (d / 2 for d in (PIPES["sdr35-4"].outside_diameter_m, PIPES["sdr35-4"].inside_diameter_m))
WALL = pi * (R**2 - BORE**2)


@pytest.fixture(scope="module")
def layout():
    return lay_out(read_design(TEXT.format(more=MORE, invert="-0.14 m")))


def over(disc, outer, inner):
    """Between two surfaces of round pipes, over a disc on the pipe's middle."""
    return summed(disc, outer, 0.0) - summed(disc, inner, 0.0)


@pytest.mark.parametrize("hole", [0.004, 0.02])
def test_a_hole_takes_the_pipes_wall_over_its_disc(hole):
    assert pipework.hole_volume(R, BORE, hole) == pytest.approx(over(hole, R, BORE), rel=1e-3)


def test_a_pipe_off_the_middle_stands_over_less():
    """Shifted by a third of the disc, height by height on a fine grid."""
    side = (np.arange(600) + 0.5) / 300 * 0.03 - 0.03
    x, y = np.meshgrid(side, side)
    height = np.sqrt(np.clip(0.05**2 - (y + 0.01) ** 2, 0, None))[x**2 + y**2 < 0.03**2]
    by_hand = height.sum() * (side[1] - side[0]) ** 2
    assert pipework.saddle(0.03, 0.05, 0.01) == pytest.approx(by_hand, rel=1e-3)


def test_pipe_is_its_wall_less_its_holes(layout):
    (drain,) = layout.drains
    length = 35.6 - 5 * 2 * REACH
    assert pipework.stick_length(drain) == pytest.approx(length)
    hole = over(drain.drain.holes.diameter / 2, R, BORE)
    by_hand = WALL * length - drain.hole_count * hole
    assert pipework.pipe_volume(drain) == pytest.approx(by_hand, rel=1e-5)


def test_a_bend_under_a_cleanout_is_opened_and_a_tee_has_a_leg(layout):
    (drain,) = layout.drains
    leads = layout.leads(drain)
    volumes = pipework.fitting_volumes(drain, leads)
    plain = WALL * 2 * REACH
    opening = summed(BORE, R, pi / 2) - summed(BORE, BORE, pi / 2)
    # Equal pipes: their shared half bicylinders, 8 r³ / 3, are no part of the leg.
    length = leads[0].begin * leads[0].stretch
    leg = WALL * length - 8 / 3 * (R**3 - BORE**3)
    expected = {
        ("bend", 0): plain, ("bend", 1): plain - opening, ("bend", 2): plain, ("bend", 3): plain,
        ("tee", None): plain + leg,
    }  # fmt: skip
    found = {(f.kind, f.corner): v for f, v in zip(drain.fittings, volumes, strict=True)}
    assert found == {key: pytest.approx(volume, rel=2e-3) for key, volume in expected.items()}


def test_a_riser_stands_on_its_bend_and_takes_its_place_in_stone_and_wrap(layout):
    (drain,) = layout.drains
    height = 2.0 - drain.centre(0.0)
    foot = summed(R, R, pi / 2) - summed(BORE, R, pi / 2)
    assert pipework.riser_volume(drain, 2, 2.0) == pytest.approx(WALL * height - foot, rel=1e-3)
    high = drain.stone_top - drain.wrap_m - drain.centre(0.0)
    in_stone = pi * R**2 * high - summed(R, R, pi / 2)
    assert pipework.riser_in_stone(drain, 2) == pytest.approx(in_stone, rel=1e-3)
    leads = layout.leads(drain)
    taken = pi * R**2 * 35.6 + in_stone + pipework.leg_in_stone(drain, leads[0])
    assert pipework.stone_taken(drain, leads) == pytest.approx(taken, rel=1e-4)
    # Through the wrap on top and its lap, 12 in over the middle of 0.45 m: the riser is at 0.25 m.
    _, wrap = layout.drain_beds[0]
    through = pi * R**2 * drain.wrap_m
    assert pipework.wrap_taken(drain, wrap) == pytest.approx(2 * through, rel=1e-6)


def test_lead_and_sleeve_are_as_long_as_they_slope(layout):
    (lead,) = layout.leads(layout.drains[0])
    assert lead.stretch == pytest.approx((1 + 0.02**2) ** 0.5)
    run = (lead.end - lead.begin) * lead.stretch
    assert pipework.lead_volume(lead) == pytest.approx(WALL * run)
    sleeve = PIPES["sch40-6"]
    wall = pi / 4 * (sleeve.outside_diameter_m**2 - sleeve.inside_diameter_m**2)
    assert pipework.sleeve_volume(lead) == pytest.approx(wall * 0.6 * lead.stretch)


def test_a_riser_at_a_sharp_corner_stands_on_that_corners_bend():
    text = TEXT.format(more="cleanouts = [2]\n", invert="-0.14 m")
    text = text.replace('"0, 0", "9 m, 0", "9 m, 7 m", "0, 7 m"', '"0, 0", "9 m, 0", "0, 9 m"')
    (drain,) = lay_out(read_design(text)).drains
    high = drain.stone_top - drain.wrap_m - drain.centre(0.0)
    in_stone = pi * R**2 * high - summed(R, R, 3 * pi / 4)
    assert pipework.riser_in_stone(drain, 2) == pytest.approx(in_stone, rel=1e-3)
