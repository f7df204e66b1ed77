"""Entries added to and taken out of lists in the design file's text: nothing else changes."""

import tomllib

import pytest

from geometry.designlists import added, without
from geometry.errors import DesignError
from tests.whole.networks import TEXTS
from viz.carried import demo, examples

OUTLET = {"toward": "20 ft, -60 ft", "ground": ["0, 7 ft", "30 ft, -3 ft"]}
DRAIN = {"line": "inside", "cleanouts": [1, 2]}
NOTED = """\
# first
[drain]                  # the drain
fall = "level"           # no room

[drain.stone]            # washed
width = "16 in"

# the pit
[sump]
at = "1 ft, 2 ft"
"""


def said(text, key="drain"):
    return tomllib.loads(text).get(key)


def test_a_single_table_becomes_a_list_and_only_its_heading_changes():
    more = added(NOTED, ("drain",), DRAIN)
    assert said(more) == [said(NOTED), DRAIN]
    assert more.startswith(NOTED.replace("[drain]", "[[drain]]"))
    assert without(more, ("drain", 1)) == NOTED.replace("[drain]", "[[drain]]")


def test_an_outlet_goes_to_its_own_drain_and_out_again():
    two = added(NOTED, ("drain",), DRAIN)
    for number in (0, 1):
        more = added(two, ("drain", number, "daylight"), OUTLET)
        assert [d.get("daylight") for d in said(more)] == [
            [OUTLET] if n == number else None for n in (0, 1)
        ]  # fmt: skip
        assert "# the pit\n[sump]" in more
        assert said(without(more, ("drain", number, "daylight", 0))) == said(two)


def test_what_is_taken_out_takes_its_own_notes_and_no_others():
    text = (
        NOTED.replace("[drain]", "# the old one\n[[drain]]") + "\n# new\n[[drain]]\nsides = [1]\n"
    )
    left = without(text, ("drain", 0))
    assert said(left) == [{"sides": [1]}]
    assert "# the old one" not in left
    assert "# the pit\n[sump]" in left
    assert "# new\n[[drain]]" in left
    assert "drain" not in tomllib.loads(without(left, ("drain", 0)))


@pytest.mark.parametrize("text", [*TEXTS.values(), *(p.read_text() for p in examples().values())])
def test_every_house_takes_one_more_drain_and_outlet_and_gives_each_back(text):
    rows = said(text)
    rows = rows if isinstance(rows, list) else [rows]
    text = without(added(text, ("drain",), DRAIN), ("drain", len(rows)))
    assert said(text) == rows
    for number, row in enumerate(rows):
        here = ("drain", number, "daylight")
        count = len(row.get("daylight", []))
        assert said(without(added(text, here, OUTLET), (*here, count))) == rows
        assert (said(without(text, ("drain", number))) or []) == rows[:number] + rows[number + 1 :]


@pytest.mark.parametrize(
    "text",
    [
        'drain = { fall = "level" }  # short\n[sump]\nat = "1 ft, 2 ft"\n',
        'drain.fall = "level"\n',
        '[drain.stone]\nwidth = "1 ft"\n',
        '[ drain ] # [x]\nnote = """\n[drain]\n"""\n',
        '[drain]\ndaylight = { toward = "1 ft, 2 ft" }  # one\n',
        '[drain]\ndaylight = [{ toward = "1 ft, 2 ft" }, { toward = "3 ft, 2 ft" }]\n',
        "",
    ],
)
def test_other_ways_to_write_it_are_added_to_as_well(text):
    before = said(text)
    assert said(added(text, ("drain",), DRAIN)) == [*([before] if before else []), DRAIN]
    if before:
        outlets = before.get("daylight", [])
        outlets = outlets if isinstance(outlets, list) else [outlets]
        more = added(text, ("drain", "daylight"), OUTLET)
        assert said(more)["daylight"] == [*outlets, OUTLET]
        less = said(without(more, ("drain", "daylight", len(outlets))))
        assert less.get("daylight", []) == outlets


@pytest.mark.parametrize("text", ["drain = 5\n", '[drain.stone]\nwidth = "1 ft"\n[drain]\n', "[["])
def test_what_cannot_be_added_to_is_refused_in_a_sentence(text):
    with pytest.raises(DesignError):
        added(text, ("drain",), DRAIN)


def test_taking_out_what_is_not_there_changes_nothing():
    assert without(NOTED, ("drain", 3)) == NOTED
    assert without(NOTED, ("soil",)) == NOTED


def test_a_list_whose_table_is_not_there_yet_is_begun_at_the_end():
    text = added(demo().read_text(encoding="utf-8"), ("order", "price"), {"of": "stone-57"})
    assert tomllib.loads(text)["order"]["price"] == [{"of": "stone-57"}]
    again = added(text, ("order", "price"), {"of": "sand-c33"})
    assert [row["of"] for row in tomllib.loads(again)["order"]["price"]] == ["stone-57", "sand-c33"]
