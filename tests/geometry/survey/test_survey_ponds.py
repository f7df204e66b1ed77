"""Where water stands, against a flood reckoned point by point and closed forms."""

import heapq
from collections import defaultdict

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.layout.lay import Layout
from geometry.survey.flow import fill_levels
from geometry.survey.ponds import Ponds
from geometry.survey.shots import Floats, ground_shots
from geometry.survey.surface import Surface, triangulate
from tests.geometry.survey.surveyed import dry_house, dug, hexagons
from tests.houses import house
from tests.rolls import rolls


def flooded(surface: Surface, outlet: int) -> Floats:
    """Flood from the outlet inward, always from the lowest point reached."""
    near = defaultdict(list)
    for one, other in zip(*(e.tolist() for e in surface.edges), strict=True):
        near[one].append(other)
        near[other].append(one)
    filled = np.full(len(surface.level), np.inf)
    filled[outlet] = surface.level[outlet]
    waiting = [(filled[outlet], outlet)]
    while waiting:
        water, point = heapq.heappop(waiting)
        for other in near[point]:
            if filled[other] == np.inf:
                filled[other] = max(water, surface.level[other])
                heapq.heappush(waiting, (filled[other], other))
    return filled


@settings(max_examples=rolls(20), deadline=None)
@given(st.integers(0, 10**6), st.integers(5, 300), st.booleans(), st.sampled_from([1, 30, 10**6]))
def test_fills_as_a_flood_from_the_outlet_does(
    seed: int, count: int, lowest: bool, steps: int
) -> None:
    dice = np.random.default_rng(seed)
    x, y = dice.uniform(0, 10, (2, count))
    level = np.round(dice.uniform(0, 1, count) * steps) / steps
    surface = triangulate(x, y, level)
    outlet = int(level.argmin()) if lowest else int(dice.integers(count))
    wet = np.ones(count, bool)
    got = fill_levels(level, surface.edges, wet, outlet)
    np.testing.assert_array_equal(got, flooded(surface, outlet))


def test_a_cone_of_six_sides_holds_a_third_of_its_box() -> None:
    layout, step = dry_house(), 0.5
    area = layout.areas[0]
    x, y = hexagons((area.outline.centroid.x - 1.5, area.outline.centroid.y + 1.2), step)
    level = np.full(len(x), area.subgrade)
    shallow, deep = 312, 314
    level[shallow], level[deep] = area.subgrade - 0.02, area.subgrade - 0.05
    found = dug(layout, ground_shots(x, y, level)).ponds
    star = 6 * 3**0.5 / 4 * step**2
    (pond,) = found.deepest
    assert (pond.x, pond.y) == pytest.approx((x[shallow], y[shallow]))
    assert pond.depth_m == pytest.approx(0.02)
    assert pond.area_m2 == pytest.approx(star)
    assert pond.volume_m3 == pytest.approx(star * 0.02 / 3)
    assert found.count == 1
    assert found.ends == pytest.approx((x[deep], y[deep], area.subgrade - 0.05))


def test_water_leaves_at_the_pit_if_there_is_one() -> None:
    layout = house()
    area = layout.areas[0]
    x, y = hexagons((area.outline.centroid.x, area.outline.centroid.y + 1.2), 0.5)
    level = np.full(len(x), area.subgrade)
    level[312] -= 0.05
    found = dug(layout, ground_shots(x, y, level)).ponds
    assert found.ends is None
    assert [pond.depth_m for pond in found.deepest] == pytest.approx([0.05])


def hollowed(layout: Layout, depths: dict[int, float]) -> tuple[Ponds, float]:
    """Ponds of ground as planned but for some shots that lie lower, and its level."""
    area = layout.areas[0]
    x, y = hexagons((area.outline.centroid.x, area.outline.centroid.y), 0.5)
    level = np.full(len(x), area.subgrade)
    for place, depth in depths.items():
        level[place] -= depth
    return dug(layout, ground_shots(x, y, level)).ponds, area.subgrade


def test_ponds_from_the_deepest_on_without_footprints_and_films() -> None:
    """Cones on stars of six triangles; less than 3 mm is a film, the lowest place ends the water.

    Two low shots side by side are one pond on ten triangles, each shot under a third of its six.
    """
    lows = {265: 0.06, 307: 0.02, 310: 0.05, 313: 0.0025, 316: 0.0035, 383: 0.004, 384: 0.03}
    found, level = hollowed(dry_house(), lows)
    part = 3**0.5 / 4 * 0.5**2
    assert [p.depth_m for p in found.deepest] == pytest.approx([0.05, 0.03, 0.02, 0.0035])
    assert [p.area_m2 / part for p in found.deepest] == pytest.approx([6, 10, 6, 6])
    sums = [0.05, 0.03 + 0.004, 0.02, 0.0035]
    assert [p.volume_m3 for p in found.deepest] == pytest.approx([6 * part * d / 3 for d in sums])
    assert found.count == 4
    assert found.volume_m3 == pytest.approx(6 * part * sum(sums) / 3)
    for pond in found.deepest:
        assert pond.spill_m == pytest.approx(level)
        assert pond.bottom_m == pytest.approx(level - pond.depth_m)


def test_without_a_shot_on_the_floor_no_water_is_told() -> None:
    layout = dry_house()
    left, low, right, high = layout.areas[0].outline.bounds
    x, y = np.array([(left, low), (right, low), (right, high), (left, high)]).T
    found = dug(layout, ground_shots(x, y, np.full(4, layout.areas[0].subgrade)))
    assert found.ponds == Ponds((), 0, 0.0, None)
    assert found.foam.count("outside the floor") == 4


def test_a_footprint_is_no_pond() -> None:
    """Stars of 0.05 m2 at shots 14 cm apart: 0.051 m2 of water is one, 0.047 m2 none."""
    layout = dry_house()
    area = layout.areas[0]
    for step, count in ((0.1345, 0), (0.1405, 1)):
        x, y = hexagons((2.5, 1.6), step)
        level = np.full(len(x), area.subgrade)
        level[[312, 316]] -= [0.02, 0.05]
        assert dug(layout, ground_shots(x, y, level)).ponds.count == count


def test_water_at_the_pit_leaves_and_stands_elsewhere() -> None:
    """The pit at 4 ft, 5 ft; the shot nearest to it is its outlet, however low it lies."""
    layout = house()
    x, y = hexagons((layout.areas[0].outline.centroid.x, layout.areas[0].outline.centroid.y), 0.5)
    away = np.hypot(x - 4 * 0.3048, y - 5 * 0.3048)
    inside = dug(layout, ground_shots(x, y, np.full(len(x), -0.15))).floor.found.points
    index = dug(layout, ground_shots(x, y, np.full(len(x), -0.15))).index
    nearest = int(index[inside][away[index[inside]].argmin()])
    found, _ = hollowed(layout, {nearest: 0.08, 316: 0.04})
    assert [p.depth_m for p in found.deepest] == pytest.approx([0.04])
