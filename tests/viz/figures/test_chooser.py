"""The plain plan on which a cut is chosen: no words, and places that can be found again."""

import pytest
import shapely

from geometry.layout.lay import lay_out
from tests.designs import design_of, seeded_raw
from viz.drawing.figure import extent
from viz.drawing.marks import Fill, Text
from viz.figures.plan.chooser import chooser_plan

SEEDS = [9, 12, 22]


@pytest.mark.parametrize("seed", SEEDS)
def test_the_plan_has_no_words_and_lies_within_its_picture(seed):
    raw = seeded_raw(seed)
    assert raw is not None
    layout = lay_out(design_of(raw))
    plan = chooser_plan(layout)
    assert not any(isinstance(mark, Text) for mark in plan.drawing.marks)
    box = extent(plan.drawing.marks)
    assert box.left >= 0
    assert box.low >= 0
    assert box.right <= plan.drawing.width
    assert box.high <= plan.drawing.height


@pytest.mark.parametrize("seed", SEEDS)
def test_a_wall_is_found_where_scale_and_origin_say(seed):
    raw = seeded_raw(seed)
    assert raw is not None
    layout = lay_out(design_of(raw))
    plan = chooser_plan(layout)
    drawn = shapely.union_all([m.shape for m in plan.drawing.marks if isinstance(m, Fill)])
    for area in layout.areas:
        at = area.walls.representative_point()
        x, y = (o + v * plan.per_metre for o, v in zip(plan.origin, (at.x, at.y), strict=True))
        assert drawn.covers(shapely.Point(x, y))
