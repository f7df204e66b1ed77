"""Rolled designs whose pipes have no free way are refused, each for its own reason."""

import pytest

from geometry.faults.find import faults
from tests.designs import Seeded, design_of, raw_design


@pytest.mark.parametrize(
    ("seed", "words"),
    [
        (236, "the pipe to the sump would run through another side's footing"),
        (171, "the pipe to the sump would run through the pad of pier"),
        (34, 'the drain pipe would run through the footing or wall of area "'),
        (264, "below the floor's cut at"),
    ],
)
def test_the_one_thing_in_the_way_is_said(seed: int, words: str) -> None:
    (fault,) = faults(design_of(raw_design(Seeded(seed))))
    assert words in fault.sentence
