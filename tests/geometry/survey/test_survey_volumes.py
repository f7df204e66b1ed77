"""Base volume, cut and fill against closed forms and an independent triangulation."""

import numpy as np
import pytest
import pyvista
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import MultiPoint, Polygon, box

from geometry.layout.lay import lay_out
from geometry.survey.bed import bed
from geometry.survey.ground import measured, on_floor
from geometry.survey.shots import Floats, ground_shots
from geometry.survey.surface import Surface, triangulate
from tests.designs import design_of, seeded_raw
from tests.geometry.survey.surveyed import dug, random_shots
from tests.houses import WITH_GARAGE, house
from tests.rolls import rolls, seeds

CLOSE = 1e-12


def tilted(x: Floats, y: Floats) -> Floats:
    return -0.17 + 0.003 * x - 0.002 * y


def rim(surface: Surface) -> Polygon:
    return MultiPoint(surface.points).convex_hull


def test_tilted_plane_is_exact() -> None:
    layout = house(WITH_GARAGE)
    area = dug(layout, random_shots(layout, tilted))
    region = area.bed.region
    middle = region.centroid
    wanted = region.area * (area.bed.top - float(tilted(middle.x, middle.y)))
    assert area.ground.base_m3 + area.bed.pipe_m3 == pytest.approx(wanted, rel=CLOSE)
    assert area.ground.area_m2 == pytest.approx(region.area, rel=CLOSE)
    assert area.ground.covered_m2 == pytest.approx(region.area, rel=CLOSE)
    assert area.ground.mean_m == pytest.approx(wanted / region.area, rel=CLOSE)


def test_ground_as_planned_gives_the_planned_volume_whatever_the_house() -> None:
    """Pads, pit, edge boards and floors above top of footing included."""
    tried = 0
    for seed in seeds(20):
        raw = seeded_raw(seed)
        if raw is None:
            continue

        layout = lay_out(design_of(raw))
        for area in layout.areas:
            planned = bed(layout, area, None)
            filled = any(b.label.part == f"{area.name}/fill" for b in layout.floors)
            if filled or planned.region.area < 0.5:
                continue
            left, low, right, high = area.outline.bounds
            corners = [(x, y) for x in (left - 1, right + 1) for y in (low - 1, high + 1)]
            x, y = np.array([*corners, area.outline.representative_point().coords[0]]).T
            surface = triangulate(x, y, np.full(5, planned.subgrade))
            ground = measured(planned, on_floor(surface, planned.region))
            assert ground.base_m3 == pytest.approx(ground.planned_m3, rel=1e-9)
            assert ground.base_beyond_m3 == 0
            tried += 1
    assert tried > 10


def test_paraboloid_on_a_grid_has_its_interpolation_error() -> None:
    """On a right triangle with legs h the chord plane of a x2 + b y2 lies too high.

    By A h2 (a + b) / 6 in volume: over legs from 0 to h the plane's mean of x2 is h2 / 3, that of
    x2 itself h2 / 6. Nowhere by more than (a + b) h2 / 4, at the middle of the hypotenuse.
    """
    a, b, h, top = 0.02, 0.03, 0.25, 3.0
    x, y = (v.ravel() for v in np.meshgrid(np.arange(0, 8 + h, h), np.arange(0, 6 + h, h)))
    surface = triangulate(x, y, a * x**2 + b * y**2)
    cells = on_floor(surface, box(1.0, 0.5, 7.0, 5.5)).whole
    true = 30 * top - a * 5 * (7**3 - 1) / 3 - b * 6 * (5.5**3 - 0.5**3) / 3
    assert cells.below(top) == pytest.approx(true - 30 * h**2 * (a + b) / 6, rel=CLOSE)
    part = box(1.03, 0.61, 6.94, 5.37)
    left, low, right, high = part.bounds
    true = (
        part.area * top
        - (a * (high - low) * (right**3 - left**3) + b * (right - left) * (high**3 - low**3)) / 3
    )
    short = true - on_floor(surface, part).whole.below(top)
    assert 0 < short < part.area * h**2 * (a + b) / 4


def test_cut_and_fill_are_split_at_the_zero_line() -> None:
    slope, turn = 0.04, 3.7
    x, y = np.random.default_rng(2).uniform(-1, 11, (2, 300))
    surface = triangulate(x, y, slope * (x - turn))
    floor = on_floor(surface, box(0, 0, 10, 5)).whole
    assert floor.above(0.0) == pytest.approx(slope * 5 * (10 - turn) ** 2 / 2, rel=CLOSE)
    assert floor.below(0.0) == pytest.approx(slope * 5 * turn**2 / 2, rel=CLOSE)
    assert floor.area_above(0.0) == pytest.approx(5 * (10 - turn), rel=CLOSE)


