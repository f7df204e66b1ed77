"""Under which subject a finding is filed."""

import pytest

from geometry.checks.subjects import subject_of


@pytest.mark.parametrize(
    ("finding", "subject"),
    [
        ("drain-rules-irc", "drain"), ("daylight-fall", "drain"), ("daylight-grade", "ground"),
        ("pump-below-inlet", "pit"), ("subgrade-above-footing", "ground"),
        ("rules-not-given", "whole"), ("nothing-known", "whole"),
    ],
)  # fmt: skip
def test_the_longest_beginning_that_fits_says_it(finding: str, subject: str) -> None:
    assert subject_of(finding) == subject
