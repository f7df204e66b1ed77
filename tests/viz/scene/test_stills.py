import io
from pathlib import Path

import numpy as np
import pytest
from basement_of_boxes import ACROSS, LABELS, basement
from PIL import Image

from geometry.designfile import read_design
from geometry.layout.lay import lay_out
from geometry.sections.face import CutLine
from geometry.solids.foundation import build
from viz.scene.palette import GHOST, PAPER, colour
from viz.scene.view import View, Window
from viz.scene.worker import Studio

pytestmark = pytest.mark.pictures
SOLIDS = basement()
COLOUR = {solid.label.part: colour(solid.label) for solid in SOLIDS}
SIZE = (600, 450)
AIR = 0.03 * 450


@pytest.fixture(scope="module")
def drawn():
    studio = Studio()

    def draw(view):
        return np.asarray(Image.open(io.BytesIO(studio.still(SOLIDS, view, SIZE))), dtype=int)

    yield draw
    studio.close()


def count(pixels, tone, slack=2):
    return int((np.abs(pixels - np.array(tone)).max(axis=2) <= slack).sum())


@pytest.mark.parametrize("kind", ["whole", "exploded", "cutaway"])
def test_parts_fill_the_picture_and_none_is_clipped(drawn, kind):
    pixels = drawn(View(kind, cut=ACROSS))
    rows, columns = np.nonzero(np.abs(pixels - np.array(PAPER)).max(axis=2) > 12)
    gaps = columns.min(), SIZE[0] - columns.max(), rows.min(), SIZE[1] - rows.max()
    assert min(gaps) >= AIR - 4
    assert max(gaps[:2]) <= AIR + 6 or max(gaps[2:]) <= AIR + 6


def test_the_square_view_shows_each_material_where_it_lies(drawn):
    window = Window(2.0, 5.0, -0.45, 1.775)  # as wide to high as the free part of the picture
    pixels = drawn(View("face the cut", cut=ACROSS, window=window))
    per_metre = (SIZE[0] - 2 * AIR) / 3.0

    def around(along, level):
        x = round(AIR + (along - window.left) * per_metre)
        y = round(SIZE[1] / 2 - (level - (window.bottom + window.top) / 2) * per_metre)
        return pixels[y - 2 : y + 3, x - 2 : x + 3]

    # the outside face of the wall is 3 m from the cut's start; levels against top of footing
    spots = {
        "wall": (3.1, 1.0), "footing": (3.1, -0.12), "slab": (4.0, 0.1), "foam": (4.0, 0.025),
        "sand": (4.0, -0.025), "stone": (4.0, -0.1), "bed": (2.8, 0.05), "soil": (2.5, 1.0),
        "hole": (3.1, -0.4),
    }  # fmt: skip
    for part, spot in spots.items():  # somewhere between the strokes of its hatch
        apart = np.abs(around(*spot) - COLOUR[part]).max(axis=2)
        assert apart.min() <= 3, part


def test_hatches_and_outlines_darken_the_cut_but_leave_most_of_it(drawn):
    window = Window(2.2, 2.9, 0.3, 1.2)  # nothing but backfill
    pixels = drawn(View("face the cut", cut=ACROSS, window=window))
    middle = pixels[60:-60, 250:350]
    plain = (np.abs(middle - COLOUR["soil"]).max(axis=2) <= 3).mean()
    assert 0.75 < plain < 0.995


@pytest.mark.slow
def test_cut_faces_are_filled_and_soil_shows_only_where_it_is_cut(drawn):
    cut = drawn(View("cutaway", cut=ACROSS))
    assert count(cut, COLOUR["soil"]) > 500
    assert count(cut, COLOUR["wall"]) > 100
    assert count(drawn(View("whole")), COLOUR["soil"], slack=6) == 0


@pytest.mark.slow
@pytest.mark.parametrize(
    "name",
    [
        "metric-house",
        *(pytest.param(n, marks=pytest.mark.slow) for n in ("l-basement", "foam-stopped")),
    ],
)
def test_every_shipped_example_fills_its_pictures(name):
    example = Path(__file__).parents[3] / "assets" / "examples" / f"{name}.toml"
    built = build(lay_out(read_design(example.read_text(encoding="utf-8"))))
    solids = [*built.solids, built.excavation]
    wall = np.vstack([s.vertices for s in solids if s.label.role == "wall"])
    x, y = wall[:, :2].min(axis=0)
    across = CutLine((x + 3.0, y - 4.0), (x + 3.0, y + 30.0))
    studio = Studio()
    try:
        for kind in ("exploded", "cutaway"):
            still = studio.still(solids, View(kind, cut=across), SIZE)
            pixels = np.asarray(Image.open(io.BytesIO(still)), dtype=int)
            rows, columns = np.nonzero(np.abs(pixels - np.array(PAPER)).max(axis=2) > 12)
            gaps = columns.min(), SIZE[0] - columns.max(), rows.min(), SIZE[1] - rows.max()
            assert min(gaps) >= AIR - 4
            assert max(gaps[:2]) <= AIR + 6 or max(gaps[2:]) <= AIR + 6
    finally:
        studio.close()


@pytest.mark.slow
def test_what_comes_later_is_drawn_as_a_faint_outline(drawn):
    later = drawn(View("whole", stage=1))
    assert count(later, GHOST, slack=8) > 100
    assert count(drawn(View("whole")), GHOST, slack=2) < count(later, GHOST, slack=2)


@pytest.mark.slow
def test_labels_stay_in_their_columns(drawn):
    with_words = drawn(View("exploded", labels=LABELS))
    without = drawn(View("exploded"))

    def dark(p):
        return p.max(axis=2) < 60

    column = np.s_[:, SIZE[0] - 90 :]
    assert dark(with_words)[column].sum() > 300
    assert dark(without)[column].sum() < dark(with_words)[column].sum() / 2
