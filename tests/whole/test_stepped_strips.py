"""Strips of several areas over each other are poured once, whatever their steps and thicknesses."""

import pytest

from geometry.designfile import read_design
from tests.houses import METRIC
from tests.whole.test_invariants import hold
from tests.whole.witness import Whole

# Invented: two areas 20 cm apart along a deeper one; their strips meet over its strip.
HOUSE = f"""{METRIC}
[[area]]
name = "main"
corners = [[0, 0], [10, 0], [10, 8], [0, 8]]
[[area]]
name = "middle"
step = 0.8
corners = [[10, 0], [14, 0], [14, 3.9], [10, 3.9]]
[[area]]
name = "high"
step = 1.4
corners = [[10, 4.1], [14, 4.1], [14, 8], [10, 8]]
"""
HIGH = 'name = "high"\nstep = 1.4\n'


def test_strips_of_two_steps_over_a_third_are_poured_once() -> None:
    hold(Whole(read_design(HOUSE)))


# Strips of main go from -0.25 to 0, of the middle from 0.55 to 0.8 m, and down to main's over them.
@pytest.mark.parametrize(
    ("step", "thickness"),
    # Bottom under the middle's, over main's; level with the middle; under main's own bottom.
    [(0.8, 0.4), (0.85, 0.6), (0.8, 0.25), (0.8, 1.1), (1.4, 1.2)],
)
def test_a_thicker_strip_over_two_others_is_poured_once(step: float, thickness: float) -> None:
    thick = (
        f"{HIGH.replace('1.4', str(step))}footing = {{ width = 0.5, thickness = {thickness} }}\n"
    )
    hold(Whole(read_design(HOUSE.replace(HIGH, thick))))
