"""Bands of the base's thickness and the water's shores as drawn, against closed forms."""

from itertools import combinations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, box

from geometry.survey.bands import between, not_shot, shores, thickness_bands, thinned
from geometry.survey.shots import ground_shots
from geometry.survey.surface import triangulate
from tests.geometry.survey.surveyed import dry_house, dug, random_shots
from tests.houses import house
from tests.rolls import rolls

INCH, FOOT = 0.0254, 0.3048


def test_a_ramp_is_drawn_in_strips() -> None:
    """The base goes from nothing to 9 in along the floor.

    Planned are 6 in, of which 4 in are the least; the fine grade may be off by 3/4 in.
    """
    layout = house()
    left, right = 1.5, 8.0
    slope = 9 * INCH / (right - left)
    edges = [0, 4, 5.25, 6, 6.75, 7.5]
    area = dug(layout, random_shots(layout, lambda x, y: -slope * (x - left) + 0 * y, count=99))
    bands = thickness_bands(area)
    assert [band.meaning for band in bands] == [
        "none", "thin", "high", "rather high", "rather low", "low", "deep",
    ]  # fmt: skip
    assert [band.low for band in bands] == pytest.approx([None, *(e * INCH for e in edges)])
    assert [band.high for band in bands] == pytest.approx([*(e * INCH for e in edges), None])
    places = [-1.0, *(left + e * INCH / slope for e in edges), 99.0]
    for band, start, end in zip(bands, places[:-1], places[1:], strict=True):
        strip = area.bed.region.intersection(box(start, -1, end, 99))
        assert band.area_m2 == pytest.approx(strip.area, rel=1e-6)
        assert band.region.symmetric_difference(strip).area < 1e-5
    assert not_shot(area).is_empty


@pytest.mark.parametrize(("thick", "least", "edges"), [
    # Less planned than the least and the tolerance: no room for the bands between.
    ("4 in", None, {"thin": 4, "rather low": 4.75, "low": 5.5}),
    ("6 in", 6 * INCH, {"thin": 6, "rather low": 6.75, "low": 7.5}),
    ("6 in", 5.5 * INCH, {"thin": 5.5, "rather high": 6, "rather low": 6.75, "low": 7.5}),
    ("6 in", 8 * INCH, {"thin": 8, "low": 8.75}),
])  # fmt: skip
def test_bands_that_have_no_room_are_left_out(
    thick: str, least: float | None, edges: dict[str, float]
) -> None:
    layout = house(('material = "stone-57", thickness = "6 in"',
                    f'material = "stone-57", thickness = "{thick}"'))  # fmt: skip
    shots = random_shots(layout, lambda x, y: INCH - 1.6 * INCH * x + 0 * y, count=60)
    bands = thickness_bands(dug(layout, shots, least))
    assert [band.meaning for band in bands] == ["none", *edges, "deep"]
    tops = [band.high for band in bands]
    assert tops == pytest.approx([0, *(e * INCH for e in edges.values()), None])


@settings(max_examples=rolls(6), deadline=None)
@given(st.integers(0, 10**6), st.sampled_from([2, 8, 10**6]))
def test_bands_of_any_ground_fill_the_floor_without_overlap(seed: int, steps: int) -> None:
    """Steps of levels: shots level with each other, and on a band's very edge."""
    dice = np.random.default_rng(seed)
    layout = house()

    def rough(x: np.ndarray, y: np.ndarray) -> np.ndarray:
        level: np.ndarray = np.round(dice.uniform(-12, 1, len(x)) * steps) / steps * INCH + 0 * y
        return level

    area = dug(layout, random_shots(layout, rough, count=40, seed=seed))
    bands = thickness_bands(area)
    beyond = not_shot(area).area
    assert beyond == pytest.approx(area.ground.beyond_m2, abs=1e-9)
    assert sum(b.area_m2 for b in bands) == pytest.approx(area.ground.area_m2, rel=1e-9)
    for one, other in combinations(bands, 2):
        assert one.region.intersection(other.region).area < 1e-4
    for band in bands:
        assert band.area_m2 - beyond - 1e-4 <= band.region.area <= band.area_m2 + 1e-4


def test_a_ring_through_a_shot_on_a_bands_edge_is_whole() -> None:
    """Half-inch steps: this ground once made a ring that crossed itself in the last digit."""
    dice = np.random.default_rng(7940)
    level = np.round(dice.uniform(-12, 1, 40) * 2) / 2 * INCH
    shots = random_shots(house(), lambda x, y: level + 0 * x * y, count=40, seed=7940)
    area = dug(house(), shots)
    drawn = sum(band.region.area for band in thickness_bands(area))
    assert drawn == pytest.approx(area.ground.covered_m2, rel=1e-5)


