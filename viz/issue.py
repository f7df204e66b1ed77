"""Issue the set: every product of one design, as files."""

import json
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from geometry.designfile import save
from geometry.errors import BedcourseError
from geometry.project import Design
from geometry.report import Report
from geometry.units import System
from viz.drawing.page import PaperName
from viz.drawing.scale import Scale
from viz.export.csvfile import to_csv
from viz.export.png import to_png
from viz.export.svg import to_svg
from viz.export.xlsxfile import to_xlsx
from viz.job import Job, job
from viz.language.reader import NATIVE, codes, language
from viz.scene.errors import NoPictures
from viz.sheets.alternatives import alternatives
from viz.sheets.orders import order_sheets
from viz.sheets.permit import permit_set
from viz.sheets.sheet import Sheet
from viz.sheets.siting import site_papers
from viz.sheets.upright import carried_paper
from viz.stills import SIZE, STAGE, still_png, stills
from viz.tables import order_tables, report_tables
from viz.tables.table import Table

# Pictures of stages in the set, pixels: many, so that each is quickly drawn.
STAGE_SIZE = (1200, 900)
STAGES = "stages"
# Dots for an inch of paper in the pictures of sheets.
SHEET_DPI = 150
SHEETS = "sheets"
SITE = "site"
DECISIONS = "for-decision.pdf"
Tell = Callable[[str], None]


@dataclass(frozen=True)
class Product:
    """One file of the set."""

    name: str
    data: bytes


@dataclass(frozen=True)
class Issued:
    """What was written, what could not be drawn and why, and the report."""

    files: tuple[Path, ...]
    notes: tuple[str, ...]
    report: Report


def issue(text: str, folder: Path, tell: Tell = lambda _: None) -> Issued:
    """Write the whole set into a folder, each file whole or not at all.

    tell: hears the name of each product before it is made. Raises DesignError, FileError.
    """
    work = job(text)
    return _written(work, folder, products(work, tell))


def write_data(text: str, folder: Path, tell: Tell = lambda _: None) -> Issued:
    """Write what other programs read into a folder, each file whole or not at all.

    tell: as in `issue`. Raises DesignError, FileError.
    """
    work = job(text)
    return _written(work, folder, data_products(work, tell))


def _written(work: Job, folder: Path, found: Iterator[Product | str]) -> Issued:
    files, notes = [], []
    for made in found:
        if isinstance(made, str):
            notes.append(made)
            continue
        save(folder / made.name, made.data)
        files.append(folder / made.name)
    return Issued(tuple(files), tuple(notes), work.report)


def products(work: Job, tell: Tell) -> Iterator[Product | str]:
    """Yield the files of the set; where one cannot be made, the sentence that says why."""
    tell("the report and its tables")
    yield Product("design.toml", work.text.encode())
    yield from (Product(name, words.encode()) for name, words in papers(work).items())
    order = order_tables.workbook(work.report.order, work.system)
    yield Product("order.xlsx", to_xlsx(order))
    yield from _findings(work, tell)
    yield from _site_papers(work, tell)
    yield from _drawings(work, tell)
    yield from _models(work, tell)
    yield from _stills(work, tell)


def data_products(work: Job, tell: Tell) -> Iterator[Product | str]:
    """Yield report, tables and model for other programs; else the sentence that says why not."""
    tell("the report and its tables")
    yield from (Product(name, words.encode()) for name, words in papers(work).items())
    yield Product("data.xlsx", data_book(work))
    yield from _models_for_programs(work, tell)


def data_book(work: Job) -> bytes:
    """Return the tables of figures for other programs as one XLSX file."""
    return to_xlsx([(title.capitalize(), table) for title, table in _figures(work.report).items()])


def _figures(report: Report) -> dict[str, Table]:
    """Return the tables of figures for other programs, by name."""
    return {
        "levels": report_tables.level_figures(report),
        "volumes": report_tables.volume_figures(report),
        "findings": report_tables.findings(report),
        "inverts": report_tables.invert_figures(report),
        "order": order_tables.figures(report.order),
    }


def papers(work: Job) -> dict[str, str]:
    """Return report, tables and schemas by file name."""
    return {
        "report.json": work.report.to_json(),
        **{f"{name}.csv": to_csv(table) for name, table in _figures(work.report).items()},
        "design.schema.json": _schema(Design.model_json_schema(by_alias=True)),
        "report.schema.json": _schema(Report.schema()),
    }


def _schema(schema: dict[str, object]) -> str:
    dialect = {"$schema": "https://json-schema.org/draft/2020-12/schema"}
    return json.dumps({**dialect, **schema}, indent=2) + "\n"


