"""Letter and A4 paper stood upright, for what is carried to the hole and filled in by hand."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Literal

from geometry.units import System
from viz.drawing.marks import Mark
from viz.drawing.page import PAPERS, Box, Drawing, Paper

SmallName = Literal["letter", "A4"]
# Common printers leave up to 6.4 mm of the paper's edge white (from memory).
MARGIN = 10.0


def upright(name: SmallName) -> Paper:
    """Return the paper on its short side."""
    paper = PAPERS[name]
    return replace(paper, width=paper.height, height=paper.width, border=MARGIN)


def carried_paper(system: System) -> SmallName:
    """Return the paper people have at hand, by the units they work in."""
    return "A4" if system == "metric" else "letter"


def inside(paper: Paper) -> Box:
    """Return the part of a paper that every printer reaches."""
    edge = max(paper.border, MARGIN)
    return Box(edge, edge, paper.width - edge, paper.height - edge)


def drawing(paper: Paper, title: str, marks: Iterable[Mark], ratio: float = 1.0) -> Drawing:
    """Return marks as one sheet of this paper."""
    return Drawing(paper.width, paper.height, title, ratio, tuple(marks))
