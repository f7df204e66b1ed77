"""The permit sets that tests read: of two examples on every paper, as a file and as sheets."""

from dataclasses import dataclass
from functools import cache
from typing import NoReturn

import pypdfium2 as pdfium
import pytest

from geometry.errors import BedcourseError
from tests.rolls import night
from tests.viz.sheets.printed import Printed, from_pdf
from viz.carried import examples
from viz.drawing.page import PAPERS, Paper, PaperName
from viz.drawing.scale import Scale
from viz.issue import set_pdf
from viz.job import Job, job
from viz.sheets.permit import permit_set
from viz.sheets.sheet import Sheet

DEMO, METRIC = "l-basement", "metric-house"
# Papers that may be too small for a house; all others must hold it.
SMALLEST = ("letter", "A4")
# The papers people work on by their units, tested always; all others are slow.
USUAL: tuple[tuple[str, PaperName], ...] = ((DEMO, "ARCH C"), (METRIC, "A1"))
# Each house on the papers of its own units; at night on all.
OTHERS = [
    (name, paper)
    for name in (DEMO, METRIC)
    for paper in PAPERS
    if (name, paper) not in USUAL and (night() or (name == METRIC) == (paper in ("A4", "A3", "A1")))
]
EVERY = [*USUAL, *(pytest.param(*case, marks=pytest.mark.slow) for case in OTHERS)]


@dataclass(frozen=True, eq=False)
class Issued:
    """A set as it is written, and as PDFium reads it."""

    work: Job
    paper: Paper
    sheets: tuple[Sheet, ...]
    pdf: bytes
    document: pdfium.PdfDocument
    pages: tuple[Printed, ...]

    @property
    def by_number(self) -> dict[str, Printed]:
        return {s.number: page for s, page in zip(self.sheets, self.pages, strict=True)}

    def of_kind(self, first: int) -> list[Printed]:
        """The pages of one kind: 1 plans, 3 sections, 4 drain, 5 details."""
        return [page for n, page in self.by_number.items() if n.startswith(f"S-{first}")]


@cache
def work(name: str) -> Job:
    return job(examples()[name].read_text(encoding="utf-8"))


@cache
def issued(name: str, paper: PaperName, scale: Scale | None = None) -> Issued:
    """The set on a paper. Where the paper is too small the set must say so, and is not read."""
    try:
        sheets = permit_set(work(name), paper, scale)
    except BedcourseError as error:
        _refused(paper, str(error))
    pdf = set_pdf(work(name), sheets)
    document = pdfium.PdfDocument(pdf)
    pages = tuple(from_pdf(page) for page in document)
    return Issued(work(name), PAPERS[paper], sheets, pdf, document, pages)


def _refused(paper: PaperName, sentence: str) -> NoReturn:
    assert paper in SMALLEST, sentence
    assert sentence.endswith("choose a larger paper")
    pytest.skip(f"{paper} is too small: {sentence}")
