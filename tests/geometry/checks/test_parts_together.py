"""Pads and pit beside footings, the hill at an outlet, drains that hang together: by hand."""

import pytest

from geometry.checks.finding import Finding
from geometry.checks.hillside import hillside_findings
from geometry.checks.networks import network_findings
from geometry.checks.whole import whole_findings
from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from tests.houses import house
from tests.whole import networks

LOW = ('at = "15 ft, 10 ft"', 'at = "15 ft, 10 ft"\n{}')
SECOND = ("\n[drain]", '\n[[area.pier]]\nname = "P2"\nat = "22 ft, 10 ft"\n{}\n\n[drain]')


def pads(first: str, second: str) -> Finding:
    changes = ((old, new.format(words)) for (old, new), words in ((LOW, first), (SECOND, second)))
    (found,) = (f for f in whole_findings(house(*changes)) if f.id == "pads-at-tof")
    return found


def test_pads_that_are_alike_are_told_together_and_sound_ones_not() -> None:
    low = 'pad_top = "TOF -6 in"'
    assert pads(low, low).found == 'P1, P2: top of pad 6" under TOF.'
    assert pads("", low).found == 'P2: top of pad 6" under TOF.'
    two = pads(low, low.replace("6", "4")).found
    assert two == 'P1: top of pad 6" under TOF. P2: top of pad 4" under TOF.'
    both = pads('pad_top = "TOF -6 in"\nthickness = "4 in"'.replace("-6", "-1"), "")
    assert both.found.startswith('P1: top of pad 1" under TOF. P1: bottom of pad 1" over the cut')
    # 1/8 in is one level on site.
    assert pads('pad_top = "TOF -1/8 in"', "").severity == "fine"
    assert pads('pad_top = "TOF -1/4 in"', "").severity == "look"


def test_a_pad_is_told_what_is_wrong_with_it_alone() -> None:
    """The cut lies at -6 in: a pad 5 in thick from TOF, or 1 in thick from 4 in under TOF."""
    low, thin = pads('pad_top = "TOF -6 in"', ""), pads('thickness = "5 in"', "")
    assert "set pad_top to TOF" in low.advice
    assert "undisturbed ground" not in low.advice
    assert "undisturbed ground" in thin.advice
    assert "set pad_top to TOF" not in thin.advice


def test_a_pit_near_a_pad_is_held_against_that_pad() -> None:
    """The hole reaches 15 1/4 in from its middle and ends 20 1/4 in under the pad's bottom.

    Its middle is 30 in from the pad's edge: 14 3/4 in are left, 5 1/2 in are lacking.
    """
    beside = ('at = "4 ft, 5 ft"', 'at = "11 ft, 10 ft"\ndepth = "34 in"')
    (found,) = (f for f in whole_findings(house(beside)) if f.id == "pit-bearing-splay")
    assert found.severity == "look"
    assert "the pad P1, 1'-2 3/4\" away, stands at -1'-0\"" in found.found
    assert 'Move it 5 1/2" farther away' in found.advice


GROUND = 'ground = ["0, 7 ft", "30 ft, -3 ft", "80 ft, -8 ft"]'
# 8 ft in 80 ft are 10 %, whatever lies between.
TENTH = ("3 ft", "2 ft", "-5 ft")


def hill(name: str, first: str, middle: str, last: str) -> list[Finding]:
    text = networks.TEXTS[name]
    assert GROUND in text
    ground = f'ground = ["0, {first}", "40 ft, {middle}", "80 ft, {last}"]'
    return list(hillside_findings(lay_out(read_design(text.replace(GROUND, ground)))))


