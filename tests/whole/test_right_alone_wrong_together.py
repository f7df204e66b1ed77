"""A house whose every part keeps to its rule, and that is wrong as a whole."""

import pytest

from geometry.checks.floor_rules import floor_findings
from geometry.checks.footing_rules import footing_findings
from geometry.checks.ground_rules import ground_findings
from geometry.checks.wall_rules import wall_rule_findings
from geometry.designfile import read_design
from geometry.errors import DesignError
from geometry.layout.lay import Layout
from geometry.report import report
from tests.houses import edited, house, without

# The drain's trench 4 in under the footing, at its face; pads 6 in under the strip's top; all else
# by the book.
LOW_DRAIN = 'fall = "1/16 in per ft"', 'fall = "1/16 in per ft"\noutlet_invert = "-13 in"'
LOW_PAD = 'at = "15 ft, 10 ft"', 'at = "15 ft, 10 ft"\npad_top = "TOF -6 in"'
THIN_PAD = 'at = "15 ft, 10 ft"', 'at = "15 ft, 10 ft"\nthickness = "5 in"'
SAID = (
    "[soil]",
    '[site]\nfrost_depth = "42 in"\nstories = 2\ntermites = "none"\nradon_vent = true\n\n'
    '[rules]\nsets = ["irc-2021"]\n\n[water]\nwater_table = "-4 ft"\n\n'
    "[excavation]\nslope = 1.5\n\n[soil]",
)
JOINTS = 'tie = "foam bottom at TOF"', 'tie = "foam bottom at TOF"\njoints = "10 ft"'


def broken(layout: Layout) -> set[str]:
    """Ids of rules on single parts that are not kept, but for what no design file can answer."""
    rules = (footing_findings, wall_rule_findings, floor_findings, ground_findings)
    found = {f.id for check in rules for f in check(layout) if f.severity != "fine"}
    return found - {"rules-not-given"}


def test_every_rule_is_kept_and_the_whole_is_caught() -> None:
    wrong = house(without("sump"), LOW_DRAIN, LOW_PAD, SAID, JOINTS)
    assert broken(wrong) == set()
    found = {f.id: f for f in report(wrong).findings}
    splay, pads = found["drain-bearing-splay"], found["pads-at-tof"]
    assert splay.severity == "stop"
    assert pads.severity == "look"
    assert 'P1: top of pad 6" under TOF' in pads.found


def test_the_same_house_put_right_is_sound_in_all_of_it() -> None:
    right = house(without("sump"), SAID, JOINTS)
    assert broken(right) == set()
    found = {f.id: f.severity for f in report(right).findings}
    assert found["drain-bearing-splay"] == found["pads-at-tof"] == "fine"


def test_a_pit_above_the_pipe_that_feeds_it_is_a_fault() -> None:
    # 18 in deep from the floor at +6 in: its bottom at -12 in, the pipe far below.
    shallow = 'at = "4 ft, 5 ft"', 'at = "4 ft, 5 ft"\ndepth = "14 in"'
    with pytest.raises(DesignError) as caught:
        read_design(edited(shallow, SAID))
    assert any("below the pit's bottom" in f.sentence for f in caught.value.faults)


def test_a_pad_that_stands_on_the_floors_stone() -> None:
    # Stone down to -6 in; a pad 5 in thick with its top at TOF ends an inch over that.
    found = {f.id: f for f in report(house(THIN_PAD)).findings}["pads-at-tof"]
    assert found.severity == "look"
    assert "bottom of pad 1\" over the cut, on the floor's stone" in found.found


@pytest.mark.parametrize(("at", "severity"), [("4 ft, 5 ft", "look"), ("5 ft 6 in, 6 ft", "fine")])
def test_a_pit_that_digs_into_the_ground_of_the_footing(at: str, severity: str) -> None:
    # The footing's inner face lies 14 in from the wall's outside, pit and stone reach 15 1/4 in
    # from the middle; their hole ends at 6.015 - 34 - 1/4 - 4 = -32.2 in, 20.2 in under the
    # footing. With its middle at 48 in it starts 18 3/4 in from the footing, at 66 in 36 3/4 in.
    deep = ('at = "4 ft, 5 ft"', f'at = "{at}"\ndepth = "34 in"')
    found = {f.id: f for f in report(house(deep)).findings}["pit-bearing-splay"]
    assert found.severity == severity
    assert ("farther away" in found.advice) == (severity == "look")
