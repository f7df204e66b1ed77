"""A pipe under fill and wheel, foam under slabs of two areas: which is told, and how grave."""

import pytest

from geometry.checks.board import board_findings, board_loads
from geometry.checks.finding import Finding
from geometry.checks.strength import strength_findings
from tests.houses import WITH_GARAGE, house

Change = tuple[str, str]
LOW = ('at_wall = "7 ft"', 'at_wall = "2 ft"')
SOFT = ('pipe = "sdr35-4"', 'pipe = "sdr35-4"\nstone = { material = "crusher-run" }')
# Expanded foam under a garage's slab, which bears less than the basement's.
BARE = """tie = "slab bottom at TOF"
layer = [{ name = "slab", material = "concrete-3000", thickness = "5 in", role = "slab" }]"""
FOAMED = BARE.replace(
    '[{ name = "slab"',
    """[
    { name = "foam", material = "eps-i", thickness = "2 in", role = "insulation" },
    { name = "slab\"""",
).replace("TOF", "TOF +2 in")
GARAGE = (WITH_GARAGE[0], WITH_GARAGE[1].replace(BARE, FOAMED))


def loads(words: str) -> Change:
    return "[soil]", f"[loads]\n{words}\n\n[soil]"


def pipe(*changes: Change) -> Finding:
    (found,) = strength_findings(house(*changes))
    return found


def test_a_wheel_alone_that_flattens_the_pipe_is_looked_at() -> None:
    """Shallow fill on fines does little, a wheel on it much."""
    wheel = loads('wheel = "16000 lbf"')
    plain, driven = pipe(LOW, SOFT), pipe(LOW, SOFT, wheel)
    assert (plain.severity, driven.severity) == ("fine", "look")
    assert driven.subject == "drain pipe, shallowest place"
    assert driven.advice.endswith("or a stiffer pipe; or keep wheels off.")
    # In washed stone both are borne.
    assert pipe(LOW, wheel).severity == "fine"


def test_fill_alone_that_flattens_the_pipe_is_stopped_whatever_drives_there() -> None:
    thin = ('"sdr35-4"', '"d2729-4"')
    deep = pipe(SOFT, thin)
    assert (deep.severity, deep.subject) == ("stop", "drain pipe, deepest place")
    assert deep.advice.endswith("or a stiffer pipe.")
    assert pipe(SOFT, thin, loads('wheel = "3000 lbf"')).severity == "stop"


def test_a_load_on_the_ground_and_a_limit_of_ones_own_are_told() -> None:
    own = pipe(loads('surcharge = "100 psf"\ndeflection_limit = "3 %"'))
    assert "fill 115 lb/ft\u00b3; 100 lb/ft\u00b2 on it." in own.found
    assert own.asked == "at most 3 % of its diameter"
    usual = pipe()
    assert "on it." not in usual.found
    assert usual.asked == "at most 5 % of its diameter"
    assert "Moser" in str(usual.source)


@pytest.mark.parametrize(
    ("words", "severity", "advice"),
    [
        ("", "fine", "Lay it so"),
        # 62.6 psf of slab and foam and so much more: 3.6 psi, 518 psf, are all it may carry.
        ('floor = "440 psf"', "fine", "Lay it so"),
        ('floor = "480 psf"', "stop", "Take a stronger board, or a thinner slab."),
        # On 14 1/2 in square 4.8 psi, with the rest 1.5 times what it may carry.
        ('point = "1000 lbf"', "look", "Take a stronger board or a thicker slab"),
        ('floor = "1000 psf"', "stop", "Take a stronger board, or a thinner slab."),
        ('point = "2000 lbf"', "look", "Take a stronger board or a thicker slab"),
        ('point = "20000 lbf"', "stop", "Take a stronger board or a thicker slab"),
    ],
)
def test_of_two_areas_the_one_that_asks_most_of_its_board_is_told(
    words: str, severity: str, advice: str
) -> None:
    layout = house(GARAGE, loads(words))
    assert [one.area for one in board_loads(layout)] == ["basement", "garage"]
    (found,) = board_findings(layout)
    assert found.subject == "garage, foam under the slab"
    assert found.severity == severity
    assert found.advice.startswith(advice)
