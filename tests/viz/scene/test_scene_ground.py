import pytest
from shapely import MultiPolygon, Polygon, box

from geometry.label import Label
from geometry.sections.face import CutFace
from viz.scene.ground import REACH, undisturbed

HOLE = Label("hole", "Hole", "excavation", "", "", 0)


def test_ground_is_the_block_round_the_hole_less_the_hole():
    hole = Polygon([(1, -0.3), (9, -0.3), (11, 2), (-1, 2)])
    ground = undisturbed([CutFace(HOLE, MultiPolygon([hole]))])
    block = (12 + 2 * REACH) * (2.3 + REACH)
    assert ground.shape.area == pytest.approx(block - hole.area)
    assert ground.shape.intersection(hole).area == pytest.approx(0, abs=1e-12)
    assert ground.shape.bounds == (-1 - REACH, -0.3 - REACH, 11 + REACH, 2)


def test_each_side_keeps_its_own_level():
    hole = Polygon([(0, 0), (10, 0), (10, 1), (0, 2)])
    shape = undisturbed([CutFace(HOLE, MultiPolygon([hole]))]).shape
    assert shape.intersection(box(-1, -5, -0.5, 9)).bounds[3] == pytest.approx(2)
    assert shape.intersection(box(10.5, -5, 11, 9)).bounds[3] == pytest.approx(1)


def test_no_hole_no_ground():
    assert undisturbed([]) is None
