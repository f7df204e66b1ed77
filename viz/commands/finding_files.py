"""Writes the findings of a design as the file that is asked for."""

from pathlib import Path

from geometry.designfile import save
from geometry.errors import BedcourseError
from viz.commands.asking import design_text
from viz.commands.siting import upright_paper
from viz.findings.found import count_words
from viz.findings.page import findings_page
from viz.findings.paper import findings_pdf
from viz.findings.write import findings_document
from viz.job import job


def write_findings(design: str, out: Path, paper: str | None) -> str:
    """Write the file its name's ending asks for; return the counts in words.

    Raises BedcourseError, FileError.
    """
    ending = out.suffix.lower()
    if ending not in (".pdf", ".html"):
        raise BedcourseError(f"{out} should end in .pdf or .html")
    work = job(design_text(design))
    document = findings_document(work)
    on = upright_paper(paper, work.system)
    save(out, findings_pdf(document, on) if ending == ".pdf" else findings_page(document).encode())
    return count_words(work.report.findings)
