"""High and low spots on a grid of equal triangles, each a cone of six sides worked by hand."""

import numpy as np
import pytest
from shapely import box

from geometry.survey.asdug import AreaDug
from geometry.survey.shots import ground_shots
from tests.geometry.survey.surveyed import dry_house, dug, hexagons, random_shots

STEP_M = 0.5
STAR_M2 = 6 * 3**0.5 / 4 * STEP_M**2
# The fine grade: 3/4 in.
ALLOWED_M = 0.75 * 0.0254
# Steps along the rows and across them, from the middle of the floor.
PLACES = [(a - b // 2, b) for b in (-3, 0, 3) for a in (-5, -2, 1, 4)]


def floor_with(offs: list[float]) -> AreaDug:
    """Ground as planned but for one shot at each of the first places."""
    layout = dry_house()
    area = layout.areas[0]
    middle = area.outline.centroid
    x, y = hexagons((middle.x, middle.y), STEP_M)
    level = np.full(len(x), area.subgrade)
    for (across, up), off in zip(PLACES, offs, strict=False):
        level[(up + 12) * 25 + across + 12] += off
    return dug(layout, ground_shots(x, y, level))


def test_spots_are_the_tips_of_cones_beyond_the_tolerance() -> None:
    """The tip over the tolerance is a cone like the whole; under it stands a prism to the plan."""
    offs = [0.06, -0.05, 0.10, -0.08]
    found = floor_with(offs)
    assert (found.high.count, found.low.count) == (2, 2)
    assert [s.off_m for s in found.high.worst] == pytest.approx([0.10, 0.06])
    assert [s.off_m for s in found.low.worst] == pytest.approx([-0.08, -0.05])
    middle = found.bed.area.outline.centroid
    for spot in (*found.high.worst, *found.low.worst):
        up = abs(spot.off_m)
        area = STAR_M2 * ((up - ALLOWED_M) / up) ** 2
        assert spot.kind == ("high" if spot.off_m > 0 else "low")
        assert spot.area_m2 == pytest.approx(area)
        assert spot.volume_m3 == pytest.approx(area * ((up - ALLOWED_M) / 3 + ALLOWED_M))
        across, row = PLACES[int(np.argmin(np.abs(np.array(offs) - spot.off_m)))]
        assert spot.x - middle.x == pytest.approx(STEP_M * (across + row / 2), abs=1e-9)
        assert spot.y - middle.y == pytest.approx(STEP_M * row * 3**0.5 / 2, abs=1e-9)


def test_shots_side_by_side_are_one_spot() -> None:
    layout = dry_house()
    area = layout.areas[0]
    x, y = hexagons((area.outline.centroid.x, area.outline.centroid.y), STEP_M)
    level = np.full(len(x), area.subgrade)
    level[[312, 313]] += [0.05, 0.07]
    level[[316, 318]] += [0.05, 0.05]
    found = dug(layout, ground_shots(x, y, level)).high
    assert [s.off_m for s in found.worst] == pytest.approx([0.07, 0.05, 0.05])


def test_a_tip_smaller_than_a_hand_is_no_spot() -> None:
    """0.65 m2 of star: 11 % of its height over the tolerance are 80 cm2, 14 % are 127 cm2."""
    assert pytest.approx(0.6495, abs=1e-4) == STAR_M2
    small, large = (ALLOWED_M / (1 - share) for share in (0.11, 0.14))
    found = floor_with([small, large, -small, -large])
    assert (found.high.count, found.low.count) == (1, 1)
    assert found.high.worst[0].area_m2 == pytest.approx(0.0127, abs=1e-4)


def test_the_eight_worst_of_many_are_kept() -> None:
    offs = [0.03 + 0.005 * n for n in (4, 7, 1, 9, 0, 3, 8, 2, 6, 5)]
    found = floor_with(offs).high
    assert found.count == 10
    assert [s.off_m for s in found.worst] == pytest.approx(sorted(offs, reverse=True)[:8])


def test_ground_carried_on_beyond_the_shots_is_no_spot() -> None:
    layout = dry_house()
    area = layout.areas[0]
    x, y = np.array([6.0, 8.0, 8.0, 6.0]), np.array([1.0, 1.0, 3.0, 3.0])
    found = dug(layout, ground_shots(x, y, np.full(4, area.subgrade + 0.05)))
    (spot,) = found.high.worst
    assert (spot.area_m2, spot.volume_m3) == pytest.approx((4.0, 4.0 * 0.05))
    assert (found.high.count, found.low.count) == (1, 0)
    assert found.ground.beyond_m2 > 4.0


def test_a_spot_that_runs_out_of_the_floor_ends_at_its_edge() -> None:
    """Ground that crosses the plan at x = 4 m and rises by 2 cm in a metre."""
    layout = dry_house()
    level = layout.areas[0].subgrade
    found = dug(layout, random_shots(layout, lambda x, y: level + 0.02 * (x - 4.0) + 0 * y))
    region = found.bed.region
    left, low, right, high = region.bounds
    (high_spot,), (low_spot,) = found.high.worst, found.low.worst
    assert (high_spot.x, high_spot.off_m) == pytest.approx((right, 0.02 * (right - 4.0)))
    assert (low_spot.x, low_spot.off_m) == pytest.approx((left, 0.02 * (left - 4.0)))
    part = region.intersection(box(4.0 + ALLOWED_M / 0.02, low, right, high))
    assert high_spot.area_m2 == pytest.approx(part.area)
    mean = 0.02 * (part.centroid.x - 4.0)
    assert high_spot.volume_m3 == pytest.approx(part.area * mean)
