"""Rules on the drain's height beside the numbers and words their texts print."""

import pytest

from geometry.rules.codes import (
    BEARING,
    CANADA,
    DIN,
    FALLS,
    HENRICO,
    IBC,
    IRC,
    RULE_SETS,
    VETERANS,
    WAYNE,
)
from geometry.rules.height_rule import HeightRule, RuleSet, SizeRule

INCH = 0.0254


def heights(rules: RuleSet) -> list[tuple[str, str, str, float]]:
    return [(r.point, r.sense, r.reference, r.margin_m) for r in rules.heights]


def sizes(rules: RuleSet) -> list[tuple[str, float]]:
    return [(r.measure, r.least_m) for r in rules.sizes]


# IRC 2000 R405.1, as a city reprints it: "at or below the area to be protected"; stone "at least
# 1 foot (305 mm) beyond the outside edge of the footing and 6 inches (153 mm) above the top of the
# footing". From 2018 on "at or below the top of the footing or below the bottom of the slab".
def test_irc() -> None:
    assert heights(IRC) == [
        ("crown", "at or below", "slab top", 0.0),
        ("crown", "at or below", "TOF", 0.0),
        ("stone top", "at or above", "TOF", pytest.approx(6 * INCH)),
    ]
    assert IRC.heights[1].or_reference == "slab underside"
    assert sizes(IRC)[0] == ("stone beyond footing", pytest.approx(12 * INCH))


# IBC 1805.4.2 in New Jersey's edition: "the invert of the pipe or tile shall not be higher than
# the floor elevation"; stone's bottom "not higher than the bottom of the base under the floor",
# its top 6 in above the footing; pipe on 2 in, under 6 in of stone.
def test_ibc() -> None:
    assert heights(IBC) == [
        ("invert", "at or below", "slab top", 0.0),
        ("trench bottom", "at or below", "base underside", 0.0),
        ("stone top", "at or above", "TOF", pytest.approx(6 * INCH)),
    ]
    assert [least / INCH for _, least in sizes(IBC)] == pytest.approx([12, 2, 6])


# O. Reg. 332/12 and BCBC 2024, 9.14.3.3.(1): "the top of the tile or pipe is below the bottom of
# the floor slab"; (4): top and sides "covered with not less than 150 mm of crushed stone".
def test_ontario_and_british_columbia() -> None:
    assert heights(CANADA) == [("crown", "at or below", "slab underside", 0.0)]
    assert sizes(CANADA) == [("stone over pipe", 0.15), ("stone beside pipe", 0.15)]


# A surveyor on DIN 4095: the pipe's invert at the high point at least 20 cm below the top of the
# bare cellar floor. A trade magazine: the trench not below the bottom of footing or slab.
def test_din() -> None:
    assert ("invert", "at or below", "slab top", 0.20) in heights(DIN)
    assert ("trench bottom", "at or above", "footing bottom", 0.0) in heights(DIN)


# Wayne MI 1438.02: "the invert of the drain is level with the base of the footing"; 2 in base,
# 6 in cover. Henrico VA: "adjacent to the top or resting on the concrete footing". Veterans
# Affairs: "in no case be lower in elevation than the base of adjacent footings".
def test_rules_of_one_town_or_agency() -> None:
    assert {row[:3] for row in heights(WAYNE)} == {
        ("invert", "at or above", "footing bottom"),
        ("invert", "at or below", "footing bottom"),
    }
    assert heights(HENRICO) == [("crown", "at or above", "TOF", 0.0)]
    assert heights(VETERANS) == [("pipe underside", "at or above", "footing bottom", 0.0)]
    assert {rules.key for rules in RULE_SETS if rules.local} == {"wayne", "henrico", "veterans"}


def test_every_rule_has_its_own_key_and_what_was_not_read_says_so() -> None:
    rules: list[HeightRule | SizeRule] = [
        rule for known in RULE_SETS for rule in (*known.heights, *known.sizes)
    ]
    assert len({rule.key for rule in rules}) == len(rules)
    assert "from memory" in str(DIN.heights[1].source)
    assert "second-hand" in str(IRC.heights[1].source)
    assert "no source" in str(BEARING.heights[0].source)


# Hunting Valley OH: "continuous slope of not less than one-sixteenth of an inch per foot". The
# surveyor on DIN 4095: "gleichmäßigen Gefälle von mindestens 0,5 %".
def test_falls() -> None:
    least = {rule.key: rule.least for rule in FALLS}
    assert least["hunting-valley"] == pytest.approx(1 / 16 / 12)
    assert least["din-fall"] == 0.005