def test_what_a_hill_gives_hangs_on_the_houses_extent_that_way() -> None:
    """Grade at 7'-4", 0.7 in less 14 in out: 4'-3 1/4" over the ground given.

    The house is 28 ft deep one way, 40 ft the other: a tenth of that is 2.8 and 4 ft.
    """
    (alone,) = hill("daylight", *TENTH)
    first, second = hill("pit and two to daylight", *TENTH)
    assert alone.subject == "outside drain, basement, outlet to daylight, grade"
    assert first.subject == "outside drain, basement, outlet to daylight 1, grade"
    assert second.subject == "outside drain, basement, outlet to daylight 2, grade"
    for found in (alone, first):
        assert "at +3'-0\" against the project's TOF" in found.found
        assert "4'-3 1/4\" higher" in found.found
        assert "(10.0%, assumed), its 28'-0\" that way give 2'-9 1/2\"" in found.found
        assert "the other 1'-5 3/4\" must be made" in found.found
    # 3.3 in are lacking there: less than a foot is no matter on a site.
    assert "its 40'-0\" that way give 4'-0\". Sections" in second.found
    assert "ask an engineer" in alone.advice


@pytest.mark.parametrize(
    ("ground", "told"), [("6 ft 4 in", None), ("6 ft 2 in", "higher"), ("8 ft 2 in", None),
                         ("8 ft 4 in", "lower")],
)  # fmt: skip
def test_a_foot_of_difference_is_told(ground: str, told: str | None) -> None:
    """The grade drawn there is at 7'-3 1/4"."""
    found = hill("daylight", ground, "2 ft", "-5 ft")
    assert [told in f.found for f in found if told] == [True] * bool(told)
    assert [f.advice == "Check both levels." for f in found] == [told == "lower"] * bool(told)
    assert all(("If the hill falls" in f.found) == (told == "higher") for f in found)


def test_ground_that_rises_beyond_gives_nothing_under_the_house() -> None:
    (found,) = hill("daylight", "3 ft", "-5 ft", "4 ft")
    assert "higher. Sections" in found.found


def bled(*changes: tuple[str, str]) -> Finding:
    text = networks.TEXTS["both to the pit"]
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    layout = lay_out(read_design(text))
    (found,) = (f for f in network_findings(layout) if f.id == "drain-bleeders")
    return found


def test_bleeders_on_one_side_alone_are_too_far_apart() -> None:
    """All of the outside drain hangs on what the inside one along 40 ft can take: 124 ft or more.

    The footing's outer face is 2 x (40 + 28) ft and 4 ft of corners round.
    """
    inside = 'line = "inside"\nfall = "level"\noffset = "6 in"\n'
    one_side = (f"{inside}cleanouts = [6]", f"{inside}sides = [1]")
    far, near = bled(one_side, ('"7 ft"', '"40 ft"')), bled()
    assert (far.severity, near.severity) == ("look", "fine")
    assert (far.advice, near.advice[:12]) == ("Set more of them, or lower.", "Cast them in")
    assert "at least every 50'-0\"" in far.asked


@pytest.mark.parametrize(
    ("invert", "words", "wet"),
    [('"-7 in"', "over this drain's lowest: water stands so high", True),
     ('"-9 in"', "under this drain's lowest. Its own fall", False)],
)  # fmt: skip
def test_water_stands_before_it_passes_a_bleeder_that_lies_higher(
    invert: str, words: str, wet: bool
) -> None:
    found = bled(('"-7 in"', invert)).found
    assert words in found
    assert ("water stands" in found) == wet


def test_bleeders_without_a_level_of_their_own_lie_level_with_the_drain() -> None:
    found = bled((', invert = "-7 in"', "")).found
    assert "Their invert lies level with this drain's lowest. " in found


def test_fines_are_told_of_each_place_that_has_them() -> None:
    def subjects(text: str) -> list[str]:
        layout = lay_out(read_design(text))
        return [f.subject for f in network_findings(layout) if f.id == "stone-with-fines"]

    clean = networks.TEXTS["both to the pit"]
    assert subjects(clean) == []
    base = clean.replace('"stone-57"', '"crusher-run"')
    assert subjects(base) == ["basement, base"]
    drain = clean.replace('width = "12 in"', 'material = "crusher-run", width = "12 in"')
    assert subjects(drain) == ["inside drain, basement, stone"]
