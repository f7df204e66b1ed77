"""What is found in a survey, in words and numbers: each figure worked by hand from its cones.

Shots 3 ft apart in rows 2 ft apart, every other row moved by half: triangles of 3 ft2, and a shot
that alone lies high or low is the tip of a cone over six of them, 18 ft2. The floor between the
strips is 27'-8" x 17'-8", less a pad of 3 ft square: 479.8 ft2 of stone, 6 in thick: 239.9 ft3.
"""

import pytest

from geometry.checks.survey import survey_findings
from geometry.layout.lay import Layout
from geometry.survey.asdug import as_dug
from geometry.survey.reading import read_shots
from tests.geometry.survey.surveyed import dry_house
from tests.houses import house, without

HEAD = "point,x (ft),y (ft),level (in),what\n"
ROWS = [(x + 1.5 * (row % 2), 2 * row) for row in range(11) for x in range(0, 31 - row % 2 * 3, 3)]
METRIC = ("[datum]", 'units = "metric"\n\n[datum]')
HIGH = {(6, 4): -3, (24, 4): 1, (24, 16): 0.5}
LOW = {(6, 16): -9, (9, 12): -8, (21, 12): -9.5}
CONCRETE = (
    "f1,0,10,0.5,footing\nf2,30,11,-0.6,footing\nf3,0,5,0.1,footing\n"
    "q1,15,10,-0.6,pad P1\nq2,15,11,0.7,pad P1\nby,5,9,0,footing\n"
)


def found(
    layout: Layout, tips: dict[tuple[int, int], float], more: str = "", level: float = -6.0
) -> dict[str, tuple[str, str]]:
    """Severity and words by id and subject."""
    rows = (f"s{n},{x},{y},{tips.get((x, y), level)},\n" for n, (x, y) in enumerate(ROWS))  # type: ignore[call-overload]
    shots = read_shots(HEAD + "".join(rows) + more, layout.design)
    told = survey_findings(layout, as_dug(layout, shots))
    assert len({(f.id, f.subject) for f in told}) == len(told)
    several = {"pad P1": "-pad"}
    return {f.id + several.get(f.subject, ""): (f.severity, f.found) for f in told}


def test_ground_full_of_humps_and_holes_in_feet() -> None:
    """Cones 3, 7, 6 1/2 in up and 3, 2, 3 1/2 in down: 6 ft2 of each inch / 12, 4.00 ft3 less.

    Under 4 in of stone lies what is over 2 in high: of the cones (1/3)2, (5/7)2, (4.5/6.5)2 of
    18 ft2, 19.8 ft2. Rain stands in all but the deepest: 6 ft2 x 3 in and 2 in, 2.50 ft3.
    """
    assert found(dry_house(), {**HIGH, **LOW}, CONCRETE) == {
        "survey-base-volume": (
            "fine", "8.74 yd³ of stone between the dug ground and its planned top, 0.15 yd³ less "
            "than planned",
        ),
        "survey-base-thin": (
            "stop", 'on 19.8 ft² the stone comes out thinner than 4"; the ground stands above its '
            "top, thinnest -1\" at x 24'-0\", y 4'-0\"",
        ),
        "survey-high-spots": (
            "look", "3 high spots; the worst +0'-7\" off the planned subgrade at x 24'-0\", "
            "y 4'-0\"",
        ),
        "survey-low-spots": (
            "look", "3 low spots; the worst -0'-3 1/2\" off the planned subgrade at x 21'-0\", "
            "y 12'-0\"",
        ),
        "survey-foam-ground": (
            "stop", "at 2 shots the ground stands above the stone's planned top: the foam cannot "
            "lie flat nor meet top of footing there",
        ),
        "survey-ponds": (
            "look", "rain stands in 2 hollows of the ground, 2.50 ft³ in all; the deepest 3\" at "
            "x 6'-0\", y 16'-0\"",
        ),
        "survey-concrete": (
            "fine", "4 of 4 shots within tolerance; the farthest off its planned top is shot f2 "
            "(row 119), -0'-0 5/8\"",
        ),
        "survey-concrete-pad": (
            "look", "1 of 2 shots within tolerance; the farthest off its planned top is shot q2 "
            "(row 122), +0'-0 3/4\"",
        ),
        "survey-foam-footing": (
            "look", "it lifts off at 1 and hangs over a gap at 1 of 4 shots on the footing",
        ),
        "survey-doubts": ("look", "3 shots may be wrong; they are listed with their rows"),
    }  # fmt: skip


