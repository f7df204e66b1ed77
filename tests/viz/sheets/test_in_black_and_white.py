"""A copy without colour still tells the materials apart: by hatch, by outline, by heavy line."""

from dataclasses import replace
from functools import cache
from io import BytesIO
from itertools import combinations, pairwise

import numpy as np
import pytest
from numpy.typing import NDArray
from PIL import Image
from scipy import ndimage
from shapely import MultiPolygon, box

from geometry.label import Label
from geometry.materials.catalogue import find
from tests.viz.figures.section.drawn_sections import example, shots
from viz.carried import examples
from viz.drawing.marks import Fill, Hatch
from viz.drawing.page import Drawing
from viz.export.png import to_png
from viz.export.svg import to_svg
from viz.figures.tables.key import key_figure
from viz.job import Job
from viz.pictures import faces_of
from viz.style.materials import look_of

DPI = 300
DOTS_PER_MM = DPI / 25.4
# Each hatch of the key on a patch of this size, mm: so large that where its edges cut the strokes
# does not count, for hatches are laid from the sheet's corner.
WIDE, TALL, GAP = 60.0, 40.0, 5.0
# Rim of a patch that is not looked at, mm.
RIM = 0.6
# Two hatches are told apart where one has so many times what the other has, of one thing at least.
CLEAR = 1.7
# Sheets and fabric are heavy lines, not hatches.
HEAVY = ("solid", "dashes")

on_examples = pytest.mark.parametrize("name", examples())
# The third example has the materials of the first.
on_keys = pytest.mark.parametrize("name", ["l-basement", "metric-house"])


def stuff(label: Label) -> tuple[str, str]:
    """What a part is made of, of whatever strength or size; moved soils are stuffs of their own."""
    row = find(label.material)
    kind = row.kind if row else label.material
    return kind, label.role if kind == "soil" else ""


@on_examples
def test_unlike_materials_that_touch_have_unlike_hatches(name: str) -> None:
    work = example(name)
    met = set()
    for shot in shots(work):
        faces = [f for f in faces_of(work.foundation, shot.line) if f.label.role != "excavation"]
        for one, two in combinations(faces, 2):
            if stuff(one.label) == stuff(two.label) or one.shape.distance(two.shape) > 1e-3:
                continue
            looks = look_of(one.label), look_of(two.label)
            met.add(frozenset((stuff(one.label), stuff(two.label))))
            if not any(look.hatch in HEAVY for look in looks):
                assert looks[0].hatch != looks[1].hatch, (one.label, two.label)
    assert len(met) > 8


@on_examples
def test_undisturbed_ground_has_a_hatch_of_its_own(name: str) -> None:
    work = example(name)
    ground = look_of(work.foundation.excavation.label).hatch
    assert ground not in {look_of(s.label).hatch for s in work.foundation.solids}


def patches(name: str) -> list[list[Fill | Hatch]]:
    """Each hatch of a house's key with the tint under it, made as large as a patch."""
    work: Job = example(name)
    marks = key_figure(work.layout, work.foundation, 3.0, 160.0).marks
    fills = {m.shape.bounds: m for m in marks if isinstance(m, Fill)}
    hatches = {m.name: m for m in marks if isinstance(m, Hatch)}
    found = []
    for number, hatch in enumerate(hatches.values()):
        low = GAP + number * (TALL + GAP)
        shape = MultiPolygon([box(GAP, low, GAP + WIDE, low + TALL)])
        under = fills.get(hatch.shape.bounds)
        found.append([replace(m, shape=shape) for m in (under, hatch) if m is not None])
    return found


@cache
def swatches(name: str) -> dict[str, NDArray[np.uint8]]:
    """The patches in 8 bits of grey, by the hatch's name."""
    made = patches(name)
    size = (WIDE + 2 * GAP, len(made) * (TALL + GAP) + GAP)
    sheet = Drawing(*size, "key", 1, tuple(m for patch in made for m in patch))
    grey = np.asarray(Image.open(BytesIO(to_png(to_svg(sheet), DPI))).convert("L"))
    found = {}
    for number, patch in enumerate(made):
        high = size[1] - (number + 1) * (TALL + GAP)
        rows = slice(int((high + RIM) * DOTS_PER_MM), int((high + TALL - RIM) * DOTS_PER_MM))
        columns = slice(int((GAP + RIM) * DOTS_PER_MM), int((GAP + WIDE - RIM) * DOTS_PER_MM))
        found[str(patch[-1].name)] = grey[rows, columns]
    return found


def features(ink: NDArray[np.bool_]) -> NDArray[np.float64]:
    """Share of ink, strokes for a square centimetre, their usual and their great length, mm.

    A little is added to each, so that next to nothing is not many times nothing.
    """
    marked, count = ndimage.label(ink, np.ones((3, 3)))
    found = ndimage.find_objects(marked)
    lengths = [max(s.stop - s.start for s in spot) / DOTS_PER_MM for spot in found] or [0.0]
    area = ink.size / DOTS_PER_MM**2 / 100
    usual, great = np.percentile(lengths, (50, 90))
    return np.array((ink.mean() + 0.004, count / area + 4, usual + 0.1, great + 0.1))


def alike(inks: dict[str, NDArray[np.bool_]]) -> list[tuple[str, str]]:
    seen = {name: features(ink) for name, ink in inks.items()}
    return [
        (one, two)
        for one, two in combinations(seen, 2)
        if np.abs(np.log(seen[one] / seen[two])).max() < np.log(CLEAR)
    ]


@on_keys
@pytest.mark.parametrize("threshold", [128, 160, 190])
def test_hatches_of_the_key_are_told_apart_in_one_bit(name: str, threshold: int) -> None:
    inks = {hatch: grey < threshold for hatch, grey in swatches(name).items()}
    assert len(inks) >= 8
    assert not alike(inks)


@on_keys
def test_hatches_of_the_key_are_told_apart_in_grey(name: str) -> None:
    """In grey a tint lies under the strokes: what is darker than it by a tenth is ink."""
    inks = {h: grey < np.median(grey) - 25.5 for h, grey in swatches(name).items()}
    assert not alike(inks)


@on_keys
def test_tints_stay_light_so_that_words_and_strokes_are_read_on_them(name: str) -> None:
    assert min(np.median(grey) for grey in swatches(name).values()) > 200


def test_the_same_hatch_twice_is_alike() -> None:
    """The two halves of one swatch are not told apart, so the measure is not a matter of chance."""
    for hatch, grey in swatches("l-basement").items():
        middle = grey.shape[1] // 2
        halves = {"left": grey[:, :middle] < 160, "right": grey[:, middle:] < 160}
        if hatch in ("stone", "sand", "concrete", "topsoil"):
            assert alike(halves), hatch


@on_examples
def test_every_hatch_of_the_sections_is_in_the_key(name: str) -> None:
    work = example(name)
    drawn = {look_of(s.label).hatch for s in (*work.foundation.solids, work.foundation.excavation)}
    assert drawn - set(HEAVY) <= set(swatches(name))


def test_heavy_lines_differ_from_every_outline() -> None:
    """The retarder's is heavier than any edge, the fabric's is dashed."""
    labels = [s.label for s in example("l-basement").foundation.solids]
    looks = {look_of(label) for label in labels}
    outlines = max(look.line_mm for look in looks)
    lines = sorted(((x.thin_mm, x.dash) for x in looks if x.hatch in HEAVY), reverse=True)
    assert all(weight > outlines for weight, _ in lines)
    assert all(one != two for one, two in pairwise(lines))
