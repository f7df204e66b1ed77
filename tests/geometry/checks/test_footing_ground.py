"""A strip footing over a lower area's dig stands on fill: how much of it, worked by hand."""

from collections.abc import Iterator

import pytest

from geometry.checks.finding import Finding
from geometry.checks.footing_rules import footing_findings
from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from tests.houses import METRIC

# Invented: footings stand out 0.15 m on both sides of their walls; the hole's sides are 0.6 m
# beside the lower footing and go back half as far as they rise.
HOUSE = f"""{METRIC}
[excavation]
working_space = 0.6
slope = 0.5
[[area]]
name = "cellar"
corners = [[0, 0], [10, 0], [10, 8], [0, 8]]
[[area]]
name = "garage"
step = 1.0
corners = [[10, 0], [16, 0], [16, 8], [10, 8]]
"""
APART = HOUSE.replace("[10, 0], [16, 0], [16, 8], [10, 8]", "[12, 0], [16, 0], [16, 8], [12, 8]")
DRAINED = HOUSE + '[drain]\nfall = "1 %"\n'


def found(text: str) -> dict[str, Finding]:
    told: Iterator[Finding] = footing_findings(lay_out(read_design(text)))
    return {one.id: one for one in told}


def test_what_of_a_strip_lies_over_a_lower_areas_dig_is_told_in_running_length() -> None:
    """A metre up, the hole ends 0.15 + 0.6 + 0.5 m past the cellar's wall, which carries one side.

    Over it: twice 1.25 m x 0.5 m, and 0.15 m x 0.15 m round the cellar's corner, 1.295 m2 in all.
    The whole strip: twice 6.15 m x 0.5 m, the two corners, 7.3 m x 0.5 m between, 9.845 m2.
    """
    one = found(HOUSE)["footing-ground"]
    assert one.severity == "look"
    assert one.found == "Garage: strip footing of 19690 mm with 2590 mm over the dig for cellar."
    assert "engineer" in one.advice


def test_stone_round_a_pipe_under_a_strip_is_told() -> None:
    """The cellar's drain runs past under the garage's strips."""
    assert "over the stone round the pipe of outside drain, cellar" in (
        found(DRAINED)["footing-ground"].found
    )


@pytest.mark.parametrize("text", [APART, HOUSE.replace("step = 1.0", "step = 0.0")])
def test_a_strip_beside_the_dig_or_as_low_is_none_of_it(text: str) -> None:
    assert "footing-ground" not in found(text)


def test_a_strip_beside_the_dig_is_told_as_kept() -> None:
    assert "keeps beside the lower areas' dig" in found(APART)["footing-rules"].found
