"""Times of the drawings: a live section, the whole set; sections beside manifold3d's slicer.

Run it with `python -m tests.bench.bench_drawings`; add `--quick` for fewer repeats. Every figure
is a median over sections at different places of the same built house, so nothing but what a house
keeps of itself is remembered from one to the next.
"""

import argparse
import gc
import platform
from collections.abc import Callable, Iterator, Sequence
from importlib.metadata import version
from itertools import cycle
from os import cpu_count
from pathlib import Path
from statistics import median

import numpy as np
from manifold3d import Manifold

from geometry.sections.face import CutLine
from tests.bench.clock import now
from tests.bench.row import MS, Row
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

FAR = 30.0
EXAMPLE = Path(__file__).parents[2] / "assets" / "examples" / "l-basement.toml"


def timed(work: Callable[[], object], repeats: int) -> float:
    """Return the median time of a call in milliseconds, the first two not counted."""
    times = []
    for number in range(repeats + 2):
        gc.collect()
        start = now()
        work()
        if number > 1:
            times.append((now() - start) * MS)
    return median(times)


def lines(work: Job) -> Iterator[CutLine]:
    """Yield cuts across the lowest area at ever other places."""
    left, low, right, high = work.layout.areas[0].outline.bounds
    for share in cycle(np.linspace(0.2, 0.8, 31)):
        x = left + share * (right - left)
        yield CutLine((x, low - FAR), (x + 1e-4, high + FAR))


def section_rows(work: Job, repeats: int) -> list[Row]:
    cuts = lines(work)
    scale = next(s for s in SCALES["ft-in"] if s.ratio == 64)
    near = next(s for s in SCALES["ft-in"] if s.ratio == 16)
    pictures = [picture_of(work, Shot("s", "Section", next(cuts))) for _ in range(9)]
    details = [picture_of(work, detail_of(work, next(cuts))) for _ in range(9)]
    whole, close = cycle(pictures), cycle(details)
    polygons = timed(lambda: faces_of(work.foundation, next(cuts)), repeats)
    bodies = [body(s) for s in (*work.foundation.solids, work.foundation.excavation)]
    line = next(cuts)
    mine, theirs = sum(f.shape.area for f in faces_of(work.foundation, line)), sliced(bodies, line)
    assert abs(mine - theirs) < 1e-5 * mine, "the two slicers disagree"
    peer = timed(lambda: sliced(bodies, next(cuts)), repeats)
    return [
        Row("polygons of one section", polygons, aim=5),
        Row("polygons of one section, manifold3d", peer),
        Row("polygons: times faster than the slicer", peer / polygons, "x"),
        Row("one section drawn (labels, levels, dimensions)",
            timed(lambda: section_figure(next(whole), scale, 3.0), repeats), aim=30),
        Row("one detail drawn",
            timed(lambda: section_figure(next(close), near, 2.5), repeats), aim=30),
        Row("one section, from the cut to SVG on its sheet",
            timed(lambda: to_svg(
                one_sheet(work, Shot("s", "Section", next(cuts)), "ARCH C")[0].drawing
            ), repeats)),
    ]  # fmt: skip


def sliced(bodies: Sequence[Manifold], line: CutLine) -> float:
    """Return the area of all faces of a cut by manifold3d: bodies turned, then sliced level."""
    (x, y), run = line.start, np.subtract(line.end, line.start)
    c, s = run / np.hypot(*run)
    matrix = np.array([[c, s, 0, -c * x - s * y], [0, 0, 1, 0], [s, -c, 0, c * y - s * x]])
    return float(sum(body.transform(matrix).slice(0.0).area() for body in bodies))


def set_rows(work: Job, repeats: int) -> list[Row]:
    few = max(3, repeats // 3)
    rows = []
    for paper in PAPERS:
        sheets = permit_set(work, paper)
        rows.append(Row(f"whole set on {paper}, {len(sheets)} sheets, placed",
                        timed(lambda paper=paper: permit_set(work, paper), few)))  # fmt: skip
    sheets = permit_set(work, "ARCH C")
    pdf = timed(lambda: set_pdf(work, sheets), few)
    svg = timed(lambda: [to_svg(s.drawing) for s in sheets], few)
    whole = timed(lambda: set_pdf(work, permit_set(work, "ARCH C")), few)
    drawings = [to_svg(s.drawing) for s in sheets]
    return [
        *rows,
        Row("written as one PDF, ARCH C", pdf),
        Row("written as SVG, ARCH C", svg),
        Row("whole set from the built model to one PDF, ARCH C", whole, aim=3000),
        Row("the same as PNG at 150 dpi", timed(lambda: [to_png(d) for d in drawings], 3)),
        Row("alternatives of the edge, solids included",
            timed(lambda: alternatives(work, "ARCH C"), few)),
    ]  # fmt: skip


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="fewer repeats")
    repeats = 9 if parser.parse_args().quick else 31
    work = job(EXAMPLE.read_text(encoding="utf-8"))
    faces_of(work.foundation, next(lines(work)))
    libraries = ("numpy", "shapely", "reportlab", "manifold3d")
    print(f"{platform.platform()}, {cpu_count()} cores, Python {platform.python_version()}")
    print(", ".join(f"{name} {version(name)}" for name in libraries))
    print(f"medians of up to {repeats} runs; example {EXAMPLE.name}, invented")
    for rows in (section_rows(work, repeats), set_rows(work, repeats)):
        print()
        print(*rows, sep="\n")


if __name__ == "__main__":
    main()