def test_one_hump_and_one_hollow_in_metres() -> None:
    """3 in up, 2 in down, and the lowest place 2.4 in down, where water ends.

    Of the hump 2 ft2 are 4 in of stone short: 0.19 m2; the hollow holds 1 ft3.
    """
    layout = house(without("sump"), METRIC)
    told = found(layout, {(6, 4): -3, (9, 12): -8, (21, 12): -8.4}, "f,0,10,-0.4,footing\n")
    assert told == {
        "survey-base-volume": (
            "fine", "6.81 m³ of stone between the dug ground and its planned top, 19.8 L more than "
            "planned",
        ),
        "survey-base-thin": (
            "look", "on 0.19 m² the stone comes out thinner than 102 mm; thinnest 76 mm at "
            "x 1829 mm, y 1219 mm",
        ),
        "survey-high-spots": (
            "look", "1 high spot; the worst +76 mm off the planned subgrade at x 1829 mm, "
            "y 1219 mm",
        ),
        "survey-low-spots": (
            "look", "2 low spots; the worst -61 mm off the planned subgrade at x 6401 mm, "
            "y 3658 mm",
        ),
        "survey-ponds": (
            "look", "rain stands in 1 hollow of the ground, 28.3 L in all; the deepest 51 mm at "
            "x 2743 mm, y 3658 mm",
        ),
        "survey-concrete": (
            "fine", "1 of 1 shot within tolerance; the farthest off its planned top is shot f "
            "(row 118), -10 mm",
        ),
        "survey-foam-footing": (
            "look", "it lifts off at 0 and hangs over a gap at 1 of 1 shot on the footing",
        ),
    }  # fmt: skip


@pytest.mark.parametrize(
    ("level", "grave", "words"),
    [
        (-6.0, "fine", "top, as much as planned"),
        # 479.8 ft2 by half an inch: 20 ft3, 8 %; by 0.7 in 28 ft3, 12 %.
        (-6.5, "fine", "0.74 yd³ more than planned"), (-6.7, "look", "1.04 yd³ more than planned"),
        (-5.5, "fine", "0.74 yd³ less than planned"), (-5.3, "look", "1.04 yd³ less than planned"),
    ],
)  # fmt: skip
def test_a_tenth_more_or_less_base_is_looked_at(level: float, grave: str, words: str) -> None:
    told = found(dry_house(), {}, level=level)
    assert set(told) == {"survey-base-volume", "survey-base-thin"}
    assert told["survey-base-volume"][0] == grave
    assert words in told["survey-base-volume"][1]


def test_a_strip_beyond_the_shots_is_told() -> None:
    """Shots from 1.3 to 28.7 ft; the floor runs from 1'-2" to 28'-10": 2 x 0.133 x 17.67 ft."""
    layout = dry_house()
    rows = "".join(f"{n},{x},{y},-6,\n" for n, (x, y) in enumerate(
        [(1.3, 0), (28.7, 0), (28.7, 20), (1.3, 20)]))  # fmt: skip
    (told,) = (
        f
        for f in survey_findings(layout, as_dug(layout, read_shots(HEAD + rows, layout.design)))
        if f.id == "survey-not-covered"
    )
    assert told.found.startswith("4.7 ft² of 479.8 ft² of the floor lie beyond the outermost shots")
    assert told.found.endswith("carried on there, 2.36 ft³ of the base")


def test_places_are_told_to_the_inch_and_levels_to_the_eighth() -> None:
    """12.03 ft is 12'-0.36"; a shot 2.63 in over the subgrade leaves 3.37 in of stone."""
    layout = dry_house()
    rows = "1,0,0,-6,\n2,30,0,-6,\n3,30,20,-6,\n4,0,20,-6,\nh,12.03,5.97,-3.37,\n"
    rows += "f,0,10,0.1,footing\nq,15,10,-2.13,pad P1\n"
    told = {
        f.id + f.subject: f
        for f in survey_findings(layout, as_dug(layout, read_shots(HEAD + rows, layout.design)))
    }
    spot, thin = told["survey-high-spotsbasement"], told["survey-base-thinbasement"]
    assert spot.found.endswith("+0'-2 5/8\" off the planned subgrade at x 12'-0\", y 6'-0\"")
    assert spot.asked == 'the fine grade within ±3/4"'
    assert thin.found.endswith('thinnest 3 3/8" at x 12\'-0", y 6\'-0"')
    footing, pad = told["survey-concretefooting"], told["survey-concretepad P1"]
    assert footing.asked == pad.asked == 'the top within +1/2", -2" of the plan'
    assert footing.advice == "Leave it so."
    assert pad.advice == "Ask what stands on it before grinding or shimming."
    assert pad.found.endswith("-0'-2 1/8\"")
