"""Bodies kept between designs: a changed thickness makes anew what hangs on it, no more."""

from itertools import count, islice

import numpy as np

from geometry.layout.lay import lay_out
from geometry.solids import carving
from geometry.solids.foundation import Foundation, build
from geometry.solids.kernel import Mesh
from tests.designs import design_of, seeded_raw
from viz.carried import demo
from viz.job import job

TEXT = demo().read_text(encoding="utf-8")
SLAB = ('thickness = "4 in", role = "slab"', 'thickness = "5 in", role = "slab"')


def bodies(found: Foundation) -> dict[str, Mesh]:
    solids = (*found.solids, found.excavation)
    return {s.label.part: Mesh(s.vertices, s.faces) for s in solids}


def test_a_thicker_slab_leaves_drain_and_backfill_as_they_are() -> None:
    before = bodies(job(TEXT).foundation)
    assert SLAB[0] in TEXT
    after = bodies(job(TEXT.replace(*SLAB)).foundation)
    same = {part for part in before if after[part].vertices is before[part].vertices}
    assert same >= {"footing", "basement/wall", "drain/pipe", "drain/stone", "drain/wrap",
                    "ground/backfill", "basement/stone"}  # fmt: skip
    assert after["basement/slab"].volume > 1.2 * before["basement/slab"].volume


def test_what_is_kept_is_what_would_be_made_anew() -> None:
    sound = (raw for raw in map(seeded_raw, count()) if raw is not None)
    for raw in islice(sound, 2):
        layout = lay_out(design_of(raw))
        build(layout)
        kept = bodies(build(layout))
        carving.forget()
        anew = bodies(build(layout))
        assert kept.keys() == anew.keys()
        for part, mesh in anew.items():
            assert np.array_equal(np.sort(kept[part].vertices, 0), np.sort(mesh.vertices, 0)), part
            assert np.isclose(kept[part].volume, mesh.volume, rtol=1e-9), part


def test_no_one_can_change_a_body_that_others_hold() -> None:
    slab = bodies(job(TEXT).foundation)["basement/slab"]
    assert not slab.vertices.flags.writeable
    assert not slab.faces.flags.writeable
