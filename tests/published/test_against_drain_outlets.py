"""What texts in force ask of a drain's outlet, beside the numbers they print."""

import pytest

from geometry.checks.networks import BLEEDERS_APART_M
from geometry.materials.catalogue import PIPES
from geometry.rules.outlets import ABOVE_DITCH_M, APART, GRAVITY_OR_PUMP, least_fall

FOOT, INCH = 0.3048, 0.0254


# Chicago's plumbing code, Table 18-29-704.1: size 2 1/2 in or less 1/4 in per ft, 3 to 6 in 1/8,
# 8 in or larger 1/16.
@pytest.mark.parametrize(
    ("bore", "per_foot"),
    [(2.0 * INCH, 1 / 4), (2.469 * INCH, 1 / 4), ("d2729-3", 1 / 8), ("sch40-3", 1 / 8),
     ("sdr35-4", 1 / 8), ("corrugated-6", 1 / 8), ("sch40-8", 1 / 16), ("sch40-10", 1 / 16)],
)  # fmt: skip
def test_least_falls_by_size(bore: float | str, per_foot: float) -> None:
    inside = bore if isinstance(bore, float) else PIPES[bore].inside_diameter_m
    assert least_fall(inside).least == pytest.approx(per_foot / 12)


# Wayne, Michigan, codified ordinances 1438.02: drains outside and inside joined every 50 ft.
def test_drains_on_both_faces_are_joined_every_fifty_feet() -> None:
    assert pytest.approx(50 * FOOT) == BLEEDERS_APART_M


# IRC 2000 R405.1, as a city reprints it: drains "shall discharge by gravity or mechanical means
# into an approved drainage system". St. Johns, Michigan: not on the ground closer than 30 ft to any
# structure. Michigan State University Extension: at least 1 ft above the ditch bottom.
def test_what_is_asked_of_the_open_end() -> None:
    assert GRAVITY_OR_PUMP.clause == "R405.1"
    assert pytest.approx(1 * FOOT) == ABOVE_DITCH_M
    assert {rule.what: rule.least_m for rule in APART} == {
        "any building": pytest.approx(30 * FOOT),
        "any neighbour": pytest.approx(10 * FOOT),
    }
