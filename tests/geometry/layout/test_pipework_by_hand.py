"""Volumes of pipes that meet, against published closed forms and plain sums."""

from functools import cache
from math import pi

import numpy as np
import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.layout.pipework import leg_in_stone, saddle
from tests.geometry.layout.test_leads import TEXT


@cache
def summed(disc: float, radius: float, turn: float) -> float:
    """Height of a mitred bend over a disc, summed over a fine grid: each place over its own leg."""
    side = (np.arange(600) + 0.5) / 300 * disc - disc
    x, y = np.meshgrid(side, side)
    inside = x**2 + y**2 < disc**2
    # One leg comes in along x, the other leaves turned; between them runs the mitre.
    normal = np.array((np.cos(turn / 2), np.sin(turn / 2)))
    behind = x * normal[0] + y * normal[1] < 0
    off = np.where(behind, y, y * np.cos(turn) - x * np.sin(turn))
    height = np.sqrt(np.clip(radius**2 - off**2, 0, None))
    return float(height[inside].sum() * (side[1] - side[0]) ** 2)


def test_two_equal_pipes_that_cross_share_a_bicylinder() -> None:
    """Archimedes: 16 r³ / 3 of it in all, half of it over the middle."""
    assert saddle(0.06, 0.06) == pytest.approx(8 / 3 * 0.06**3, rel=1e-8)


@pytest.mark.parametrize("turn", [0.0, pi / 4, pi / 2, 2.2])
@pytest.mark.parametrize("disc", [0.03, 0.055])
def test_a_riser_over_a_bend_stands_on_both_legs(disc: float, turn: float) -> None:
    assert saddle(disc, 0.06) == pytest.approx(summed(disc, 0.06, turn), rel=1e-3)


def test_a_leg_takes_its_length_out_of_the_stone_less_where_the_run_lies() -> None:
    more = '[sump]\nat = "3 m, 2 m"\ndiameter = "0.5 m"\nsleeve = "sch40-6"\n'
    layout = lay_out(read_design(TEXT.format(more=more, invert="-0.14 m")))
    (drain,) = layout.drains
    (lead,) = layout.leads(drain)
    # From the run's middle to the wrap, 0.25 m less the wrap; the run is as thick as the leg.
    length = (0.25 - drain.wrap_m) * lead.stretch
    by_hand = pi * lead.outer**2 * length - 8 / 3 * lead.outer**3
    assert leg_in_stone(drain, lead) == pytest.approx(by_hand, rel=1e-3)
