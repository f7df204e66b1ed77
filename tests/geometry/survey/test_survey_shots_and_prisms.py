"""Shots as they are kept and told, and prisms under one triangle, worked by hand."""

import numpy as np
import pytest

from geometry.designfile import read_design
from geometry.survey.asdug import as_dug
from geometry.survey.prisms import covered, space
from geometry.survey.reading import read_shots
from geometry.survey.shots import ground_shots
from tests.houses import HOUSE, house

DESIGN = read_design(HOUSE)


def lines(bad: int) -> list[str]:
    rows = "\n".join(f"{n},bad,1" for n in range(bad))
    return [str(f) for f in read_shots(f"x (ft),y (ft),level (ft)\n{rows}\n", DESIGN).faults]


def test_one_more_than_is_said_is_said_too() -> None:
    """A line that counts one more would take the room of that one."""
    assert lines(21)[-1].startswith("row 22: ")
    assert lines(22)[-1] == "... and 2 more rows cannot be read"
    assert len(lines(21)) == len(lines(22)) == 21


def test_shots_given_as_figures_are_numbered_from_one() -> None:
    shots = ground_shots(*np.zeros((3, 4)))
    assert shots.row.tolist() == [1, 2, 3, 4]
    assert [shots.name(n) for n in range(4)] == ["1", "2", "3", "4"]


def test_a_file_without_shots_holds_none_of_anything() -> None:
    shots = read_shots("", DESIGN)
    assert [len(v) for v in (shots.x, shots.y, shots.level, shots.row, shots.code)] == [0] * 5


def test_a_shot_beside_its_pad_is_told_by_the_pads_name() -> None:
    rows = "p,5,5,0,pad P1\nf,15,5,0,footing\n"
    found = as_dug(house(), read_shots("point,x (ft),y (ft),level (in),what\n" + rows, DESIGN))
    told = [str(fault) for fault in found.faults if fault.weight == "doubt"]
    assert told == [
        "row 2: it is marked pad P1, but lies beside it on the plan",
        "row 3: it is marked footing, but lies beside it on the plan",
    ]


@pytest.mark.parametrize(
    ("depth", "part", "volume"),
    [
        ((1.0, 2.0, 3.0), 1, 2),
        ((-1.0, -2.0, -3.0), 0, 0),
        # In the plane itself nothing lies under it.
        ((0.0, 0.0, 0.0), 0, 0),
        ((-3.0, 0.0, 0.0), 0, 0),
        ((0.0, 0.0, 3.0), 1, 1),
        # Half of both sides from the one corner: a quarter of the area, a pyramid of height 1.
        ((1.0, -1.0, -1.0), 1 / 4, 1 / 12),
        # The same turned over: the whole, -1/3 + 1/12 under the line.
        ((-1.0, 1.0, 1.0), 3 / 4, 1 / 3 + 1 / 12),
        # The line through a corner and the middle of the side across.
        ((-1.0, 0.0, 1.0), 1 / 2, 1 / 6),
        # A third of one side, half of the other.
        ((1.0, -2.0, -1.0), 1 / 6, 1 / 18),
    ],
)
def test_a_prism_under_a_plane_by_hand(
    depth: tuple[float, float, float], part: float, volume: float
) -> None:
    """Of a triangle of 4 m2; a pyramid is its base times a third of its height."""
    area, corners = np.array([4.0]), np.array([depth])
    assert covered(area, corners) == pytest.approx([4 * part])
    assert space(area, corners) == pytest.approx([4 * volume])
