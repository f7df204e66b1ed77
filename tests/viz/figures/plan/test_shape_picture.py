"""The small picture of a shape: lengths stand clear of its sides and of each other."""

from itertools import combinations

import pytest
import shapely

from geometry.presets.shapes import SHAPES, sized
from viz.drawing.lettering import text_box
from viz.drawing.marks import Line, Text
from viz.figures.plan.shape import shape_figure


@pytest.mark.parametrize("system", ["ft-in", "metric"])
@pytest.mark.parametrize("key", SHAPES)
def test_lengths_stand_clear(key: str, system: str) -> None:
    shape = SHAPES[key]
    size = (84.0, 54.0)
    drawn = shape_figure(shape.outlines(sized(shape, {}, system, None)), system, size, 3.0)
    texts = [text_box(mark) for mark in drawn.marks if isinstance(mark, Text)]
    boxes = [shapely.box(b.left, b.low, b.right, b.high) for b in texts]
    sides = [shapely.LineString(mark.points) for mark in drawn.marks if isinstance(mark, Line)]
    # The overall width and depth are always said.
    assert len(boxes) >= 4
    assert not any(one.intersects(two) for one, two in combinations(boxes, 2))
    assert not any(box.intersects(side) for box in boxes for side in sides)
    assert drawn.box.width <= size[0] + 1e-6
    assert drawn.box.height <= size[1] + 1e-6
