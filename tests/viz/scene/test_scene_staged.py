"""What is solid and what is a ghost at each stage."""

import numpy as np
import pytest

from geometry.layout.lay import lay_out
from geometry.site.stages import stages
from geometry.solids.foundation import build
from tests.designs import design_of, seeded_raw
from tests.rolls import seeds
from viz.carried import demo
from viz.job import job
from viz.scene.staged import TO_COME, pictured, standing


def told(layout, foundation):
    """Solid parts and ghosts of every stage's picture, by id, and what each lays."""
    shots = [standing(layout, foundation, number) for number in pictured(layout)]
    solid = [{s.label.part for s in shot.solids} - shot.ghosts for shot in shots]
    return solid, [set(shot.ghosts) for shot in shots], [set(shot.laid) for shot in shots]


def assert_each_part_appears_once(layout, foundation):
    parts = {solid.label.part for solid in foundation.solids}
    solid, ghosts, laid = told(layout, foundation)
    for there, coming in zip(solid, ghosts, strict=True):
        assert parts <= there | coming
        assert not there & coming
    for part in parts:
        seen = [part in there for there in solid]
        assert seen == sorted(seen), part  # what is built stays
        assert seen[-1], part
        if not seen[0]:  # it is named as laid in the very stage it first appears in
            assert part in laid[seen.index(True)], part


def test_every_part_of_the_demo_appears_at_exactly_one_stage():
    work = job(demo().read_text())
    assert_each_part_appears_once(work.layout, work.foundation)


@pytest.mark.slow
@pytest.mark.parametrize("seed", seeds(12))
def test_every_part_of_any_design_appears_at_exactly_one_stage(seed):
    raw = seeded_raw(seed)
    if raw is None:
        pytest.skip("not a sound design")
    layout = lay_out(design_of(raw))
    assert_each_part_appears_once(layout, build(layout))


def test_stone_is_bedding_alone_until_the_pipe_is_covered():
    work = job(demo().read_text())
    found = stages(work.layout)
    number = next(n for n, stage in enumerate(found) if stage.key == "bedding")
    high = next(s.level for s in found[number].shots if s.key == "bedding_high")
    shot = standing(work.layout, work.foundation, number)
    stone = next(s for s in shot.solids if s.label.part == "drain/stone")
    to_come = next(s for s in shot.solids if s.label.part == "drain/stone" + TO_COME)
    assert stone.vertices[:, 2].max() == pytest.approx(high)
    assert to_come.vertices[:, 2].min() == pytest.approx(high)
    assert {"drain/pipe", "drain/stone" + TO_COME} <= shot.ghosts
    assert np.isclose(volume(stone) + volume(to_come), volume(work.foundation.named("drain/stone")))


def volume(solid):
    a, b, c = (solid.vertices[solid.faces[:, k]] for k in range(3))
    return float(np.einsum("ij,ij->i", a, np.cross(b, c)).sum() / 6)
