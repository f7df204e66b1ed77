"""The commands `pole`, `laser` and `inspection`, and the order as a PDF: papers for the site."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from geometry.designfile import edited, save
from geometry.errors import BedcourseError
from geometry.units import System
from viz.commands.asking import design_text
from viz.issue import set_pdf
from viz.job import Job, job
from viz.language.reader import Language, language
from viz.sheets.inspection import inspection_sheets
from viz.sheets.laser import laser_sheets
from viz.sheets.orders import order_sheets
from viz.sheets.pole import pole_sheets
from viz.sheets.sheet import Sheet
from viz.sheets.upright import SmallName, carried_paper

Sheets = Callable[[Job, SmallName, Language], tuple[Sheet, ...]]


@dataclass(frozen=True)
class Asked:
    """A paper as it was typed: the file to write, the paper's name, the language's code."""

    out: Path
    paper: str | None
    language: str


def write_pole(design: str, asked: Asked) -> int:
    """Write the story poles at full size; return the number of pages. Raises BedcourseError."""
    return _written(design_text(design), asked, lambda w, p, said: pole_sheets(w.layout, p, said))


def write_laser(design: str, asked: Asked, instrument: str | None) -> int:
    """Write the laser sheet; return the number of pages. Raises BedcourseError.

    instrument: the laser's elevation, instead of the design's.
    """
    text = design_text(design)
    if instrument is not None:
        text = edited(text, ("datum", "instrument"), instrument)
    return _written(text, asked, lambda w, p, said: laser_sheets(w.layout, p, said))


def write_inspection(design: str, asked: Asked) -> int:
    """Write the inspection sheet; return the number of pages. Raises BedcourseError."""
    return _written(
        design_text(design),
        asked,
        lambda w, p, said: inspection_sheets(w.layout, w.report, p, said),
    )


def write_order(design: str, asked: Asked) -> int:
    """Write the order sheet with the boards as laid; return the number of pages."""
    return _written(design_text(design), asked, lambda w, p, _: order_sheets(w, p))


def _written(text: str, asked: Asked, sheets: Sheets) -> int:
    if asked.out.suffix.lower() != ".pdf":
        raise BedcourseError(f"{asked.out} should end in .pdf; these pages are written as a PDF")
    said = language(asked.language)
    work = job(text)
    made = sheets(work, upright_paper(asked.paper, work.system), said)
    save(asked.out, set_pdf(work, made, said.code))
    return len(made)


def upright_paper(text: str | None, system: System) -> SmallName:
    """Return the paper of what is carried to the site, by its name. Raises BedcourseError."""
    names: dict[str, SmallName] = {"letter": "letter", "a4": "A4"}
    if text is None:
        return carried_paper(system)
    if text.strip().casefold() not in names:
        raise BedcourseError(f"{text!r} is no paper for the site; choose letter or A4")
    return names[text.strip().casefold()]
