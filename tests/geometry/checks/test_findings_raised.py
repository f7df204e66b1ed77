"""A house set higher as a whole says the same of itself: levels count from its own footing."""

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.report import report
from tests.houses import edited, without
from tests.whole import networks

Change = tuple[str, str]
SOUND: tuple[Change, ...] = ()
# Pad and pit low, the pump's float high, foam in between, column over the floor, a second tie.
WRONG: tuple[Change, ...] = (
    ('at = "15 ft, 10 ft"', 'at = "15 ft, 10 ft"\npad_top = "TOF -6 in"\ncolumn_top = "TOF +9 in"'),
    ('fall = "1/16 in per ft"', 'fall = "1/8 in per ft"'),
    ('tie = "foam bottom at TOF"', 'tie = ["foam bottom at -1 in", "subgrade at -8 1/2 in"]'),
    ('at = "4 ft, 5 ft"', 'at = "4 ft, 5 ft"\ndepth = "40 in"'),
    ('on = "12 in"', 'on = "30 in"'),
)
# The water table counts from the drained area's TOF.
WET: tuple[Change, ...] = (
    ("[soil]", '[water]\nwater_table = "-13 in"\nconductivity = "1e-4 cm/s"\n'
     'storm = "steady"\nrain = "4 in"\nduration = "2 hours"\nshare = 0.5\n\n[soil]'),
    ('on = "12 in"', 'on = "12 in", flow = "2 gpm"'),
)  # fmt: skip
LOW_TRENCH: tuple[Change, ...] = (
    without("sump"),
    ('fall = "1/16 in per ft"', 'fall = "1/8 in per ft"\noutlet_invert = "-13 in"'),
)


def told(text: str) -> dict[tuple[str, str], tuple[str, str, str]]:
    found = report(lay_out(read_design(text))).findings
    # What is given in the file against the project's TOF is told so.
    mine = [f for f in found if "the project's TOF" not in f.found]
    return {(f.id, f.subject): (f.severity, f.found, f.advice) for f in mine}


@pytest.mark.parametrize("changes", [SOUND, WRONG, WET, LOW_TRENCH])
def test_a_raised_house_is_told_in_the_same_words(changes: tuple[Change, ...]) -> None:
    text = edited(*changes)
    raised = edited(
        ('name = "basement"', 'name = "basement"\nstep = "2 ft"'),
        ('at_wall = "7 ft"', 'at_wall = "9 ft"'),
        text=text,
    )
    plain = told(text)
    assert len(plain) > 20
    assert told(raised) == plain


DRAINS = ("both to the pit", "both to daylight", "pit and two to daylight")


@pytest.mark.parametrize("name", DRAINS)
def test_raised_drains_are_told_in_the_same_words(name: str) -> None:
    text = networks.TEXTS[name]
    raised = text.replace('name = "basement"', 'name = "basement"\nstep = "2 ft"')
    for low, high in (('"0, 7 ft"', '"0, 9 ft"'), ("30 ft, -3 ft", "30 ft, -1 ft"),
                      ("80 ft, -8 ft", "80 ft, -6 ft")):  # fmt: skip
        raised = raised.replace(low, high)
    assert told(raised) == told(text)
