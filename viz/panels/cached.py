"""What is computed for a design text, kept for the next run of the page."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import streamlit as st

from geometry.checks.asked import Item
from geometry.checks.completeness import completeness
from geometry.errors import BedcourseError
from geometry.sections.face import CutLine
from viz.drawing.page import PaperName
from viz.drawing.scale import Scale
from viz.export.bundle import to_zip
from viz.export.glb import to_glb
from viz.export.ifc.house import to_ifc
from viz.export.png import to_png
from viz.export.svg import to_svg
from viz.figures.plan.chooser import chooser_plan
from viz.issue import SHEET_DPI, Product, data_book, set_pdf, sheet_files
from viz.job import Job, job
from viz.panels.shared import ROOM_OF_SHEETS, shared
from viz.panels.spoken import Told
from viz.pictures import Shot, detail_of
from viz.sheets.alternatives import alternatives
from viz.sheets.permit import one_sheet, permit_set
from viz.sheets.sheet import Sheet
from viz.viewer.model import model
from viz.viewer.page import viewer_page

SET_PDF = "permit-set.pdf"


@dataclass(frozen=True)
class Sought:
    """One section as it is asked for. title: of the whole; a detail has its own."""

    line: CutLine
    title: str
    detail: bool
    paper: PaperName
    scale: Scale | None = None


@dataclass(frozen=True)
class SetSought:
    """The permit set as it is asked for. scale: of the whole sections."""

    paper: PaperName
    scale: Scale | None = None


@dataclass(frozen=True)
class PlanToChoose:
    """The plain plan as SVG, its size in mm, and where the job lies on it: see ChooserPlan."""

    svg: str
    size: tuple[float, float]
    per_metre: float
    origin: tuple[float, float]


# As many as people at work at once: a job that is dropped is laid out and built anew.
@st.cache_resource(max_entries=32, show_spinner=False)
def sound_job(text: str) -> Job:
    """Return the job of a text. Raises DesignError."""
    return job(text)


@st.cache_resource(max_entries=24, show_spinner=False)
def viewer_model(text: str) -> dict[str, Any]:
    """Return what the 3D view holds of the design, to read only."""
    return model(sound_job(text))


@shared(4, Told("Building the model ..."))
def page_file(text: str) -> bytes:
    """Return the page to turn, for a browser without a network."""
    return viewer_page(sound_job(text)).encode()


@shared(4, Told("Building the model ..."))
def ifc_file(text: str) -> bytes:
    """Return the model as IFC. Raises IfcLibraryError."""
    work = sound_job(text)
    return to_ifc(work.layout, work.foundation)


@shared(4)
def report_file(text: str) -> bytes:
    """Return the report as JSON."""
    return sound_job(text).report.to_json().encode()


@shared(4)
def data_file(text: str) -> bytes:
    """Return the tables for other programs as one XLSX file."""
    return data_book(sound_job(text))


@shared(4)
def model_file(text: str) -> bytes:
    """Return the model as GLB."""
    return to_glb(sound_job(text).foundation.solids)


@shared(32)
def chooser(text: str) -> PlanToChoose:
    """Return the plan on which a cut is chosen."""
    work = sound_job(text)
    plan = chooser_plan(work.layout)
    size = (plan.drawing.width, plan.drawing.height)
    return PlanToChoose(to_svg(plan.drawing), size, plan.per_metre, plan.origin)


@shared(32)
def asked_items(text: str) -> tuple[Item, ...]:
    """Return what departments ask, and where each item stands."""
    return completeness(sound_job(text).layout)


def section_sheets(text: str, sought: Sought) -> tuple[Sheet, ...]:
    """Return a section on its sheet. Raises BedcourseError where it shows nothing or is too big."""
    return _or_raise(_section_sheets(text, sought))


def set_sheets(text: str, sought: SetSought) -> tuple[Sheet, ...]:
    """Return the permit set. Raises BedcourseError where the paper cannot hold a figure."""
    return _or_raise(_set_sheets(text, sought))


def _or_raise(found: tuple[Sheet, ...] | str) -> tuple[Sheet, ...]:
    """Raise a sentence again: it is kept like the sheets, for it may take as long to find."""
    if isinstance(found, str):
        raise BedcourseError(found)
    return found


@shared(24, Told("Drawing the section ..."), room=ROOM_OF_SHEETS)
def _section_sheets(text: str, sought: Sought) -> tuple[Sheet, ...] | str:
    work, line = sound_job(text), sought.line
    try:
        shot = detail_of(work, line) if sought.detail else Shot("section", sought.title, line)
        return one_sheet(work, shot, sought.paper, sought.scale)
    except BedcourseError as error:
        return str(error)


@shared(6, Told("Drawing the sheets; this takes some seconds ..."), room=ROOM_OF_SHEETS)
def _set_sheets(text: str, sought: SetSought) -> tuple[Sheet, ...] | str:
    try:
        return permit_set(sound_job(text), sought.paper, sought.scale)
    except BedcourseError as error:
        return str(error)


@shared(32, Told("Drawing the section ..."))
def section_svg(text: str, sought: Sought) -> str:
    """Return a section's sheet as SVG. Raises BedcourseError like `section_sheets`."""
    return to_svg(section_sheets(text, sought)[0].drawing)


@shared(48)
def set_svg(text: str, sought: SetSought, place: int) -> str:
    """Return one sheet of the set as SVG. place: from 0. Raises like `set_sheets`."""
    return to_svg(set_sheets(text, sought)[place].drawing)


@shared(6)
def png(svg: str) -> bytes:
    """Return a sheet as PNG, at the dots per inch of the set."""
    return to_png(svg, SHEET_DPI)


@shared(4)
def section_pdf(text: str, sought: Sought) -> bytes:
    """Return a section's sheet as PDF. Raises BedcourseError like `section_sheets`."""
    return set_pdf(sound_job(text), section_sheets(text, sought))


@shared(4)
def whole_pdf(text: str, sought: SetSought) -> bytes:
    """Return the set as PDF. Raises BedcourseError like `set_sheets`."""
    return set_pdf(sound_job(text), set_sheets(text, sought))


def whole_zip(text: str, sought: SetSought, tell: Callable[[str], None]) -> bytes:
    """Return the set as one ZIP file: PDF, and every sheet as SVG and PNG.

    tell: hears what is made next.
    """
    sheets = set_sheets(text, sought)
    tell("the PDF")
    made = [Product(SET_PDF, whole_pdf(text, sought))]
    for place, sheet in enumerate(sheets, start=1):
        tell(f"sheet {place} of {len(sheets)}: {sheet.number}, {sheet.title}")
        made += sheet_files(sheet)
    return to_zip({product.name: product.data for product in made})


@shared(4, Told("Drawing the ways to make the edge ..."), room=ROOM_OF_SHEETS)
def edge_sheets(text: str, paper: PaperName) -> tuple[Sheet, ...]:
    """Return the sheets of the floor's edge alternatives. Raises BedcourseError."""
    return alternatives(sound_job(text), paper)


@shared(16)
def edge_svg(text: str, paper: PaperName, place: int) -> str:
    """Return one sheet of the alternatives as SVG. place: from 0."""
    return to_svg(edge_sheets(text, paper)[place].drawing)


@shared(4)
def edge_pdf(text: str, paper: PaperName) -> bytes:
    """Return the alternatives as PDF."""
    return set_pdf(sound_job(text), edge_sheets(text, paper))