@pytest.mark.parametrize(("inches", "meaning"), [
    (1, "none"), (0, "thin"), (-3.9, "thin"), (-4, "high"), (-6, "rather low"), (-6.75, "low"),
    (-7.5, "deep"), (-20, "deep"),
])  # fmt: skip
def test_level_ground_is_drawn_whole_even_on_the_very_edge_of_a_band(
    inches: float, meaning: str
) -> None:
    """Dug as planned to the last digit too: 6 in."""
    layout = house()
    shots = random_shots(layout, lambda x, y: inches * INCH + 0 * x * y, count=40)
    area = dug(layout, shots)
    (band,) = thickness_bands(area)
    assert band.meaning == meaning
    assert band.area_m2 == pytest.approx(area.ground.area_m2)
    assert band.region.area == pytest.approx(area.ground.covered_m2, rel=1e-6)


@settings(max_examples=rolls(25), deadline=None)
@given(
    st.lists(st.integers(0, 6), min_size=3, max_size=3),
    st.one_of(st.none(), st.integers(-1, 7)),
    st.one_of(st.none(), st.integers(-1, 7)),
)
def test_one_plane_between_two_levels_is_half_planes_of_its_triangle(
    value: list[int], low: int | None, high: int | None
) -> None:
    corners = np.array([(0.0, 0.0), (4.0, 1.0), (1.0, 3.0)])
    found = between(corners[None], np.array([value], float), low, high)
    triangle = Polygon(corners)
    plane = np.linalg.solve(np.column_stack((corners, np.ones(3))), np.array(value, float))
    if not plane[:2].any() or (low is not None and high is not None and low >= high):
        return
    wanted = triangle
    if low is not None:
        wanted = wanted.difference(half_plane(plane, low))
    if high is not None:
        wanted = wanted.intersection(half_plane(plane, high))
    assert found.symmetric_difference(wanted).area < 1e-5


def half_plane(plane: np.ndarray, level: float) -> Polygon:
    """Where a x + b y + c lies below a level, as far as a triangle near the origin reaches."""
    steep = float(np.hypot(*plane[:2]))
    down = -plane[:2] / steep
    foot = -down * (level - plane[2]) / steep
    side = np.array((-down[1], down[0])) * 99
    return Polygon([foot - side, foot + side, foot + side + down * 99, foot - side + down * 99])


def test_many_shots_are_drawn_as_means_of_square_cells() -> None:
    """Two shots about the middle of each of 60 x 60 cells, and the floor's four corners."""
    k = np.arange(60) + 0.5
    middle = np.column_stack([v.ravel() for v in np.meshgrid(k, k)])
    offsets = np.array([(0.25, 0.1), (-0.35, 0.2)])
    corners = np.array([(0, 0), (60, 0), (60, 60), (0, 60)], float)
    points = np.concatenate([*(middle + o for o in offsets), corners])
    points = points * (0.2, 0.1) + (3, -7)
    level = np.sin(np.arange(len(points)))
    found = thinned(triangulate(*points.T, level))
    at = {
        (round(x, 6), round(y, 6)): z for (x, y), z in zip(found.points, found.level, strict=True)
    }
    assert len(at) == 60 * 60 + 4
    for number, spot in enumerate(middle):
        if not {0.5, 59.5} >= set(spot):
            own = [number + 3600 * n for n in range(2)]
            place = points[own].mean(axis=0)
            assert at[round(place[0], 6), round(place[1], 6)] == pytest.approx(level[own].mean())
    for corner, height in zip(points[-4:], level[-4:], strict=True):
        assert at[round(corner[0], 6), round(corner[1], 6)] == height
    few = triangulate(*points[:3600].T, level[:3600])
    assert thinned(few) is few


def test_the_shore_is_where_the_water_meets_the_ground() -> None:
    """Two cones of six sides, step 1 m; water ends in a deeper third one.

    At the level it spills a cone is full to the hexagon round its shot, 3/2 root 3 m2 in the plan.
    """
    layout = dry_house()
    rows = np.arange(-12, 13)
    across, up = (v.ravel() for v in np.meshgrid(rows, rows))
    x, y = 4.5 + across + up / 2, 3.0 + up * 3**0.5 / 2
    level = np.full(len(x), layout.areas[0].subgrade)
    for place, inches in (((2.5, 3.0), 2), ((6.5, 3.0), 1.5), ((4.0, 3.0 + 3**0.5 / 2), 3)):
        level[np.hypot(x - place[0], y - place[1]).argmin()] -= inches * INCH
    area = dug(layout, ground_shots(x, y, level))
    waters = shores(area)
    assert [(pond.x, pond.y) for pond in area.ponds.deepest] == [
        pytest.approx((2.5, 3.0)), pytest.approx((6.5, 3.0)),
    ]  # fmt: skip
    for pond, water in zip(area.ponds.deepest, waters, strict=True):
        assert water.area == pytest.approx(1.5 * 3**0.5, rel=1e-3)
        assert (water.centroid.x, water.centroid.y) == pytest.approx((pond.x, pond.y), abs=1e-3)