def _drawings(work: Job, tell: Tell) -> Iterator[Product | str]:
    paper = usual_paper(work)
    tell(f"the permit set on {paper}")
    try:
        sheets = permit_set(work, paper)
    except BedcourseError as error:
        yield f"the permit set was left out: {error}"
    else:
        yield Product("permit-set.pdf", set_pdf(work, sheets))
        for sheet in sheets:
            tell(f"sheet {sheet.number}, {sheet.title}")
            yield from sheet_files(sheet)
    try:
        options = alternatives(work, paper)
    except BedcourseError as error:
        yield f"the sheets for decision were left out: {error}"
    else:
        if options:
            yield Product(DECISIONS, set_pdf(work, options))


def _findings(work: Job, tell: Tell) -> Iterator[Product]:
    """Yield what was found, on paper and as one page for a browser."""
    from viz.findings.page import findings_page
    from viz.findings.paper import findings_pdf
    from viz.findings.write import findings_document

    tell("the findings")
    document = findings_document(work)
    yield Product("findings.pdf", findings_pdf(document, carried_paper(work.system)))
    yield Product("findings.html", findings_page(document).encode())


def _site_papers(work: Job, tell: Tell) -> Iterator[Product | str]:
    """Yield cards, pole, laser and inspection sheets in every language, and the order sheet."""
    tell("papers for the site")
    paper = carried_paper(work.system)
    made = [
        (name if code == NATIVE else f"{name}.{code}", make, code)
        for code in codes()
        for name, make in site_papers(work, paper, language(code))
    ]
    made.append(("order-sheet", lambda: order_sheets(work, paper), NATIVE))
    for name, make, code in made:
        try:
            yield Product(f"{SITE}/{name}.pdf", set_pdf(work, make(), code))
        except BedcourseError as error:
            yield f"{name}.pdf was left out: {error}"


def usual_paper(work: Job) -> PaperName:
    """Return the paper of the permit set, by the units people work in."""
    return "A1" if work.system == "metric" else "ARCH C"


def small_paper(system: System) -> PaperName:
    """Return the paper of one drawing alone, by the units people work in."""
    return "A3" if system == "metric" else "ANSI B"


def set_pdf(work: Job, sheets: Sequence[Sheet], code: str = NATIVE) -> bytes:
    """Return sheets as one PDF. code: of the language they are in."""
    from viz.export.pdf import DocumentInfo, to_pdf

    about = work.layout.design.project
    info = DocumentInfo(
        f"{about.name}: {sheets[0].title if len(sheets) == 1 else 'drawings'}",
        about.prepared_by,
        ", ".join(filter(None, (about.address, about.date))),
        ", ".join(sheet.number for sheet in sheets),
        code,
    )
    return to_pdf([sheet.drawing for sheet in sheets], info)


def sheet_files(sheet: Sheet, dpi: float = SHEET_DPI) -> Iterator[Product]:
    """Yield one sheet as SVG and PNG."""
    svg = to_svg(sheet.drawing)
    yield Product(f"{SHEETS}/{sheet.number}.svg", svg.encode())
    yield Product(f"{SHEETS}/{sheet.number}.png", to_png(svg, dpi))


def write_sheets(
    work: Job, out: Path, paper: PaperName, scale: Scale | None, dpi: float
) -> tuple[Path, ...]:
    """Write the permit set as one PDF, or into a folder as PDF, SVG and PNG.

    Raises BedcourseError where the paper cannot hold a figure, FileError.
    """
    sheets = permit_set(work, paper, scale)
    whole = set_pdf(work, sheets)
    if out.suffix.lower() == ".pdf":
        save(out, whole)
        return (out,)
    written = [out / "permit-set.pdf"]
    save(written[0], whole)
    for sheet in sheets:
        for product in sheet_files(sheet, dpi):
            written.append(out / Path(product.name).name)
            save(written[-1], product.data)
    return tuple(written)


def _models(work: Job, tell: Tell) -> Iterator[Product | str]:
    from viz.viewer.page import viewer_page

    yield from _models_for_programs(work, tell)
    yield Product("model.html", viewer_page(work).encode())


def _models_for_programs(work: Job, tell: Tell) -> Iterator[Product | str]:
    from viz.export.glb import to_glb
    from viz.export.ifc.house import to_ifc
    from viz.export.ifc.library import IfcLibraryError

    tell("the model")
    yield Product("model.glb", to_glb(work.foundation.solids))
    try:
        yield Product("model.ifc", to_ifc(work.layout, work.foundation))
    except IfcLibraryError as error:
        yield f"model.ifc was left out: {error}"


def _stills(work: Job, tell: Tell) -> Iterator[Product | str]:
    for still in stills(work):
        tell(f"the picture {still.name}")
        staged = still.name.startswith(STAGE)
        name = f"{STAGES}/{still.name}.png" if staged else f"{still.name}.png"
        try:
            yield Product(name, still_png(work, still.name, STAGE_SIZE if staged else SIZE))
        except NoPictures as error:
            yield str(error)
            return
        except BedcourseError as error:
            yield f"{name} was left out: {error}"
