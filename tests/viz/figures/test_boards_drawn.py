"""Boards and strips drawn: every place numbered once, sizes as they lie, numbers apart."""

import re

import pytest
import shapely
from shapely import Polygon, box
from shapely.affinity import rotate

from geometry.takeoff.boards import BoardLayout, lay_boards
from geometry.takeoff.strips import Roll, lay_strips
from geometry.units import FOOT
from viz.drawing.figure import Figure
from viz.drawing.lettering import text_box
from viz.drawing.marks import Hatch, Text
from viz.drawing.scale import Scale
from viz.figures.boards.boards import boards_figure
from viz.figures.boards.pieces import cut_boards, pieces
from viz.figures.boards.strips import strips_figure

WIDE, LONG = 4 * FOOT, 8 * FOOT
SCALE = Scale("1:50", 50)
L_SHAPE = box(0, 0, 12, 6).union(box(0, 6, 7, 9)).difference(box(3, 2, 3.4, 2.4))
SKEWED = rotate(L_SHAPE, 17, origin=(0, 0))


def numbers(figure: Figure) -> list[Text]:
    return [m for m in figure.marks if isinstance(m, Text)]


def course(region: Polygon) -> BoardLayout:
    return lay_boards(region, WIDE, LONG)


@pytest.mark.parametrize("region", [L_SHAPE, SKEWED], ids=["level", "skewed"])
def test_every_board_has_its_number_once_and_none_covers_another(region: Polygon) -> None:
    laid = course(region)
    texts = numbers(boards_figure("b", "Boards", laid, SCALE, 2.5))
    assert sorted(int(t.words) for t in texts) == list(range(1, len(laid.pieces) + 1))
    boxes = [shapely.box(b.left, b.low, b.right, b.high) for b in map(text_box, texts)]
    tree = shapely.STRtree(boxes)
    assert all(a == b for a, b in tree.query(boxes, "intersects").T)


@pytest.mark.parametrize("region", [L_SHAPE, SKEWED], ids=["level", "skewed"])
def test_pieces_cover_the_floor_and_fit_the_board_they_are_cut_from(region: Polygon) -> None:
    found = pieces(course(region))
    assert shapely.union_all([p.region for p in found]).area == pytest.approx(region.area, rel=1e-5)
    for piece in found:
        assert piece.short <= WIDE + 1e-4
        assert piece.long <= LONG + 1e-4
        if not piece.board:
            assert (piece.short, piece.long) == pytest.approx((WIDE, LONG), abs=1e-4)
    for _, mine in cut_boards(found):
        assert sum(p.short * p.long for p in mine) <= WIDE * LONG + 1e-3


def test_a_corner_that_falls_on_a_joint_does_not_lengthen_a_piece() -> None:
    """Boards of 1 x 2 m from the left: a step of the wall at a joint leaves no sliver beyond it."""
    region = box(0, 0, 6, 3.3).union(box(0, 3.3, 4, 5))
    laid = lay_boards(rotate(region, 33, origin=(0, 0)), 1.0, 2.0)
    found = pieces(laid)
    plain = [p for p in found if not p.notched]
    assert sum(p.short * p.long for p in plain) == pytest.approx(
        sum(p.region.area for p in plain), abs=1e-3
    )
    for piece in found:
        spread = piece.region.minimum_rotated_rectangle
        assert piece.short * piece.long <= spread.area + 1e-3 or piece.notched


def test_cut_boards_alone_are_hatched() -> None:
    laid = course(L_SHAPE)
    hatched = [m.shape.area for m in boards_figure("b", "Boards", laid, SCALE, 2.5).marks
               if isinstance(m, Hatch)]  # fmt: skip
    cut = sum(p.region.area for p in laid.pieces if not p.whole) * SCALE.per_metre**2
    assert 0.7 * cut < sum(hatched) < cut


def test_strips_have_their_lengths_and_laps() -> None:
    laid = lay_strips(L_SHAPE, Roll(4.0, 25.0, 0.3), 0.15)
    figure = strips_figure("s", "Strips", laid, L_SHAPE, SCALE, 2.5, "metric")
    said = [re.fullmatch(r"(\d+): (\d+) mm", t.words) for t in numbers(figure)]
    lengths = {int(m[1]): int(m[2]) for m in said if m}
    assert lengths == {n: round(run.length_m * 1000) for n, run in enumerate(laid.runs, 1)}
    laps = [m.shape.bounds for m in figure.marks if isinstance(m, Hatch)]
    assert len(laps) == len(laid.strips) - 1
    for left, low, right, high in laps:
        assert min(right - left, high - low) == pytest.approx(0.3 * SCALE.per_metre, abs=1e-6)
