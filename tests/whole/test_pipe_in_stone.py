"""The pipe fills its bore in the stone, wherever its fall turns."""

import pytest

from geometry.designfile import read_design
from tests.houses import METRIC
from tests.whole.test_invariants import hold
from tests.whole.witness import Whole

HOUSE = f"""{METRIC}
[[area]]
name = "main"
corners = [[0, 0], [9.6, 0], [9.6, 4.6], [0, 7.2]]
[drain]
fall = "1 %"
[sump]
at = [1.2, PIT]
"""


@pytest.mark.parametrize(("pit", "beside"), [("1.2292", -1.1), ("1.2269", 1.2)])
def test_a_fall_that_turns_in_a_bend_leaves_pipe_and_bore_alike(pit: str, beside: float) -> None:
    """The high point lies so many mm past the corner of a bend that reaches 0.15 m both ways."""
    whole = Whole(read_design(HOUSE.replace("PIT", pit)))
    (drain,) = whole.layout.drains
    corner = min(drain.fittings, key=lambda fitting: abs(fitting.station - drain.high))
    assert 1000 * (drain.high - corner.station) == pytest.approx(beside, abs=0.05)
    hold(whole)