def test_against_an_independent_triangulation() -> None:
    layout = house()
    shots = random_shots(layout, lambda x, y: -0.16 + 0.03 * np.sin(2 * x) * np.cos(3 * y))
    area = dug(layout, shots)
    points = np.column_stack((shots.x, shots.y, shots.level))
    other = pyvista.PolyData(points * (1, 1, 0)).delaunay_2d()
    region, top = area.bed.region, area.bed.top
    volume = 0.0
    for corners in points[other.faces.reshape(-1, 4)[:, 1:]]:
        piece = Polygon(corners[:, :2]).intersection(region)
        if piece.area:
            plane = np.linalg.solve(np.column_stack((corners[:, :2], np.ones(3))), corners[:, 2])
            level = float(plane @ (piece.centroid.x, piece.centroid.y, 1.0))
            volume += piece.area * (top - level)
    assert area.ground.no_room_m3 == 0
    assert area.ground.base_m3 + area.bed.pipe_m3 == pytest.approx(volume, rel=1e-9)


def test_beyond_the_shots_the_nearest_level_is_carried_on() -> None:
    x, y = np.array([0.0, 1.0, 1.0, 0.0]), np.array([0.0, 0.0, 1.0, 1.0])
    floor = on_floor(triangulate(x, y, x.copy()), box(-1, -1, 2, 2))
    assert floor.between.area_m2 == pytest.approx(1, rel=CLOSE)
    assert floor.beyond.area_m2 == pytest.approx(8, rel=CLOSE)
    # Level 0 to the left, x between, 1 to the right, each three metres deep.
    assert floor.whole.above(0.0) == pytest.approx(4.5, rel=CLOSE)
    assert floor.beyond.above(0.0) == pytest.approx(4.0, rel=CLOSE)


places = st.integers(-60, 60).map(lambda n: n / 8)
shots = st.lists(st.tuples(places, places, st.integers(-40, 40)), min_size=4, max_size=40,
                 unique_by=lambda s: s[:2])  # fmt: skip


@settings(max_examples=rolls(30), deadline=None)
@given(shots, st.lists(st.tuples(places, places), min_size=3, max_size=9, unique=True))
def test_any_floor_is_covered_exactly_and_split_without_rest(
    given_shots: list[tuple[float, float, int]], corners: list[tuple[float, float]]
) -> None:
    x, y, level = np.array(given_shots, float).T
    region = MultiPoint(corners).buffer(0.3, quad_segs=3).difference(box(-1, -1, 1, 1))
    if np.linalg.matrix_rank(np.column_stack((x - x[0], y - y[0]))) < 2 or region.is_empty:
        return
    surface = triangulate(x, y, level / 100)
    floor = on_floor(surface, region)
    inside = region.intersection(rim(surface)).area
    assert floor.whole.area_m2 == pytest.approx(region.area, rel=CLOSE)
    assert floor.between.area_m2 == pytest.approx(inside, rel=CLOSE, abs=1e-12)
    for plane in (-0.1, 0.0, 0.07):
        net = float(np.dot(floor.whole.area, plane - floor.whole.mean))
        split = floor.whole.below(plane) - floor.whole.above(plane)
        assert split == pytest.approx(net, rel=1e-9, abs=1e-12)
        assert 0 <= floor.whole.area_above(plane) <= region.area * (1 + CLOSE)


@settings(max_examples=rolls(12), deadline=None)
@given(st.integers(0, 10**6), st.floats(-0.02, 0.02))
def test_order_of_shots_does_not_matter_and_a_lift_takes_its_own_volume(
    seed: int, lift: float
) -> None:
    layout = house()
    taken = random_shots(layout, tilted, count=30, seed=seed)
    turn = np.random.default_rng(seed).permutation(30)
    one = dug(layout, taken).ground
    again = dug(layout, ground_shots(taken.x[turn], taken.y[turn], taken.level[turn])).ground
    lifted = dug(layout, ground_shots(taken.x, taken.y, taken.level + lift)).ground
    assert again.base_m3 == pytest.approx(one.base_m3, rel=1e-11)
    assert one.base_m3 - lifted.base_m3 == pytest.approx(lift * one.area_m2, rel=1e-9, abs=1e-12)


def test_thin_base_is_measured() -> None:
    """Ground that rises along x: the base is too thin beyond a line."""
    layout = house()
    top = bed(layout, layout.areas[0], None).top
    area = dug(layout, random_shots(layout, lambda x, y: top - 0.15 + 0.02 * (x - 1.0) + 0 * y),
               least_m=0.1)  # fmt: skip
    line = 1.0 + 0.05 / 0.02
    left, low, right, high = area.bed.region.bounds
    thin = shapely.intersection(area.bed.region, box(line, low, right, high)).area
    assert area.ground.thin_m2 == pytest.approx(thin, rel=1e-6)
    assert area.ground.thinnest.x == pytest.approx(right, abs=1e-9)
    assert area.ground.thinnest.value == pytest.approx(0.15 - 0.02 * (right - 1.0), rel=1e-9)
    assert left < line < right
