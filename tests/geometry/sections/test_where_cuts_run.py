"""Where the telling cuts run, worked by hand on invented plans in metres.

Strips are 0.6 m wide under walls of 0.2 m: 0.2 m outside and 0.4 m inside the outline. Places are
tried every 0.0175 of a side's length from its middle.
"""

import pytest
import shapely

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.sections.face import CutLine
from geometry.sections.telling import telling_cuts

TEXT = """
[project]
name = "Where cuts run (invented)"
units = "metric"
numbers = "m"
[footing]
width = 0.6
thickness = 0.3
[wall]
thickness = 0.2
height = 2.4
[floor]
tie = "slab top at TOF +0.1 m"
layer = [
    { name = "stone", material = "stone-57", thickness = 0.1, role = "base" },
    { name = "slab", material = "concrete", thickness = 0.1, role = "slab" },
]
"""
ROOM = "[[0, 0], [12, 0], [12, 8], [0, 8]]"


def cuts(low: str, more: str = "", high: str = "") -> dict[str, CutLine]:
    text = f'{TEXT}{more}[[area]]\nname = "low"\ncorners = {low}\n'
    if high:
        text += f'[[area]]\nname = "high"\nstep = 1\ncorners = {high}\n'
    found = telling_cuts(lay_out(read_design(text)))
    assert len({cut.name for cut in found}) == len(found)
    return {cut.name: cut.line for cut in found}


def at(line: CutLine) -> float:
    """Where a cut square to the x axis runs."""
    (x, _), (other, _) = line.path
    assert x == pytest.approx(other)
    return x


def test_a_plain_room_is_cut_across_the_middle_of_its_longest_side() -> None:
    found = cuts(ROOM)
    assert set(found) == {"across"}
    assert at(found["across"]) == pytest.approx(6)
    turned = cuts("[[0, 0], [8, 0], [8, 12], [0, 12]]")["across"]
    assert [y for _, y in turned.path] == pytest.approx([6, 6])


def test_a_cut_that_would_run_along_a_strip_moves_off_it() -> None:
    """The inner strip of the L lies from 6.4 to 7.0 m; the first place off it is one try away."""
    ell = "[[0, 0], [13, 0], [13, 6], [6.8, 6], [6.8, 12], [0, 12]]"
    assert at(cuts(ell)["across"]) == pytest.approx(6.5 - 0.0175 * 13)


def test_a_step_in_reach_is_cut_at_its_middle() -> None:
    room = "[[5, 2], [17, 2], [17, 10], [5, 10]]"
    found = cuts(room, high="[[12, 10], [16, 10], [16, 16], [12, 16]]")
    assert set(found) == {"across"}
    assert at(found["across"]) == pytest.approx(14)


def test_where_a_pier_hides_a_steps_middle_the_cut_goes_over_it_elsewhere() -> None:
    """Past the strip of the upper room, 6.8 to 7.4 m: the seventh try of 0.21 m from the middle."""
    pier = "[[area.pier]]\nat = [9, 4]\nwidth = 0.6\n"
    text = ROOM + "\n" + pier
    found = cuts(text, high="[[7, 8], [11, 8], [11, 14], [7, 14]]")
    assert at(found["across"]) == pytest.approx(6 + 7 * 0.21)
    assert at(found["pier"]) == pytest.approx(9)


def test_a_step_too_near_to_a_corner_is_cut_by_itself() -> None:
    found = cuts(ROOM, high="[[10.4, 8], [12, 8], [12, 14], [10.4, 14]]")
    assert at(found["across"]) == pytest.approx(6)
    assert at(found["step"]) == pytest.approx(11.2)


@pytest.mark.parametrize(("shared", "worth"), [(0.29, False), (0.32, True)])
def test_a_stretch_under_a_foot_is_no_step(shared: float, worth: bool) -> None:
    left = 12 - shared
    found = cuts(ROOM, high=f"[[{left}, 8], [16, 8], [16, 14], [{left}, 14]]")
    assert ("step" in found) == worth


@pytest.mark.parametrize(("pit", "upright"), [("6, 1.5", False), ("2, 4", True), ("2, 2", True)])
def test_the_cut_through_a_pier_keeps_off_the_pit(pit: str, upright: bool) -> None:
    """Square to the longest side unless the pit is in that way."""
    pier = "[[area.pier]]\nat = [6, 4]\nwidth = 0.6\n"
    line = cuts(ROOM + "\n" + pier, more=f"[sump]\nat = [{pit}]\n")["pier"]
    assert line.track().distance(shapely.Point(6, 4)) < 1e-9
    (x, y), (to_x, to_y) = line.path
    assert (x == pytest.approx(to_x), y == pytest.approx(to_y)) == (upright, not upright)


def test_a_pit_that_no_pipe_leads_to_is_cut_square_to_the_longest_side() -> None:
    assert at(cuts(ROOM, more="[sump]\nat = [2, 2]\n")["sump"]) == pytest.approx(2)
