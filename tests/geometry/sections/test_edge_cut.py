"""The short cut from outside into an area: square to its longest side, from soil to floor."""

import pytest

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.sections.telling import EDGE_INSIDE_M, EDGE_OUTSIDE_M, edge_cut

TEXT = """
[project]
name = "An edge (invented)"
units = "metric"
[footing]
width = "0.6 m"
thickness = "0.3 m"
offset = "0.05 m"
[wall]
thickness = "0.2 m"
height = "2.4 m"
[[area]]
name = "room"
corners = [CORNERS]
"""


@pytest.mark.parametrize(
    "corners",
    ['"0, 0", "9 m, 0", "9 m, 7 m", "0, 7 m"', '"9 m, 0", "0, 0", "0, 7 m", "9 m, 7 m"'],
)
def test_an_edge_is_cut_from_outside_the_footing_to_the_floor(corners: str) -> None:
    """The strip stands out 0.25 m and in 0.15 m of a wall of 0.2 m."""
    cut = edge_cut(lay_out(read_design(TEXT.replace("CORNERS", corners))).areas[0])
    assert cut is not None
    assert (cut.start[0], cut.end[0]) == pytest.approx((4.5, 4.5))
    # Either of the two long sides.
    begin, end = (y if cut.start[1] < 3.5 else 7 - y for y in (cut.start[1], cut.end[1]))
    assert begin == pytest.approx(-0.25 - EDGE_OUTSIDE_M)
    assert end == pytest.approx(0.2 + 0.15 + EDGE_INSIDE_M)


def test_an_edge_that_is_a_lower_neighbours_is_no_edge_of_the_area() -> None:
    """The longest side, 7 m, is the lower room's wall; of the garage's own the one 5 m long is."""
    garage = (
        '[[area]]\nname = "garage"\nstep = "1 m"\n'
        'corners = ["9 m, 0", "13 m, 1 m", "13 m, 6 m", "9 m, 7 m"]\n'
    )
    text = TEXT.replace("CORNERS", '"0, 0", "9 m, 0", "9 m, 7 m", "0, 7 m"') + garage
    cut = edge_cut(lay_out(read_design(text)).areas[1])
    assert cut is not None
    assert cut.start == pytest.approx((13 + 0.25 + EDGE_OUTSIDE_M, 3.5))
    assert cut.end == pytest.approx((13 - 0.2 - 0.15 - EDGE_INSIDE_M, 3.5))
