"""Findings on the drain's heights: for each a design that passes and one that does not."""

from typing import get_args

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.parts.rules import RuleSetName
from geometry.report import Found, Report, report
from geometry.rules.codes import BEARING, RULE_SETS
from geometry.rules.editions import EDITIONS
from viz.tables.drain_tables import rules as rules_table

HOUSE = """
[project]
name = "A box (invented)"
[[area]]
name = "basement"
corners = ["0, 0", "30 ft, 0", "30 ft, 20 ft", "0, 20 ft"]
[floor]
tie = "{tie}"
layer = [
    {{ name = "stone", material = "stone-57", thickness = "6 in", role = "base" }},
    {{ name = "foam", material = "xps-iv", thickness = "2 in", role = "insulation" }},
    {{ name = "slab", material = "concrete", thickness = "4 in", role = "slab" }},
]
[drain]
{drain}
"""
LEVEL = 'fall = "level"'
STEEP = 'fall = "1/8 in per ft"'
WIDE = f'{LEVEL}\noffset = "9 in"\nstone = {{ width = "18 in" }}'


def made(drain: str, tie: str = "foam top at TOF") -> Report:
    return report(lay_out(read_design(HOUSE.format(tie=tie, drain=drain))))


def the(done: Report, name: str) -> Found:
    (found,) = (f for f in done.findings if f.id == name)
    return found


# 54'-8" at 1/8 in per ft raise the crown from -3.72 in to +3.12 in against TOF. The floor is at
# +4 in, the slab's underside at TOF, 20 cm under the floor -3.87 in; the invert ends at -1.02 in.
@pytest.mark.parametrize(
    ("rules", "passes", "words"),
    [
        ("irc", LEVEL, "crown at -0'-3 11/16\" to +0'-3 1/8\" against TOF, limit 0'-0\""),
        ("canada", WIDE, '3 1/8" past it at the high point'),
        ("din", LEVEL, 'limit -0\'-3 7/8", 2 7/8" past it at the high point'),
    ],
)
def test_a_drain_that_rises_too_high_for_a_rule_set(rules: str, passes: str, words: str) -> None:
    found = the(made(STEEP), f"drain-rules-{rules}")
    assert found.severity == "look"
    assert "Not met" in found.found
    assert words in found.found
    good = the(made(passes), f"drain-rules-{rules}")
    assert good.severity == "fine"
    assert "Not met" not in good.found
    assert good.advice == "Lay it so."
    assert "change the drain or ask the building department" in found.advice
    assert not any("Nothing here to hold it to" in told.found for told in (found, good))


def test_an_invert_above_the_floor() -> None:
    # Laid on a shelf at +5 in the invert stands over the floor at +4 in.
    high = f'{LEVEL}\noutlet_invert = "+5 in"'
    found = the(made(high), "drain-rules-ibc")
    assert found.severity == "look"
    assert "invert not higher than the floor: invert at +0'-5\" against TOF" in found.found
    assert '1" past it at the low point and the high point' in found.found
    assert the(made(LEVEL), "drain-rules-ibc").severity == "fine"


def test_too_little_stone_over_the_footing_and_beside_it() -> None:
    thin = f'{LEVEL}\nstone = {{ width = "11 in", bedding = "1 in", cover = "4 in" }}'
    found = the(made(thin), "drain-rules-irc")
    assert found.severity == "look"
    assert 'stone top at +0\'-4" against TOF, limit +0\'-6", 2" past it' in found.found
    assert '2 in or more of stone under the pipe: 1" of 2"' in found.found
    assert 'stone 1 ft or more beyond the footing: 10 15/16" of 1\'-0"' in found.found


def test_a_rule_of_the_house_s_own() -> None:
    rule = (
        '{0}\n[[height_rule]]\nname = "office"\npoint = "crown"\nat = "at or below"\nlevel = "{1}"'
    )
    good = the(made(rule.format(LEVEL, "TOF -3 in")), "drain-rules-own")
    assert good.severity == "fine"
    bad = the(made(rule.format(LEVEL, "TOF -4 in")), "drain-rules-own")
    assert bad.severity == "look"
    assert bad.source == "the design file"
    assert "drain-rules-own" not in {f.id for f in made(LEVEL).findings}


SETS = "{0}\n[rules]\nsets = {1}"


def test_every_known_set_but_the_bearing_can_be_named() -> None:
    known = {r.key for r in RULE_SETS if r is not BEARING} | {e.key for e in EDITIONS}
    assert set(get_args(RuleSetName)) == known


def test_only_the_sets_a_job_names_bring_findings() -> None:
    every = {f.id for f in made(STEEP).findings if f.id.startswith("drain-rules-")}
    assert every == {f"drain-rules-{name}" for name in ("irc", "ibc", "canada", "din", "clash")}
    named = made(SETS.format(LEVEL, '["irc", "veterans"]'))
    ids = [f.id for f in named.findings if f.id.startswith("drain-rules-")]
    assert ids == ["drain-rules-irc", "drain-rules-veterans"]
    heights = named.drain.heights if named.drain else None
    assert heights is not None
    assert "no source" in the(named, "drain-slope-fits").source
    assert "Ontario" in the(made(LEVEL), "drain-slope-fits").source
    # All stay to be compared; those that are not named are marked.
    kinds = {rule.key.split("-")[0]: rule.asked for rule in (*heights.rules, *heights.sizes)}
    there = {"irc", "veterans", "bearing"}
    assert kinds == {
        key: key in there
        for key in ("irc", "ibc", "canada", "din", "bearing", "wayne", "henrico", "veterans")
    }
    marked = [row[0] for row in rules_table(heights, "ft-in").rows if "not asked here" in row[0]]
    assert any("Ontario" in words for words in marked)
    assert not any("IRC" in words or "Veterans" in words for words in marked)
    assert any(clash.asked is False for clash in heights.clashes)


