"""The shipped examples, cut both ways through their middle and drawn on one sheet each."""

from functools import cache
from itertools import combinations
from pathlib import Path

import numpy as np
import pytest

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.report import report
from geometry.sections.cut import cut
from geometry.sections.face import CutFace, CutLine
from geometry.solids.foundation import Foundation, build
from viz.drawing.lettering import text_box
from viz.drawing.marks import Fill, Text
from viz.drawing.page import Drawing
from viz.sheets.level_mark import LevelMark
from viz.sheets.section import section_drawing
from viz.style.materials import look

EXAMPLES = sorted((Path(__file__).parents[3] / "assets" / "examples").glob("*.toml"))
CONCRETE = look("footing").fill
POURED = {"wall", "footing", "slab", "pad", "column"}


@cache
def built(path: Path) -> tuple[Layout, Foundation]:
    layout = lay_out(read_design(path.read_text(encoding="utf-8")))
    return layout, build(layout)


def drawn(path: Path, axis: int) -> tuple[Drawing, tuple[CutFace, ...]]:
    layout, foundation = built(path)
    points = np.vstack([solid.vertices[:, :2] for solid in foundation.solids])
    low, high = points.min(axis=0) - 1.0, points.max(axis=0) + 1.0
    middle = (low + high) / 2 + 0.013
    start, end = middle.copy(), middle.copy()
    start[axis], end[axis] = low[axis], high[axis]
    line = CutLine((start[0], start[1]), (end[0], end[1]))
    faces = cut((*foundation.solids, foundation.excavation), line)
    levels = {r.level_m: LevelMark(r.interface, r.level_m, r.elevation_m)
              for r in report(layout).levels}  # fmt: skip
    labels = {f.label.part: f"{f.label.name}\n{f.label.material}" for f in faces}
    sheet = section_drawing(
        faces, list(levels.values()), labels, system=layout.design.project.units,
        project=layout.design.project.name, title="Section", paper="ARCH D",
    )  # fmt: skip
    return sheet, faces


@pytest.mark.parametrize("axis", [0, 1])
@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_section_is_true_and_legible(path: Path, axis: int) -> None:
    sheet, faces = drawn(path, axis)
    boxes = [text_box(mark) for mark in sheet.marks if isinstance(mark, Text)]
    assert len(boxes) > 30
    assert not any(one.overlaps(two) for one, two in combinations(boxes, 2))
    assert all(box.left > 0 and box.right < sheet.width for box in boxes)
    concrete = sum(
        polygon.area
        for mark in sheet.marks
        if isinstance(mark, Fill) and mark.layer == "cut" and mark.colour == CONCRETE
        for polygon in mark.shape.geoms  # type: ignore[union-attr]
    )
    poured = sum(
        polygon.area for face in faces if face.label.role in POURED for polygon in face.shape.geoms
    )
    assert concrete == pytest.approx(poured * (1000 / sheet.ratio) ** 2, rel=1e-6)
