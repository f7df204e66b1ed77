import itertools
from dataclasses import replace

import numpy as np
import pytest
import shapely
from basement_of_boxes import ACROSS, LONG, WIDE, basement, rim

from geometry.errors import BedcourseError
from geometry.sections.face import CutLine
from geometry.solids.solid import Solid
from viz.scene.bodies import GAP
from viz.scene.composition import composed
from viz.scene.view import View, Window

SOLIDS = basement()


def test_stages_stand_clear_of_each_other_in_build_order():
    scene = composed(SOLIDS, View("exploded"))
    stages = sorted({body.label.stage for body in scene.bodies})
    spans = []
    for stage in stages:
        levels = np.concatenate([b.vertices[:, 2] for b in scene.bodies if b.label.stage == stage])
        spans.append((levels.min(), levels.max()))
    gap = GAP * np.hypot(LONG + 2 * 1.3, WIDE + 2 * 1.3)  # the drain stone is the widest part
    for (_, top), (bottom, _) in itertools.pairwise(spans):
        assert bottom - top == pytest.approx(gap)


def test_areas_side_by_side_are_not_stacked_on_each_other():
    beside = [
        replace(
            solid,
            label=replace(solid.label, area="garage", part="garage slab", stage=4),
            vertices=np.add(solid.vertices, [LONG, 0.0, 1.0]),
        )
        for solid in SOLIDS
        if solid.label.part == "slab"
    ]
    lifts = [
        next(b for b in composed(solids, View("exploded")).bodies if b.label.part == "foam")
        for solids in (SOLIDS, [*SOLIDS, *beside])
    ]
    # the picture is a slab wider, so the gaps are: five of them lie under the foam
    wider = np.hypot(2 * LONG - 0.2 + 1.3, WIDE + 2.6) - np.hypot(LONG + 2.6, WIDE + 2.6)
    rise = lifts[1].vertices[0, 2] - lifts[0].vertices[0, 2]
    assert rise == pytest.approx(5 * GAP * wider)


@pytest.mark.parametrize("kind", ["whole", "exploded", "cutaway", "face the cut"])
def test_neither_the_hole_nor_loose_soil_is_ever_a_body(kind):
    scene = composed(SOLIDS, View(kind, cut=ACROSS))
    roles = {body.label.role for body in scene.bodies}
    assert roles.isdisjoint({"excavation", "backfill"})
    assert {"footing", "wall", "slab", "pipe"} <= roles


def test_cut_faces_have_the_closed_form_areas():
    scene = composed(SOLIDS, View("cutaway", cut=ACROSS))
    areas = {}
    for cap in scene.caps:
        a, b, c = (cap.vertices[cap.faces[:, k]] for k in range(3))
        areas[cap.label.part] = np.linalg.norm(np.cross(b - a, c - a), axis=1).sum() / 2
    assert areas["footing"] == pytest.approx(2 * 0.508 * 0.254)
    assert areas["wall"] == pytest.approx(2 * 0.2 * 2.4)
    assert areas["slab"] == pytest.approx((WIDE - 0.4) * 0.102)
    outer = 24 / 2 * 0.055**2 * np.sin(2 * np.pi / 24)  # a 24-sided ring, twice
    assert areas["pipe"] == pytest.approx(2 * outer * (1 - 0.9**2))
    assert "hole" not in areas


def test_cut_faces_lie_in_the_cut_and_start_is_on_the_left_hand():
    scene = composed(SOLIDS, View("cutaway", cut=ACROSS))
    spots = np.vstack([cap.vertices for cap in scene.caps])
    assert np.allclose(spots[:, 0], 6.5)
    # from south to north with the start on the left: the viewer stands in the east, looks west
    assert np.allclose(scene.ahead, (-1.0, 0.0))
    assert scene.plane.ahead(np.array([[0.0, 4.0, 0.0]]))[0] > 0


def test_the_ground_around_the_hole_shows_in_the_square_view_only():
    flat = composed(SOLIDS, View("face the cut", cut=ACROSS))
    (ground,) = [cap for cap in flat.caps if cap.label.role == "excavation"]
    tops = ground.vertices[:, 2]
    assert tops.max() == pytest.approx(2.0)
    across = shapely.MultiPoint(ground.vertices[:, 1:])
    assert across.bounds[0] == pytest.approx(-2.2 - 3.0)
    assert ground.vertices[:, 0].max() < 6.5  # a hair behind the parts, away from the viewer


def test_the_yard_ends_at_the_hole_in_a_cutaway_but_not_in_the_square_view():
    label = replace(SOLIDS[0].label, part="yard", role="grading")
    yard = Solid(label, *rim(6.0, 0.0, 2.0, 2.1))
    reach = {}
    for kind in ("cutaway", "face the cut"):
        scene = composed([*SOLIDS, yard], View(kind, cut=ACROSS))
        (cap,) = [cap for cap in scene.caps if cap.label.part == "yard"]
        reach[kind] = cap.vertices[:, 1].min(), cap.vertices[:, 1].max()
    assert reach["cutaway"] == pytest.approx((-2.2, WIDE + 2.2))
    assert reach["face the cut"] == pytest.approx((-6.0, WIDE + 6.0))


def test_window_is_measured_from_the_given_start():
    view = View("face the cut", cut=ACROSS, window=Window(2.0, 5.0, -0.5, 1.0))
    frame = composed(SOLIDS, view).frame
    assert np.allclose(frame, [[6.5, -1.0, -0.5], [6.5, 2.0, 1.0]])


def test_what_comes_later_is_a_ghost_without_a_cut_face():
    scene = composed(SOLIDS, View("cutaway", cut=ACROSS, stage=5))
    ghosts = {body.label.part for body in scene.bodies if body.ghost}
    assert ghosts == {"foam", "slab"}
    assert ghosts.isdisjoint({cap.label.part for cap in scene.caps})


def test_refusals_are_sentences():
    with pytest.raises(BedcourseError, match="nothing to draw"):
        composed(SOLIDS, View("whole", without=frozenset(s.label.role for s in SOLIDS)))
    with pytest.raises(BedcourseError, match="needs a cut line"):
        composed(SOLIDS, View("cutaway"))
    with pytest.raises(BedcourseError, match="misses the building"):
        composed(SOLIDS, View("cutaway", cut=CutLine((90.0, 0.0), (90.0, 5.0))))
    with pytest.raises(BedcourseError, match="no length"):
        composed(SOLIDS, View("cutaway", cut=replace(ACROSS, end=ACROSS.start)))
