"""Hatches: inside their area to the last stroke, the same on every run, none like another."""

from itertools import pairwise

import pytest
from shapely import LineString, MultiLineString, Point, Polygon, box

from viz.drawing.hatches import PATTERNS, hatch_strokes
from viz.drawing.marks import Hatch
from viz.style.materials import HatchName, kinds, look

TRIANGLE = Polygon([(3, 2), (61, 9), (20, 47)])
HOLED = box(0, 0, 60, 30) - Point(25, 14).buffer(8)
DRAWN = [name for name, patterns in PATTERNS.items() if patterns]


def lines(hatch: Hatch) -> MultiLineString:
    return MultiLineString([line for mark in hatch_strokes(hatch) for line in mark.lines])


@pytest.mark.parametrize("name", DRAWN)
@pytest.mark.parametrize("shape", [TRIANGLE, HOLED])
def test_every_stroke_lies_inside_the_area(name: HatchName, shape: Polygon) -> None:
    drawn = lines(Hatch(shape, name, "#000000"))
    assert len(drawn.geoms) > 20
    assert drawn.difference(shape.buffer(1e-6)).length == 0


@pytest.mark.parametrize("name", DRAWN)
def test_every_corner_of_the_area_is_reached(name: HatchName) -> None:
    drawn = lines(Hatch(box(100, 50, 160, 90), name, "#000000"))
    for corner in (box(100, 50, 109, 59), box(151, 50, 160, 59), box(100, 81, 109, 90)):
        assert drawn.intersects(corner)


@pytest.mark.parametrize("name", [name for name in DRAWN if name != "concrete"])
def test_a_winding_area_shows_what_its_whole_box_would(name: HatchName) -> None:
    rim = box(3, 5, 203, 125) - box(9, 11, 197, 140)
    whole = lines(Hatch(box(*rim.bounds), name, "#000000"))
    shown = lines(Hatch(rim, name, "#000000"))
    assert shown.length == pytest.approx(whole.intersection(rim).length, rel=1e-9)


@pytest.mark.parametrize("name", DRAWN)
def test_the_same_area_gives_the_same_strokes(name: HatchName) -> None:
    hatch = Hatch(TRIANGLE, name, "#000000")
    assert hatch_strokes(hatch) == hatch_strokes(hatch)


def test_hatch_does_not_shrink_with_the_drawing() -> None:
    small, large = box(0, 0, 30, 20), box(0, 0, 60, 40)
    few = len(lines(Hatch(small, "sand", "#000000")).geoms)
    many = len(lines(Hatch(large, "sand", "#000000")).geoms)
    assert many / few == pytest.approx(4, rel=0.1)


def test_diagonals_stand_at_45_degrees_and_at_their_spacing() -> None:
    drawn = lines(Hatch(box(0, 0, 20, 20), "diagonal", "#000000"))
    slopes = {round((b[1] - a[1]) / (b[0] - a[0]), 6)
              for a, b in (line.coords for line in drawn.geoms)}  # fmt: skip
    assert slopes == {1.0}
    across = LineString([(0, 20), (20, 0)])
    spots = sorted(line.intersection(across).x for line in drawn.geoms if line.intersects(across))
    gaps = [(b - a) * 2**0.5 for a, b in pairwise(spots)]
    assert gaps == pytest.approx([0.9] * len(gaps))


def test_every_kind_of_material_has_a_hatch_of_its_own() -> None:
    hatches = [shown.hatch for _, shown in kinds()]
    assert len(set(hatches)) == len(hatches)


def test_moved_soil_is_told_from_undisturbed_ground() -> None:
    soils = {look(role, "soil").hatch for role in ("excavation", "backfill", "grading")}
    assert len(soils) == 3


def test_neighbours_in_a_floor_have_different_hatches() -> None:
    layers = [look(role) for role in ("base", "blinding", "retarder", "insulation", "slab")]
    for below, above in pairwise(layers):
        assert below.hatch != above.hatch
