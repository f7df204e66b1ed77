"""The map of the dug floor: nothing overlaps, bands fill the floor, tones rise in grey."""

from itertools import combinations, pairwise
from pathlib import Path

import numpy as np
import pytest
from shapely import box, intersects

from geometry.designfile import load, read_design
from geometry.layout.lay import Layout, lay_out
from geometry.survey.asdug import AreaDug, as_dug
from geometry.survey.bands import shores, thickness_bands
from geometry.survey.reading import read_shots
from geometry.survey.shots import ground_shots
from tests.geometry.survey.surveyed import dug, random_shots
from tests.houses import house
from viz.drawing.lettering import text_box
from viz.drawing.marks import Circle, Fill, Text
from viz.drawing.scale import SCALES
from viz.figures.survey.looks import LOOKS
from viz.figures.survey.map import survey_map

EXAMPLES = Path(__file__).parents[3] / "assets" / "examples"


def bundled() -> tuple[Layout, AreaDug]:
    layout = lay_out(read_design(load(EXAMPLES / "l-basement.toml")))
    shots = read_shots((EXAMPLES / "l-basement-shots.csv").read_bytes(), layout.design)
    return layout, as_dug(layout, shots).areas[0]


@pytest.mark.parametrize("ratio", [48, 96])
def test_no_words_overlap_nor_stand_on_concrete(ratio: int) -> None:
    layout, area = bundled()
    scale = next(s for s in SCALES["ft-in"] if s.ratio == ratio)
    marks = survey_map(layout, area, scale, 2.5).marks
    boxes = [text_box(m) for m in marks if isinstance(m, Text)]
    assert len(boxes) > 60
    assert not any(a.overlaps(b) for a, b in combinations(boxes, 2))
    concrete = [m.shape for m in marks if isinstance(m, Fill) and m.layer == "cut"]
    for words in boxes:
        assert not intersects(concrete, box(words.left, words.low, words.right, words.high)).any()


def test_bands_fill_the_floor_that_was_shot() -> None:
    _, area = bundled()
    bands = thickness_bands(area)
    covered = area.ground.covered_m2
    assert sum(b.region.area for b in bands) == pytest.approx(covered, rel=1e-5)
    assert sum(b.area_m2 for b in bands) == pytest.approx(area.ground.area_m2, rel=1e-9)
    for band in bands[:2]:
        assert band.region.area == pytest.approx(band.area_m2, rel=0.02)
    for pond, water in zip(area.ponds.deepest, shores(area), strict=True):
        assert water.area == pytest.approx(pond.area_m2, rel=1e-3)


def test_flat_ground_is_one_band() -> None:
    layout = house()
    shots = random_shots(layout, lambda x, y: 0 * (x + y) + layout.areas[0].subgrade - 0.01)
    (band,) = thickness_bands(dug(layout, shots))
    assert band.meaning == "rather low"
    assert band.region.area == pytest.approx(band.area_m2, rel=1e-6)


def test_tones_darken_with_every_band_in_grey_too() -> None:
    weights = np.array([0.2126, 0.7152, 0.0722])
    tones = [
        float(weights @ [int(look.fill[n : n + 2], 16) for n in (1, 3, 5)])
        for look in LOOKS.values()
    ]
    assert all(a - b > 9 for a, b in pairwise(tones))


def test_many_shots_are_thinned_on_paper() -> None:
    layout = house()
    dice = np.random.default_rng(5)
    x, y = dice.uniform(0, 9.1, 4000), dice.uniform(0, 6.1, 4000)
    shots = ground_shots(x, y, layout.areas[0].subgrade + 0.03 * np.sin(x))
    scale = next(s for s in SCALES["ft-in"] if s.ratio == 96)
    marks = survey_map(layout, dug(layout, shots), scale, 2.5).marks
    dots = [m for m in marks if isinstance(m, Circle) and m.radius < 0.5]
    assert 10 < len(dots) < 200
