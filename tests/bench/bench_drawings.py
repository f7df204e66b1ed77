"""Times of the drawings: a live section, the whole set; sections beside manifold3d's slicer.

Cuts lie at ever other places of the same built house, so nothing but what a house keeps of itself
is remembered from one to the next.
"""

from collections.abc import Sequence
from itertools import cycle

import numpy as np
from manifold3d import Manifold

from geometry.sections.face import CutLine
from tests.bench.bench_engine import lines
from tests.bench.row import Beside, Row
from tests.bench.suites import EXAMPLE
from tests.bench.timing import agreed, beside, timed, told
from tests.whole.witness import body
from viz.drawing.page import PAPERS
from viz.drawing.scale import SCALES
from viz.export.png import to_png
from viz.export.svg import to_svg
from viz.figures.section.section import section_figure
from viz.issue import set_pdf
from viz.job import Job, job
from viz.pictures import Shot, detail_of, faces_of, picture_of
from viz.sheets.alternatives import alternatives
from viz.sheets.permit import one_sheet, permit_set


def rows(quick: bool) -> list[Row | Beside]:
    """Return all lines."""
    work = job(EXAMPLE.read_text(encoding="utf-8"))
    return [
        *slicing_rows(work, 9 if quick else 31),
        *section_rows(work, 9 if quick else 31),
        *set_rows(work, 3 if quick else 5, ("ARCH C", "letter") if quick else PAPERS),
    ]


def slicing_rows(work: Job, repeats: int) -> list[Row | Beside]:
    """Return all bodies of the house cut by a plane, also by manifold3d."""
    bodies = [body(s) for s in (*work.foundation.solids, work.foundation.excavation)]
    cuts, others = cycle(lines(work.layout)), cycle(lines(work.layout))
    one = next(cuts)

    def area(line: CutLine) -> float:
        return sum(face.shape.area for face in faces_of(work.foundation, line))

    found = agreed(area(one), sliced(bodies, one))
    beside_it = beside(
        f"all {len(bodies)} bodies cut by a plane, closed faces", lambda: area(next(cuts)),
        {"manifold3d": (lambda: sliced(bodies, next(others)), f"areas {found}")}, repeats,
    )  # fmt: skip
    return [told("polygons of one section", beside_it[0].own, 5), *beside_it]


def sliced(bodies: Sequence[Manifold], line: CutLine) -> float:
    """Return the area of all faces of a cut by manifold3d: bodies turned, then sliced level."""
    (x, y), run = line.start, np.subtract(line.end, line.start)
    c, s = run / np.hypot(*run)
    matrix = np.array([[c, s, 0, -c * x - s * y], [0, 0, 1, 0], [s, -c, 0, c * y - s * x]])
    return float(sum(body.transform(matrix).slice(0.0).area() for body in bodies))


def section_rows(work: Job, repeats: int) -> list[Row]:
    """Return one section and one detail drawn."""
    cuts = cycle(lines(work.layout))
    scales = {scale.ratio: scale for scale in SCALES["ft-in"]}
    whole = cycle([picture_of(work, Shot("s", "Section", next(cuts))) for _ in range(9)])
    close = cycle([picture_of(work, detail_of(work, next(cuts))) for _ in range(9)])

    def sheet() -> str:
        shot = Shot("s", "Section", next(cuts))
        return to_svg(one_sheet(work, shot, "ARCH C")[0].drawing)

    return [
        told("one section drawn (labels, levels, dimensions)",
             timed(lambda: section_figure(next(whole), scales[64], 3.0), repeats), 30),
        told("one detail drawn",
             timed(lambda: section_figure(next(close), scales[16], 2.5), repeats), 30),
        told("one section, from the cut to SVG on its sheet", timed(sheet, repeats)),
    ]  # fmt: skip


def set_rows(work: Job, repeats: int, papers: Sequence[str]) -> list[Row]:
    """Return the permit set on its papers and as its files."""
    found = []
    for paper in papers:
        what = f"whole set on {paper}, {len(permit_set(work, paper))} sheets, placed"
        found.append(told(what, timed(lambda paper=paper: permit_set(work, paper), repeats)))
    sheets = permit_set(work, "ARCH C")
    drawings = [to_svg(sheet.drawing) for sheet in sheets]
    return [
        *found,
        told("written as one PDF, ARCH C", timed(lambda: set_pdf(work, sheets), repeats)),
        told("written as SVG, ARCH C",
             timed(lambda: [to_svg(sheet.drawing) for sheet in sheets], repeats)),
        told("whole set from the built model to one PDF, ARCH C",
             timed(lambda: set_pdf(work, permit_set(work, "ARCH C")), repeats), 3000),
        told("one sheet of it as PNG at 150 dpi, the first",
             timed(lambda: to_png(drawings[0]), repeats)),
        told("alternatives of the edge, solids included",
             timed(lambda: alternatives(work, "ARCH C"), repeats)),
    ]  # fmt: skip
