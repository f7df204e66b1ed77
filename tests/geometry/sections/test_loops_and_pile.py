"""Loops of a cut as areas, and the triangles near a plane: small shapes worked by hand."""

import numpy as np
import pytest
import shapely
import trimesh

from geometry.label import Label
from geometry.sections.loops import areas_of
from geometry.sections.pile import pile
from geometry.solids.solid import Solid

Loop = list[tuple[float, float]]


def square(x: float, y: float, side: float, hole: bool = False) -> Loop:
    """Clockwise round material, the other way round a hole."""
    way = [(x, y), (x, y + side), (x + side, y + side), (x + side, y)]
    return way[::-1] if hole else way


def areas(loops: list[tuple[int, Loop]]) -> dict[int, shapely.MultiPolygon]:
    starts = np.cumsum([0, *(len(loop) for _, loop in loops)])[:-1]
    corners = np.array([corner for _, loop in loops for corner in loop])
    found = areas_of(corners, starts, np.array([owner for owner, _ in loops]))
    assert all(shape.is_valid for shape in found.values())
    return found


def test_holes_lie_in_the_smallest_shell_that_holds_them() -> None:
    """A ring with an island in it that has a hole itself, told in any order; one more beside."""
    loops = [
        (4, square(5, 5, 1, hole=True)), (4, square(0, 0, 10)), (4, square(4, 4, 3)),
        (4, square(2, 2, 6, hole=True)), (4, square(20, 0, 2)),
        (4, square(20.5, 0.5, 1, hole=True)),
    ]  # fmt: skip
    (shape,) = areas(loops).values()
    assert sorted(part.area for part in shape.geoms) == pytest.approx([3, 8, 64])
    inside = [(1, 1), (4.5, 4.5), (20.2, 1)]
    outside = [(3, 3), (5.5, 5.5), (21, 1), (15, 5)]
    assert [shape.contains(shapely.Point(p)) for p in inside] == [True] * 3
    assert not any(shape.intersects(shapely.Point(p)) for p in outside)


def test_every_owner_has_its_own_loops_and_crumbs_are_none() -> None:
    hair = square(0, 0, 1e-7)
    loops = [
        (7, square(0, 0, 3)), (2, square(1, 1, 1)), (7, square(1, 1, 1, hole=True)),
        (5, hair), (2, hair), (9, [(0, 0), (0, 1), (0, 1), (1, 1), (1, 1), (1, 0), (0, 0)]),
    ]  # fmt: skip
    found = areas(loops)
    assert {n: shape.area for n, shape in found.items()} == pytest.approx({2: 1, 7: 8, 9: 1})
    assert len(found[9].geoms[0].exterior.coords) == 5


def test_loops_that_touch_cross_or_run_the_wrong_way_count_by_turns() -> None:
    """Inside one of them is material, inside two is none."""
    touching = [(1, square(0, 0, 2)), (1, square(2, 2, 2))]
    crossing = [(2, square(0, 0, 2)), (2, square(1, 0, 2))]
    backward = [(3, square(0, 0, 4, hole=True)), (3, square(1, 1, 1, hole=True))]
    alone = [(4, square(9, 9, 1)), (4, square(0, 0, 2, hole=True))]
    found = areas([*touching, *crossing, *backward, *alone])
    assert {n: shape.area for n, shape in found.items()} == pytest.approx({1: 8, 2: 4, 3: 15, 4: 5})


@pytest.mark.parametrize("degrees", [0, 35, 90, 160])
def test_a_pile_gives_all_triangles_that_a_plane_meets_and_few_others(degrees: float) -> None:
    """Two balls of 1,280 triangles each, 10 m apart; a third, of 80, between them."""
    label = Label("ball", "Ball", "slab", "concrete", "", 0)
    balls = []
    for count, x in ((3, -5.0), (1, 0.0), (3, 5.0)):
        mesh = trimesh.creation.icosphere(subdivisions=count)
        mesh.apply_translation((x, 1.0, 0.0))
        balls.append(Solid(label, np.asarray(mesh.vertices), np.asarray(mesh.faces)))
    heap = pile(tuple(balls))
    turn = np.radians(degrees)
    along, start = (float(np.cos(turn)), float(np.sin(turn))), (4.7, 1.2)
    aside = (heap.y - start[1]) * along[0] - (heap.x - start[0]) * along[1]
    sides = aside[heap.faces]
    met = np.flatnonzero((sides.min(axis=1) <= 0) & (sides.max(axis=1) >= 0))
    near = heap.near(start, along, 0.0)
    assert set(met.tolist()) <= set(near.tolist())
    assert len(set(near.tolist())) == len(near)
    assert set(heap.owner[met].tolist()) <= set(heap.owner[near].tolist())
    assert np.bincount(heap.owner).tolist() == [1280, 80, 1280]
    if degrees in (35, 90):  # the plane passes the last ball alone
        assert set(heap.owner[near].tolist()) == {2}
    # A plane just beside the last ball meets nothing but within its distance.
    beside = (6.5, 1.0)
    assert heap.near(beside, (0.0, 1.0), 0.4).size == 0
    assert set(heap.owner[heap.near(beside, (0.0, 1.0), 0.6)].tolist()) == {2}
