"""The engine alone: from a design's text to levels, volumes, findings, report and solids.

What it remembers of earlier calls is forgotten before each, so every run is a first one.
"""

from collections.abc import Iterator
from itertools import cycle, islice

import numpy as np

from geometry.designfile import read_design
from geometry.layout.lay import Layout, lay_out
from geometry.report import report
from geometry.sections.cut import cut
from geometry.sections.face import CutLine
from geometry.solids.foundation import build
from tests.bench.forgetting import forget
from tests.bench.row import Row
from tests.bench.suites import EXAMPLE
from tests.bench.timing import timed, told

FAR_M = 30.0


def figures(text: str, subject: str) -> None:
    """Read a design and ask its report for one subject."""
    getattr(report(lay_out(read_design(text))), subject)


def everything(text: str) -> None:
    """Read a design, build its solids, make its whole report."""
    layout = lay_out(read_design(text))
    report(layout, build(layout)).to_json()


def lines(layout: Layout, count: int = 31) -> Iterator[CutLine]:
    """Yield so many cuts across the first area, at other places each."""
    left, low, right, high = layout.areas[0].outline.bounds
    shares = cycle(np.linspace(0.2, 0.8, 31).tolist())
    for share in islice(shares, count):
        x = left + share * (right - left)
        yield CutLine((x, low - FAR_M), (x + 1e-4, high + FAR_M))


def rows(quick: bool) -> list[Row]:
    """Return all lines."""
    repeats, text = 5 if quick else 15, EXAMPLE.read_text(encoding="utf-8")
    subjects = {"levels": 10.0, "volumes": None, "findings": None, "order": None}
    found = [
        told(f"design text to {name}", timed(lambda n=name: figures(text, n), repeats, forget), aim)
        for name, aim in subjects.items()
    ]
    layout = lay_out(read_design(text))
    house = build(layout)
    line, holes = next(lines(layout)), layout.drain.hole_count if layout.drain else 0
    fresh: list[Layout] = []

    def laid_out() -> None:
        forget()
        fresh[:] = [lay_out(read_design(text))]

    return [
        *found,
        told("design text to the whole report as JSON, no solids",
             timed(lambda: report(lay_out(read_design(text))).to_json(), repeats, forget)),
        told(f"all {len(house.solids) + 1} solids, {holes:,} holes, from the layout",
             timed(lambda: build(fresh[0]), repeats, laid_out), 60),
        told("first section of all solids just built",
             timed(lambda: cut(house.solids, line), repeats, forget)),
        told("design text to solids and the whole report as JSON",
             timed(lambda: everything(text), repeats, forget)),
    ]  # fmt: skip