def test_sets_of_a_job_that_exclude_each_other_are_to_be_asked_about() -> None:
    # The pipe's top at or over TOF, and at or under the floor's underside, which lies at TOF: met
    # by a level pipe, not by one that rises.
    both = SETS.format(STEEP, '["canada", "henrico"]')
    found = the(made(both), "drain-rules-asked-clash")
    assert found.severity == "look"
    assert "Henrico County, Virginia" in found.found
    level = SETS.format(LEVEL, '["canada", "henrico"]')
    assert "drain-rules-asked-clash" not in {f.id for f in made(level).findings}


def test_a_trench_in_the_footing_s_bearing_says_stop() -> None:
    deep = the(made(f'{LEVEL}\noutlet_invert = "-11 in"'), "drain-bearing-splay")
    assert deep.severity == "stop"
    # Wall, wrap and 2 in of bedding lie under the invert: -13.14 in, 3.14 in under the footing.
    assert '3 1/8" below the footing' in deep.advice
    assert "engineer" in deep.advice
    assert the(made(LEVEL), "drain-bearing-splay").severity == "fine"


def test_a_slope_that_does_not_fit_says_what_does_and_what_buys_room() -> None:
    found = the(made(STEEP), "drain-slope-fits")
    assert found.severity == "look"
    assert 'needs 6 13/16" of height; there is 3 11/16"' in found.found
    assert "Greatest fall that fits: 0.068 in per ft" in found.found
    assert "branches of 27'-4\"" in found.advice
    assert '3 1/8" deeper' in found.advice
    # Two inches of foam over the footing do not do it.
    assert "foam" not in found.advice
    assert the(made('fall = "1/16 in per ft"'), "drain-slope-fits").severity == "fine"


def test_no_height_or_size_says_stop() -> None:
    done = made(f'{STEEP}\nstone = {{ width = "11 in", bedding = "1 in", cover = "1 in" }}')
    ids = {f.id for f in done.findings if f.id.startswith("drain-") and f.severity == "stop"}
    # The house has no pit, and no daylight either.
    assert ids == {"drain-outlet"}


def test_rules_that_exclude_each_other_are_named() -> None:
    found = the(made(STEEP), "drain-rules-clash")
    assert found.severity == "fine"
    assert (
        "“pipe beside the top of the footing, or on it” (Henrico County, Virginia)" in found.found
    )
    assert "more pairs of rules do so" in found.found


def test_what_is_left_of_many_pairs_is_counted() -> None:
    told = the(made(LEVEL), "drain-rules-clash").found
    assert told.count(" apart. ") == 2
    assert told.endswith(" apart. 1 more pair of rules does so.")


@pytest.mark.parametrize(("sense", "level", "clash"), [
    ("at or above", "TOF +12 in", True), ("at or below", "TOF +24 in", False),
])  # fmt: skip
def test_an_office_s_own_rule_brings_only_its_own_clashes(
    sense: str, level: str, clash: bool
) -> None:
    own = f'[[height_rule]]\nname = "office"\npoint = "crown"\nat = "{sense}"\nlevel = "{level}"'
    done = made(f"{STEEP}\n{own}")
    asked = [f for f in done.findings if f.id == "drain-rules-asked-clash"]
    assert [f.found.count(" apart.") == f.found.count("\u201coffice\u201d") for f in asked] == (
        [True] if clash else []
    )
    # What others ask of some house somewhere is told as ever.
    assert the(done, "drain-rules-clash").severity == "fine"


def test_a_level_pipe_needs_no_height_and_a_falling_one_is_told_by_its_fall() -> None:
    level, steep = (the(made(drain), "drain-slope-fits").found for drain in (LEVEL, STEEP))
    assert level.startswith('A level pipe along the longer branch of 54\'-8" needs 0" of height')
    assert steep.startswith("The fall does not fit. 1/8 in per ft over the longer branch of 54'-8")
    # The floor lower by 8 in: 3 11/16 less 8 in.
    low = the(made(STEEP, "slab bottom at -8 in"), "drain-slope-fits").found
    assert '4 5/16" is lacking for a level pipe' in low
    assert "none, not even level" in low


def test_no_drain_no_findings_and_no_figures() -> None:
    from tests.houses import edited, without

    done = report(lay_out(read_design(edited(without("drain"), without("sump")))))
    assert not [f for f in done.findings if f.id.startswith("drain-")]
    assert done.drains == ()


def test_figures_of_the_report() -> None:
    done = made(STEEP)
    assert done.drain is not None
    heights, slope = done.drain.heights, done.drain.slope
    assert heights is not None
    assert slope is not None
    assert done.drain is not None
    assert heights.low_m["invert"] == done.drain.outlet_invert_m
    assert heights.high_m["invert"] == done.drain.high_invert_m
    crown = {row.key: row for row in heights.rules}["canada-crown"]
    assert (crown.met_low, crown.met_high) == (True, False)
    assert slope.short_m == pytest.approx(-(crown.high_spare_m or 0))
    assert slope.by_rule[0].key == "canada-crown"
    assert slope.by_rule[0].room_m == pytest.approx(slope.highest_invert_m - slope.lowest_invert_m)
